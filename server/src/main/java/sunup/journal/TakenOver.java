package sunup.journal;

/** What became of taking a morning over. */
public sealed interface TakenOver {
  /** The epoch is the caller's and durable; load now. */
  record Won(Head head) implements TakenOver {}

  /** Somebody else has, or took meanwhile, the epoch told. */
  record Lost(long epoch) implements TakenOver {}

  /** The journal can't say; the epoch may or may not have moved. Try again later. */
  record Away(String words) implements TakenOver {}
}
