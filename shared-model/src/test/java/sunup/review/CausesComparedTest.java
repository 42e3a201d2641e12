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
import sunup.board.DelayReason;
import sunup.review.CausesCompared.Row;
import sunup.review.CausesCompared.Sums;
import sunup.review.Comparison.Verdict;
import sunup.review.charts.MinutesByCause.Grouping;
import sunup.review.facts.FirstCaseFact;
import sunup.review.facts.FirstCaseFact.Settled;

class CausesComparedTest {
  /** Five rooms a morning; the drugs wait on some mornings, the machine now and then. */
  private static List<FirstCaseFact> mornings(
      LocalDate from, int mornings, double slowDrugs, SplittableRandom random) {
    List<FirstCaseFact> facts = new ArrayList<>();
    for (int m = 0; m < mornings; m++) {
      boolean slow = random.nextDouble() < slowDrugs;
      for (int room = 1; room <= 5; room++) {
        double drugs = slow && room > 2 ? 5 + 10 * random.nextDouble() : 0;
        double machine = random.nextInt(5) == 0 ? 6 * random.nextDouble() : 0;
        double patient = 4 * random.nextDouble();
        double nobodyKnows = room == 5 ? 1 : 0;
        facts.add(
            on(from.plusDays(m), "" + room)
                .late(drugs + machine + patient + nobodyKnows)
                .piece("wait", "drugs.controlled", drugs, false)
                .piece("work", "machine.test", machine, false)
                .piece("arrival", "patient.arrived", patient, false)
                .reported(drugs > 0 ? DelayReason.EQUIPMENT : DelayReason.PATIENT, Settled.OPEN)
                .fact());
      }
    }
    return facts;
  }

  private static CausesCompared compared(
      List<FirstCaseFact> one, List<FirstCaseFact> other, Grouping grouping) {
    return CausesCompared.of("one", Sums.of(one, grouping), "other", Sums.of(other, grouping));
  }

  @Test
  void shouldNameTheDrugsOfASlowQuarterAndNothingElse() {
    SplittableRandom random = new SplittableRandom(1);
    CausesCompared c =
        compared(
            mornings(MONDAY, 60, 0.6, random),
            mornings(MONDAY.plusDays(100), 60, 0.05, random),
            Grouping.ITEM);
    Row drugs = c.rows().get(0);
    assertThat(drugs.label()).isEqualTo("wait drugs.controlled");
    assertThat(drugs.difference().verdict()).isEqualTo(Verdict.DIFFERS);
    // 0.55 of mornings, three of five rooms, 10 minutes.
    assertThat(drugs.difference().interval().contains(3.3)).isTrue();
    assertThat(drugs.difference().interval().lower()).isGreaterThan(2);
    assertThat(drugs.difference().value()).isCloseTo(drugs.first() - drugs.second(), within(1e-12));
    assertThat(c.rows().subList(1, c.rows().size()))
        .hasSize(3)
        .allMatch(r -> r.difference().verdict() == Verdict.NONE_SEEN)
        .allMatch(r -> r.difference().adjusted() >= r.difference().p());
    assertThat(c.rows()).extracting(Row::label).contains(CausesCompared.UNEXPLAINED);
    double sum = c.rows().stream().mapToDouble(Row::first).sum();
    assertThat(sum).as("rows add up to all").isCloseTo(c.first().perStart(), within(1e-9));
    assertThat(c.all().value())
        .isCloseTo(c.first().perStart() - c.second().perStart(), within(1e-12));
  }

  @Test
  void shouldGiveAllMinutesOfAStartToItsReportedReason() {
    SplittableRandom random = new SplittableRandom(2);
    CausesCompared c =
        compared(
            mornings(MONDAY, 40, 0.9, random),
            mornings(MONDAY.plusDays(100), 40, 0, random),
            Grouping.REPORTED);
    assertThat(c.rows()).extracting(Row::label).containsExactly("equipment", "patient");
    assertThat(c.rows()).allMatch(r -> r.difference().verdict() == Verdict.DIFFERS);
    assertThat(c.rows().get(1).difference().value()).isNegative();
  }

  /** Four causes at once: of a hundred such looks at nothing at most a few say "differs". */
  @Test
  void shouldSeldomFindACauseWhereNothingChanged() {
    SplittableRandom random = new SplittableRandom(3);
    int found = 0;
    for (int t = 0; t < 200; t++) {
      CausesCompared c =
          compared(
              mornings(MONDAY, 20, 0.1, random),
              mornings(MONDAY.plusDays(100), 90, 0.1, random),
              Grouping.ITEM);
      boolean any = c.rows().stream().anyMatch(r -> r.difference().verdict() == Verdict.DIFFERS);
      found += any ? 1 : 0;
    }
    assertThat(found).isLessThanOrEqualTo(16);
  }

  /** Five mornings of each side have it: no interval, and the others are corrected without it. */
  @Test
  void shouldGiveNoIntervalOfACauseThatHardlyEverCame() {
    SplittableRandom random = new SplittableRandom(5);
    List<FirstCaseFact> one = mornings(MONDAY, 40, 0.5, random);
    List<FirstCaseFact> other = mornings(MONDAY.plusDays(100), 40, 0.1, random);
    CausesCompared without = compared(one, other, Grouping.ITEM);
    for (int m = 0; m < 9; m++) {
      List<FirstCaseFact> side = m % 2 == 0 ? one : other;
      LocalDate day = (m % 2 == 0 ? MONDAY : MONDAY.plusDays(100)).plusDays(m);
      side.add(on(day, "6").late(3).piece("place", "bed.free", 3, false).fact());
    }
    CausesCompared with = compared(one, other, Grouping.ITEM);
    Row rare =
        with.rows().stream()
            .filter(r -> r.label().equals("place bed.free"))
            .findFirst()
            .orElseThrow();
    assertThat(rare.difference().verdict()).isEqualTo(Verdict.TOO_FEW);
    assertThat(rare.first()).isPositive();
    assertThat(with.rows()).hasSize(without.rows().size() + 1);
    Row drugs = with.rows().get(0);
    assertThat(drugs.difference().adjusted())
        .as("four are corrected, not five")
        .isCloseTo(4 * drugs.difference().p(), within(1e-12));
    one.add(on(MONDAY.plusDays(30), "6").late(3).piece("place", "bed.free", 3, false).fact());
    assertThat(compared(one, other, Grouping.ITEM).rows())
        .allMatch(r -> r.difference().verdict() != Verdict.TOO_FEW);
  }

  @Test
  void shouldWithholdNineStartsAndGiveNoIntervalOfNineMornings() {
    SplittableRandom random = new SplittableRandom(4);
    List<FirstCaseFact> many = mornings(MONDAY.plusDays(100), 40, 0.1, random);
    List<FirstCaseFact> nine = mornings(MONDAY, 2, 0.1, random).subList(0, 9);
    CausesCompared withheld = compared(nine, many, Grouping.SECTION);
    assertThat(withheld.rows()).isNull();
    assertThat(withheld.all()).isNull();
    assertThat(withheld.first().perStart()).isNull();
    assertThat(withheld.second().perStart()).as("nor by taking away").isNull();
    CausesCompared few = compared(mornings(MONDAY, 9, 0.5, random), many, Grouping.SECTION);
    assertThat(few.rows()).isNotEmpty();
    assertThat(few.rows()).allMatch(r -> r.difference().verdict() == Verdict.TOO_FEW);
    assertThat(few.all().interval()).isNull();
    assertThat(compared(List.of(), many, Grouping.KIND).rows()).isNull();
  }
}
