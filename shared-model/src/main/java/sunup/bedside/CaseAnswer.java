package sunup.bedside;

import java.util.Optional;
import sunup.board.CaseId;

/**
 * An answer with the case and the revision of the patient's facts that it was worked out from.
 *
 * @param figure the figure's name
 * @param caseId the case that it was asked for
 * @param revision of {@link CaseInputs}
 * @param answer what came of it
 */
public record CaseAnswer(String figure, CaseId caseId, long revision, Answer answer) {
  /**
   * The answer if it still holds: the room has the same case and its facts are those that it was
   * worked out from. Else nothing: after a swap or a changed weight the screen is blank.
   */
  public Optional<Answer> shownFor(CaseInputs now) {
    return caseId.equals(now.caseId()) && revision == now.revision()
        ? Optional.of(answer)
        : Optional.empty();
  }
}
