package sunup.forecast;

/** Random mornings for the tests of other packages. */
public final class RandomMornings {
  private RandomMornings() {}

  /** Rooms that share people and equipment, with every feature of the model. */
  public static ForecastInput shared(long seed, int rooms, int trials) {
    return RandomMorning.of(seed, rooms, trials, false);
  }

  /** Rooms of which each has all to itself. */
  public static ForecastInput alone(long seed, int rooms, int trials) {
    return RandomMorning.of(seed, rooms, trials, true);
  }
}
