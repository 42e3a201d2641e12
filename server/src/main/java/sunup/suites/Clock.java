package sunup.suites;

/**
 * The three times that the board runs on. Staleness, heartbeat and rate limits run on {@link
 * #monotonicMs}; what is recorded runs on the morning's time, which a rehearsal may scale.
 */
public interface Clock {
  /** Real time, epoch milliseconds. */
  long realMs();

  /** Real time that never goes back, milliseconds from any origin. */
  long monotonicMs();

  /** The morning's time, epoch milliseconds. */
  long morningMs();

  /** Morning seconds per real second; 1 outside a rehearsal. */
  double rate();
}
