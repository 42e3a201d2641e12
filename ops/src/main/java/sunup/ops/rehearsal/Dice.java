package sunup.ops.rehearsal;

import sunup.sheets.Hands;

/**
 * Draws by name: the same seed and name give the same number, whatever else was drawn. So adding an
 * item to a sheet moves no other draw of the same morning.
 */
final class Dice {
  private static final double MINUTE = 60_000;
  private static final double Z90 = 1.2815515655446004;
  private final long seed;

  Dice(long seed) {
    this.seed = seed;
  }

  /** Above 0 and below 1. */
  double uniform(String name) {
    long h = mix(seed ^ 0x9E3779B97F4A7C15L);
    for (int i = 0; i < name.length(); i++) {
      h = mix(h + name.charAt(i));
    }
    return ((h >>> 11) + 0.5) * 0x1.0p-53;
  }

  boolean oneIn(double share, String name) {
    return uniform(name) < share;
  }

  /** Standard normal, by Box and Muller (1958). */
  double normal(String name) {
    double radius = Math.sqrt(-2 * Math.log(uniform(name + "#r")));
    return radius * Math.cos(2 * Math.PI * uniform(name + "#a"));
  }

  /** Log-normal through median and 90 % point, by a standard normal z; milliseconds. */
  static long logNormal(Hands minutes, double z) {
    if (minutes.usual() <= 0) {
      return Math.round(Math.max(0, z) / Z90 * minutes.oneInTen() * MINUTE);
    }
    double sigma = Math.log(minutes.oneInTen() / minutes.usual()) / Z90;
    return Math.round(minutes.usual() * Math.exp(sigma * z) * MINUTE);
  }

  /** Exponential with this mean, milliseconds. */
  long waiting(double meanMinutes, String name) {
    return Math.round(-Math.log(uniform(name)) * meanMinutes * MINUTE);
  }

  /** Splitmix64's finaliser (Steele, Lea and Flood 2014). */
  private static long mix(long x) {
    long z = x + 0x9E3779B97F4A7C15L;
    z = (z ^ (z >>> 30)) * 0xBF58476D1CE4E5B9L;
    z = (z ^ (z >>> 27)) * 0x94D049BB133111EBL;
    return z ^ (z >>> 31);
  }
}
