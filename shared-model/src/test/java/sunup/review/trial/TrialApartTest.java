package sunup.review.trial;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;
import static sunup.review.facts.InventedFacts.MONDAY;
import static sunup.review.facts.InventedFacts.on;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.SplittableRandom;
import org.hipparchus.stat.inference.TTest;
import org.junit.jupiter.api.Test;
import sunup.board.MorningId;
import sunup.board.SuiteId;
import sunup.review.Comparison.Difference;
import sunup.review.Comparison.Verdict;
import sunup.review.Split;
import sunup.review.facts.FirstCaseFact;
import sunup.review.facts.InventedFacts;
import sunup.review.trial.TrialApart.Group;

/** Whether as many starts came as was said, of all and by group. */
class TrialApartTest {
  /** A morning's own luck moves all its starts; the board knows the rest of their chance. */
  private static List<Said> said(SplittableRandom random, int mornings, double tooMuch) {
    List<Said> said = new ArrayList<>();
    for (int m = 0; m < mornings; m++) {
      MorningId morning = new MorningId(new SuiteId("s"), MONDAY.plusDays(m));
      double luck = random.nextDouble(-0.2, 0.2);
      for (int start = 0; start < 8 + random.nextInt(5); start++) {
        double own = random.nextDouble(0.25, 0.75);
        boolean came = random.nextDouble() < own + luck;
        said.add(new Said(morning, own + tooMuch, came, .5, false, false, null));
      }
    }
    return said;
  }

  /** Seeded: how often "too hopeful" or "too gloomy" is said of a board that is neither. */
  @Test
  void shouldSeldomCallARightBoardWrongAndHoldWhatItIsOffBy() {
    SplittableRandom random = new SplittableRandom(5);
    int held = 0;
    int called = 0;
    int rounds = 600;
    for (int r = 0; r < rounds; r++) {
      Difference right = large(said(random, 30, 0)).off();
      called += right.verdict() == Verdict.DIFFERS ? 1 : 0;
      held += large(said(random, 30, 0.15)).off().interval().contains(0.15) ? 1 : 0;
    }
    assertThat(called / (double) rounds).isBetween(0.02, 0.08);
    assertThat(held / (double) rounds).isBetween(0.92, 0.98);
  }

  /** Nine in ten come on time, as was said: what came then hardly scatters. */
  @Test
  void shouldSeldomCallARightBoardWrongWhereHardlyAnyStartIsLate() {
    SplittableRandom random = new SplittableRandom(11);
    for (int mornings : new int[] {10, 20, 40}) {
      int called = 0;
      for (int r = 0; r < 500; r++) {
        List<Said> said = new ArrayList<>();
        for (int m = 0; m < mornings; m++) {
          double chance = random.nextDouble(0.85, 0.99);
          boolean came = random.nextDouble() < chance;
          said.add(said(m, chance, came));
        }
        called += large(said).off().verdict() == Verdict.DIFFERS ? 1 : 0;
      }
      assertThat(called / 500.0).as("%s mornings", mornings).isLessThan(0.08);
    }
  }

  private static Said said(int morning, double chance, boolean came) {
    MorningId id = new MorningId(new SuiteId("s"), MONDAY.plusDays(morning));
    return new Said(id, chance, came, .5, false, false, null);
  }

  @Test
  void shouldCallTheBoardWrongThatIsGloomyThoughNoStartIsEverLate() {
    List<Said> said = new ArrayList<>();
    for (int m = 0; m < 20; m++) {
      said.add(said(m, 0.5, true));
    }
    assertThat(large(said).off().verdict()).isEqualTo(Verdict.DIFFERS);
    assertThat(large(said).off().value()).isCloseTo(-0.5, within(1e-12));
  }

  @Test
  void shouldCallNobodyTheBetterGuideWhereHardlyAnyStartIsLateOrMorningsAreFew() {
    List<FirstCaseFact> facts = new ArrayList<>();
    for (int m = 0; m < 60; m++) {
      InventedFacts one = on(MONDAY.plusDays(m), "1").late(m == 20 ? 9 : 0);
      facts.add(one.said(60, .9, .5, false, null, null).fact());
    }
    Group room = TrialApart.of(facts, Split.ROOM, 60).groups().get(0);
    assertThat(room.overAverage().verdict()).isEqualTo(Verdict.TOO_FEW);
    assertThat(Trial.of(facts, 60, 1).all().overAverage().interval()).isNull();
    List<Said> few = said(new SplittableRandom(12), 14, 0);
    assertThat(Trial.ofSaid(few, 40, 1).all().overAverage().interval())
        .as("five of the fourteen taught")
        .isNull();
  }

  private static InTheLarge large(List<Said> said) {
    return Trial.ofSaid(said, 40, 1).all().large();
  }

  @Test
  void shouldBeAPlainTestOfMorningsWhereEachHasOneStart() {
    SplittableRandom random = new SplittableRandom(6);
    List<Said> said = new ArrayList<>();
    double[] off = new double[40];
    for (int m = 0; m < off.length; m++) {
      double chance = random.nextDouble();
      boolean came = random.nextInt(3) == 0;
      off[m] = chance - (came ? 1 : 0);
      MorningId morning = new MorningId(new SuiteId("s"), MONDAY.plusDays(m));
      said.add(new Said(morning, chance, came, .5, false, false, null));
    }
    InTheLarge large = large(said);
    assertThat(large.off().p()).isCloseTo(new TTest().tTest(0, off), within(1e-9));
    assertThat(large.said() - large.came()).isCloseTo(large.off().value(), within(1e-12));
  }

  @Test
  void shouldSayTooHopefulWhereMoreWasSaidThanCame() {
    InTheLarge large = large(said(new SplittableRandom(7), 60, 0.2));
    assertThat(large.off().verdict()).isEqualTo(Verdict.DIFFERS);
    assertThat(large.off().interval().contains(0.2)).isTrue();
    assertThat(large(said(new SplittableRandom(7), 9, 0.2)).off().verdict())
        .isEqualTo(Verdict.TOO_FEW);
  }

  /** Rooms 1 to 6: the board knows the first three, and promises too much of room 6. */
  private static List<FirstCaseFact> rooms(int mornings, SplittableRandom random) {
    List<FirstCaseFact> facts = new ArrayList<>();
    LocalDate day = MONDAY;
    for (int m = 0; m < mornings; m++, day = day.plusDays(1)) {
      for (int room = 1; room <= 6; room++) {
        boolean good = random.nextBoolean();
        boolean came = random.nextDouble() < (good ? .8 : .2);
        double said = room <= 3 ? (good ? .8 : .2) : room == 6 ? .8 : .5;
        facts.add(
            on(day, "" + room).late(came ? 0 : 9).said(60, said, .5, false, null, null).fact());
      }
    }
    return facts;
  }

  @Test
  void shouldJudgeEachRoomBesideItsOwnAverage() {
    TrialApart apart = TrialApart.of(rooms(400, new SplittableRandom(8)), Split.ROOM, 60);
    assertThat(apart.groups()).hasSize(6).allMatch(g -> g.forecasts() == 400);
    for (Group known : apart.groups().subList(0, 3)) {
      assertThat(known.large().off().verdict()).isEqualTo(Verdict.NONE_SEEN);
      assertThat(known.overAverage().verdict()).isEqualTo(Verdict.DIFFERS);
      assertThat(known.overAverage().value()).isCloseTo(1 - .16 / .25, within(.12));
    }
    Group promised = apart.groups().get(5);
    assertThat(promised.large().off().verdict()).isEqualTo(Verdict.DIFFERS);
    assertThat(promised.large().off().value()).isCloseTo(.3, within(.1));
    assertThat(promised.overAverage().value()).isNegative();
    assertThat(promised.overAverage().interval().upper()).isNegative();
    assertThat(promised.large().off().adjusted()).isGreaterThan(promised.large().off().p());
  }

  /** A group by itself is judged as the trial judges what is chosen by a filter. */
  @Test
  void shouldAgreeWithTheTrialOfThatRoomAlone() {
    List<FirstCaseFact> facts = rooms(120, new SplittableRandom(9));
    Group third = TrialApart.of(facts, Split.ROOM, 60).groups().get(2);
    List<FirstCaseFact> own = facts.stream().filter(f -> f.room().value().equals("3")).toList();
    Trial.Score alone = Trial.of(own, 60, 1).all();
    assertThat(third.large().said()).isCloseTo(alone.large().said(), within(1e-12));
    assertThat(third.overAverage().value()).isCloseTo(alone.overAverage().skill(), within(1e-12));
    assertThat(third.overAverage().interval().lower())
        .isCloseTo(alone.overAverage().interval().lower(), within(.05));
  }

  @Test
  void shouldSayTooFewOfFewMorningsAndWithholdNineForecasts() {
    List<FirstCaseFact> facts = rooms(9, new SplittableRandom(10));
    assertThat(TrialApart.of(facts, Split.ROOM, 60).groups())
        .hasSize(6)
        .allMatch(g -> g.large() == null && g.overAverage() == null);
    Group all = TrialApart.of(facts, Split.SUITE, 60).groups().get(0);
    assertThat(all.forecasts()).isEqualTo(54);
    assertThat(all.large().off().verdict()).isEqualTo(Verdict.TOO_FEW);
    assertThat(TrialApart.of(facts, Split.ROOM, 20).groups()).isEmpty();
  }
}
