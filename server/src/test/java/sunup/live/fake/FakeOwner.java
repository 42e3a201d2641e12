package sunup.live.fake;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.concurrent.CopyOnWriteArrayList;
import java.util.function.Consumer;
import sunup.board.Command;
import sunup.board.CommandId;
import sunup.board.Morning;
import sunup.board.MorningId;
import sunup.board.Private;
import sunup.board.RefusalCode;
import sunup.board.Role;
import sunup.suites.Clock;
import sunup.suites.Owner;
import sunup.suites.Reply;
import sunup.suites.Standpoint;
import sunup.suites.Submission;

/**
 * An owner without a journal: notes become notes of the state, a wall's commands are refused, other
 * commands count a sequence number and change nothing. Answers each id once.
 */
public final class FakeOwner implements Owner {
  private final MorningId morning;
  private final Clock clock;
  private final List<Consumer<Standpoint>> watchers = new CopyOnWriteArrayList<>();
  private final Map<CommandId, Reply> receipts = new HashMap<>();
  private final List<Submission> decided = new ArrayList<>();
  private Standpoint at;
  private boolean silent;

  public FakeOwner(MorningId morning, Clock clock) {
    this.morning = morning;
    this.clock = clock;
    this.at = new Standpoint(morning, 1, state(0, List.of()), clock.monotonicMs(), false, true);
  }

  private static Morning state(long seq, List<Morning.NoteKept> notes) {
    Morning none = Morning.NONE;
    return new Morning(
        null,
        none.phase(),
        seq,
        null,
        0,
        null,
        null,
        0,
        none.rooms(),
        none.cases(),
        none.people(),
        none.units(),
        none.places(),
        none.sheets(),
        none.roomItems(),
        none.caseItems(),
        notes,
        none.moves(),
        java.util.Map.of(),
        java.util.Map.of(),
        null,
        java.util.Map.of());
  }

  @Override
  public MorningId morning() {
    return morning;
  }

  @Override
  public synchronized void submit(Submission submission, Consumer<Reply> answer) {
    if (silent) {
      return;
    }
    Reply known = receipts.get(submission.id());
    if (known == null) {
      known = decide(submission);
      receipts.put(submission.id(), known);
    }
    answer.accept(known);
  }

  private Reply decide(Submission submission) {
    decided.add(submission);
    if (submission.actor().role() == Role.DISPLAY) {
      return new Reply.Refused(RefusalCode.NOT_ALLOWED, RefusalCode.NOT_ALLOWED.say("the desk"));
    }
    Private text = submission.command() instanceof Command.AddNote note ? note.text() : null;
    say(text == null ? null : text.shown());
    return new Reply.Done(at.state().seq());
  }

  /** One more event; a note unless the text is null. */
  public synchronized void say(String text) {
    List<Morning.NoteKept> notes = new ArrayList<>(at.state().notes());
    if (text != null) {
      notes.add(new Morning.NoteKept(null, Role.DESK, clock.morningMs(), Private.of(text)));
    }
    tell(at.epoch(), state(at.state().seq() + 1, notes), false);
  }

  /** Takes the oldest note away. */
  public synchronized void forgetOne() {
    List<Morning.NoteKept> notes = new ArrayList<>(at.state().notes());
    if (!notes.isEmpty()) {
      notes.remove(0);
    }
    tell(at.epoch(), state(at.state().seq() + 1, notes), false);
  }

  /** The journal confirms the epoch now. */
  public synchronized void confirm() {
    tell(at.epoch(), at.state(), false);
  }

  /** The journal does not answer, and the owner says so. */
  public synchronized void readOnly() {
    tell(at.epoch(), at.state(), true);
  }

  /** The morning went to another node, and the owner that was says so. */
  public synchronized void fenced() {
    at = new Standpoint(morning, at.epoch(), at.state(), clock.monotonicMs(), true, false);
    watchers.forEach(watcher -> watcher.accept(at));
  }

  /** Another epoch with the same state. */
  public synchronized void epoch(long epoch) {
    Standpoint before = at;
    tell(epoch, at.state(), false);
    if (epoch < before.epoch()) {
      at = before;
    }
  }

  /** From now on commands get no answer. */
  public synchronized void fallSilent() {
    silent = true;
  }

  private void tell(long epoch, Morning state, boolean readOnly) {
    long confirmedAt = readOnly ? at.confirmedAt() : clock.monotonicMs();
    at = new Standpoint(morning, epoch, state, confirmedAt, readOnly, true);
    watchers.forEach(watcher -> watcher.accept(at));
  }

  @Override
  public synchronized Runnable watch(Consumer<Standpoint> watcher) {
    watchers.add(watcher);
    watcher.accept(at);
    return () -> watchers.remove(watcher);
  }

  /** What was decided, each id once. */
  public synchronized List<Submission> decided() {
    return List.copyOf(decided);
  }

  public synchronized long seq() {
    return at.state().seq();
  }

  public synchronized int notes() {
    return at.state().notes().size();
  }

  public int watchers() {
    return watchers.size();
  }
}
