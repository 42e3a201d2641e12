package sunup.suites;

import java.util.concurrent.Executor;
import java.util.concurrent.RejectedExecutionException;
import java.util.concurrent.ScheduledFuture;
import java.util.concurrent.ScheduledThreadPoolExecutor;
import java.util.concurrent.TimeUnit;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;

/** One thread in real time. What it may be given is bounded by those who give it. */
final class RealLoop implements Executor, Timers, AutoCloseable {
  private static final long CLOSE_LIMIT_MS = 5_000;
  private static final Logger LOG = LoggerFactory.getLogger(RealLoop.class);

  private final ScheduledThreadPoolExecutor thread;

  RealLoop(String name) {
    thread = new ScheduledThreadPoolExecutor(1, task -> new Thread(task, name));
    thread.setRemoveOnCancelPolicy(true);
    thread.setExecuteExistingDelayedTasksAfterShutdownPolicy(false);
  }

  @Override
  public void execute(Runnable task) {
    try {
      thread.execute(() -> run(task));
    } catch (RejectedExecutionException e) {
      LOG.warn("a task came after the end");
    }
  }

  @Override
  public Runnable after(long ms, Runnable task) {
    try {
      ScheduledFuture<?> future = thread.schedule(() -> run(task), ms, TimeUnit.MILLISECONDS);
      return () -> future.cancel(false);
    } catch (RejectedExecutionException e) {
      return () -> {};
    }
  }

  private static void run(Runnable task) {
    try {
      task.run();
    } catch (RuntimeException e) {
      LOG.error("a task failed", e);
    }
  }

  @Override
  public void close() {
    thread.shutdown();
    try {
      if (!thread.awaitTermination(CLOSE_LIMIT_MS, TimeUnit.MILLISECONDS)) {
        LOG.warn("the suites' thread did not end in time");
      }
    } catch (InterruptedException e) {
      Thread.currentThread().interrupt();
    }
  }
}
