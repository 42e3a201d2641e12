package sunup.simulated;

import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.Collection;
import java.util.Deque;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.function.Consumer;
import java.util.function.Supplier;
import sunup.board.MorningId;
import sunup.journal.Answer;
import sunup.journal.Append;
import sunup.journal.Appended;
import sunup.journal.Journal;
import sunup.journal.Stored;
import sunup.journal.TakenOver;
import sunup.suites.Timers;

/**
 * One process's way to a {@link Disk}, with faults: a write fails, or its outcome is unknown and it
 * was written, was lost, or is written later; answers take time. Killing the process at a moment of
 * {@link #kill} leaves a group that was being committed written or not.
 */
public final class SimulatedJournal implements Journal {
  private static final int GROUP_LIMIT = 8;
  private static final String TROUBLE = "the simulated disk is in trouble";

  /** Where the writer is. */
  enum Phase {
    IDLE,
    BEFORE_APPEND,
    IN_COMMIT,
    BEFORE_ANSWER
  }

  private record Write(Append append, Consumer<Appended> then) {}

  private final Disk disk;
  private final Timers process;
  private final Timers database;
  private final Faults faults;
  private final Bug bug;
  private final Coverage coverage;
  private final Deque<Object> queue = new ArrayDeque<>();
  private Phase phase = Phase.IDLE;
  private List<Append> committing = List.of();
  private boolean closed;

  /**
   * @param process ends with the process
   * @param database goes on when the process is killed
   */
  public SimulatedJournal(
      Disk disk, Timers process, Timers database, Faults faults, Bug bug, Coverage coverage) {
    this.disk = disk;
    this.process = process;
    this.database = database;
    this.faults = faults;
    this.bug = bug;
    this.coverage = coverage;
  }

  @Override
  public void append(Append append, Consumer<Appended> then) {
    if (closed) {
      then.accept(new Appended.NotWritten("closed"));
      return;
    }
    Consumer<Appended> told = then;
    if (bug == Bug.ACKNOWLEDGE_BEFORE_COMMIT) {
      then.accept(new Appended.Durable());
      told = outcome -> {};
    }
    queue.add(new Write(append, told));
    wake();
  }

  @Override
  public void takeOver(MorningId morning, Long seen, Consumer<TakenOver> then) {
    if (closed) {
      then.accept(new TakenOver.Away("closed"));
      return;
    }
    Runnable task =
        () -> {
          if (faults.strikes(60)) {
            coverage.saw("take-over failed");
            then.accept(new TakenOver.Away(TROUBLE));
            return;
          }
          TakenOver taken = disk.takeOver(morning, seen);
          if (faults.strikes(60)) {
            coverage.saw("take-over unknown");
            then.accept(new TakenOver.Away(TROUBLE));
          } else {
            then.accept(taken);
          }
        };
    queue.add(task);
    wake();
  }

  private void wake() {
    if (phase == Phase.IDLE && !queue.isEmpty()) {
      phase = Phase.BEFORE_APPEND;
      process.after(faults.delay(2, 1_000), this::next);
    }
  }

  private void next() {
    if (queue.peek() instanceof Runnable task) {
      queue.poll();
      task.run();
      idle();
      return;
    }
    List<Write> group = new ArrayList<>();
    while (group.size() < GROUP_LIMIT && queue.peek() instanceof Write write) {
      queue.poll();
      group.add(write);
    }
    if (faults.strikes(20)) {
      coverage.saw("write failed");
      group.forEach(write -> write.then().accept(new Appended.NotWritten(TROUBLE)));
      idle();
      return;
    }
    phase = Phase.IN_COMMIT;
    committing = group.stream().map(Write::append).toList();
    process.after(faults.delay(5, 1_500), () -> commit(group));
  }

  private void commit(List<Write> group) {
    List<Append> appends = committing;
    committing = List.of();
    phase = Phase.BEFORE_ANSWER;
    if (faults.strikes(25)) {
      inDoubt(group, appends);
      return;
    }
    boolean[] in = disk.apply(appends);
    process.after(
        faults.delay(2, 500),
        () -> {
          for (int at = 0; at < in.length; at++) {
            coverage.saw(in[at] ? "durable" : "fenced");
            group.get(at).then().accept(in[at] ? new Appended.Durable() : new Appended.Fenced());
          }
          idle();
        });
  }

  private void inDoubt(List<Write> group, List<Append> appends) {
    switch (faults.upTo(3)) {
      case 0 -> {
        coverage.saw("unknown, written");
        disk.apply(appends);
      }
      case 1 -> coverage.saw("unknown, lost");
      default -> {
        coverage.saw("unknown, written later");
        database.after(1 + faults.upTo(400), () -> disk.apply(appends));
      }
    }
    group.forEach(write -> write.then().accept(new Appended.Unknown(TROUBLE)));
    idle();
  }

  private void idle() {
    phase = Phase.IDLE;
    wake();
  }

  Phase phase() {
    return phase;
  }

  /** The process dies now. A group in commit reaches the disk whole or not at all. */
  public void kill() {
    switch (phase) {
      case IDLE -> coverage.saw("killed idle");
      case BEFORE_APPEND -> coverage.saw("killed before append");
      case IN_COMMIT -> {
        if (faults.upTo(2) == 0) {
          coverage.saw("killed in commit, written");
          disk.apply(committing);
        } else {
          coverage.saw("killed in commit, torn");
        }
      }
      case BEFORE_ANSWER -> coverage.saw("killed between commit and answer");
    }
  }

  private <T> void read(Consumer<Answer<T>> then, Supplier<T> question) {
    if (closed) {
      then.accept(new Answer.Away<>("closed"));
      return;
    }
    boolean away = faults.strikes(40);
    process.after(
        faults.delay(3, 1_500),
        () -> {
          T value = question.get();
          process.after(
              faults.delay(1, 200),
              () -> then.accept(away ? new Answer.Away<>(TROUBLE) : new Answer.Known<>(value)));
        });
  }

  @Override
  public void load(MorningId morning, Consumer<Answer<Stored>> then) {
    read(
        then,
        () -> {
          Stored all = disk.load(morning);
          return bug == Bug.FORGET_RECEIPTS
              ? new Stored(all.head(), all.events(), List.of(), all.privates())
              : all;
        });
  }

  @Override
  public void epochs(Collection<MorningId> mornings, Consumer<Answer<Map<MorningId, Long>>> then) {
    List<MorningId> asked = List.copyOf(mornings);
    read(then, () -> disk.epochs(asked));
  }

  @Override
  public void mornings(Consumer<Answer<List<MorningId>>> then) {
    read(then, disk::withEvents);
  }

  @Override
  public void erase(long now, Consumer<Answer<Set<MorningId>>> then) {
    read(then, () -> disk.erase(now));
  }

  @Override
  public void close() {
    closed = true;
  }
}
