package sunup.suites;

import sunup.board.RefusalCode;

/** What a command is answered with. */
public sealed interface Reply {
  /**
   * Accepted and durable; {@code upTo} is the journal sequence of its last event, or the last one
   * before it if it yielded none.
   */
  record Done(long upTo) implements Reply {}

  /** Refused, durably: the same id and payload get the same answer again. */
  record Refused(RefusalCode code, String words) implements Reply {}

  /** Not now (no owner, journal away): no receipt was left, keep it and send it again. */
  record Later(String words) implements Reply {
    /** While nodes of two versions stand beside each other. */
    public static final String MIXED =
        "A node of the board does not know this yet: it works once all of them are up to date.";
  }
}
