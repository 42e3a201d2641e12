package sunup.simulated;

/** Mistakes that are planted to see whether the simulation finds them. */
public enum Bug {
  NONE,
  /** An append is answered before it is committed. */
  ACKNOWLEDGE_BEFORE_COMMIT,
  /** An append is written whatever its epoch. */
  SKIP_EPOCH,
  /** A morning is loaded without its receipts: a command that comes again is answered anew. */
  FORGET_RECEIPTS,
  /** A take-over leaves the epoch as it is. */
  SHARE_EPOCH,
  /** An owner takes its epoch for confirmed without asking the journal. */
  CONFIRM_UNASKED,
  /** A new owner goes on from what it had read before it took the epoch. */
  SKIP_TAIL,
  /** A node passes on heartbeats however long they were on their way. */
  PASS_ON_OLD_BEATS,
  /** A screen takes a heartbeat for a proof however long it lay on its own line. */
  TRUST_THE_LINE
}
