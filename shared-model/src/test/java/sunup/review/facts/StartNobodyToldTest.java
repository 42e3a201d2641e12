package sunup.review.facts;

import static org.assertj.core.api.Assertions.assertThat;
import static sunup.review.facts.InventedFacts.MONDAY;
import static sunup.review.facts.InventedFacts.on;

import java.util.List;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.IntRange;
import net.jqwik.api.constraints.Size;
import org.junit.jupiter.api.Test;
import sunup.board.Step;
import sunup.review.facts.FirstCaseFact.Times;

/** What is known of a start that nobody told, by the steps around it, in whatever order told. */
class StartNobodyToldTest {
  private static final long MINUTE = FirstCaseFact.MINUTE;

  @Test
  void shouldBeLateWhereTheStepBeforeItWas() {
    FirstCaseFact fact = on(MONDAY, "1").late(30).inferred(14).fact();
    assertThat(fact.late(10)).isTrue();
    assertThat(fact.judged(15)).as("in at 14, and the step after it at 30").isFalse();
  }

  /** Induction nobody told, release at 2 minutes past the target, wheels in told for 6 past it. */
  @Test
  void shouldNotBeLateByAStepThatWasToldAfterTheNextOne() {
    FirstCaseFact fact = on(MONDAY, "1").late(2).inferred(6).fact();
    assertThat(fact.startedFrom()).isNull();
    assertThat(fact.late(0)).isFalse();
    assertThat(fact.judged(0)).isFalse();
    assertThat(fact.onTime(5)).isTrue();
    assertThat(fact.late(5)).isFalse();
  }

  /**
   * @param told minutes after the target of the five steps in their order; 90 and more: not told
   */
  @Property
  void shouldLieBetweenWhatIsKnownOfItWhateverOrderStepsWereToldIn(
      @ForAll @Size(5) List<@IntRange(min = -40, max = 120) Integer> told, @ForAll Step start) {
    FirstCaseFact fact = fact(told, start);
    if (!fact.hasStarted()) {
      assertThat(fact.judged()).isFalse();
      return;
    }
    Long from = fact.startedFrom();
    assertThat(from == null || from <= fact.startedAt()).isTrue();
    for (int grace : List.of(0, 5, 10, 15)) {
      assertThat(fact.late(grace) && fact.onTime(grace)).isFalse();
      boolean known = from != null && from > fact.target() + grace * MINUTE;
      assertThat(fact.late(grace)).isEqualTo(known);
    }
  }

  private static FirstCaseFact fact(List<Integer> told, Step start) {
    FirstCaseFact plain = on(MONDAY, "1").fact();
    List<Long> at =
        told.stream().map(m -> m < 90 ? (Long) (plain.target() + m * MINUTE) : null).toList();
    return new FirstCaseFact(
        1,
        plain.morning(),
        plain.caseId(),
        plain.room(),
        plain.service(),
        plain.technique(),
        start,
        0,
        plain.bookedAt(),
        null,
        plain.beginsAt(),
        false,
        new Times(List.of(), null, at.get(0), at.get(1), at.get(2), at.get(3), at.get(4)),
        AsRunFact.NONE,
        null,
        plain.beside(),
        List.of());
  }
}
