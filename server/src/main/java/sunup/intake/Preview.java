package sunup.intake;

import com.fasterxml.jackson.annotation.JsonInclude;
import java.util.List;
import sunup.board.CaseId;
import sunup.board.RoomId;
import sunup.codec.Maybe;
import sunup.codec.Problem;

/**
 * What taking a case list would change, for the desk to take or to refuse. Nothing has happened
 * yet.
 *
 * @param hash of what would change and of what it would change from, hex; "take" sends it back and
 *     is refused if it is another by then
 * @param added cases that the morning does not have
 * @param changed cases that the morning has otherwise
 * @param removed cases that the list does not name: they would be cancelled
 * @param unchanged how many cases stay as they are
 * @param problems what must be mended before it can be taken
 * @param notes what was left aside and why
 */
public record Preview(
    String hash,
    List<Row> added,
    List<Row> changed,
    List<Row> removed,
    int unchanged,
    List<Problem> problems,
    List<Problem> notes) {

  /**
   * One case.
   *
   * @param caseId its id on the board
   * @param room where it would be, or where it is if it would be cancelled
   * @param start booked time as the site's clocks show it, for example {@code 07:30}
   * @param technique as the sheets name it
   * @param options as the sheets name them
   * @param changes for a changed case, what is other in words: "start 07:30, now 08:00"
   */
  @JsonInclude(JsonInclude.Include.NON_EMPTY)
  public record Row(
      CaseId caseId,
      RoomId room,
      String start,
      String technique,
      List<String> options,
      @Maybe List<String> changes) {
    public Row {
      options = List.copyOf(options);
      changes = changes == null ? List.of() : List.copyOf(changes);
    }
  }

  public Preview {
    added = List.copyOf(added);
    changed = List.copyOf(changed);
    removed = List.copyOf(removed);
    problems = List.copyOf(problems);
    notes = List.copyOf(notes);
  }

  /** True if it can be taken and would do something. */
  public boolean canBeTaken() {
    return problems.isEmpty() && !(added.isEmpty() && changed.isEmpty() && removed.isEmpty());
  }
}
