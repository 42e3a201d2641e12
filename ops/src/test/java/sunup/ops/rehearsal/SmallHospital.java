package sunup.ops.rehearsal;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import sunup.board.CaseId;
import sunup.board.CasePlan;
import sunup.board.MorningId;
import sunup.board.MorningPlan;
import sunup.board.PersonId;
import sunup.board.PersonPlan;
import sunup.board.PlaceId;
import sunup.board.PlacePlan;
import sunup.board.Role;
import sunup.board.RoomId;
import sunup.board.Section;
import sunup.board.SiteSettings;
import sunup.board.Step;
import sunup.board.SuiteId;
import sunup.board.UnitId;
import sunup.board.UnitPlan;
import sunup.sheets.ComposedSheet;
import sunup.sheets.EvidenceRule;
import sunup.sheets.Hands;
import sunup.sheets.SheetItem;
import sunup.sheets.SheetItem.Belongs;
import sunup.sheets.Uses;

/** A hospital of three rooms with a short sheet, written by hand for tests. */
final class SmallHospital {
  private static final long MINUTE = 60_000;

  private SmallHospital() {}

  static MorningPlan plan() {
    MorningId id = new MorningId(new SuiteId("small"), LocalDate.of(2026, 11, 25));
    SiteSettings settings =
        new SiteSettings("Invented", "Small suite", "UTC", Step.INDUCTION, 0, 0.2, true);
    long target = id.date().atTime(7, 30).atZone(settings.zoneId()).toInstant().toEpochMilli();
    ComposedSheet sheet = new ComposedSheet("a".repeat(64), List.of("small 1"), items());
    List<RoomId> rooms = List.of(new RoomId("1"), new RoomId("2"), new RoomId("3"));
    List<CasePlan> cases = new ArrayList<>();
    List<PersonPlan> people = new ArrayList<>();
    for (RoomId room : rooms) {
      cases.add(
          new CasePlan(
              new CaseId("C" + room),
              room,
              target,
              null,
              null,
              "general",
              List.of(),
              null,
              sheet.hash()));
      people.add(person("A" + room, Role.ANAESTHETIST, room, target - 50 * MINUTE));
      people.add(person("N" + room, Role.CIRCULATING, room, target - 60 * MINUTE));
    }
    people.add(person("T1", Role.TECHNICIAN, null, target - 60 * MINUTE));
    people.add(person("V1", Role.SUPERVISOR, null, target - 60 * MINUTE));
    people.add(person("H1", Role.HOLDING, null, target - 90 * MINUTE));
    return new MorningPlan(
        id,
        settings,
        rooms,
        cases,
        people,
        List.of(new UnitPlan(new UnitId("ultrasound-1"), "ultrasound", "ultrasound")),
        List.of(new PlacePlan(new PlaceId("pharmacy"), "pharmacy", target - 15 * MINUTE, 2)),
        List.of(sheet),
        target - 60 * MINUTE);
  }

  private static PersonPlan person(String id, Role role, RoomId room, long at) {
    return new PersonPlan(new PersonId(id), role, room, List.of(), at);
  }

  private static List<SheetItem> items() {
    List<List<Role>> room = List.of(List.of(Role.ANAESTHETIST, Role.TECHNICIAN));
    List<List<Role>> own = List.of(List.of(Role.ANAESTHETIST));
    List<List<Role>> two = List.of(List.of(Role.ANAESTHETIST), List.of(Role.SUPERVISOR));
    EvidenceRule leak =
        new EvidenceRule(
            EvidenceRule.Kind.NUMBER, "mL/min", 0.0, 2000.0, 0.0, 250.0, List.of(), false, null);
    return List.of(
        item("machine.pipes", Section.MACHINE, Belongs.ROOM, room, 1, 2).build(),
        item("machine.self-test", Section.MACHINE, Belongs.ROOM, room, 1, 2)
            .after("machine.pipes")
            .waits(6, 9)
            .evidence(leak)
            .build(),
        item("suction.strong", Section.SUCTION, Belongs.ROOM, room, 0.5, 1).build(),
        item("airway.tube", Section.AIRWAY, Belongs.CASE, own, 2, 3.5).build(),
        item("drugs.drawn", Section.DRUGS, Belongs.CASE, own, 5, 8).build(),
        item("drugs.controlled", Section.DRUGS, Belongs.CASE, own, 4, 7).place("pharmacy").build(),
        item("special.ultrasound", Section.SPECIAL, Belongs.CASE, own, 3, 5)
            .uses("ultrasound")
            .build(),
        item("patient.arrived", Section.PATIENT, Belongs.CASE, List.of(), 0, 0)
            .arrives(75, 45)
            .gates(Step.WHEELS_IN)
            .build(),
        item("patient.papers", Section.PATIENT, Belongs.CASE, List.of(List.of(Role.HOLDING)), 8, 15)
            .after("patient.arrived")
            .gates(Step.WHEELS_IN)
            .build(),
        item(
                "start.wheels-in",
                Section.START,
                Belongs.CASE,
                List.of(List.of(Role.CIRCULATING)),
                6,
                14)
            .gates(null)
            .marks(Step.WHEELS_IN)
            .build(),
        item("start.induction", Section.START, Belongs.CASE, two, 1, 2)
            .after("start.wheels-in")
            .gates(null)
            .marks(Step.INDUCTION)
            .build());
  }

  private static Builder item(
      String key,
      Section section,
      Belongs belongs,
      List<List<Role>> who,
      double usual,
      double oneInTen) {
    return new Builder(key, section, belongs, who, new Hands(usual, oneInTen));
  }

  private static final class Builder {
    private final String key;
    private final Section section;
    private final Belongs belongs;
    private final List<List<Role>> who;
    private final Hands hands;
    private final List<String> after = new ArrayList<>();
    private Step gates = Step.INDUCTION;
    private Step marks;
    private Hands waits;
    private EvidenceRule evidence;
    private String place;
    private List<Uses> uses = List.of();
    private Integer plannedBefore;
    private Integer plannedLate;

    Builder(String key, Section section, Belongs belongs, List<List<Role>> who, Hands hands) {
      this.key = key;
      this.section = section;
      this.belongs = belongs;
      this.who = who;
      this.hands = hands;
    }

    Builder after(String... keys) {
      after.addAll(List.of(keys));
      return this;
    }

    Builder gates(Step step) {
      gates = step;
      return this;
    }

    Builder marks(Step step) {
      marks = step;
      return this;
    }

    Builder waits(double usual, double oneInTen) {
      waits = new Hands(usual, oneInTen);
      return this;
    }

    Builder evidence(EvidenceRule rule) {
      evidence = rule;
      return this;
    }

    Builder place(String where) {
      place = where;
      return this;
    }

    Builder uses(String kind) {
      uses = List.of(new Uses(kind, null));
      return this;
    }

    Builder arrives(int before, int late) {
      plannedBefore = before;
      plannedLate = late;
      return this;
    }

    SheetItem build() {
      return new SheetItem(
          key,
          section,
          belongs,
          key,
          "an item",
          who,
          hands,
          waits,
          null,
          after,
          gates,
          marks,
          false,
          evidence,
          null,
          place,
          uses,
          plannedBefore,
          plannedLate,
          List.of());
    }
  }
}
