package sunup.forecast;

/** Sizes beyond which an input is refused. */
final class Limits {
  static final int ROOMS = 512;

  /** Items of one room, the mending of faults included. */
  static final int ITEMS = 256;

  static final int PEOPLE = 4096;
  static final int KINDS = 256;
  static final int PLACES = 256;
  static final int CAPACITY = 1024;
  static final int SLOTS = 8;
  static final int TRIALS = 100_000;
  static final int TEXT = 200;

  /** Every moment lies within seven days of now; every duration is at most as long. */
  static final long FAR = Dist.LONGEST;

  private Limits() {}
}
