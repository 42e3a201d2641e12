package sunup.forecast;

import static sunup.forecast.Mornings.MINUTE;
import static sunup.forecast.Mornings.about;
import static sunup.forecast.Mornings.at;
import static sunup.forecast.Mornings.exactly;
import static sunup.forecast.Mornings.item;
import static sunup.forecast.Mornings.person;

import java.util.ArrayList;
import java.util.List;
import sunup.forecast.ForecastInput.ItemIn;
import sunup.forecast.ForecastInput.KindIn;
import sunup.forecast.ForecastInput.PersonIn;
import sunup.forecast.ForecastInput.PlaceIn;
import sunup.forecast.ForecastInput.RoomIn;
import sunup.forecast.ForecastInput.Settings;
import sunup.forecast.Mornings.Person;
import sunup.forecast.Mornings.Work;

/**
 * An invented suite whose rooms carry a whole sheet; durations are common practice, not findings.
 */
final class Hospital {
  static final long TARGET = at(7, 30);
  static final long BEGINS = at(6, 30);

  private Hospital() {}

  static ForecastInput morning(int rooms, long now, int trials, Settings settings) {
    List<RoomIn> list = new ArrayList<>();
    List<PersonIn> people = new ArrayList<>();
    for (int r = 1; r <= rooms; r++) {
      String id = "room " + r;
      list.add(
          new RoomIn(id, "case " + r, TARGET, "wheels-in", BEGINS, null, null, sheet(r % 4 == 0)));
      people.add(present("a" + r, now, "anaesthetist").in(id).build());
      people.add(present("n" + r, now, "nurse").in(id).build());
      people.add(present("s" + r, now, "scrub").in(id).build());
      people.add(present("u" + r, now, "surgeon").covering(id).build());
    }
    shared(people, now, "technician", (rooms + 3) / 4);
    shared(people, now, "supervisor", (rooms + 2) / 3);
    shared(people, now, "holding", (rooms + 2) / 3);
    shared(people, now, "porter", (rooms + 3) / 4);
    shared(people, now, "cleaner", (rooms + 5) / 6);
    return new ForecastInput(
        1,
        now,
        7,
        trials,
        settings,
        people,
        List.of(new KindIn("ultrasound", Math.max(1, rooms / 8), List.of())),
        List.of(new PlaceIn("pharmacy", at(6, 50), exactly(1.5))),
        list);
  }

  private static Person present(String id, long now, String... roles) {
    return person(id, roles).here(Math.min(now, BEGINS)).spoke(now);
  }

  private static void shared(List<PersonIn> people, long now, String role, int n) {
    for (int i = 1; i <= n; i++) {
      people.add(present(role + " " + i, now, role).build());
    }
  }

  static List<ItemIn> sheet(boolean block) {
    List<Work> w = new ArrayList<>();
    machine(w);
    ownSetUp(w);
    roomAndInstruments(w);
    patient(w, block);
    startChain(w);
    return Mornings.items(w.toArray(new Work[0]));
  }

  private static Work set(String key, String section, double usual, double oneInTen, String... by) {
    return item(section + "." + key)
        .section(section)
        .takes(about(usual, oneInTen))
        .by(by)
        .gates("induction")
        .inRoom();
  }

  private static void machine(List<Work> w) {
    w.add(set("bag", "machine", 0.6, 1.2, "technician", "anaesthetist").oneIn(30, 6));
    w.add(set("supply", "machine", 1, 2, "technician", "anaesthetist"));
    w.add(
        set("self-test", "machine", 1, 2, "technician", "anaesthetist")
            .waits(about(6, 9))
            .oneIn(25, 15)
            .after("machine.supply"));
    w.add(
        set("cylinder", "machine", 0.5, 1, "technician", "anaesthetist")
            .oneIn(25, 5)
            .after("machine.supply"));
    w.add(set("vaporiser", "machine", 0.7, 1.5, "technician", "anaesthetist").oneIn(10, 3));
    w.add(set("absorbent", "machine", 0.3, 0.6, "technician", "anaesthetist").oneIn(15, 5));
    w.add(
        set("circuit", "machine", 1.5, 3, "anaesthetist")
            .oneIn(25, 10)
            .after("machine.self-test", "machine.vaporiser", "machine.absorbent"));
    w.add(set("limits", "machine", 0.7, 1.5, "anaesthetist").after("machine.circuit"));
  }

  private static void ownSetUp(List<Work> w) {
    w.add(set("suction", "suction", 0.5, 1, "technician", "anaesthetist").oneIn(30, 5));
    w.add(set("all", "monitors", 2, 3.5, "anaesthetist"));
    w.add(set("alarms", "monitors", 0.5, 1, "anaesthetist").after("monitors.all"));
    w.add(set("record", "monitors", 0.5, 1, "anaesthetist").gates(null).oneIn(15, 6));
    w.add(set("scope", "airway", 2, 3.5, "anaesthetist").ofCase());
    w.add(set("plans", "airway", 1, 2, "anaesthetist").ofCase());
    w.add(set("drip", "iv", 1.5, 2.5, "anaesthetist", "technician").ofCase().lives(180));
    w.add(set("drawn", "drugs", 5, 8, "anaesthetist").ofCase().lives(240));
    w.add(set("emergency", "drugs", 1, 2, "anaesthetist").lives(240));
    w.add(set("controlled", "drugs", 4, 6, "anaesthetist").ofCase().at("pharmacy").oneIn(10, 8));
    w.add(set("antibiotic", "drugs", 1, 4, "anaesthetist", "nurse").gates("incision"));
    w.add(set("rescue", "drugs", 3, 6, "technician").gates(null));
    w.add(set("warming", "special", 1, 2, "anaesthetist", "nurse").gates(null));
  }

  private static void roomAndInstruments(List<Work> w) {
    w.add(set("cleaned", "room", 6, 12, "cleaner").gates("wheels-in"));
    w.add(
        set("table", "room", 4, 8, "nurse").oneIn(8, 12).gates("wheels-in").after("room.cleaned"));
    w.add(
        set("diathermy", "room", 3, 5, "nurse")
            .oneIn(20, 10)
            .gates("incision")
            .after("room.cleaned"));
    w.add(set("trays", "instruments", 5, 10, "nurse", "scrub").oneIn(12, 25).gates("wheels-in"));
    w.add(
        set("field", "instruments", 8, 14, "scrub")
            .gates("incision")
            .after("room.cleaned", "instruments.trays"));
    w.add(
        set("count", "instruments", 6, 11, "scrub")
            .by("nurse")
            .gates("incision")
            .after("instruments.field"));
  }

  private static Work beside(String key, double usual, double oneInTen, String... by) {
    return item(key)
        .section("patient")
        .takes(about(usual, oneInTen))
        .by(by)
        .ofCase()
        .gates("sent-for");
  }

  private static void patient(List<Work> w, boolean block) {
    w.add(
        item("patient.arrived")
            .section("patient")
            .ofCase()
            .comes(TARGET - 105 * MINUTE, about(30, 60), true)
            .gates("sent-for"));
    w.add(beside("patient.papers", 12, 25, "holding").after("patient.arrived").oneIn(12, 30));
    w.add(beside("patient.drip", 4, 9, "holding", "anaesthetist").after("patient.arrived"));
    w.add(
        item("surgeon.seen")
            .section("surgeon")
            .comes(TARGET - 60 * MINUTE, about(30, 55), false)
            .gates("sent-for"));
    w.add(beside("patient.consent", 5, 10, "surgeon").after("patient.arrived", "surgeon.seen"));
    w.add(beside("patient.assessment", 7, 14, "supervisor").after("patient.arrived"));
    if (block) {
      w.add(
          set("ultrasound", "special", 2, 5, "technician", "anaesthetist")
              .needs("ultrasound", 1, "patient.block"));
      w.add(
          beside("patient.block", 12, 20, "supervisor")
              .by("holding")
              .waits(about(15, 30))
              .gates("induction")
              .after("special.ultrasound", "patient.papers", "patient.consent"));
    }
    w.add(
        item("team.brief")
            .section("team")
            .takes(about(4, 7))
            .by("anaesthetist")
            .by("surgeon")
            .by("nurse")
            .after("surgeon.seen")
            .gates("sent-for"));
    w.add(item("start.sent").marks("sent-for").notBefore(TARGET - 12 * MINUTE));
  }

  private static Work chain(String key, String after, String marks, double usual, double oneInTen) {
    return item(key).section("start").takes(about(usual, oneInTen)).after(after).marks(marks);
  }

  private static void startChain(List<Work> w) {
    w.add(
        chain("start.wheels-in", "start.sent", "wheels-in", 6, 14)
            .by("porter")
            .by("nurse")
            .notBefore(TARGET));
    w.add(
        chain("start.on-table", "start.wheels-in", "on-table", 5, 9)
            .by("anaesthetist")
            .by("nurse"));
    w.add(
        chain("start.induction", "start.on-table", "induction", 6, 13)
            .by("anaesthetist")
            .by("supervisor"));
    w.add(chain("start.release", "start.induction", "release", 4, 14).by("anaesthetist"));
    w.add(chain("start.drape", "start.release", "draped", 13, 25).by("nurse").by("scrub"));
    w.add(chain("start.incision", "start.drape", "incision", 1.5, 3).by("surgeon").by("nurse"));
  }
}
