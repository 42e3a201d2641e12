package sunup.review;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;
import static sunup.review.facts.InventedFacts.MONDAY;
import static sunup.review.facts.InventedFacts.on;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.SplittableRandom;
import org.junit.jupiter.api.Test;
import sunup.review.Comparison.Design;
import sunup.review.Comparison.Verdict;
import sunup.review.facts.FirstCaseFact;
import sunup.review.stats.Interval;

class ComparisonTest {
  /** Six rooms a morning; minutes are skewed and the morning adds its own to all. */
  private static List<FirstCaseFact> mornings(
      LocalDate from, int mornings, double typical, SplittableRandom random) {
    List<FirstCaseFact> facts = new ArrayList<>();
    for (int m = 0; m < mornings; m++) {
      double all = random.nextInt(4) == 0 ? 15 * random.nextDouble() : 0;
      for (int room = 1; room <= 6; room++) {
        double late = -typical * Math.log(1 - random.nextDouble()) - 4 + all;
        facts.add(on(from.plusDays(m), "" + room).late(late).fact());
      }
    }
    return facts;
  }

  @Test
  void shouldFindAQuarterThatBecameFiveMinutesWorse() {
    SplittableRandom random = new SplittableRandom(1);
    Comparison c =
        Comparison.of(
            "before",
            mornings(MONDAY, 60, 7, random),
            "after",
            mornings(MONDAY.plusDays(100), 60, 14, random),
            3);
    assertThat(c.design()).isEqualTo(Design.BETWEEN_MORNINGS);
    assertThat(c.mornings()).isEqualTo(120);
    assertThat(c.minutes().verdict()).isEqualTo(Verdict.DIFFERS);
    assertThat(c.minutes().value()).isBetween(-9.0, -3.0);
    assertThat(c.minutes().interval().upper()).isNegative();
    assertThat(c.onTime().verdict()).isEqualTo(Verdict.DIFFERS);
    assertThat(width(c.onTime().interval())).isGreaterThanOrEqualTo(width(c.onTime().newcombe()));
    assertThat(c.onTime().adjusted()).isEqualTo(c.onTime().p());
  }

  /** Three weeks are enough beside a short time before them, so they are beside a long one. */
  @Test
  void shouldCompareFewMorningsWithAYear() {
    SplittableRandom random = new SplittableRandom(4);
    Comparison c =
        Comparison.of(
            "after",
            mornings(MONDAY.plusDays(300), 15, 20, random),
            "before",
            mornings(MONDAY, 200, 7, random),
            3);
    assertThat(c.mornings()).isEqualTo(215);
    assertThat(c.minutes().verdict()).isEqualTo(Verdict.DIFFERS);
    assertThat(c.minutes().interval().lower()).isPositive();
    assertThat(c.onTime().verdict()).isEqualTo(Verdict.DIFFERS);
  }

  private static double width(Interval interval) {
    return interval.upper() - interval.lower();
  }

  /**
   * Where nothing changed it is called a change no more often than it says, though starts of one
   * morning go together; a test of single starts would do so far more often.
   */
  @Test
  void shouldSeldomFindAChangeWhereThereIsNone() {
    SplittableRandom random = new SplittableRandom(2);
    int found = 0;
    int tries = 100;
    for (int t = 0; t < tries; t++) {
      Comparison c =
          Comparison.of(
              "a",
              mornings(MONDAY, 8, 8, random),
              "b",
              mornings(MONDAY.plusDays(100), 7, 8, random),
              t);
      found += c.minutes().verdict() == Verdict.DIFFERS ? 1 : 0;
    }
    assertThat(found).isLessThanOrEqualTo(11);
  }

  @Test
  void shouldSayTooFewAndNothingElseOfNineStartsOrFourMornings() {
    SplittableRandom random = new SplittableRandom(3);
    List<FirstCaseFact> many = mornings(MONDAY, 30, 8, random);
    Comparison four = Comparison.of("a", mornings(MONDAY.plusDays(60), 4, 8, random), "b", many, 1);
    assertThat(four.onTime().verdict()).isEqualTo(Verdict.TOO_FEW);
    assertThat(four.minutes().value()).isNull();
    List<FirstCaseFact> nine = mornings(MONDAY.plusDays(60), 9, 8, random);
    nine.removeIf(f -> !f.room().value().equals("1"));
    assertThat(Comparison.of("a", nine, "b", many, 1).minutes().verdict())
        .isEqualTo(Verdict.TOO_FEW);
    assertThat(Comparison.of("a", List.of(), "b", many, 1).minutes().verdict())
        .isEqualTo(Verdict.TOO_FEW);
  }

  @Test
  void shouldFindTheOneServiceThatIsLateAmongManyAndNoOther() {
    SplittableRandom random = new SplittableRandom(4);
    List<FirstCaseFact> facts = new ArrayList<>();
    String[] services = {"bones", "ears", "eyes", "general", "heart", "women"};
    for (int m = 0; m < 60; m++) {
      double all = random.nextInt(4) == 0 ? 20 * random.nextDouble() : 0;
      for (String service : services) {
        double own = service.equals("eyes") ? 10 : 0;
        double late = -6 * Math.log(1 - random.nextDouble()) - 4 + own + all;
        facts.add(on(MONDAY.plusDays(m), service).of(service).late(late).fact());
      }
    }
    List<Comparison> all = Comparison.eachWithTheRest(Split.SERVICE, facts, 5);
    assertThat(all).hasSize(6).allMatch(c -> c.design() == Design.WITHIN_MORNINGS);
    assertThat(all.stream().filter(c -> c.minutes().verdict() == Verdict.DIFFERS))
        .extracting(Comparison::first)
        .contains("eyes");
    Comparison eyes = all.get(2);
    assertThat(eyes.minutes().value()).isCloseTo(9.0, within(2.5));
    assertThat(eyes.minutes().adjusted()).isGreaterThan(eyes.minutes().p());
    assertThat(eyes.minutes().interval().contains(0)).isFalse();
  }

  @Test
  void shouldGiveTheSameFiguresForTheSameSeed() {
    List<FirstCaseFact> a = mornings(MONDAY, 20, 8, new SplittableRandom(6));
    List<FirstCaseFact> b = mornings(MONDAY.plusDays(50), 20, 8, new SplittableRandom(7));
    assertThat(Comparison.of("a", a, "b", b, 9)).isEqualTo(Comparison.of("a", a, "b", b, 9));
    Comparison one = Comparison.of("a", a, "b", b, 9);
    Comparison other = Comparison.of("b", b, "a", a, 9);
    assertThat(one.onTime().value()).isCloseTo(-other.onTime().value(), within(1e-12));
  }
}
