package sunup.ops.bench;

import java.util.ArrayList;
import java.util.List;
import java.util.SplittableRandom;
import sunup.forecast.Draw;
import sunup.forecast.ForecastInput;
import sunup.forecast.ForecastInput.ItemIn;
import sunup.forecast.ForecastInput.KindIn;
import sunup.forecast.ForecastInput.Need;
import sunup.forecast.ForecastInput.PersonIn;
import sunup.forecast.ForecastInput.RoomIn;
import sunup.forecast.ForecastInput.Settings;

/**
 * A morning that any simulation library can play: every room has an anaesthetist and a nurse who do
 * their items one after the other. Two items of each room are done by one technician of all rooms,
 * each as soon as the anaesthetist is so far: he serves the first room that waits. The nurse's last
 * item wants the one machine of all rooms, which goes to the first room that waits. All durations
 * are log-normal; a room starts when all its items are good. Times are milliseconds.
 */
record SharedRooms(int rooms) {
  static final int BY_ANAESTHETIST = 12;
  static final int BY_NURSE = 9;
  static final int BY_TECHNICIAN = 2;
  static final int ITEMS = BY_ANAESTHETIST + BY_NURSE + BY_TECHNICIAN;

  private static final long MINUTE = 60_000;
  private static final long USUAL = 2 * MINUTE;
  private static final long ONE_IN_TEN = 4 * MINUTE;
  private static final long HELP_USUAL = 90_000;
  private static final long HELP_ONE_IN_TEN = 3 * MINUTE;
  private static final long MACHINE_USUAL = 3 * MINUTE;
  private static final long MACHINE_ONE_IN_TEN = 6 * MINUTE;
  private static final double TENTH = 1.2816;

  long target() {
    return (30 + rooms * 2L) * MINUTE;
  }

  /** After how many items of the anaesthetist the technician's k-th is ready. */
  static int before(int k) {
    return k == 0 ? 5 : 9;
  }

  static double hands(SplittableRandom random) {
    return drawn(random, USUAL, ONE_IN_TEN);
  }

  static double help(SplittableRandom random) {
    return drawn(random, HELP_USUAL, HELP_ONE_IN_TEN);
  }

  static double machine(SplittableRandom random) {
    return drawn(random, MACHINE_USUAL, MACHINE_ONE_IN_TEN);
  }

  private static double drawn(SplittableRandom random, long usual, long oneInTen) {
    double sigma = Math.log((double) oneInTen / usual) / TENTH;
    return Math.exp(Math.log((double) usual) + sigma * random.nextGaussian());
  }

  ForecastInput input(long seed, int trials) {
    List<PersonIn> people = new ArrayList<>();
    List<RoomIn> list = new ArrayList<>();
    people.add(person("t", "technician", null));
    for (int r = 0; r < rooms; r++) {
      people.add(person("a" + r, "anaesthetist", "r" + r));
      people.add(person("n" + r, "nurse", "r" + r));
      list.add(room(r));
    }
    Settings settings =
        new Settings(0, 0L, 600 * MINUTE, 0.0, ForecastInput.Settings.DEFAULT.silence());
    return new ForecastInput(
        1,
        0,
        seed,
        trials,
        settings,
        people,
        List.of(new KindIn("machine", 1, List.of())),
        List.of(),
        list);
  }

  private RoomIn room(int r) {
    List<ItemIn> items = new ArrayList<>();
    for (int i = 0; i < BY_ANAESTHETIST; i++) {
      items.add(item("a" + i, "anaesthetist", USUAL, ONE_IN_TEN, List.of(), List.of()));
    }
    for (int i = 0; i < BY_NURSE - 1; i++) {
      items.add(item("n" + i, "nurse", USUAL, ONE_IN_TEN, List.of(), List.of()));
    }
    items.add(
        item(
            "n" + (BY_NURSE - 1),
            "nurse",
            MACHINE_USUAL,
            MACHINE_ONE_IN_TEN,
            List.of("n" + (BY_NURSE - 2)),
            List.of(new Need("machine", 1, null, false))));
    for (int k = 0; k < BY_TECHNICIAN; k++) {
      items.add(
          item(
              "t" + k,
              "technician",
              HELP_USUAL,
              HELP_ONE_IN_TEN,
              List.of("a" + (before(k) - 1)),
              List.of()));
    }
    items.add(start());
    return new RoomIn("r" + r, "c" + r, target(), "start", 0, null, null, items);
  }

  private static ItemIn item(
      String key, String role, long usual, long oneInTen, List<String> after, List<Need> needs) {
    return new ItemIn(
        key,
        "section",
        true,
        List.of(List.of(role)),
        new Draw.LogNormal(usual, oneInTen),
        null,
        null,
        after,
        "start",
        null,
        null,
        null,
        false,
        needs,
        null,
        null,
        null,
        false);
  }

  private static ItemIn start() {
    return new ItemIn(
        "start", "section", true, List.of(), null, null, null, List.of(), null, "start", null, null,
        false, List.of(), null, null, null, false);
  }

  private static PersonIn person(String id, String role, String room) {
    return new PersonIn(
        id, List.of(role), room, List.of(), 0L, 0, null, true, null, null, 0L, null);
  }
}
