package sunup.board;

import com.fasterxml.jackson.annotation.JsonInclude;
import sunup.codec.Maybe;

/**
 * Who gave a command and where. Every command carries one from the first day.
 *
 * @param role the role that the command is judged by
 * @param person the person, or null for a touch that nobody signed
 * @param screen the screen's name, for example {@code station-7}
 * @param second who signed beside, by code and PIN; null if nobody did, so that a second person
 *     whom the command names was only named
 */
public record Actor(
    Role role,
    PersonId person,
    String screen,
    @Maybe @JsonInclude(JsonInclude.Include.NON_NULL) Second second) {
  /**
   * A second person who signed.
   *
   * @param role by which he or she may
   */
  public record Second(PersonId person, Role role) {}

  /** One who gives it alone. */
  public Actor(Role role, PersonId person, String screen) {
    this(role, person, screen, null);
  }

  /** The same, with somebody who signed beside. */
  public Actor with(Second other) {
    return new Actor(role, person, screen, other);
  }
}
