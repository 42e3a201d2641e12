package sunup.ops.trial;

import java.util.ArrayList;
import java.util.List;
import sunup.board.MorningPlan;
import sunup.review.facts.AsRunFact;
import sunup.review.facts.BoardSaid;
import sunup.review.facts.FirstCaseFact;
import sunup.review.facts.ForecastNote;

/** What must hold of the facts of any closed morning, whatever happened on it. */
final class MustHold {
  private final String morning;
  private final List<String> broken = new ArrayList<>();

  private MustHold(String morning) {
    this.morning = morning;
  }

  /** What does not hold, each a sentence that names the morning and the room. */
  static List<String> broken(MorningPlan plan, List<FirstCaseFact> facts) {
    MustHold all = new MustHold(plan.id().date().toString());
    all.must(facts.size() == plan.cases().size(), "has " + facts.size() + " facts");
    for (FirstCaseFact fact : facts) {
      all.minutes(fact);
      all.tiles(fact);
      all.said(fact);
    }
    return all.broken;
  }

  /** Adding up exactly: rule 6. */
  private void minutes(FirstCaseFact fact) {
    if (fact.hasStarted() && fact.asRun().why() == null) {
      must(
          fact.asRun().lateMs() == fact.lateMs(),
          "room %s: pieces of %d ms explain a start late by %d ms"
              .formatted(fact.room(), fact.asRun().lateMs(), fact.lateMs()));
    }
    must(
        fact.asRun().pieces().stream().allMatch(piece -> piece.lateMs() >= 0),
        "room " + fact.room() + ": a piece carries less than nothing");
  }

  /** The pieces follow each other without a gap, from the planned beginning to the start. */
  private void tiles(FirstCaseFact fact) {
    List<AsRunFact.Piece> pieces = fact.asRun().pieces();
    for (int k = 0; k + 1 < pieces.size(); k++) {
      must(
          pieces.get(k).to() == pieces.get(k + 1).from(),
          "room %s: piece %d does not end where the next begins".formatted(fact.room(), k));
    }
    if (!pieces.isEmpty() && fact.hasStarted()) {
      must(
          pieces.get(pieces.size() - 1).to() == fact.startedAt(),
          "room " + fact.room() + ": the last piece does not end with the start");
    }
  }

  private void said(FirstCaseFact fact) {
    for (BoardSaid one : fact.said()) {
      ForecastNote note = one.note();
      if (note != null) {
        must(
            note.onTime() >= 0
                && note.onTime() <= 1
                && note.start10() <= note.start50()
                && note.start50() <= note.start90()
                && note.start10() >= note.at(),
            "room %s: what was said %d minutes before can't be"
                .formatted(fact.room(), one.minutesBefore()));
      }
    }
  }

  private void must(boolean holds, String otherwise) {
    if (!holds) {
      broken.add(morning + " " + otherwise);
    }
  }
}
