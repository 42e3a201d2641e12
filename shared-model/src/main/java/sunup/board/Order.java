package sunup.board;

/**
 * A command on its way, with all that {@code decide} may know about how it came.
 *
 * @param id given by the screen, carried out once
 * @param command what is asked
 * @param actor who and where
 * @param seen the revision of the item, case, unit or room that the screen showed when it was
 *     touched, or null if it showed none; decisions need it current
 * @param happenedAt when it was touched by the owner's clock, epoch milliseconds, already clamped
 *     to the morning's opening and now
 * @param now the owner's clock, epoch milliseconds
 * @param signing true where people sign on: a second person counts only by a signature of his or
 *     her own, not by being named
 * @param learned what the suite's closed mornings taught, for an opening to freeze; null if nothing
 *     or if the suite goes by its sheets alone
 */
public record Order(
    CommandId id,
    Command command,
    Actor actor,
    Long seen,
    long happenedAt,
    long now,
    boolean signing,
    LearnedTimes learned) {
  /** Where nobody signs on, and people are taken as they are named. */
  public Order(CommandId id, Command command, Actor actor, Long seen, long happenedAt, long now) {
    this(id, command, actor, seen, happenedAt, now, false, null);
  }

  /** The same where people sign on. */
  public Order whereSigned() {
    return new Order(id, command, actor, seen, happenedAt, now, true, learned);
  }

  /** The same where the suite's closed mornings taught something. */
  public Order taught(LearnedTimes times) {
    return new Order(id, command, actor, seen, happenedAt, now, signing, times);
  }
}
