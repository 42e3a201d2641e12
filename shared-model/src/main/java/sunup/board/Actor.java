package sunup.board;

/**
 * Who gave a command and where. Every command carries one from the first day.
 *
 * @param role the role that the command is judged by
 * @param person the person, or null for a touch that nobody signed
 * @param screen the screen's name, for example {@code station-7}
 */
public record Actor(Role role, PersonId person, String screen) {}
