package sunup.review.trial;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;
import static sunup.review.facts.InventedFacts.MONDAY;
import static sunup.review.facts.InventedFacts.on;

import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.SplittableRandom;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.DoubleRange;
import net.jqwik.api.constraints.Size;
import org.junit.jupiter.api.Test;
import sunup.board.MorningId;
import sunup.board.SuiteId;
import sunup.codec.BadJson;
import sunup.codec.Json;
import sunup.review.facts.FirstCaseFact;
import sunup.review.facts.InventedFacts;
import sunup.review.trial.Murphy.Cell;
import sunup.review.trial.Trial.Score;

class TrialTest {
  private static final double[] SAID = {0, .05, .1, .2, .3, .4, .5, .6, .7, .8, .9, 1};
  private static final double[] CAME = {
    .006, .019, .059, .15, .277, .377, .511, .587, .723, .779, .934, .933
  };

  /** Some copies misprint .0245 and .0203 as .245 and .203: the weights add to 1. */
  private static final double[] WEIGHT = {
    .4112, .0671, .1833, .0986, .0616, .0366, .0303, .0275, .0245, .0220, .0170, .0203
  };

  /**
   * Wilks, Statistical Methods in the Atmospheric Sciences, 1st ed., Table 7.3 (data by a public
   * package's example; the book prints a base rate of .162). The parts are computed.
   */
  @Test
  void shouldTakeApartTheScoreOfWilksForecastsOfRain() {
    List<Cell> cells = new ArrayList<>();
    double sum = 0;
    for (int i = 0; i < SAID.length; i++) {
      cells.add(new Cell(SAID[i], CAME[i], WEIGHT[i]));
      sum += WEIGHT[i];
    }
    assertThat(sum).isCloseTo(1, within(1e-9));
    Murphy murphy = Murphy.of(cells);
    assertThat(murphy.base()).isCloseTo(.16150, within(5e-6));
    assertThat(murphy.reliability()).isCloseTo(.000828, within(5e-7));
    assertThat(murphy.resolution()).isCloseTo(.062787, within(5e-7));
    assertThat(murphy.uncertainty()).isCloseTo(.135420, within(2e-6));
    assertThat(murphy.score()).isCloseTo(.073461, within(2e-6));
    assertThat(murphy.within()).isCloseTo(0, within(1e-12));
    assertThat(murphy.skillOverBase()).isCloseTo(.4575, within(5e-5));
  }

  @Test
  void shouldScoreOneHalfAQuarterPerfectNothingAndWrongOne() {
    assertThat(Murphy.of(List.of(new Cell(.5, .3, 10))).score()).isEqualTo(.25);
    assertThat(Murphy.of(List.of(new Cell(1, 1, 3), new Cell(0, 0, 4))).score()).isZero();
    assertThat(Murphy.of(List.of(new Cell(0, 1, 3))).score()).isEqualTo(1);
    assertThat(Murphy.of(List.of(new Cell(0, 1, 3))).skillOverBase()).isNull();
  }

  /** Formula of Spiegelhalter, Stat Med 5 (1986) 421-433; the example is computed. */
  @Test
  void shouldTestWhetherChancesAreRight() {
    List<Double> p = List.of(.1, .2, .3, .4, .5, .6, .7, .8, .9, .9);
    List<Boolean> y = List.of(false, false, false, true, false, true, true, true, true, true);
    assertThat(z(p, y)).isCloseTo(-1.1113, within(5e-5));
    assertThat(Trial.chanceOf(-1.1113)).isCloseTo(.2664, within(5e-4));
    List<Double> sure = Collections.nCopies(10, .5);
    assertThat(z(sure, Collections.nCopies(10, true))).isNull();
  }

  private static Double z(List<Double> chances, List<Boolean> came) {
    List<Said> said = new ArrayList<>();
    for (int i = 0; i < chances.size(); i++) {
      MorningId morning = new MorningId(new SuiteId("s"), MONDAY.plusDays(i));
      said.add(new Said(morning, chances.get(i), came.get(i), .5, false, false, null));
    }
    return Trial.ofSaid(said, 40, 1).all().spiegelhalter();
  }

  @Property(tries = 40)
  void shouldAddUpExactlyWhateverWasSaid(
      @ForAll @Size(min = 10, max = 60) List<@DoubleRange(min = 0, max = 1) Double> chances) {
    List<FirstCaseFact> facts = new ArrayList<>();
    double sum = 0;
    for (int i = 0; i < chances.size(); i++) {
      boolean came = i % 3 != 0;
      sum += Math.pow(chances.get(i) - (came ? 1 : 0), 2);
      facts.add(
          on(MONDAY.plusDays(i / 4), "" + i % 4)
              .late(came ? 0 : 8)
              .said(40, chances.get(i), .5, i % 5 == 0, null, null)
              .fact());
    }
    Trial trial = Trial.of(facts, 40, 1);
    Murphy m = trial.all().brier();
    assertThat(m.score()).isCloseTo(sum / chances.size(), within(1e-12));
    assertThat(m.reliability() - m.resolution() + m.uncertainty() + m.within())
        .isCloseTo(m.score(), within(1e-12));
    assertThat(m.reliability()).isNotNegative();
    assertThat(trial.all().curve().stream().mapToInt(Trial.Bin::n).sum()).isEqualTo(chances.size());
    assertThat(Trial.of(facts, 20, 1).all()).isNull();
  }

  /** Every start has a true chance; the board knows it, percent done tells a part of it. */
  private static List<FirstCaseFact> year(double shade, SplittableRandom random) {
    List<FirstCaseFact> facts = new ArrayList<>();
    for (int day = 0; day < 200; day++) {
      for (int room = 0; room < 6; room++) {
        double truth = .05 + .9 * random.nextDouble();
        double done = Math.min(1, Math.max(0, .2 + .6 * truth + .3 * (random.nextDouble() - .5)));
        boolean came = random.nextDouble() < truth;
        boolean acted = truth < .4 && random.nextBoolean();
        came |= acted && random.nextBoolean();
        InventedFacts fact =
            on(MONDAY.plusDays(day), "" + room)
                .late(came ? 0 : 5 + 20 * random.nextDouble())
                .said(40, Math.pow(truth, shade), done, acted, "work", "drugs.drawn");
        if (!came) {
          fact.piece("work", random.nextInt(10) < 7 ? "drugs.drawn" : "iv.line", 9, false);
        }
        facts.add(fact.fact());
      }
    }
    return facts;
  }

  @Test
  void shouldBelieveABoardThatKnowsTheChances() throws BadJson {
    Trial trial = Trial.of(year(1, new SplittableRandom(1)), 40, 2);
    Score score = trial.deskDidNot();
    assertThat(trial.forecasts()).isEqualTo(1_200);
    assertThat(trial.recomputed()).isZero();
    assertThat(Math.abs(score.spiegelhalter())).isLessThan(3);
    assertThat(score.brier().reliability()).isLessThan(.004);
    assertThat(score.overAverage().interval().lower()).isPositive();
    assertThat(score.overPercentDone().interval().lower()).isPositive();
    assertThat(score.overPercentDone().skill()).isLessThan(score.overAverage().skill());
    assertThat(score.brierInterval().contains(score.brier().score())).isTrue();
    assertThat(score.curve().stream().filter(bin -> bin.interval().contains(bin.said())).count())
        .as("intervals of 95 % that hold the chance said, of ten")
        .isGreaterThanOrEqualTo(8);
    Trial again = Trial.of(year(1, new SplittableRandom(1)), 40, 2);
    assertThat(again).isEqualTo(trial);
    assertThat(Json.read(Json.write(trial), Trial.class)).isEqualTo(trial);
  }

  /** What the desk saved came though it was said to be late: gloomy there, fair elsewhere. */
  @Test
  void shouldShowApartWhereTheDeskActed() {
    Trial trial = Trial.of(year(1, new SplittableRandom(3)), 40, 2);
    assertThat(trial.deskActed().n() + trial.deskDidNot().n()).isEqualTo(1_200);
    assertThat(trial.deskActed().spiegelhalter()).isGreaterThan(3);
    assertThat(Math.abs(trial.deskDidNot().spiegelhalter())).isLessThan(3);
  }

  @Test
  void shouldNotBelieveABoardThatPromisesTooMuch() {
    Trial trial = Trial.of(year(.3, new SplittableRandom(4)), 40, 2);
    assertThat(trial.all().brier().reliability()).isGreaterThan(.02);
    assertThat(trial.all().overPercentDone().skill()).isNegative();
    assertThat(Math.abs(trial.deskDidNot().spiegelhalter())).isGreaterThan(5);
  }

  @Test
  void shouldSayHowOftenTheNamedHoldupWasTheOne() {
    Trial.Named named = Trial.of(year(1, new SplittableRandom(5)), 40, 2).all().named();
    assertThat(named.share()).isCloseTo(.7, within(.06));
    assertThat(named.interval().contains(.7)).isTrue();
    assertThat((double) named.x() / named.n()).isEqualTo(named.share());
  }

  /**
   * Twelve forecasts, fewer than ten of them of late starts: neither the share nor what gives it.
   */
  @Test
  void shouldNotGiveAwayTheShareOfFewNamedHoldups() {
    List<FirstCaseFact> facts = year(1, new SplittableRandom(5)).subList(0, 12);
    Trial.Named named = Trial.of(facts, 40, 2).all().named();
    assertThat(named.n()).isBetween(1, 9);
    assertThat(named).isEqualTo(new Trial.Named(null, named.n(), null, null));
  }

  @Test
  void shouldCompareOnlyWithWhatEarlierMorningsTaught() {
    List<FirstCaseFact> facts = year(1, new SplittableRandom(6));
    Score score = Trial.of(facts, 40, 2).all();
    assertThat(score.overAverage().n()).as("five mornings of six teach first").isEqualTo(1_170);
    List<FirstCaseFact> short12 = facts.subList(0, 12);
    assertThat(Trial.of(short12, 40, 2).all().overAverage()).isNull();
    assertThat(Trial.of(facts.subList(0, 9), 40, 2).all()).isNull();
  }

  @Test
  void shouldJudgeWhatTheBoardKeptApartFromWhatTodaysModelSaysOfOlderMornings() {
    List<Said> kept = Said.of(year(1, new SplittableRandom(6)), 40);
    List<Said> both = new ArrayList<>(kept);
    for (Said s : kept) {
      both.add(
          new Said(s.morning(), 1 - s.chance(), s.came(), s.done(), s.deskActed(), true, null));
    }
    Trial trial = Trial.ofSaid(both, 40, 2);
    Score alone = Trial.ofSaid(kept, 40, 2).all();
    assertThat(trial.forecasts()).isEqualTo(kept.size());
    assertThat(trial.recomputed()).isEqualTo(kept.size());
    assertThat(trial.all().brier()).isEqualTo(alone.brier());
    assertThat(trial.all().curve()).isEqualTo(alone.curve());
    assertThat(trial.replayed().brier().score()).isGreaterThan(alone.brier().score());
  }
}
