package sunup.live.fake;

import java.util.ArrayDeque;
import java.util.Comparator;
import java.util.PriorityQueue;
import sunup.live.Lane;

/**
 * A lane that runs only when the test says so, on the test's thread. Tasks may be handed in from
 * any thread.
 */
public final class ManualLane implements Lane {
  private record Later(long at, long order, Runnable task) {}

  private final ManualClock clock;
  private final ArrayDeque<Runnable> tasks = new ArrayDeque<>();
  private final PriorityQueue<Later> later =
      new PriorityQueue<>(Comparator.comparingLong(Later::at).thenComparingLong(Later::order));
  private long order;

  public ManualLane(ManualClock clock) {
    this.clock = clock;
  }

  @Override
  public synchronized void run(Runnable task) {
    tasks.add(task);
  }

  @Override
  public synchronized Runnable after(long delayMs, Runnable task) {
    Later entry = new Later(clock.monotonicMs() + delayMs, order++, task);
    later.add(entry);
    return () -> cancel(entry);
  }

  private synchronized void cancel(Later entry) {
    later.remove(entry);
  }

  private synchronized Runnable next() {
    Runnable task = tasks.poll();
    if (task == null && !later.isEmpty() && later.peek().at() <= clock.monotonicMs()) {
      task = later.poll().task();
    }
    return task;
  }

  /** Runs all that is due. */
  public void drain() {
    for (Runnable task = next(); task != null; task = next()) {
      task.run();
    }
  }

  /** Lets real and morning time pass in steps of 10 ms, running what becomes due. */
  public void pass(long ms) {
    drain();
    for (long done = 0; done < ms; done += 10) {
      clock.pass(Math.min(10, ms - done));
      drain();
    }
  }
}
