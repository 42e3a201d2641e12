package sunup.suites;

/** Later, on the executor of the one who asks. */
public interface Timers {
  /**
   * Runs the task once, after so many real milliseconds.
   *
   * @return when run, the task is not run any more
   */
  Runnable after(long ms, Runnable task);
}
