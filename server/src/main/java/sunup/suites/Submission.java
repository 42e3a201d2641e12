package sunup.suites;

import java.util.List;
import sunup.board.Actor;
import sunup.board.Command;
import sunup.board.CommandId;

/**
 * A command as it reaches the owner of its morning.
 *
 * @param id the screen's id for it; carried out once
 * @param command what is asked
 * @param also what is asked with it, in order, each having seen what the one before did: all of it
 *     is done, in one write, or nothing
 * @param actor who and where, as the server knows them
 * @param seen the revision that the screen showed, or null
 * @param touchedAt the screen's clock when it was touched, epoch milliseconds of morning time
 * @param offset the owner's clock minus the screen's, as measured
 * @param page the page that it was touched on, if the actor's role is still to be judged by the
 *     morning's state where its owner is; null if the actor is final
 */
public record Submission(
    CommandId id,
    Command command,
    List<Command> also,
    Actor actor,
    Long seen,
    long touchedAt,
    long offset,
    String page) {
  public Submission {
    also = List.copyOf(also);
  }

  /** Of a final actor. */
  public Submission(
      CommandId id,
      Command command,
      List<Command> also,
      Actor actor,
      Long seen,
      long touchedAt,
      long offset) {
    this(id, command, also, actor, seen, touchedAt, offset, null);
  }

  /** The same, touched on a page: its role is judged where its owner is. */
  public Submission on(String its) {
    return new Submission(id, command, also, actor, seen, touchedAt, offset, its);
  }

  /** The same by a final actor. */
  public Submission by(Actor its) {
    return new Submission(id, command, also, its, seen, touchedAt, offset, null);
  }

  /** One command alone. */
  public Submission(
      CommandId id, Command command, Actor actor, Long seen, long touchedAt, long offset) {
    this(id, command, List.of(), actor, seen, touchedAt, offset);
  }
}
