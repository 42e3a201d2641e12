package sunup.forecast;

import java.nio.charset.StandardCharsets;

/**
 * The keyed hash of rule 4. A draw depends on nothing but its own name, so that adding or removing
 * an item moves no other draw.
 *
 * <p>Names are hashed by FNV-1a over UTF-8 (64 bits; Fowler, Noll and Vo). Parts are joined by the
 * finaliser of SplitMix64 (Steele, Lea and Flood, "Fast splittable pseudorandom number generators",
 * OOPSLA 2014; constants of Stafford's variant 13).
 */
final class Hash {
  private static final long FNV_BASIS = 0xcbf29ce484222325L;
  private static final long FNV_PRIME = 0x100000001b3L;
  private static final long GOLDEN = 0x9E3779B97F4A7C15L;

  /** What a draw is for. The numbers are part of the model. */
  static final int HANDS = 0;

  static final int WAITS = 1;
  static final int EXTRA = 2;
  static final int WALK = 3;
  static final int ARRIVAL = 4;
  static final int FORGOTTEN = 5;
  static final int OCCUPIED = 6;
  static final int FACTOR = 7;
  static final int STYLE = 8;
  static final int AWAY = 9;
  static final int AWAY_MOMENT = 10;
  static final int AWAY_FOR = 11;
  static final int DELAY = 12;
  static final int PURPOSES = 16;

  private Hash() {}

  static long text(String s) {
    long h = FNV_BASIS;
    for (byte b : s.getBytes(StandardCharsets.UTF_8)) {
      h = (h ^ (b & 0xff)) * FNV_PRIME;
    }
    return h;
  }

  static long mix(long x) {
    long z = (x ^ (x >>> 30)) * 0xBF58476D1CE4E5B9L;
    z = (z ^ (z >>> 27)) * 0x94D049BB133111EBL;
    return z ^ (z >>> 31);
  }

  /** The name of all draws of one item (or person) of one scope, for one seed. */
  static long scope(long seed, String scope, String key) {
    return mix(mix(mix(seed + GOLDEN) ^ text(scope)) ^ text(key));
  }

  /** The name of the draws of one purpose, over all trials. */
  static long stream(long scope, int purpose, int occurrence) {
    return mix(scope ^ ((long) occurrence * PURPOSES + purpose + 1) * GOLDEN);
  }

  /** Uniform in (0, 1), never 0 or 1: rule 4. */
  static double uniform(long stream, int trial) {
    long h = mix(stream + trial * GOLDEN);
    return ((h >>> 11) + 0.5) * 0x1p-53;
  }
}
