package sunup.suites;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.nio.charset.StandardCharsets;
import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import java.util.SplittableRandom;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import sunup.board.Actor;
import sunup.board.Command;
import sunup.board.CommandId;
import sunup.board.Morning;
import sunup.board.MorningId;
import sunup.board.PersonId;
import sunup.board.Private;
import sunup.board.RefusalCode;
import sunup.board.Role;
import sunup.board.RoomId;
import sunup.journal.Append;
import sunup.journal.Bytes;
import sunup.journal.Head;
import sunup.journal.Receipt;
import sunup.journal.TakenOver;
import sunup.simulated.Bug;
import sunup.simulated.Coverage;
import sunup.simulated.Disk;
import sunup.simulated.Faults;
import sunup.simulated.NoteTaking;
import sunup.simulated.ScriptedJournal;
import sunup.simulated.ScriptedJournal.Way;
import sunup.simulated.SimulatedClock;
import sunup.simulated.SimulatedJournal;
import sunup.simulated.SimulatedTime;

class SuiteActorTest {
  private static final MorningId MORNING = MorningId.parse("east/2026-11-30");
  private static final Actor DESK = new Actor(Role.DESK, null, "desk-1");

  private static final SplittableRandom RANDOM = new SplittableRandom(1);

  private final SimulatedTime time = new SimulatedTime();
  private final SimulatedTime.Loop loop = time.loop();
  private final SimulatedClock clock = new SimulatedClock(time, 0);
  private Disk disk = new Disk(Bug.NONE);
  private final List<Standpoint> told = new ArrayList<>();
  private ScriptedJournal journal;
  private Suites suites;
  private Owner owner;

  @BeforeEach
  void begin() {
    start();
    run(10);
  }

  private void start() {
    journal =
        new ScriptedJournal(
            new SimulatedJournal(disk, loop, loop, Faults.none(), Bug.NONE, new Coverage()));
    suites = new Suites(journal, new NoteTaking(), clock, loop, loop, SuiteActorTest::bytes);
    owner = suites.owner(MORNING);
    told.clear();
    Runnable unused = owner.watch(told::add);
  }

  static byte[] bytes(int count) {
    byte[] bytes = new byte[count];
    for (int at = 0; at < count; at++) {
      bytes[at] = (byte) RANDOM.nextInt();
    }
    return bytes;
  }

  private void run(long ms) {
    time.runUntil(time.now() + ms);
  }

  private static Command note(String text) {
    return new Command.AddNote(null, Private.of(text));
  }

  private List<Reply> submit(String id, Command command) {
    return submit(new Submission(new CommandId(id), command, DESK, null, clock.morningMs(), 0));
  }

  private List<Reply> submit(Submission submission) {
    List<Reply> replies = new ArrayList<>();
    owner.submit(submission, replies::add);
    run(1);
    return replies;
  }

  private Standpoint last() {
    return told.get(told.size() - 1);
  }

  private static List<String> notes(Morning state) {
    return state.notes().stream().map(note -> note.text().shown()).toList();
  }

  @Test
  void shouldTellAnEmptyMorningBeforeItsFirstEvent() {
    assertThat(last().state()).isEqualTo(Morning.NONE);
    assertThat(last().epoch()).isEqualTo(1);
    assertThat(last().readOnly()).isFalse();
  }

  @Test
  void shouldAnswerAndTellOnlyWhatIsDurable() {
    journal.appends(Way.HOLD);
    List<Reply> replies = submit("a", note("one"));
    run(700);
    assertThat(replies).isEmpty();
    assertThat(last().state().seq()).isZero();
    journal.release();
    run(1);
    assertThat(replies).containsExactly(new Reply.Done(1));
    assertThat(notes(last().state())).containsExactly("one");
  }

  @Test
  void shouldDecideOnWhatIsUnderWay() {
    journal.appends(Way.HOLD);
    submit("a", note("one"));
    List<Reply> undo = submit("u", new Command.Undo(new CommandId("a")));
    journal.release();
    run(1);
    assertThat(((Reply.Refused) undo.get(0)).words()).contains("there are 1 notes");
  }

  @Test
  void shouldCarryOutACommandOnceHoweverOftenItComes() {
    journal.appends(Way.HOLD);
    List<Reply> first = submit("a", note("one"));
    List<Reply> second = submit("a", note("one"));
    List<Reply> other = submit("a", note("two"));
    journal.release();
    run(1);
    List<Reply> third = submit("a", note("one"));
    assertThat(List.of(first, second, third)).containsOnly(List.of(new Reply.Done(1)));
    assertThat(((Reply.Refused) other.get(0)).code()).isEqualTo(RefusalCode.ID_REUSED);
    assertThat(notes(last().state())).containsExactly("one");
  }

  @Test
  void shouldTakeTheSamePayloadFromAnotherPersonForAnotherCommand() {
    submit("a", note("one"));
    Actor nurse = new Actor(Role.DESK, new PersonId("n1"), "desk-1");
    List<Reply> other = submit(new Submission(new CommandId("a"), note("one"), nurse, null, 0, 0));
    assertThat(((Reply.Refused) other.get(0)).code()).isEqualTo(RefusalCode.ID_REUSED);
  }

  @Test
  void shouldGiveTheSameAnswersAfterARestart() {
    List<Reply> two = submit("a", new Command.AddNote(new RoomId("3"), Private.of("one")));
    List<Reply> none = submit("b", new Command.AddNote(null, null));
    List<Reply> refused = submit("c", new Command.Undo(new CommandId("a")));
    submit("d", note("more"));
    start();
    run(10);
    assertThat(submit("a", new Command.AddNote(new RoomId("3"), Private.of("one"))))
        .isEqualTo(two)
        .containsExactly(new Reply.Done(2));
    assertThat(submit("b", new Command.AddNote(null, null)))
        .isEqualTo(none)
        .containsExactly(new Reply.Done(2));
    assertThat(submit("c", new Command.Undo(new CommandId("a")))).isEqualTo(refused);
    assertThat(notes(last().state())).containsExactly("one", "one", "more");
    assertThat(last().epoch()).isEqualTo(2);
  }

  @Test
  void shouldKeepWhenItWasTouchedWithinOpeningAndNow() {
    run(60_000);
    submit("o", new Command.OpenMorning());
    long opened = last().state().openedAt();
    run(60_000);
    long now = clock.morningMs();
    submit(new Submission(new CommandId("a"), note("early"), DESK, null, opened - 5_000, 0));
    submit(new Submission(new CommandId("b"), note("late"), DESK, null, now + 5_000, 0));
    submit(new Submission(new CommandId("c"), note("off"), DESK, null, now - 30_000, 10_000));
    assertThat(last().state().notes().stream().map(Morning.NoteKept::at))
        .containsExactly(opened, now + 1, now - 20_000);
  }

  @Test
  void shouldSayNotNowAndReadOnlyWhileTheDiskIsFull() {
    journal.appends(Way.FAIL);
    assertThat(submit("a", note("one"))).containsExactly(new Reply.Later("The disk is full."));
    run(10);
    assertThat(last().readOnly()).isTrue();
    assertThat(submit("b", note("two"))).containsExactly(new Reply.Later("The disk is full."));
    journal.appends(Way.WORK);
    run(100);
    assertThat(last().readOnly()).as("until a write has worked").isTrue();
    assertThat(submit("a", note("one"))).containsExactly(new Reply.Done(1));
    assertThat(last().readOnly()).isFalse();
    assertThat(notes(last().state())).containsExactly("one");
  }

  @Test
  void shouldAnswerNobodyInDoubtAndThenFromReceipts() {
    for (Way way : List.of(Way.UNKNOWN_WRITTEN, Way.UNKNOWN_LOST)) {
      journal.appends(way);
      journal.away(true);
      List<Reply> replies = submit("a-" + way.name(), note(way.name()));
      run(1_500);
      assertThat(replies).isEmpty();
      assertThat(last().readOnly()).isTrue();
      journal.appends(Way.WORK);
      journal.away(false);
      run(1_500);
      assertThat(replies).hasSize(1).first().isInstanceOf(Reply.Done.class);
      assertThat(last().readOnly()).isFalse();
    }
    assertThat(notes(last().state())).containsExactly("UNKNOWN_WRITTEN", "UNKNOWN_LOST");
  }

  @Test
  void shouldKnowACommandAgainThoughTheFirstOfTheMorningWasLostBeforeIt() {
    for (Way lost : List.of(Way.FAIL, Way.UNKNOWN_LOST)) {
      disk = new Disk(Bug.NONE);
      start();
      run(10);
      journal.next(lost, Way.WORK);
      List<Reply> replies = new ArrayList<>();
      // The first leaves no event, so that the second follows it whether it was written or not.
      owner.submit(
          new Submission(
              new CommandId("a"),
              new Command.AddNote(null, null),
              DESK,
              null,
              clock.morningMs(),
              0),
          first -> {});
      owner.submit(
          new Submission(new CommandId("b"), note("two"), DESK, null, clock.morningMs(), 0),
          replies::add);
      run(100);
      assertThat(replies).as(lost.name()).containsExactly(new Reply.Done(1));
      assertThat(submit("b", note("two"))).containsExactly(new Reply.Done(1));
    }
  }

  @Test
  void shouldLeaveTheMorningToOneWhoTookItAndComeBackAfterAWhile() {
    submit("a", note("one"));
    SimulatedJournal other =
        new SimulatedJournal(disk, loop, loop, Faults.none(), Bug.NONE, new Coverage());
    List<TakenOver> taken = new ArrayList<>();
    other.takeOver(MORNING, null, taken::add);
    run(1);
    assertThat(submit("b", note("two")).get(0)).isInstanceOf(Reply.Later.class);
    assertThat(last().readOnly()).isTrue();
    assertThat(last().owned()).isFalse();
    assertThat(notes(last().state())).containsExactly("one");
    run(SuiteActor.HOLD_OFF_MS + 10);
    assertThat(last().owned()).isTrue();
    assertThat(submit("b", note("two"))).containsExactly(new Reply.Done(2));
    assertThat(last().epoch()).isEqualTo(3);
  }

  @Test
  void shouldNoticeWithinASecondThatTheEpochHasPassed() {
    SimulatedJournal other =
        new SimulatedJournal(disk, loop, loop, Faults.none(), Bug.NONE, new Coverage());
    other.takeOver(MORNING, null, taken -> {});
    run(1_000);
    assertThat(last().readOnly()).isTrue();
    assertThat(last().owned()).isFalse();
    assertThat(last().epoch()).isEqualTo(1);
  }

  @Test
  void shouldConfirmItsEpochEverySecondAndBeReadOnlyWithoutIt() {
    run(10_000);
    assertThat(last().confirmedAt()).isGreaterThan(time.now() - 1_000);
    journal.away(true);
    run(1_900);
    assertThat(last().readOnly()).isFalse();
    run(1_000);
    assertThat(last().readOnly()).isTrue();
    assertThat(last().owned()).as("nobody else has it as far as is known").isTrue();
    assertThat(submit("a", note("one")).get(0)).isInstanceOf(Reply.Later.class);
    journal.away(false);
    run(1_000);
    assertThat(last().readOnly()).isFalse();
    assertThat(submit("a", note("one"))).containsExactly(new Reply.Done(1));
  }

  @Test
  void shouldBeReadOnlyWhileACommitHangs() {
    journal.appends(Way.HOLD);
    List<Reply> first = submit("a", note("one"));
    run(3_000);
    assertThat(last().readOnly()).isTrue();
    assertThat(submit("b", note("two")).get(0)).isInstanceOf(Reply.Later.class);
    journal.release();
    run(10);
    assertThat(first).containsExactly(new Reply.Done(1));
    assertThat(last().readOnly()).isFalse();
  }

  @Test
  void shouldSayNotNowWhenTheInboxIsFull() {
    journal.appends(Way.HOLD);
    List<Reply> replies = new ArrayList<>();
    for (int n = 0; n <= SuiteActor.INBOX_LIMIT; n++) {
      Submission s = new Submission(new CommandId("c" + n), note("n" + n), DESK, null, 0, 0);
      owner.submit(s, replies::add);
    }
    assertThat(replies).hasSize(1).first().isInstanceOf(Reply.Later.class);
    run(1);
    journal.release();
    run(10);
    assertThat(replies).hasSize(SuiteActor.INBOX_LIMIT + 1);
    assertThat(last().state().seq()).isEqualTo(SuiteActor.INBOX_LIMIT);
  }

  @Test
  void shouldRefuseACommandThatTheBoardFailsAt() {
    List<Reply> replies = submit("a", new Command.AgreeLater(null, null));
    assertThat(((Reply.Refused) replies.get(0)).code()).isEqualTo(RefusalCode.BAD_COMMAND);
    assertThat(submit("b", note("one"))).containsExactly(new Reply.Done(1));
  }

  private Submission together(String id, Command first, Command... also) {
    return new Submission(
        new CommandId(id), first, List.of(also), DESK, null, clock.morningMs(), 0);
  }

  @Test
  void shouldCarryOutCommandsGivenTogetherInOneWriteAndOnce() {
    Submission both = together("a", note("one"), note("two"));
    assertThat(submit(both)).containsExactly(new Reply.Done(2));
    assertThat(notes(last().state())).containsExactly("one", "two");
    assertThat(submit(both)).containsExactly(new Reply.Done(2));
    assertThat(submit(together("a", note("one"), note("three"))).get(0))
        .isInstanceOfSatisfying(
            Reply.Refused.class, r -> assertThat(r.code()).isEqualTo(RefusalCode.ID_REUSED));
    start();
    run(10);
    assertThat(submit(both)).as("from the receipt").containsExactly(new Reply.Done(2));
  }

  @Test
  void shouldCarryOutNothingIfOneOfTheCommandsGivenTogetherIsRefused() {
    Submission mixed =
        together("a", note("one"), new Command.Undo(new CommandId("x")), note("two"));
    assertThat(submit(mixed).get(0))
        .isInstanceOfSatisfying(
            Reply.Refused.class,
            r -> assertThat(r.words()).as("decided after the first").contains("1 notes"));
    assertThat(last().state().notes()).isEmpty();
    assertThat(submit("b", note("after"))).containsExactly(new Reply.Done(1));
    start();
    run(10);
    assertThat(notes(last().state())).containsExactly("after");
  }

  @Test
  void shouldForgetPrivateValuesOnceTheDayIsOver() {
    submit("a", note("a child of four"));
    clock.jump(Duration.ofHours(42).toMillis());
    run(Suites.ERASE_EVERY_MS);
    assertThat(notes(last().state())).containsExactly("a child of four");
    clock.jump(Duration.ofHours(1).toMillis());
    run(Suites.ERASE_EVERY_MS);
    assertThat(notes(last().state())).containsExactly("erased");
    start();
    run(10);
    assertThat(notes(last().state())).containsExactly("erased");
    assertThat(submit("a", note("a child of four"))).containsExactly(new Reply.Done(1));
  }

  @Test
  void shouldTakeNothingMoreAWeekAfterClosing() {
    submit("a", note("one"));
    submit("z", new Command.CloseMorning());
    clock.jump(Duration.ofDays(6).toMillis());
    assertThat(submit("b", note("two"))).containsExactly(new Reply.Done(3));
    clock.jump(Duration.ofDays(2).toMillis());
    for (String id : List.of("a", "c")) {
      Reply reply = submit(id, note("one")).get(0);
      assertThat(((Reply.Refused) reply).code()).isEqualTo(RefusalCode.MORNING_CLOSED);
    }
  }

  @Test
  void shouldNotTakeAMorningThatItCannotRead() {
    Bytes unknown =
        Bytes.of("{\"v\":1,\"event\":{\"type\":\"from-later\"}}".getBytes(StandardCharsets.UTF_8));
    Head head = disk.load(MORNING).head();
    Receipt receipt = new Receipt(new CommandId("x"), Bytes.of(new byte[] {1}), 0, 1, null);
    journal.append(
        new Append(
            MORNING, 1, 0, head.after(unknown).chain(), List.of(unknown), receipt, List.of()),
        outcome -> {});
    run(1);
    start();
    run(10);
    assertThat(submit("a", note("one")).get(0)).isInstanceOf(Reply.Later.class);
    assertThat(suites.trouble(MORNING).orElse("")).contains("Event 1").contains("newer one");
    assertThat(disk.load(MORNING).head().epoch()).as("left to one who can").isEqualTo(1);
  }

  @Test
  void shouldLimitThoseWhoWatch() {
    List<Runnable> handles = new ArrayList<>();
    for (int n = 1; n < Watchers.LIMIT; n++) {
      handles.add(owner.watch(standpoint -> {}));
    }
    assertThatThrownBy(() -> owner.watch(standpoint -> {}))
        .isInstanceOf(IllegalStateException.class);
    run(1);
    handles.get(0).run();
    run(1);
    handles.add(owner.watch(standpoint -> {}));
  }

  @Test
  void shouldAnswerWhatIsUnderWayBeforeItLetsGo() {
    journal.appends(Way.HOLD);
    List<Reply> first = submit("a", note("one"));
    List<String> order = new ArrayList<>();
    suites.release(MORNING, () -> order.add("released after " + first));
    run(1);
    assertThat(submit("b", note("two")).get(0)).isInstanceOf(Reply.Later.class);
    assertThat(order).isEmpty();
    journal.release();
    run(1);
    assertThat(order).containsExactly("released after [Done[upTo=1]]");
  }
}
