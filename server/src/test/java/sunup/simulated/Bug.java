package sunup.simulated;

/** Mistakes that are planted to see whether the simulation finds them. */
public enum Bug {
  NONE,
  /** An append is answered before it is committed. */
  ACKNOWLEDGE_BEFORE_COMMIT,
  /** An append is written whatever its epoch. */
  SKIP_EPOCH,
  /** A morning is loaded without its receipts. */
  FORGET_RECEIPTS
}
