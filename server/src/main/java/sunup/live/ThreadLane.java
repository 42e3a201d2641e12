package sunup.live;

import java.util.concurrent.Future;
import java.util.concurrent.RejectedExecutionException;
import java.util.concurrent.ScheduledThreadPoolExecutor;
import java.util.concurrent.TimeUnit;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;

/** A lane on a thread of its own. After {@link #close} it takes nothing more. */
public final class ThreadLane implements Lane, AutoCloseable {
  private static final Logger LOG = LoggerFactory.getLogger(ThreadLane.class);

  private final ScheduledThreadPoolExecutor thread;

  public ThreadLane(String name) {
    thread =
        new ScheduledThreadPoolExecutor(
            1,
            task -> {
              Thread made = new Thread(task, name);
              made.setDaemon(true);
              return made;
            });
    thread.setRemoveOnCancelPolicy(true);
    thread.setExecuteExistingDelayedTasksAfterShutdownPolicy(false);
  }

  @Override
  public void run(Runnable task) {
    try {
      thread.execute(guarded(task));
    } catch (RejectedExecutionException closed) {
      LOG.debug("the lane is closed");
    }
  }

  @Override
  public Runnable after(long delayMs, Runnable task) {
    try {
      Future<?> later = thread.schedule(guarded(task), delayMs, TimeUnit.MILLISECONDS);
      return () -> later.cancel(false);
    } catch (RejectedExecutionException closed) {
      return () -> {};
    }
  }

  @Override
  public void close() {
    thread.shutdown();
  }

  private static Runnable guarded(Runnable task) {
    return () -> {
      try {
        task.run();
      } catch (RuntimeException e) {
        LOG.error("a task of the live lane failed", e);
      }
    };
  }
}
