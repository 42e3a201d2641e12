package sunup.forecast;

/**
 * When work began of which nobody said so (rule 3): as soon as the last of what it waited for was
 * there - its person, its prerequisites, its place.
 */
public final class ImpliedBeginning {
  private final long finish;
  private long latest = Model.EVER;

  /**
   * @param finish when the work was good
   */
  public ImpliedBeginning(long finish) {
    this.finish = finish;
  }

  /**
   * Its person was free, or its place open.
   *
   * @param moment null if that is not known
   */
  public void from(Long moment) {
    latest = moment == null ? latest : Math.max(latest, moment);
  }

  /**
   * A prerequisite was good; one that was good later did not hold it any longer than to its end.
   *
   * @param good null if it never was
   */
  public void after(Long good) {
    from(good == null ? null : (Long) Math.min(good, finish));
  }

  /** The moment, or null if nothing says anything of it. */
  public Long moment() {
    return latest == Model.EVER ? null : (Long) latest;
  }
}
