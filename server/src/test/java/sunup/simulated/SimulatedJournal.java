package sunup.simulated;

import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.Collection;
import java.util.Deque;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.function.Consumer;
import java.util.function.Supplier;
import sunup.board.MorningId;
import sunup.journal.Answer;
import sunup.journal.Append;
import sunup.journal.Appended;
import sunup.journal.Head;
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
  private final DiskFaults faults;
  private final Bug bug;
  private final Coverage coverage;
  private final Deque<Object> queue = new ArrayDeque<>();
  private Phase phase = Phase.IDLE;
  private List<Append> committing = List.of();
  private boolean closed;

  /** What this process has taken and read, for planted mistakes. */
  private final Map<MorningId, Long> won = new HashMap<>();

  private final Map<MorningId, Stored> known = new HashMap<>();

  /**
   * @param process ends with the process
   * @param database goes on when the process is killed
   */
  public SimulatedJournal(
      Disk disk, Timers process, Timers database, DiskFaults faults, Bug bug, Coverage coverage) {
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
          if (faults.takeOverFails()) {
            coverage.saw("take-over failed");
            then.accept(new TakenOver.Away(TROUBLE));
            return;
          }
          TakenOver taken = disk.takeOver(morning, seen, this);
          if (taken instanceof TakenOver.Won mine) {
            won.put(morning, mine.head().epoch());
          }
          if (faults.takeOverInDoubt()) {
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
      process.after(faults.delay(DiskFaults.Step.BEGIN, 2, 1_000), this::next);
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
    if (faults.writeFails()) {
      coverage.saw("write failed");
      group.forEach(write -> write.then().accept(new Appended.NotWritten(TROUBLE)));
      idle();
      return;
    }
    phase = Phase.IN_COMMIT;
    committing = group.stream().map(Write::append).toList();
    process.after(faults.delay(DiskFaults.Step.COMMIT, 5, 1_500), () -> commit(group));
  }

  private void commit(List<Write> group) {
    List<Append> appends = committing;
    committing = List.of();
    phase = Phase.BEFORE_ANSWER;
    DiskFaults.Doubt doubt = faults.commit();
    if (doubt != null) {
      inDoubt(doubt, group, appends);
      return;
    }
    boolean[] in = disk.apply(appends, this);
    process.after(
        faults.delay(DiskFaults.Step.ANSWER, 2, 500),
        () -> {
          for (int at = 0; at < in.length; at++) {
            coverage.saw(in[at] ? "durable" : "fenced");
            group.get(at).then().accept(in[at] ? new Appended.Durable() : new Appended.Fenced());
          }
          idle();
        });
  }

  private void inDoubt(DiskFaults.Doubt doubt, List<Write> group, List<Append> appends) {
    switch (doubt) {
      case WRITTEN -> {
        coverage.saw("unknown, written");
        disk.apply(appends, this);
      }
      case LOST -> coverage.saw("unknown, lost");
      case WRITTEN_LATER -> {
        coverage.saw("unknown, written later");
        database.after(faults.laterMs(), () -> disk.apply(appends, this));
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

  /** True while somebody waits for an epoch. */
  boolean takes() {
    return queue.stream().anyMatch(Runnable.class::isInstance);
  }

  /** The process dies now. A group in commit reaches the disk whole or not at all. */
  public void kill() {
    switch (phase) {
      case IDLE -> coverage.saw("killed idle");
      case BEFORE_APPEND -> coverage.saw("killed before append");
      case IN_COMMIT -> {
        if (faults.commitOutlivesDeath()) {
          coverage.saw("killed in commit, written");
          disk.apply(committing, this);
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
    boolean away = faults.readFails();
    process.after(
        faults.delay(DiskFaults.Step.READ, 3, 1_500),
        () -> {
          T value = question.get();
          process.after(
              faults.delay(DiskFaults.Step.READ_ANSWER, 1, 200),
              () -> then.accept(away ? new Answer.Away<>(TROUBLE) : new Answer.Known<>(value)));
        });
  }

  @Override
  public void load(MorningId morning, long after, Consumer<Answer<Stored>> then) {
    read(then, () -> since(after, all(morning)));
  }

  private Stored all(MorningId morning) {
    Stored all = disk.load(morning);
    Stored before = known.put(morning, all);
    if (bug == Bug.SKIP_TAIL && before != null) {
      return withoutTail(all, before);
    }
    return bug == Bug.FORGET_RECEIPTS
        ? new Stored(all.head(), all.events(), List.of(), all.privates())
        : all;
  }

  private static Stored since(long after, Stored all) {
    List<Stored.Event> later = all.events().stream().filter(e -> e.seq() > after).toList();
    return new Stored(all.head(), later, all.receipts(), all.privates());
  }

  private static Stored withoutTail(Stored all, Stored before) {
    Head head = new Head(all.head().epoch(), before.head().seq(), before.head().chain());
    return new Stored(head, before.events(), before.receipts(), before.privates());
  }

  @Override
  public void epochs(Collection<MorningId> mornings, Consumer<Answer<Map<MorningId, Long>>> then) {
    List<MorningId> asked = List.copyOf(mornings);
    if (bug == Bug.CONFIRM_UNASKED && won.keySet().containsAll(asked)) {
      then.accept(new Answer.Known<>(Map.copyOf(won)));
      return;
    }
    read(then, () -> disk.epochs(asked));
  }

  @Override
  public void mornings(Consumer<Answer<List<MorningId>>> then) {
    read(then, disk::withEvents);
  }

  @Override
  public void lengths(Consumer<Answer<Map<MorningId, Long>>> then) {
    read(then, disk::lengths);
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
