package sunup.live;

/** One task after another, each seeing all that the ones before it did. */
public interface Lane {
  /** Runs the task after those that came before it. Never runs it at once. */
  void run(Runnable task);

  /**
   * Runs the task in its turn after so many milliseconds of real time.
   *
   * @return cancels it if it has not begun
   */
  Runnable after(long delayMs, Runnable task);
}
