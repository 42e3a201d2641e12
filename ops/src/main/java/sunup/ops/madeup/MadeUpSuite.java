package sunup.ops.madeup;

import java.time.LocalDate;
import java.time.LocalTime;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import sunup.board.Actor;
import sunup.board.Board;
import sunup.board.CaseId;
import sunup.board.CasePlan;
import sunup.board.Command;
import sunup.board.CommandId;
import sunup.board.Morning;
import sunup.board.MorningId;
import sunup.board.MorningPlan;
import sunup.board.Order;
import sunup.board.Outcome;
import sunup.board.PersonId;
import sunup.board.PersonPlan;
import sunup.board.PlaceId;
import sunup.board.PlacePlan;
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
import sunup.sheets.Sheets;

/**
 * An invented suite of any size on the standard sheets: every fourth room wants the one ultrasound
 * machine, technicians, porters and holding nurses are shared by all, half of the rooms have gone
 * through machine and suction.
 */
public final class MadeUpSuite {
  private static final LocalDate DATE = LocalDate.of(2026, 1, 5);

  private static final int WARMING_ROOMS = 12;

  private MadeUpSuite() {}

  /** The moment of a local time of its morning. */
  public static long at(String clock) {
    return DATE.atTime(LocalTime.parse(clock)).toInstant(ZoneOffset.UTC).toEpochMilli();
  }

  /** A morning that a board forecasts at its start, until there is a real one. */
  public static Morning warming() throws BadSheet {
    return morning(WARMING_ROOMS);
  }

  /** The moment that it stands at. */
  public static long now() {
    return at("07:00");
  }

  /** One of so many rooms, half of which have begun. */
  public static Morning morning(int rooms) throws BadSheet {
    Morning morning = give(Morning.NONE, "06:00", desk(), new Command.Plan(plan(rooms)));
    morning = give(morning, "06:01", desk(), new Command.OpenMorning());
    for (int i = 1; i <= rooms; i += 2) {
      RoomId room = new RoomId("" + i);
      PersonId person = new PersonId("A" + i);
      Actor actor = new Actor(Role.ANAESTHETIST, person, "station-" + i);
      morning = give(morning, "06:32", actor, new Command.Arrive(person, room));
      for (Section section : List.of(Section.SUCTION, Section.MONITORS)) {
        morning =
            give(morning, "06:50", actor, new Command.Sweep(room, section, List.of(), person));
      }
    }
    return morning;
  }

  private static Actor desk() {
    return new Actor(Role.DESK, null, "desk");
  }

  private static MorningPlan plan(int n) throws BadSheet {
    List<RoomId> rooms = new ArrayList<>();
    List<CasePlan> cases = new ArrayList<>();
    List<PersonPlan> people = new ArrayList<>();
    Map<String, ComposedSheet> sheets = new LinkedHashMap<>();
    for (int i = 1; i <= n; i++) {
      RoomId room = new RoomId("" + i);
      List<String> options = i % 4 == 0 ? List.of("block") : List.of();
      ComposedSheet sheet = Sheets.standard().compose("general", options);
      sheets.put(sheet.hash(), sheet);
      rooms.add(room);
      cases.add(
          new CasePlan(
              new CaseId("C" + i),
              room,
              at("07:30"),
              null,
              null,
              "general",
              options,
              new PersonId("S" + i),
              sheet.hash()));
      people.add(person("A" + i, Role.ANAESTHETIST, room));
      people.add(person("N" + i, Role.CIRCULATING, room));
      people.add(person("R" + i, Role.SCRUB, room));
      people.add(person("S" + i, Role.SURGEON, room));
    }
    for (int i = 1; i <= Math.max(2, n / 4); i++) {
      people.add(person("T" + i, Role.TECHNICIAN, null));
      people.add(person("H" + i, Role.HOLDING, null));
      people.add(person("P" + i, Role.PORTER, null));
    }
    return new MorningPlan(
        new MorningId(new SuiteId("made-up"), DATE),
        new SiteSettings("Kestrel Bay", "Made-up suite", "UTC", Step.INDUCTION, 0, 0.2, true),
        rooms,
        cases,
        people,
        List.of(new UnitPlan(new UnitId("ultrasound-1"), "ultrasound", "ultrasound")),
        List.of(new PlacePlan(new PlaceId("pharmacy"), "pharmacy", at("07:05"), 0)),
        List.copyOf(sheets.values()),
        at("06:30"));
  }

  private static PersonPlan person(String id, Role role, RoomId room) {
    return new PersonPlan(new PersonId(id), role, room, List.of(), at("06:30"));
  }

  private static Morning give(Morning morning, String clock, Actor actor, Command command) {
    CommandId id = new CommandId("made-up-" + morning.seq() + "-" + clock.replace(":", ""));
    Outcome outcome =
        Board.decide(morning, new Order(id, command, actor, null, at(clock), at(clock)));
    if (outcome instanceof Outcome.Refused refused) {
      throw new IllegalStateException(refused.code().say(refused.detail()));
    }
    Morning after = morning;
    for (Recorded event : ((Outcome.Accepted) outcome).events()) {
      after = Board.apply(after, after.seq() + 1, event);
    }
    return after;
  }
}
