package sunup.live;

import java.util.concurrent.Executor;

/** Runs forecasts and searches, a few at a time. */
@FunctionalInterface
public interface Pool extends Executor {
  /** True if some wait for a thread: what can be done without is left out then. */
  default boolean crowded() {
    return false;
  }

  /**
   * Runs work here, and on threads that have nothing to do at the same time, and returns once all
   * that began it have come back.
   *
   * @param work may be run by several threads together, each of which takes of it what is left
   */
  default void together(Runnable work) {
    work.run();
  }
}
