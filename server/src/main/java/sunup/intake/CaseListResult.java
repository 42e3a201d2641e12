package sunup.intake;

import java.util.List;
import sunup.codec.Problem;

/**
 * What a case list holds.
 *
 * @param cases the first case of each room, in the wall's order; empty if there is a problem
 * @param problems what must be mended, at most {@link CaseList#MAX_PROBLEMS}
 * @param notes what was left aside and why: later cases of a room, columns that nobody reads, and
 *     wrong rows if only the right ones were asked for
 * @param partial true if wrong rows were left out: cases that are not named may still be meant
 */
public record CaseListResult(
    List<ListedCase> cases, List<Problem> problems, List<Problem> notes, boolean partial) {
  public CaseListResult {
    cases = List.copyOf(cases);
    problems = List.copyOf(problems);
    notes = List.copyOf(notes);
  }
}
