package sunup.board;

import java.time.LocalDate;
import java.util.List;
import sunup.drugs.ApprovedDrug;
import sunup.drugs.ControlledDrug;
import sunup.drugs.DrugClass;
import sunup.drugs.PackageCheck;
import sunup.drugs.UseLimit;
import sunup.sheets.ComposedSheet;
import sunup.sheets.EvidenceRule;
import sunup.sheets.Hands;
import sunup.sheets.Life;
import sunup.sheets.SheetItem;
import sunup.sheets.SheetItem.Belongs;
import sunup.sheets.Uses;
import sunup.units.Concentration;
import sunup.units.Volume;

/**
 * A small invented morning for tests: three rooms, a sheet of a dozen items, a few people, one
 * ultrasound machine, a pharmacy. Durations, lives and bands are invented.
 */
public final class Fixture {
  /** 2026-11-25 06:30 in Lisbon, when set-up is planned to begin. */
  public static final long BEGIN = 1_795_588_200_000L;

  /** 07:30, when the three first cases are booked. */
  public static final long BOOKED = BEGIN + 60 * 60_000L;

  public static final long MINUTE = 60_000L;

  public static final MorningId MORNING =
      new MorningId(new SuiteId("north"), LocalDate.of(2026, 11, 25));

  public static final RoomId R1 = new RoomId("1");
  public static final RoomId R2 = new RoomId("2");
  public static final RoomId R3 = new RoomId("3");
  public static final CaseId C1 = new CaseId("C1");
  public static final CaseId C2 = new CaseId("C2");
  public static final CaseId C3 = new CaseId("C3");

  public static final PersonId A1 = new PersonId("A1");
  public static final PersonId A2 = new PersonId("A2");
  public static final PersonId V1 = new PersonId("V1");
  public static final PersonId T1 = new PersonId("T1");
  public static final PersonId N1 = new PersonId("N1");
  public static final PersonId H1 = new PersonId("H1");

  public static final UnitId US1 = new UnitId("US1");
  public static final UnitId US2 = new UnitId("US2");
  public static final UnitId MIC = new UnitId("MIC");
  public static final PlaceId PHARMACY = new PlaceId("pharmacy");

  public static final Actor DESK = new Actor(Role.DESK, null, "desk");
  public static final Actor HOLDING = new Actor(Role.HOLDING, H1, "holding");

  public static final ComposedSheet PLAIN = sheet("plain", plainItems());
  public static final ComposedSheet BLOCK = sheet("block", blockItems());

  private Fixture() {}

  public static Actor at(RoomId room, Role role, PersonId person) {
    return new Actor(role, person, "station-" + room);
  }

  public static final Actor ANAESTHETIST_1 = at(R1, Role.ANAESTHETIST, A1);
  public static final Actor ANAESTHETIST_2 = at(R2, Role.ANAESTHETIST, A2);

  /** The item of a room, for example {@code in(R1, "machine.self-test")}. */
  public static ItemRef in(RoomId room, String key) {
    return ItemRef.of(room, key);
  }

  public static ItemRef of(CaseId caseId, String key) {
    return ItemRef.of(caseId, key);
  }

  public static MorningPlan plan() {
    SiteSettings settings =
        new SiteSettings(
            "Kestrel Bay", "North suite", "Europe/Lisbon", Step.INDUCTION, 0, 0.2, true);
    return new MorningPlan(
        MORNING,
        settings,
        List.of(R1, R2, R3),
        List.of(casePlan(C1, R1, PLAIN), casePlan(C2, R2, BLOCK), casePlan(C3, R3, PLAIN)),
        List.of(
            new PersonPlan(A1, Role.ANAESTHETIST, R1, List.of(), BEGIN),
            new PersonPlan(A2, Role.ANAESTHETIST, R2, List.of(), BEGIN),
            new PersonPlan(V1, Role.SUPERVISOR, null, List.of(R1, R2), BEGIN),
            new PersonPlan(T1, Role.TECHNICIAN, null, List.of(), BEGIN),
            new PersonPlan(N1, Role.CIRCULATING, R1, List.of(), BEGIN),
            new PersonPlan(H1, Role.HOLDING, null, List.of(), BEGIN)),
        List.of(
            new UnitPlan(US1, "ultrasound", "ultrasound 1"),
            new UnitPlan(US2, "ultrasound", "ultrasound 2"),
            new UnitPlan(MIC, "microscope", "microscope")),
        List.of(new PlacePlan(PHARMACY, "pharmacy", BEGIN + 15 * MINUTE, 3)),
        List.of(PLAIN, BLOCK),
        BEGIN);
  }

  /** The same morning at a site with an approved list; products and limits are invented. */
  public static MorningPlan planWithDrugs() {
    MorningPlan plain = plan();
    SiteSettings s = plain.settings();
    UseLimit hour = new UseLimit("hour", 60, "invented", "");
    SiteSettings settings =
        new SiteSettings(
            s.hospital(),
            s.suiteName(),
            s.zone(),
            s.startEvent(),
            s.graceMinutes(),
            s.personShare(),
            s.demo(),
            List.of(
                drug(
                    "propofol",
                    DrugClass.INDUCTION,
                    10,
                    20,
                    hour,
                    List.of(),
                    null,
                    "02000000000015"),
                drug(
                    "ephedrine",
                    DrugClass.VASOPRESSOR,
                    3,
                    10,
                    hour,
                    List.of(),
                    null,
                    "02000000000022"),
                drug(
                    "fentanyl",
                    DrugClass.OPIOID,
                    0.05,
                    2,
                    hour,
                    List.of(),
                    ControlledDrug.ofMicrograms("fentanyl", "100"),
                    "02000000000039"),
                drug(
                    "bupivacaine",
                    DrugClass.LOCAL_ANAESTHETIC,
                    5,
                    20,
                    hour,
                    List.of("block"),
                    null,
                    "02000000000046")),
            List.of(new PackageCheck.Recall("02000000000015", "BAD1")),
            null);
    return new MorningPlan(
        plain.id(),
        settings,
        plain.rooms(),
        plain.cases(),
        plain.people(),
        plain.units(),
        plain.places(),
        plain.sheets(),
        plain.beginsAt());
  }

  private static ApprovedDrug drug(
      String name,
      DrugClass drugClass,
      double mgPerMl,
      double ml,
      UseLimit limit,
      List<String> cases,
      ControlledDrug controlled,
      String product) {
    return new ApprovedDrug(
        name,
        drugClass,
        new Concentration(mgPerMl),
        new Volume(ml),
        limit,
        cases,
        controlled,
        List.of(product));
  }

  public static CasePlan casePlan(CaseId id, RoomId room, ComposedSheet sheet) {
    return new CasePlan(
        id,
        room,
        BOOKED,
        Private.of("hernia"),
        "general",
        "general",
        List.of(),
        null,
        sheet.hash());
  }

  public static ComposedSheet sheet(String hash, List<SheetItem> items) {
    return new ComposedSheet(hash, List.of(hash + " 1"), items);
  }

  public static EvidenceRule number(
      String unit, double least, double most, Double low, Double high, String undo) {
    return new EvidenceRule(
        EvidenceRule.Kind.NUMBER, unit, least, most, low, high, List.of(), false, undo);
  }

  public static EvidenceRule kind(EvidenceRule.Kind kind, boolean witness, String... choices) {
    return new EvidenceRule(kind, null, null, null, null, null, List.of(choices), witness, null);
  }

  /** An item with two minutes of an anaesthetist's work. */
  public static SheetItem item(
      String key, Belongs belongs, Step gates, EvidenceRule evidence, Integer life) {
    return make(key, belongs, gates, null, false, evidence, life, List.of(), List.of());
  }

  private static SheetItem make(
      String key,
      Belongs belongs,
      Step gates,
      Step marks,
      boolean core,
      EvidenceRule evidence,
      Integer life,
      List<String> after,
      List<Uses> uses) {
    String section = key.substring(0, key.indexOf('.'));
    return new SheetItem(
        key,
        Section.valueOf(section.toUpperCase(java.util.Locale.ROOT)),
        belongs,
        key.replace('.', ' '),
        section,
        marks != null ? List.of() : List.of(List.of(Role.ANAESTHETIST)),
        new Hands(2, 4),
        null,
        null,
        after,
        gates,
        marks,
        core,
        evidence,
        life == null ? null : new Life(life, null, "invented", null),
        null,
        uses,
        null,
        null,
        List.of());
  }

  private static List<SheetItem> plainItems() {
    EvidenceRule touch = EvidenceRule.TOUCHED;
    EvidenceRule time = kind(EvidenceRule.Kind.TIME, false);
    return List.of(
        make(
            "machine.bag",
            Belongs.ROOM,
            Step.INDUCTION,
            null,
            true,
            touch,
            null,
            List.of(),
            List.of()),
        item(
            "machine.cylinder",
            Belongs.ROOM,
            Step.INDUCTION,
            number("bar", 0, 250, 50.0, null, "close the cylinder again"),
            24 * 60),
        item(
            "machine.absorbent",
            Belongs.ROOM,
            Step.INDUCTION,
            kind(EvidenceRule.Kind.CHOICE, false, "fine", "changed", "!spent"),
            null),
        item("machine.alarms", Belongs.ROOM, Step.INDUCTION, touch, 15),
        item("suction.strong", Belongs.ROOM, Step.INDUCTION, touch, null),
        item("monitors.placed", Belongs.ROOM, Step.INDUCTION, touch, null),
        item("airway.tube", Belongs.CASE, Step.INDUCTION, touch, null),
        item("airway.planb", Belongs.CASE, Step.INDUCTION, touch, null),
        item("drugs.drawn", Belongs.CASE, Step.INDUCTION, touch, 60),
        item(
            "drugs.controlled",
            Belongs.CASE,
            Step.INDUCTION,
            kind(EvidenceRule.Kind.TOUCH, true),
            null),
        item("special.warming", Belongs.CASE, null, touch, null),
        item("room.cleaned", Belongs.ROOM, Step.WHEELS_IN, touch, null),
        item("patient.identity", Belongs.CASE, Step.SENT_FOR, touch, null),
        item("surgeon.seen", Belongs.CASE, Step.INDUCTION, time, null),
        item("team.brief", Belongs.CASE, Step.SENT_FOR, touch, null),
        make(
            "start.wheels-in",
            Belongs.CASE,
            null,
            Step.WHEELS_IN,
            false,
            time,
            null,
            List.of(),
            List.of()),
        item("start.check", Belongs.CASE, Step.INDUCTION, touch, 5));
  }

  private static List<SheetItem> blockItems() {
    List<SheetItem> items = new java.util.ArrayList<>(plainItems());
    items.add(
        make(
            "special.ultrasound",
            Belongs.CASE,
            Step.INDUCTION,
            null,
            false,
            kind(EvidenceRule.Kind.SCAN, false),
            null,
            List.of(),
            List.of(new Uses("ultrasound", "special.block"))));
    items.add(
        make(
            "special.block",
            Belongs.CASE,
            Step.INDUCTION,
            null,
            false,
            EvidenceRule.TOUCHED,
            null,
            List.of("special.ultrasound"),
            List.of()));
    return items;
  }
}
