package sunup.simulated;

import java.util.PriorityQueue;
import java.util.concurrent.Executor;
import sunup.suites.Timers;

/** Time that moves only when somebody steps it; what is due at one instant runs in order. */
public final class SimulatedTime {
  private record Task(long at, long order, Loop loop, Runnable run) implements Comparable<Task> {
    @Override
    public int compareTo(Task other) {
      int byTime = Long.compare(at, other.at);
      return byTime != 0 ? byTime : Long.compare(order, other.order);
    }
  }

  private final PriorityQueue<Task> tasks = new PriorityQueue<>();
  private long now;
  private long order;

  public long now() {
    return now;
  }

  /** A loop that can be paused and killed. */
  public Loop loop() {
    return new Loop();
  }

  /** Runs what is due up to and including this instant, in milliseconds. */
  public void runUntil(long end) {
    while (!tasks.isEmpty() && tasks.peek().at <= end) {
      Task task = tasks.poll();
      now = task.at;
      if (!task.loop.alive) {
        continue;
      }
      if (task.loop.pausedUntil > now) {
        tasks.add(new Task(task.loop.pausedUntil, ++order, task.loop, task.run));
      } else {
        task.run.run();
      }
    }
    now = Math.max(now, end);
  }

  /** What runs one after the other: a node, a disk, a client. */
  public final class Loop implements Executor, Timers {
    private boolean alive = true;
    private long pausedUntil;

    private Loop() {}

    @Override
    public void execute(Runnable task) {
      after(0, task);
    }

    @Override
    public Runnable after(long ms, Runnable task) {
      boolean[] cancelled = new boolean[1];
      Runnable unlessCancelled =
          () -> {
            if (!cancelled[0]) {
              task.run();
            }
          };
      tasks.add(new Task(now + ms, ++order, this, unlessCancelled));
      return () -> cancelled[0] = true;
    }

    /** Nothing of it runs before that instant. */
    public void pauseUntil(long instant) {
      pausedUntil = Math.max(pausedUntil, instant);
    }

    /** Nothing of it runs any more. */
    public void kill() {
      alive = false;
    }

    public boolean alive() {
      return alive;
    }
  }
}
