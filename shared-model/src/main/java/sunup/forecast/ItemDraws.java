package sunup.forecast;

/**
 * The draws of one item's hands over the trials, without a person factor: what any other program of
 * the model can be compared with draw by draw, and the least that a trial of it has to do.
 */
public final class ItemDraws {
  private final long stream;
  private final Dist dist;

  /**
   * @param seed the morning's seed
   * @param scope {@code "case:"} and the case id for an item of the case, {@code "room:"} and the
   *     room id else
   * @param key the item's key
   * @param hands how its duration is drawn
   */
  public ItemDraws(long seed, String scope, String key, Draw hands) {
    stream = Hash.stream(Hash.scope(seed, scope, "item:" + key), Hash.HANDS, 0);
    dist = new Dist(hands);
  }

  /** The item's duration in a trial, in milliseconds. */
  public long duration(int trial) {
    return dist.at(Hash.uniform(stream, trial));
  }
}
