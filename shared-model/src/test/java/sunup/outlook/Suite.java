package sunup.outlook;

import java.time.LocalDate;
import java.time.LocalTime;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.function.IntFunction;
import java.util.function.Predicate;
import java.util.function.UnaryOperator;
import sunup.board.Actor;
import sunup.board.Board;
import sunup.board.CaseId;
import sunup.board.CasePlan;
import sunup.board.Command;
import sunup.board.CommandId;
import sunup.board.Evidence;
import sunup.board.ItemRef;
import sunup.board.Morning;
import sunup.board.MorningId;
import sunup.board.MorningPlan;
import sunup.board.Order;
import sunup.board.Outcome;
import sunup.board.PersonId;
import sunup.board.PersonPlan;
import sunup.board.PlaceId;
import sunup.board.PlacePlan;
import sunup.board.Placed;
import sunup.board.Private;
import sunup.board.Recorded;
import sunup.board.Role;
import sunup.board.RoomId;
import sunup.board.Section;
import sunup.board.SiteSettings;
import sunup.board.Step;
import sunup.board.SuiteId;
import sunup.board.UnitId;
import sunup.board.UnitPlan;
import sunup.sheets.BadSheet;
import sunup.sheets.ComposedSheet;
import sunup.sheets.EvidenceRule;
import sunup.sheets.SheetItem;
import sunup.sheets.Sheets;

/** An invented suite on the standard sheets, played by commands. */
public final class Suite {
  public static final ZoneId ZONE = ZoneId.of("Europe/Lisbon");
  private static final LocalDate DATE = LocalDate.of(2026, 11, 25);

  private Morning morning = Morning.NONE;
  private int commands;

  /** Rooms 1 to n, all booked 07:30; every third asks for a block. */
  public Suite(int n, String pharmacyOpens) {
    this(n, pharmacyOpens, true);
  }

  /** The same, not opened yet. */
  public static Suite draft(int n, String pharmacyOpens) {
    return new Suite(n, pharmacyOpens, false);
  }

  /** One room with a case of this technique and options, or null if they don't go together. */
  static Suite ofOne(String technique, List<String> options) {
    try {
      Sheets.standard().compose(technique, options);
    } catch (BadSheet e) {
      return null;
    }
    return new Suite(1, "07:00", true, technique, i -> options, sheet -> sheet);
  }

  /** One room whose sheet the site has changed. */
  static Suite changed(UnaryOperator<ComposedSheet> change) {
    return new Suite(1, "06:30", true, "general", i -> List.of(), change);
  }

  /** Rooms 1 to n with sheets that the site has changed; every third asks for a block. */
  static Suite changed(int n, UnaryOperator<ComposedSheet> change) {
    return new Suite(n, "06:30", true, "general", Suite::blocks, change);
  }

  /** The sheet with each item as it is made. */
  static ComposedSheet each(ComposedSheet sheet, UnaryOperator<SheetItem> made) {
    return new ComposedSheet(sheet.hash(), sheet.from(), sheet.items().stream().map(made).toList());
  }

  private static List<String> blocks(int room) {
    return room % 3 == 0 ? List.of("block") : List.of();
  }

  private Suite(int n, String pharmacyOpens, boolean open) {
    this(n, pharmacyOpens, open, "general", Suite::blocks, sheet -> sheet);
  }

  private Suite(
      int n,
      String pharmacyOpens,
      boolean open,
      String technique,
      IntFunction<List<String>> optionsOf,
      UnaryOperator<ComposedSheet> change) {
    List<RoomId> rooms = new ArrayList<>();
    List<CasePlan> cases = new ArrayList<>();
    List<PersonPlan> people = new ArrayList<>();
    Map<String, ComposedSheet> sheets = new LinkedHashMap<>();
    for (int i = 1; i <= n; i++) {
      RoomId room = new RoomId("" + i);
      List<String> options = optionsOf.apply(i);
      ComposedSheet sheet = change.apply(compose(technique, options));
      sheets.put(sheet.hash(), sheet);
      rooms.add(room);
      cases.add(
          new CasePlan(
              new CaseId("C" + i),
              room,
              at("07:30"),
              Private.of("hernia of the left side"),
              "general",
              technique,
              options,
              new PersonId("S" + i),
              sheet.hash()));
      people.add(person("A" + i, Role.ANAESTHETIST, room));
      people.add(person("N" + i, Role.CIRCULATING, room));
      people.add(person("R" + i, Role.SCRUB, room));
      people.add(person("S" + i, Role.SURGEON, room));
      people.add(person("H" + i, Role.HOLDING, null));
      people.add(person("P" + i, Role.PORTER, null));
    }
    people.add(person("T1", Role.TECHNICIAN, null));
    MorningPlan plan =
        new MorningPlan(
            new MorningId(new SuiteId("main"), DATE),
            new SiteSettings(
                "Kestrel Bay", "Main suite", ZONE.getId(), Step.INDUCTION, 0, 0.2, true),
            rooms,
            cases,
            people,
            List.of(new UnitPlan(new UnitId("ultrasound-1"), "ultrasound", "ultrasound")),
            List.of(new PlacePlan(new PlaceId("pharmacy"), "pharmacy", at(pharmacyOpens), 0)),
            List.copyOf(sheets.values()),
            at("06:30"));
    desk("06:00", new Command.Plan(plan));
    if (open) {
      desk("06:01", new Command.OpenMorning());
    }
  }

  private static ComposedSheet compose(String technique, List<String> options) {
    try {
      return Sheets.standard().compose(technique, options);
    } catch (BadSheet e) {
      throw new IllegalStateException(e);
    }
  }

  private static PersonPlan person(String id, Role role, RoomId room) {
    return new PersonPlan(new PersonId(id), role, room, List.of(), at("06:30"));
  }

  public static long at(String clock) {
    return DATE.atTime(LocalTime.parse(clock)).atZone(ZONE).toInstant().toEpochMilli();
  }

  public Morning morning() {
    return morning;
  }

  public Suite desk(String clock, Command command) {
    return give(clock, new Actor(Role.DESK, null, "desk"), command);
  }

  Suite holding(String clock, Command command) {
    return give(clock, new Actor(Role.HOLDING, new PersonId("H1"), "holding"), command);
  }

  Suite station(String clock, int room, Command command) {
    return give(
        clock, new Actor(Role.ANAESTHETIST, new PersonId("A" + room), "station-" + room), command);
  }

  Suite nurse(String clock, int room, Command command) {
    return give(
        clock, new Actor(Role.CIRCULATING, new PersonId("N" + room), "station-" + room), command);
  }

  /** The same as a decision on what the station shows now. */
  Suite nurseDecides(String clock, int room, Command command) {
    Actor nurse = new Actor(Role.CIRCULATING, new PersonId("N" + room), "station-" + room);
    return give(clock, nurse, command, morning.seq());
  }

  /** The room's anaesthetist comes and does all set-up items of one section. */
  Suite does(String clock, int room, Section section) {
    PersonId by = new PersonId("A" + room);
    for (Placed placed : morning.itemsOf(new RoomId("" + room))) {
      if (placed.sheet().section() == section) {
        station(clock, room, good(placed, by));
      }
    }
    return this;
  }

  /** All that the room's case asks for is good, but for the steps of its start. */
  Suite everythingGood(String clock, int room) {
    return good(clock, room, key -> true);
  }

  /** The same of the items whose keys are wanted. */
  Suite good(String clock, int room, Predicate<String> wanted) {
    for (Placed placed : morning.itemsOf(new RoomId("" + room))) {
      if (placed.sheet().section() == Section.START || !wanted.test(placed.sheet().key())) {
        continue;
      }
      List<List<Role>> who = placed.sheet().who();
      List<Role> any = who.isEmpty() ? List.of(Role.HOLDING) : who.get(0);
      boolean own = placed.sheet().section().isSetUp() && any.contains(Role.ANAESTHETIST);
      Role role = own ? Role.ANAESTHETIST : any.get(0);
      String letter =
          switch (role) {
            case ANAESTHETIST -> "A";
            case SCRUB -> "R";
            case SURGEON -> "S";
            case CIRCULATING -> "N";
            default -> "H";
          };
      PersonId person = new PersonId(letter + room);
      boolean holding = role == Role.HOLDING || role == Role.SURGEON || role == Role.SUPERVISOR;
      Actor actor =
          holding
              ? new Actor(Role.HOLDING, new PersonId("H" + room), "holding")
              : new Actor(role, person, "station-" + room);
      give(clock, actor, good(placed, actor.person()));
    }
    return this;
  }

  private static Command.Good good(Placed placed, PersonId by) {
    EvidenceRule asks = placed.sheet().evidence();
    Evidence evidence =
        switch (asks.kind()) {
          case NUMBER ->
              new Evidence.Reading(
                  asks.low() != null ? asks.low() : asks.least(), asks.unit(), true);
          case CHOICE ->
              new Evidence.Choice(
                  asks.choices().stream().filter(c -> !c.startsWith("!")).findFirst().orElse(""));
          case SCAN -> new Evidence.Scan(new UnitId("ultrasound-1"));
          case TOUCH, TIME -> new Evidence.Touch();
        };
    PersonId witness = asks.witness() ? new PersonId("N" + by.value().substring(1)) : null;
    return new Command.Good(placed.ref(), evidence, by, witness);
  }

  static ItemRef ofRoom(int room, String key) {
    return ItemRef.of(new RoomId("" + room), key);
  }

  static ItemRef ofCase(int room, String key) {
    return ItemRef.of(new CaseId("C" + room), key);
  }

  /** A decision of the desk on something that it saw at this revision. */
  public Suite desk(String clock, Command command, long seen) {
    return give(clock, new Actor(Role.DESK, null, "desk"), command, seen);
  }

  private Suite give(String clock, Actor actor, Command command) {
    return give(clock, actor, command, null);
  }

  private Suite give(String clock, Actor actor, Command command, Long seen) {
    CommandId id = new CommandId("c" + commands++);
    Outcome outcome =
        Board.decide(morning, new Order(id, command, actor, seen, at(clock), at(clock)));
    if (outcome instanceof Outcome.Refused refused) {
      throw new IllegalStateException(command + ": " + refused.code().say(refused.detail()));
    }
    for (Recorded event : ((Outcome.Accepted) outcome).events()) {
      morning = Board.apply(morning, morning.seq() + 1, event);
    }
    return this;
  }
}
