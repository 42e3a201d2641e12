package sunup.outlook;

import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import sunup.board.Morning;
import sunup.forecast.Forecast;
import sunup.forecast.ForecastInput;
import sunup.forecast.ForecastInput.PersonIn;
import sunup.wire.Part;
import sunup.wire.Part.ChancePart;

/** What the board makes of a morning. Pure: equal arguments give equal results. */
public final class Outlook {
  private Outlook() {}

  /**
   * The morning as the forecast's input.
   *
   * @param now the moment to forecast from, epoch milliseconds of morning time; a moment before the
   *     last event (on a coarse grid, say) counts as that event's, as nothing known lies after it
   * @param trials how many trials to run
   */
  public static ForecastInput input(Morning morning, long now, int trials) {
    long from = Math.max(now, morning.lastRecordedAt());
    Snapshot snapshot = Snapshot.of(morning, from);
    ForecastInput in = new MorningInput(snapshot).build(trials);
    return MoveParts.withAccepted(morning, in, new PeopleInput(snapshot).free());
  }

  /** People who are here without a room to serve, whom {@link #input} does not have. */
  public static List<PersonIn> free(Morning morning, long now) {
    return new PeopleInput(Snapshot.of(morning, Math.max(now, morning.lastRecordedAt()))).free();
  }

  /** Keys of moves that are not to be thought of now: asked, done lately, or not safe. */
  public static Set<String> movesOff(Morning morning, long now) {
    return MoveParts.off(morning, now);
  }

  /**
   * Standings of all rooms, given what was said of them before.
   *
   * @param before {@link Judged#NOTHING} at first
   */
  public static Judged judge(Judged before, Morning morning, Foretold figures, long now) {
    return judge(before, morning, figures, now, 1);
  }

  /**
   * The same for a morning that may run faster than real time.
   *
   * @param rate morning seconds per real second: lines change places no faster than eyes follow
   */
  public static Judged judge(
      Judged before, Morning morning, Foretold figures, long now, double rate) {
    long every =
        Math.max(FirstSettings.SORT_EVERY, Math.round(FirstSettings.SORT_LEAST_REAL * rate));
    return new Judge(before, Snapshot.of(morning, now), figures, every).judge();
  }

  /**
   * A holdup in the wall's words without times: of a past moment is known what it was, and not
   * until when.
   *
   * @param what the item's words, or null
   * @param thing the role, kind of equipment or place in words, or null
   */
  public static String timeless(String kind, String what, String thing) {
    return Words.timeless(kind, what, thing);
  }

  /**
   * The figures of each room as the desk reads them, of a morning that was not judged before.
   *
   * @param now the moment that they are of
   */
  public static List<ChancePart> chances(Morning morning, Forecast forecast, long now) {
    Foretold figures = new Foretold(forecast, morning.seq(), false);
    Judged judged = judge(Judged.NOTHING, morning, figures, now);
    return new DeskParts(Snapshot.of(morning, now), figures, judged).chances();
  }

  /** All parts of all audiences; {@link Part#audience} says the least one that may see each. */
  public static List<Part> parts(Morning morning, Foretold figures, Judged judged, long now) {
    List<Part> parts = new ArrayList<>();
    Snapshot snapshot = Snapshot.of(morning, now);
    new WallParts(snapshot, figures, judged).addTo(parts);
    if (morning.phase() != Morning.Phase.NONE) {
      new StaffParts(snapshot, figures, judged).addTo(parts);
      new DeskParts(snapshot, figures, judged).addTo(parts);
      new Signs(snapshot, figures).addTo(parts);
      new DrugParts(snapshot).addTo(parts);
      LearnedParts.addTo(parts, morning);
      if (morning.phase() == Morning.Phase.DRAFT) {
        new EveParts(snapshot).addTo(parts);
      }
      MoveParts moves = new MoveParts(snapshot);
      moves.addAsked(parts);
      moves.addIdeas(parts, figures.ideas());
    }
    return parts;
  }
}
