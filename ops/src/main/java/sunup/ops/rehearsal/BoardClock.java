package sunup.ops.rehearsal;

/** The morning's time as the board's heartbeats tell it, by this machine's monotonic clock. */
final class BoardClock {
  /** Without a heartbeat for so long the board counts as gone, and nothing is touched. */
  static final long SILENT_MS = 5_000;

  private final double ownSpeed;
  private long heardAt = Long.MIN_VALUE;
  private long told;
  private double rate;
  private Long ownFrom;
  private long ownSince;

  /**
   * @param ownSpeed morning seconds per real second, or 0 to follow the board's
   */
  BoardClock(double ownSpeed) {
    this.ownSpeed = ownSpeed;
  }

  void beat(long morningClock, double boardRate, long monotonicMs) {
    told = morningClock;
    rate = boardRate;
    heardAt = monotonicMs;
    if (ownFrom == null) {
      ownFrom = morningClock;
      ownSince = monotonicMs;
    }
  }

  /** The morning's time, or null while the board is not heard. */
  Long morning(long monotonicMs) {
    if (heardAt == Long.MIN_VALUE || monotonicMs - heardAt > SILENT_MS) {
      return null;
    }
    return ownSpeed > 0
        ? ownFrom + Math.round((monotonicMs - ownSince) * ownSpeed)
        : told + Math.round((monotonicMs - heardAt) * rate);
  }
}
