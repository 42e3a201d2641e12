package sunup.journal;

/**
 * Told where the writer stands, so that a test can stop or kill it exactly there. In the server
 * nobody listens.
 */
interface Moments {
  Moments NOBODY = moment -> {};

  /** Points on the way of a group of appends. */
  enum Moment {
    /** The group is put together, no transaction has begun. */
    BEFORE_APPEND,
    /** The heads have moved in the open transaction, events and receipts are not in yet. */
    HEADS_MOVED,
    /** All is in the open transaction, the commit is not yet asked for. */
    BEFORE_COMMIT,
    /** The commit has returned, nobody was answered. */
    AFTER_COMMIT,
    /** The first of the group was answered. */
    FIRST_ANSWERED
  }

  void reached(Moment moment);
}
