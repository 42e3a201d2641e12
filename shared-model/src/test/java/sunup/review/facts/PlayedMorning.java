package sunup.review.facts;

import java.time.LocalDate;
import java.time.LocalTime;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.SplittableRandom;
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
import sunup.board.Placed;
import sunup.board.Private;
import sunup.board.Recorded;
import sunup.board.Role;
import sunup.board.RoomId;
import sunup.board.Section;
import sunup.board.SiteSettings;
import sunup.board.Step;
import sunup.board.SuiteId;
import sunup.sheets.BadSheet;
import sunup.sheets.ComposedSheet;
import sunup.sheets.EvidenceRule;
import sunup.sheets.Sheets;

/** An invented morning on the standard sheet, played by commands; keeps its journal. */
public final class PlayedMorning {
  public static final ZoneId ZONE = ZoneId.of("Europe/Lisbon");
  private final LocalDate date;
  private final List<Recorded> journal = new ArrayList<>();
  private Morning morning = Morning.NONE;
  private int commands;

  /** Rooms 1 to n, start event induction, no grace, all booked 07:30; opened. */
  public PlayedMorning(int rooms, LocalDate date) {
    this.date = date;
    ComposedSheet sheet;
    try {
      sheet = Sheets.standard().compose("general", List.of());
    } catch (BadSheet e) {
      throw new IllegalStateException(e);
    }
    List<RoomId> ids = new ArrayList<>();
    List<CasePlan> cases = new ArrayList<>();
    List<PersonPlan> people = new ArrayList<>();
    for (int i = 1; i <= rooms; i++) {
      RoomId room = new RoomId("" + i);
      ids.add(room);
      cases.add(
          new CasePlan(
              new CaseId("C" + i),
              room,
              at("07:30"),
              Private.of("hernia of the left side"),
              "general surgery",
              "general",
              List.of(),
              new PersonId("Surgeon" + i),
              sheet.hash()));
      people.add(person("Anna" + i, Role.ANAESTHETIST, room));
      people.add(person("Nora" + i, Role.CIRCULATING, room));
      people.add(person("Rita" + i, Role.SCRUB, room));
      people.add(person("Surgeon" + i, Role.SURGEON, room));
    }
    people.add(person("Hugo", Role.HOLDING, null));
    people.add(person("Tom", Role.TECHNICIAN, null));
    MorningPlan plan =
        new MorningPlan(
            new MorningId(new SuiteId("main"), date),
            new SiteSettings(
                "Kestrel Bay", "Main suite", ZONE.getId(), Step.INDUCTION, 0, 0.2, true),
            ids,
            cases,
            people,
            List.of(),
            List.of(),
            List.of(sheet),
            at("06:30"));
    desk("06:00", new Command.Plan(plan));
    desk("06:01", new Command.OpenMorning());
  }

  private PersonPlan person(String id, Role role, RoomId room) {
    return new PersonPlan(new PersonId(id), role, room, List.of(), at("06:30"));
  }

  public long at(String clock) {
    return date.atTime(LocalTime.parse(clock)).atZone(ZONE).toInstant().toEpochMilli();
  }

  public List<Recorded> journal() {
    return List.copyOf(journal);
  }

  public Morning morning() {
    return morning;
  }

  public PlayedMorning desk(String clock, Command command) {
    return give(at(clock), at(clock), desk(), command, null);
  }

  /** A decision that has seen the newest revision. */
  public PlayedMorning decides(String clock, Command command) {
    return give(at(clock), at(clock), desk(), command, morning.seq());
  }

  private static Actor desk() {
    return new Actor(Role.DESK, null, "desk");
  }

  public static Actor station(int room) {
    return new Actor(Role.ANAESTHETIST, new PersonId("Anna" + room), "station-" + room);
  }

  public PlayedMorning station(String clock, int room, Command command) {
    return give(at(clock), at(clock), station(room), command, null);
  }

  /** Touched at one moment and recorded at another. */
  public PlayedMorning give(long touched, long recorded, Actor actor, Command command, Long seen) {
    CommandId id = new CommandId("c" + commands++);
    Outcome outcome = Board.decide(morning, new Order(id, command, actor, seen, touched, recorded));
    if (outcome instanceof Outcome.Refused refused) {
      throw new IllegalStateException(command + ": " + refused.code().say(refused.detail()));
    }
    for (Recorded event : ((Outcome.Accepted) outcome).events()) {
      morning = Board.apply(morning, morning.seq() + 1, event);
      journal.add(event);
    }
    return this;
  }

  /** The one who reports an item of this track, from his or her own screen. */
  public static Actor reporter(Placed placed, int room) {
    Section section = placed.sheet().section();
    return switch (section) {
      case PATIENT, SURGEON -> new Actor(Role.HOLDING, new PersonId("Hugo"), "holding");
      case INSTRUMENTS -> new Actor(Role.SCRUB, new PersonId("Rita" + room), "station-" + room);
      case ROOM, TEAM ->
          new Actor(Role.CIRCULATING, new PersonId("Nora" + room), "station-" + room);
      default -> station(room);
    };
  }

  /** The command that makes an item good. */
  public static Command.Good good(Placed placed, PersonId by, int room) {
    EvidenceRule asks = placed.sheet().evidence();
    Evidence evidence =
        switch (asks.kind()) {
          case NUMBER ->
              new Evidence.Reading(
                  asks.low() != null ? asks.low() : asks.least(), asks.unit(), true);
          case CHOICE ->
              new Evidence.Choice(
                  asks.choices().stream().filter(c -> !c.startsWith("!")).findFirst().orElse(""));
          case SCAN, TOUCH, TIME -> new Evidence.Touch();
        };
    PersonId witness = asks.witness() ? new PersonId("Nora" + room) : null;
    return new Command.Good(placed.ref(), evidence, by, witness);
  }

  private record Later(long touched, long recorded, Actor actor, Command command) {}

  /**
   * A random morning, played to its end and closed: work in sheet order with begins that are often
   * not touched, late entries, words at once, people who leave; starts from early to very late.
   */
  public static PlayedMorning random(int rooms, LocalDate date, long seed) {
    PlayedMorning played = new PlayedMorning(rooms, date);
    SplittableRandom random = new SplittableRandom(seed);
    List<Later> later = new ArrayList<>();
    for (int room = 1; room <= rooms; room++) {
      played.plan(room, random, later);
    }
    later.sort(Comparator.comparingLong(Later::recorded));
    for (Later one : later) {
      played.give(one.touched(), one.recorded(), one.actor(), one.command(), null);
    }
    for (int room = 1; room <= rooms; room += 2) {
      played.station("12:00", room, new Command.Leave(new PersonId("Anna" + room), null));
    }
    return played.desk("13:00", new Command.CloseMorning());
  }

  private void plan(int room, SplittableRandom random, List<Later> later) {
    RoomId id = new RoomId("" + room);
    long begins = at("06:30");
    long mine = begins + minutes(random, 15);
    later.add(
        new Later(mine, mine, station(room), new Command.Arrive(new PersonId("Anna" + room), id)));
    long last = mine;
    for (Placed placed : morning.itemsOf(id)) {
      if (placed.sheet().section() == Section.START) {
        continue;
      }
      Actor actor = reporter(placed, room);
      boolean own = actor.equals(station(room));
      long from = own ? mine : begins + minutes(random, 55);
      long good = from + minutes(random, 5);
      mine = own ? good : mine;
      if (random.nextInt(10) < 3) {
        later.add(new Later(from, from, actor, new Command.Begin(placed.ref(), actor.person())));
      }
      long recorded = good + (random.nextInt(10) == 0 ? minutes(random, 20) : 0);
      later.add(new Later(good, recorded, actor, good(placed, actor.person(), room)));
      last = Math.max(last, good);
    }
    long induction = Math.max(last, at("07:20")) + minutes(random, 25);
    long in = induction - minutes(random, 10);
    long told = induction + (random.nextInt(5) == 0 ? minutes(random, 20) : 0);
    CaseId caseId = new CaseId("C" + room);
    later.add(new Later(in, in, station(room), new Command.Reach(caseId, Step.WHEELS_IN)));
    later.add(new Later(induction, told, station(room), new Command.Reach(caseId, Step.INDUCTION)));
  }

  private static long minutes(SplittableRandom random, int most) {
    return (long) (random.nextDouble() * most * 60_000);
  }

  /** An item of a room or of its case. */
  public ItemRef ref(int room, String key) {
    return morning.itemsOf(new RoomId("" + room)).stream()
        .filter(p -> p.sheet().key().equals(key))
        .findFirst()
        .orElseThrow()
        .ref();
  }
}
