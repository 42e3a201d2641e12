package sunup.intake;

import java.util.List;
import sunup.board.CaseId;
import sunup.board.PersonId;
import sunup.board.RoomId;
import sunup.sheets.ComposedSheet;

/**
 * One first case as a case list names it.
 *
 * @param line of the list in which its row begins, or 0 if it comes from elsewhere
 * @param id the list's own id of the case, or null if it has none
 * @param room where it is booked
 * @param bookedAt epoch milliseconds
 * @param technique a technique of the sheets
 * @param options options of the sheets, sorted, the room's own among them
 * @param procedure or null; private
 * @param service or null
 * @param surgeon a pseudonym, or null
 * @param sheet its composed list
 */
public record ListedCase(
    int line,
    CaseId id,
    RoomId room,
    long bookedAt,
    String technique,
    List<String> options,
    String procedure,
    String service,
    PersonId surgeon,
    ComposedSheet sheet) {
  public ListedCase {
    options = List.copyOf(options);
  }
}
