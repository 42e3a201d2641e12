package sunup.ops.trial;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;
import sunup.board.MorningPlan;
import sunup.ops.madeup.DemoPlans;
import sunup.ops.madeup.MadeMornings;
import sunup.review.facts.AsRunFact;
import sunup.review.facts.FirstCaseFact;

/** What the long ring of mornings looks at, and that it notices what does not hold. */
class PlayedMorningTest {
  private static final LocalDate MONDAY = LocalDate.of(2026, 2, 2);
  private static final int TRIALS = 8;

  @Test
  void shouldFindNothingBrokenAndNoticeWhatIs() throws Exception {
    MorningPlan plan = DemoPlans.of(MONDAY);
    MadeMornings mornings = new MadeMornings(DemoPlans.hidden());
    PlayedMorning played = PlayedMorning.of(plan, mornings, TRIALS, false);
    assertThat(played.broken()).isEmpty();
    assertThat(played.facts())
        .allMatch(fact -> fact.said().stream().anyMatch(s -> s.note() != null));

    List<FirstCaseFact> facts = played.facts();
    int late = 0;
    while (facts.get(late).lateMs() == 0) {
      late++;
    }
    List<AsRunFact.Piece> pieces = facts.get(late).asRun().pieces();
    List<FirstCaseFact> unexplained = with(facts, late, pieces.subList(1, pieces.size()));
    assertThat(MustHold.broken(plan, with(facts, late, more(pieces))))
        .singleElement()
        .asString()
        .contains("explain a start late by");
    assertThat(MustHold.broken(plan, with(facts, late, without(pieces))))
        .anyMatch(told -> told.contains("does not end where the next begins"));
    assertThat(MustHold.broken(plan, unexplained.subList(1, unexplained.size())))
        .anyMatch(told -> told.contains("has 11 facts"));
  }

  /** One millisecond more than was late. */
  private static List<AsRunFact.Piece> more(List<AsRunFact.Piece> pieces) {
    List<AsRunFact.Piece> changed = new ArrayList<>(pieces);
    AsRunFact.Piece p = pieces.get(0);
    changed.set(
        0,
        new AsRunFact.Piece(
            p.kind(),
            p.item(),
            p.thing(),
            p.where(),
            p.from(),
            p.to(),
            p.lateMs() + 1,
            p.implied(),
            p.lateEntry(),
            p.together()));
    return changed;
  }

  /** A gap in the middle. */
  private static List<AsRunFact.Piece> without(List<AsRunFact.Piece> pieces) {
    List<AsRunFact.Piece> changed = new ArrayList<>(pieces);
    changed.remove(1);
    return changed;
  }

  private static List<FirstCaseFact> with(
      List<FirstCaseFact> facts, int at, List<AsRunFact.Piece> pieces) {
    List<FirstCaseFact> changed = new ArrayList<>(facts);
    FirstCaseFact f = facts.get(at);
    changed.set(
        at,
        new FirstCaseFact(
            f.version(),
            f.morning(),
            f.caseId(),
            f.room(),
            f.service(),
            f.technique(),
            f.startEvent(),
            f.graceMinutes(),
            f.bookedAt(),
            f.agreedAt(),
            f.beginsAt(),
            f.cancelled(),
            f.times(),
            new AsRunFact(pieces, null),
            f.reported(),
            f.beside(),
            f.said()));
    return changed;
  }
}
