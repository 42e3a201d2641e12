package sunup.ops.madeup;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.time.LocalDate;
import java.util.List;
import org.junit.jupiter.api.Test;
import sunup.board.MorningPlan;

class WeighingTest {
  private static MorningPlan plan(LocalDate date) {
    try {
      return DemoPlans.of(date);
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  /** Of two winter months, so that all four have starts; the whole year is in REVIEW.md. */
  @Test
  void shouldHideNothingThatCostsNothing() throws Exception {
    Scenario hidden = DemoPlans.hidden();
    Scenario weeks =
        new Scenario(
            LocalDate.of(2026, 2, 9),
            LocalDate.of(2026, 4, 10),
            hidden.seed(),
            hidden.truths(),
            List.of(),
            null);
    List<Weighing.Weight> weights = Weighing.of(weeks, WeighingTest::plan);
    assertThat(weights).hasSize(4);
    for (Weighing.Weight w : weights) {
      assertThat(w.none().starts()).as(w.name()).isEqualTo(w.all().starts()).isGreaterThan(90);
      assertThat(Math.abs(w.alone().meanLate() - w.none().meanLate()))
          .as(w.name())
          .isGreaterThan(1.5);
    }
    assertThat(weights.get(3).alone().meanLate()).isLessThan(weights.get(3).none().meanLate());
  }
}
