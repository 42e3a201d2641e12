package sunup.journal;

/** What became of an append. */
public sealed interface Appended {
  /** Committed and synced: it may be acknowledged. */
  record Durable() implements Appended {}

  /** Not written: the morning has another epoch or stands at another sequence. */
  record Fenced() implements Appended {}

  /** Not written, for sure: the queue was full, the disk is full, the journal is closed. */
  record NotWritten(String words) implements Appended {}

  /** Nobody knows: answer nobody, take a new epoch, load, answer from receipts. */
  record Unknown(String words) implements Appended {}
}
