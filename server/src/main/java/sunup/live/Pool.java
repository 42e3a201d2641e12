package sunup.live;

import java.util.concurrent.Executor;

/** Runs forecasts and searches, a few at a time. */
@FunctionalInterface
public interface Pool extends Executor {
  /** True if some wait for a thread: what can be done without is left out then. */
  default boolean crowded() {
    return false;
  }
}
