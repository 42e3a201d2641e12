package sunup.moves;

import java.util.List;
import java.util.Set;
import sunup.forecast.Draw;
import sunup.forecast.Forecast;
import sunup.forecast.ForecastInput;
import sunup.forecast.ForecastInput.ItemIn;
import sunup.forecast.ForecastInput.KindIn;
import sunup.forecast.ForecastInput.Need;
import sunup.forecast.ForecastInput.PersonIn;
import sunup.forecast.ForecastInput.PlaceIn;
import sunup.forecast.ForecastInput.Progress;
import sunup.forecast.ForecastInput.RoomIn;
import sunup.forecast.ForecastInput.Settings;
import sunup.forecast.Forecaster;

/** Small mornings for the search for moves. */
final class Small {
  static final long MINUTE = 60_000;
  static final long NOW = 1_795_588_200_000L;

  /** Nobody forgets, is called away or reports: exact durations stay exact. */
  static final Settings EXACT =
      new Settings(
          0, 0, 240 * MINUTE, 0, new ForecastInput.Silence(0, 0, 0, 1, 0, new Draw.Constant(0)));

  private Small() {}

  static Draw exactly(double minutes) {
    return new Draw.Constant(Math.round(minutes * MINUTE));
  }

  static Draw about(double usual, double oneInTen) {
    return new Draw.LogNormal(Math.round(usual * MINUTE), Math.round(oneInTen * MINUTE));
  }

  static PersonIn person(String id, String role, String room, List<String> covers) {
    return new PersonIn(
        id, List.of(role), room, covers, NOW, NOW, null, true, null, null, NOW, null);
  }

  /** An item of one role; {@code marks} the step that it is, or null. */
  static ItemIn item(String key, String role, Draw hands, String marks, String... after) {
    return item(key, role, hands, null, marks, null, List.of(), Progress.OPEN, after);
  }

  static ItemIn item(
      String key,
      String role,
      Draw hands,
      Draw waits,
      String marks,
      String place,
      List<Need> needs,
      Progress progress,
      String... after) {
    List<List<String>> who = role == null ? List.of() : List.of(List.of(role));
    return new ItemIn(
        key,
        "set-up",
        false,
        who,
        hands,
        waits,
        null,
        List.of(after),
        null,
        marks,
        null,
        place,
        false,
        needs,
        null,
        null,
        progress,
        false);
  }

  /** A room with that target in minutes from now. */
  static RoomIn room(String id, double target, ItemIn... items) {
    return new RoomIn(
        id, "C" + id, NOW + Math.round(target * MINUTE), "start", NOW, null, null, List.of(items));
  }

  static ForecastInput morning(
      long seed,
      Settings settings,
      List<PersonIn> people,
      List<KindIn> kinds,
      List<PlaceIn> places,
      RoomIn... rooms) {
    return new ForecastInput(1, NOW, seed, 256, settings, people, kinds, places, List.of(rooms));
  }

  static Ideas search(ForecastInput in, String... off) {
    MoveSearch search = begun(in, off);
    while (search.advance()) {
      // Goes on to the end.
    }
    return search.result();
  }

  static MoveSearch begun(ForecastInput in, String... off) {
    return new MoveSearch(in, List.of(), Forecaster.run(in), Set.of(off));
  }

  static List<Proposals.Proposal> proposals(ForecastInput in) {
    Forecast forecast = Forecaster.run(in);
    return new Proposals(in, List.of(), forecast, Set.of()).all();
  }
}
