package sunup.outlook;

import java.util.ArrayList;
import java.util.List;
import sunup.board.Morning;
import sunup.forecast.Forecast;
import sunup.forecast.ForecastInput;
import sunup.wire.Part;

/** What the board makes of a morning. Pure: equal arguments give equal results. */
public final class Outlook {
  private Outlook() {}

  /**
   * The morning as the forecast's input.
   *
   * @param now the moment to forecast from, epoch milliseconds of morning time
   * @param trials how many trials to run
   */
  public static ForecastInput input(Morning morning, long now, int trials) {
    return new MorningInput(Snapshot.of(morning, now)).build(trials);
  }

  /**
   * Standings of all rooms, given what was said of them before.
   *
   * @param before {@link Judged#NOTHING} at first
   * @param forecast the newest figures, or null if there are none yet
   */
  public static Judged judge(Judged before, Morning morning, Forecast forecast, long now) {
    return new Judge(before, Snapshot.of(morning, now), forecast).judge();
  }

  /**
   * All parts of all audiences; {@link Part#audience} says the least one that may see each.
   *
   * @param loopback true if the server takes connections from this machine only
   */
  public static List<Part> parts(
      Morning morning, Forecast forecast, Judged judged, long now, boolean loopback) {
    List<Part> parts = new ArrayList<>();
    Snapshot snapshot = Snapshot.of(morning, now);
    new WallParts(snapshot, forecast, judged).addTo(parts, loopback);
    if (morning.phase() != Morning.Phase.NONE) {
      new StaffParts(snapshot, forecast).addTo(parts);
      new DeskParts(snapshot, forecast).addTo(parts);
    }
    return parts;
  }
}
