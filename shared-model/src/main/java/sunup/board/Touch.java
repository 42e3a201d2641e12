package sunup.board;

/**
 * Who last touched a thing, when and where: a decision on it needs to have seen this revision.
 *
 * @param revision the journal sequence of the event that touched it
 * @param by the role of the actor, or null
 * @param screen the actor's screen, or null
 * @param at when it happened, epoch milliseconds
 */
public record Touch(long revision, Role by, String screen, long at) {
  static Touch of(long seq, Recorded recorded) {
    Actor actor = recorded.actor();
    return new Touch(
        seq,
        actor == null ? null : actor.role(),
        actor == null ? null : actor.screen(),
        recorded.happenedAt());
  }
}
