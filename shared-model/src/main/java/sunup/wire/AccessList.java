package sunup.wire;

import com.fasterxml.jackson.annotation.JsonInclude;
import java.util.List;
import sunup.board.Role;
import sunup.board.RoomId;
import sunup.codec.Maybe;

/**
 * The screens and people of a suite, as a desk sees them.
 *
 * @param asks the screen whose code was looked up
 */
@JsonInclude(JsonInclude.Include.NON_NULL)
public record AccessList(
    List<ScreenRow> screens, List<PersonRow> people, List<LockRow> locks, @Maybe AsksRow asks) {
  public AccessList {
    screens = List.copyOf(screens);
    people = List.copyOf(people);
    locks = List.copyOf(locks);
  }

  /**
   * A paired screen.
   *
   * @param pairedAt epoch milliseconds of real time
   * @param pairedBy the person who typed its code
   * @param sockets open at the board's node that answers
   * @param signed who is signed on there
   */
  @JsonInclude(JsonInclude.Include.NON_NULL)
  public record ScreenRow(
      String screen,
      String name,
      String page,
      @Maybe RoomId room,
      long pairedAt,
      String pairedBy,
      int sockets,
      @Maybe String signed) {}

  /** Somebody who may sign on. */
  public record PersonRow(String person, List<Role> roles) {
    public PersonRow {
      roles = List.copyOf(roles);
    }
  }

  /** Somebody who typed too many wrong PINs at a screen. */
  public record LockRow(String person, String screen, String name) {}

  /** A screen that wants to be paired. */
  public record AsksRow(String code, String address, String page, long at, long until) {}
}
