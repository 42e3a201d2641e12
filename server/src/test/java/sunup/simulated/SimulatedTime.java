package sunup.simulated;

import java.util.PriorityQueue;
import java.util.concurrent.Executor;
import java.util.function.LongSupplier;
import sunup.live.Lane;
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

  /** A process of one loop. */
  public Loop loop() {
    return new Program().loop();
  }

  /** A process without a loop yet. */
  Program program() {
    return new Program();
  }

  /** Runs what is due up to and including this instant, in milliseconds. */
  public void runUntil(long end) {
    while (!tasks.isEmpty() && tasks.peek().at <= end) {
      Task task = tasks.poll();
      now = task.at;
      if (!task.loop.process.alive) {
        continue;
      }
      if (task.loop.process.pausedUntil > now) {
        tasks.add(new Task(task.loop.process.pausedUntil, ++order, task.loop, task.run));
      } else {
        task.run.run();
      }
    }
    now = Math.max(now, end);
  }

  /** What is paused and killed as one. */
  final class Program {
    private boolean alive = true;
    private long pausedUntil;

    private Program() {}

    /** One more loop of it, at once. */
    Loop loop() {
      return loop(() -> 0);
    }

    /**
     * One more loop of it.
     *
     * @param lag how long a task waits for its turn, milliseconds
     */
    Loop loop(LongSupplier lag) {
      return new Loop(this, lag);
    }

    /** Nothing of it runs before that instant. */
    void pauseUntil(long instant) {
      pausedUntil = Math.max(pausedUntil, instant);
    }

    /** Nothing of it runs any more. */
    void kill() {
      alive = false;
    }

    boolean alive() {
      return alive;
    }

    boolean paused() {
      return pausedUntil > now;
    }
  }

  /** What runs one after the other: a thread of a node, a disk, a client. */
  public final class Loop implements Executor, Timers, Lane {
    private final Program process;
    private final LongSupplier lag;
    private long lastTurn;

    private Loop(Program process, LongSupplier lag) {
      this.process = process;
      this.lag = lag;
    }

    @Override
    public void execute(Runnable task) {
      lastTurn = Math.max(lastTurn, now + lag.getAsLong());
      tasks.add(new Task(lastTurn, ++order, this, task));
    }

    @Override
    public void run(Runnable task) {
      execute(task);
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

    /** Nothing of its process runs before that instant. */
    public void pauseUntil(long instant) {
      process.pauseUntil(instant);
    }

    /** Nothing of its process runs any more. */
    public void kill() {
      process.kill();
    }

    public boolean alive() {
      return process.alive();
    }
  }
}
