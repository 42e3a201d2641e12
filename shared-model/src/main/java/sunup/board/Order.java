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
 */
public record Order(
    CommandId id, Command command, Actor actor, Long seen, long happenedAt, long now) {}
