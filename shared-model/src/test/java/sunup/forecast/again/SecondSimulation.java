package sunup.forecast.again;

import sunup.forecast.ForecastInput;

/**
 * The forecast's model once more, from FORECAST.md and the Javadoc of the input record alone, on a
 * general event-list library (SSJ) with random numbers of its own. Plain, slow, and nothing in
 * common with the kernel: where the two agree the page says what the kernel does.
 */
public final class SecondSimulation {
  private SecondSimulation() {}

  /**
   * Plays the rest of the morning so many times.
   *
   * @return [0][room][trial] the start, [1][room][trial] when it could have been
   */
  public static long[][][] play(ForecastInput in, int trials, long seed) {
    Chance chance = new Chance(seed);
    long[][][] all = new long[2][in.rooms().size()][trials];
    for (int n = 0; n < trials; n++) {
      long[][] one = new Trial(in, chance).run();
      for (int r = 0; r < in.rooms().size(); r++) {
        all[0][r][n] = one[0][r];
        all[1][r][n] = one[1][r];
      }
    }
    return all;
  }
}
