package sunup.moves;

import java.util.List;
import sunup.board.Move;
import sunup.board.PersonId;
import sunup.board.Role;

/**
 * A move that is expected to help.
 *
 * @param move what
 * @param role whom to ask, if it is not one person
 * @param person whom to ask, or null
 * @param savedMinutes mean late minutes that it saves over the suite, on the second stream
 * @param errorMinutes standard error of that mean, from the paired differences
 * @param rooms what it saves room by room, the largest first; negative for rooms that it costs
 */
public record Idea(
    Move move,
    Role role,
    PersonId person,
    double savedMinutes,
    double errorMinutes,
    List<Gain> rooms) {
  public Idea {
    rooms = List.copyOf(rooms);
  }

  /** Mean minutes saved in one room. */
  public record Gain(String room, double minutes) {}
}
