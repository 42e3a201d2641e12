package sunup.http;

import static org.assertj.core.api.Assertions.assertThat;

import io.vertx.core.http.HttpMethod;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.EnumMap;
import java.util.EnumSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeSet;
import java.util.function.Predicate;
import java.util.stream.Collectors;
import org.junit.jupiter.api.Test;
import sunup.access.KeyHolder;
import sunup.board.CaseId;
import sunup.board.CasePlan;
import sunup.board.Command;
import sunup.board.CommandId;
import sunup.board.CommandKind;
import sunup.board.CountKind;
import sunup.board.DelayReason;
import sunup.board.Evidence;
import sunup.board.ItemRef;
import sunup.board.MorningId;
import sunup.board.MorningPlan;
import sunup.board.Move;
import sunup.board.MoveAnswer;
import sunup.board.PersonId;
import sunup.board.PersonPlan;
import sunup.board.PlaceId;
import sunup.board.Private;
import sunup.board.Rights;
import sunup.board.Role;
import sunup.board.RoomId;
import sunup.board.RoomUse;
import sunup.board.Section;
import sunup.board.Step;
import sunup.board.SuiteId;
import sunup.board.UnitId;
import sunup.intake.SiteFile;
import sunup.sheets.ComposedSheet;
import sunup.wire.Audience;
import sunup.wire.ClientMessage;
import sunup.wire.Part;
import sunup.wire.ServerMessage;

/** The one table of rights, walked whole over real sockets by people who signed on. */
class RightsWalkTest extends PairedBoard {
  private static final CommandKind[] KINDS = CommandKind.values();
  private static final String ROLES_PIN = "739164";
  private static final RoomId ROOM = new RoomId("1");
  private static final CaseId CASE = new CaseId("C1");
  private static final PersonId PERSON = new PersonId("A1");
  private static final ItemRef ITEM = ItemRef.of(ROOM, "machine.bag");
  private static final UnitId UNIT = new UnitId("ultrasound-1");

  /** Nothing is planned, so that whatever a role may is refused for that and changes nothing. */
  private static List<Command> oneOfEach() {
    Private said = Private.of("said");
    CasePlan plan = new CasePlan(CASE, ROOM, 0, null, null, "general", List.of(), null, null);
    ComposedSheet sheet = new ComposedSheet("h", List.of(), List.of());
    MorningPlan elsewhere =
        new MorningPlan(
            new MorningId(new SuiteId("main"), LocalDate.of(2020, 1, 1)),
            SiteFile.standard().settings(),
            List.of(),
            List.of(),
            List.of(),
            List.of(),
            List.of(),
            List.of(),
            0);
    return List.of(
        new Command.Plan(elsewhere),
        new Command.OpenMorning(),
        new Command.CloseMorning(),
        new Command.AddCase(plan, sheet),
        new Command.ChangeCase(plan, sheet),
        new Command.SwapCases(CASE, new CaseId("C2")),
        new Command.ConfirmSwap(ROOM),
        new Command.CancelCase(CASE, said),
        new Command.AgreeLater(CASE, 1L),
        new Command.SayRoom(ROOM, RoomUse.CLEANING, null),
        new Command.AddPerson(new PersonPlan(PERSON, Role.ANAESTHETIST, ROOM, List.of(), 0)),
        new Command.Arrive(PERSON, ROOM),
        new Command.ExpectPerson(PERSON, 1, said),
        new Command.Join(PERSON, ROOM),
        new Command.Leave(PERSON, null),
        new Command.HandOver(PERSON, new PersonId("A2"), ROOM),
        new Command.Begin(ITEM, null),
        new Command.Good(ITEM, new Evidence.Touch(), null, null),
        new Command.Sweep(ROOM, Section.MACHINE, List.of(), null),
        new Command.Fault(ITEM, said),
        new Command.TakeFault(ITEM, null),
        new Command.Mend(ITEM),
        new Command.Reopen(ITEM, said),
        new Command.LeaveOut(ITEM, said),
        new Command.ExpectItem(ITEM, 1, said),
        new Command.Undo(new CommandId("c1")),
        new Command.Claim(UNIT, ROOM),
        new Command.Release(UNIT),
        new Command.PromiseUnit(UNIT, ROOM),
        new Command.PlaceOpens(new PlaceId("pharmacy"), 1),
        new Command.TakeHoldup(ROOM, "item:drugs", said, null),
        new Command.AskHelp(ROOM, said),
        new Command.AnswerHelp(ROOM, null),
        new Command.AskMove(new Move.SendTo(PERSON, ROOM), null, PERSON),
        new Command.AnswerMove("send.A1.1", MoveAnswer.ACCEPT),
        new Command.DoneMove("send.A1.1"),
        new Command.WithdrawMove("send.A1.1"),
        new Command.ReportReady(ROOM),
        new Command.Reach(CASE, Step.SENT_FOR),
        new Command.GiveReason(CASE, DelayReason.STAFF, said),
        new Command.AgreeReason(CASE),
        new Command.DisputeReason(CASE, DelayReason.PATIENT, said),
        new Command.AddNote(ROOM, said),
        new Command.DrawDrugs(CASE, List.of("propofol"), null, null, null, null),
        new Command.DiscardDrug(CASE, 0, null),
        new Command.CountDrug(CASE, CountKind.DRAWN, "fentanyl", 1, null, null, null, null, null),
        new Command.SetUpNext(ROOM, CASE, null));
  }

  @Test
  void shouldAllowEachRoleOverTheSocketExactlyWhatTheTableSays() throws Exception {
    assertThat(oneOfEach().stream().map(CommandKind::of)).containsExactly(CommandKind.values());
    Role[] all = EnumSet.complementOf(EnumSet.of(Role.DISPLAY)).toArray(Role[]::new);
    person("R1", ROLES_PIN, all);
    KeyHolder other = paired("desk", null);
    KeyHolder station = paired("station", "1");
    KeyHolder wall = paired("wall", null);
    Map<Role, Set<CommandKind>> may = new EnumMap<>(Role.class);
    Set<Role> atDesk = EnumSet.of(Role.DESK, Role.ADMIN, Role.MANAGER);

    may.put(Role.DISPLAY, allowed(wall, "wall", Role.DISPLAY));
    for (Role role : all) {
      may.put(
          role,
          atDesk.contains(role) ? allowed(other, "desk", role) : allowed(station, "station", role));
    }

    for (Role role : Role.values()) {
      Set<CommandKind> table = EnumSet.noneOf(CommandKind.class);
      for (CommandKind kind : CommandKind.values()) {
        if (Rights.who(kind).contains(role)) {
          table.add(kind);
        }
      }
      assertThat(may.get(role)).as(role.word()).isEqualTo(table);
    }
  }

  @Test
  void shouldAnswerOverHttpEachRoleAtItsPageWhatItMayAskAndNothingElse() throws Exception {
    person("M1", ROLES_PIN, Role.MANAGER, Role.SUPERVISOR);
    person("S1", ROLES_PIN, Role.SCRUB);
    KeyHolder station = paired("station", "1");
    assertThat(station.signOn("S1", ROLES_PIN).done()).isTrue();
    String wall = paired("wall", null).pass();
    String atDesk = desk.pass();
    String atStation = station.pass();

    assertThat(refused(atDesk)).isEmpty();
    assertThat(refused(wall)).isEqualTo(routes(path -> true));
    // The review's progress tells how many mornings there are, and is of no suite.
    assertThat(refused(atStation))
        .isEqualTo(
            routes(path -> path.matches(".*/api/(review|intake|try|sheets).*(?<!/archive)")));
    assertThat(desk.signOn("M1", ROLES_PIN, Role.MANAGER, null).done()).isTrue();
    assertThat(refused(atDesk))
        .isEqualTo(routes(path -> !path.matches("GET /api/(review/.*|site|suites)")));
    assertThat(status("/api/review/measures?suite=main", atDesk)).isEqualTo(200);
    // Nothing is kept yet: too few to give rows of, and not forbidden.
    assertThat(status("/api/review/rows", atDesk)).isEqualTo(422);
    assertThat(desk.signOn("M1", ROLES_PIN, Role.SUPERVISOR, null).done()).isTrue();
    assertThat(status("/api/readings", atDesk)).isNotEqualTo(403);
  }

  private Set<String> routes(Predicate<String> wanted) {
    return server.documentedRoutes().stream()
        .filter(route -> route.contains(" /api/") && wanted.test(route))
        .collect(Collectors.toCollection(TreeSet::new));
  }

  /** What is answered as not allowed before anything else is looked at. */
  private Set<String> refused(String pass) throws Exception {
    Set<String> refused = new TreeSet<>();
    for (String route : routes(path -> true)) {
      String[] words = route.split(" ", -1);
      if (status(HttpMethod.valueOf(words[0]), words[1], pass) == 403) {
        refused.add(route);
      }
    }
    return refused;
  }

  @Test
  void shouldTellAManagerOfTheMorningNoMoreThanAWallAndNoNames() throws Exception {
    person("M1", ROLES_PIN, Role.MANAGER, Role.DESK);
    planned();
    desk.socket().await(ServerMessage.Frame.class, f -> f.set().stream().anyMatch(this::names));

    assertThat(desk.signOn("M1", ROLES_PIN, Role.MANAGER, null).done()).isTrue();

    ServerMessage.View told =
        desk.socket().await(ServerMessage.View.class, v -> v.audience() == Audience.WALL);
    assertThat(told.parts()).noneMatch(this::names).allMatch(p -> p.audience() == Audience.WALL);
    // Also on a new socket that says where it was.
    KeyHolder again = screen().turn(desk.key()).open("desk");
    assertThat(again.socket().await(ServerMessage.View.class, v -> true).audience())
        .isEqualTo(Audience.WALL);

    assertThat(desk.signOn("M1", ROLES_PIN, Role.DESK, null).done()).isTrue();
    told = desk.socket().await(ServerMessage.View.class, v -> v.audience() == Audience.DESK);
    assertThat(told.parts()).anyMatch(this::names);
  }

  @Test
  void shouldLetATraineeSayReadyOnlyWhileSomebodyAnswersForTheRoom() throws Exception {
    planned();
    PersonId trainee = new PersonId("trainee-9");
    assertThat(say(desk, added(trainee, Role.TRAINEE))).isNull();
    person("R9", ROLES_PIN, Role.TRAINEE);
    KeyHolder station = paired("station", "1");
    assertThat(station.signOn("R9", ROLES_PIN, null, trainee).done()).isTrue();
    String session = station.session();
    assertThat(ready(station, session)).isNull();

    for (Part part : station.socket().parts().values()) {
      if (part instanceof Part.PersonPart one
          && EnumSet.of(Role.SUPERVISOR, Role.ANAESTHETIST).contains(one.role())) {
        assertThat(say(desk, new Command.Leave(new PersonId(one.person()), null))).isNull();
      }
    }
    assertThat(ready(station, session)).isEqualTo("not-allowed");

    assertThat(say(desk, added(new PersonId("supervisor-9"), Role.SUPERVISOR))).isNull();
    assertThat(ready(station, session)).isNull();
  }

  private static Command added(PersonId who, Role role) {
    long now = System.currentTimeMillis();
    return new Command.AddPerson(new PersonPlan(who, role, ROOM, List.of(), now));
  }

  private static String ready(KeyHolder at, String session) throws Exception {
    CommandId id = new CommandId("ready-" + System.nanoTime());
    long now = System.currentTimeMillis();
    at.socket()
        .send(
            new ClientMessage.Send(
                id, null, null, now, 0, null, session, null, new Command.ReportReady(ROOM)));
    return at.socket().await(ServerMessage.Answer.class, a -> a.id().equals(id)).code();
  }

  private boolean names(Part part) {
    return part instanceof Part.PersonPart;
  }

  /** What is not refused as not allowed, on a socket of its own because of its rate. */
  private Set<CommandKind> allowed(KeyHolder screen, String page, Role role) throws Exception {
    KeyHolder at = new KeyHolder(vertx, server.port()).turn(screen.key()).open(page);
    at.paired();
    if (role != Role.DISPLAY) {
      ServerMessage.Told told = at.signOn("R1", ROLES_PIN, role, null);
      assertThat(told.done()).as(told.words()).isTrue();
    }
    long now = System.currentTimeMillis();
    List<CommandId> ids = new ArrayList<>();
    for (Command command : oneOfEach()) {
      CommandId id = new CommandId(role.word() + "." + ids.size());
      ids.add(id);
      at.socket().send(new ClientMessage.Send(id, null, 0L, now, 0, null, command));
    }
    Set<CommandKind> may = EnumSet.noneOf(CommandKind.class);
    for (int i = 0; i < ids.size(); i++) {
      CommandId id = ids.get(i);
      ServerMessage.Answer answer =
          at.socket()
              .await(
                  ServerMessage.Answer.class,
                  a -> a.id().equals(id) && !a.status().equals("later"));
      if (!"not-allowed".equals(answer.code())) {
        may.add(KINDS[i]);
      }
    }
    at.close();
    return may;
  }
}
