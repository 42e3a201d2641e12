package sunup.cluster;

/**
 * Notices that this node stood still: paused, or without a processor. It heard nobody meanwhile; if
 * it took the others for dead then, every node of a crowded machine would take the others'
 * mornings, which costs all of them still more. Kept in the lane.
 */
final class StoodStill {
  /** Work of the lane that comes so much too late: others may have spoken meanwhile. */
  static final long STOOD_MS = 400;

  private long awakeAt;

  StoodStill(long now) {
    this.awakeAt = now;
  }

  /**
   * Called at least every {@link Placement#TICK_MS} if all is well.
   *
   * @return for how long it stood since it was called last, or 0
   */
  long since(long now) {
    long stood = now - awakeAt - Placement.TICK_MS;
    awakeAt = now;
    return stood > STOOD_MS ? stood : 0;
  }
}
