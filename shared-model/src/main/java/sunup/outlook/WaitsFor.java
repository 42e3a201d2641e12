package sunup.outlook;

import java.util.Set;
import java.util.TreeSet;
import sunup.forecast.Forecast.RoomOut;
import sunup.forecast.Forecast.Share;
import sunup.wire.Standing;

/**
 * The people whom a late or tight room waits for, with the memory that all figures have: a dead
 * band, and a change shows at once with an event, else after a minute.
 *
 * @param people as shown
 * @param differsSince since when the figures have said others, or null
 */
record WaitsFor(Set<String> people, Long differsSince) {
  static final WaitsFor NOBODY = new WaitsFor(Set.of(), null);

  /**
   * What is shown next.
   *
   * @param figure null if there is none
   * @param atOnce true if what the room's figures say shows at once
   */
  WaitsFor then(RoomOut figure, Standing standing, boolean atOnce, long now) {
    boolean late = standing == Standing.LATE || standing == Standing.TIGHT;
    if (!late || figure == null) {
      return NOBODY;
    }
    Set<String> fresh = by(figure);
    if (fresh.equals(people)) {
      return new WaitsFor(people, null);
    }
    long since = differsSince == null ? now : differsSince;
    return atOnce || now - since >= FirstSettings.SHOWN_FOR
        ? new WaitsFor(fresh, null)
        : new WaitsFor(people, since);
  }

  private Set<String> by(RoomOut figure) {
    Set<String> fresh = new TreeSet<>();
    for (Share share : figure.holdups()) {
      boolean byPerson = share.kind().equals("person") || share.kind().equals("arrival");
      if (byPerson && share.thing() != null) {
        boolean was = people.contains(share.thing());
        double least = was ? FirstSettings.WAITS_LEAVE : FirstSettings.WAITS_ENTER;
        if (share.share() >= least) {
          fresh.add(share.thing());
        }
      }
    }
    return fresh;
  }
}
