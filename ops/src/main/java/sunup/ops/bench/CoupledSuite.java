package sunup.ops.bench;

import java.util.ArrayList;
import java.util.List;
import sunup.forecast.Draw;
import sunup.forecast.ForecastInput;
import sunup.forecast.ForecastInput.ItemIn;
import sunup.forecast.ForecastInput.KindIn;
import sunup.forecast.ForecastInput.Need;
import sunup.forecast.ForecastInput.PersonIn;
import sunup.forecast.ForecastInput.RoomIn;

/**
 * An invented input of any size for the forecast alone, nobody silent and nothing begun: every room
 * has an anaesthetist and a nurse of its own and 45 items, of which technicians do every ninth;
 * every eleventh waits for three minutes more without anybody, two want a machine that is short,
 * and a supervisor is wanted at induction.
 */
public final class CoupledSuite {
  public static final int ITEMS = 45;

  private static final long MINUTE = 60_000;
  private static final long TARGET = 60 * MINUTE;
  private static final int STEPS = 4;
  private static final int ROOMS_A_TECHNICIAN = 4;
  private static final int ROOMS_A_MACHINE = 6;

  private CoupledSuite() {}

  /** Rooms that hang together in groups of so many; nothing is shared beyond a group. */
  public static ForecastInput of(int rooms, int group, long seed, int trials) {
    List<PersonIn> people = new ArrayList<>();
    List<RoomIn> list = new ArrayList<>();
    List<KindIn> kinds = new ArrayList<>();
    for (int from = 0; from < rooms; from += group) {
      int to = Math.min(rooms, from + group);
      List<String> ids = new ArrayList<>();
      String machine = "machine-" + from;
      for (int r = from; r < to; r++) {
        ids.add(roomId(r));
        people.add(person("a" + r, "anaesthetist", roomId(r), List.of()));
        people.add(person("n" + r, "circulating", roomId(r), List.of()));
        list.add(room(r, machine));
      }
      for (int k = 0; k < Math.max(1, (to - from) / ROOMS_A_TECHNICIAN); k++) {
        people.add(person("t" + from + "-" + k, "technician", null, ids));
        people.add(person("s" + from + "-" + k, "supervisor", null, ids));
      }
      kinds.add(new KindIn(machine, Math.max(1, (to - from) / ROOMS_A_MACHINE), List.of()));
    }
    return new ForecastInput(1, 0, seed, trials, null, people, kinds, List.of(), list);
  }

  private static String roomId(int r) {
    return "r" + r;
  }

  private static RoomIn room(int r, String machine) {
    List<ItemIn> items = new ArrayList<>();
    for (int i = 0; i < ITEMS - STEPS; i++) {
      String who = i % 9 == 8 ? "technician" : i % 3 == 2 ? "circulating" : "anaesthetist";
      items.add(
          item(
              "i" + i,
              List.of(List.of(who)),
              i % 11 == 10 ? new Draw.LogNormal(3 * MINUTE, 5 * MINUTE) : null,
              i >= 3 && i % 4 == 0 ? List.of("i" + (i - 3)) : List.of(),
              i % 2 == 0 ? "wheels-in" : "induction",
              null,
              null,
              i % 20 == 13 ? List.of(new Need(machine, 1, null, false)) : List.of()));
    }
    items.add(step("sent", List.of(), List.of(), "sent-for", TARGET - 30 * MINUTE));
    items.add(
        step(
            "in",
            List.of(List.of("anaesthetist"), List.of("circulating")),
            List.of("sent"),
            "wheels-in",
            TARGET - 10 * MINUTE));
    items.add(
        item(
            "supervised",
            List.of(List.of("supervisor")),
            null,
            List.of("in"),
            "induction",
            null,
            null,
            List.of()));
    items.add(
        step("induced", List.of(List.of("anaesthetist")), List.of("in"), "induction", TARGET));
    return new RoomIn(roomId(r), "c" + r, TARGET, "induction", 0, null, null, items);
  }

  private static ItemIn step(
      String key, List<List<String>> who, List<String> after, String marks, Long notBefore) {
    return item(key, who, null, after, null, marks, notBefore, List.of());
  }

  private static ItemIn item(
      String key,
      List<List<String>> who,
      Draw waits,
      List<String> after,
      String gates,
      String marks,
      Long notBefore,
      List<Need> needs) {
    return new ItemIn(
        key,
        "section",
        true,
        who,
        new Draw.LogNormal(MINUTE, 2 * MINUTE),
        waits,
        null,
        after,
        gates,
        marks,
        notBefore,
        null,
        false,
        needs,
        null,
        null,
        null,
        false);
  }

  private static PersonIn person(String id, String role, String room, List<String> covers) {
    return new PersonIn(id, List.of(role), room, covers, 0L, 0, null, true, null, null, 0L, null);
  }
}
