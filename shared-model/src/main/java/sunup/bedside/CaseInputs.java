package sunup.bedside;

import java.util.LinkedHashMap;
import java.util.Map;
import java.util.Objects;
import sunup.board.CaseId;

/**
 * Facts of one case's patient as entered. Every change counts its revision up, so that a result
 * that was worked out from older ones is told from one that still holds.
 *
 * @param caseId the case that they belong to
 * @param revision counted up by every change
 * @param entries weight, age, height, sex by input name
 */
public record CaseInputs(CaseId caseId, long revision, Map<String, Entry> entries) {
  public CaseInputs {
    Objects.requireNonNull(caseId, "caseId");
    entries = Map.copyOf(entries);
  }

  /** Nothing entered yet. */
  public static CaseInputs of(CaseId caseId) {
    return new CaseInputs(caseId, 0, Map.of());
  }

  /** With this entry in place of an earlier one. */
  public CaseInputs with(String input, Entry entry) {
    Map<String, Entry> next = new LinkedHashMap<>(entries);
    next.put(input, entry);
    return new CaseInputs(caseId, revision + 1, next);
  }
}
