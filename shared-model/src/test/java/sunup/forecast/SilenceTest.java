package sunup.forecast;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;
import static sunup.forecast.Mornings.MINUTE;
import static sunup.forecast.Mornings.about;
import static sunup.forecast.Mornings.at;
import static sunup.forecast.Mornings.item;
import static sunup.forecast.Mornings.morning;
import static sunup.forecast.Mornings.people;
import static sunup.forecast.Mornings.person;
import static sunup.forecast.Mornings.room;

import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.Test;
import sunup.forecast.Forecast.RoomOut;
import sunup.forecast.ForecastInput.ItemIn;
import sunup.forecast.ForecastInput.Settings;
import sunup.forecast.ForecastInput.Silence;
import sunup.forecast.Mornings.Work;

/** Rule 3: one room, set-up median 26 min (10-90 % 19 to 35), arrival at T-50, not one word. */
class SilenceTest {
  private static final long TARGET = at(7, 30);
  private static final int ITEMS = 16;
  private static final int A_SECTION = 4;
  private static final double USUAL = 1.55;
  private static final double ONE_IN_TEN = 2.6;

  private static List<ItemIn> setUp() {
    List<Work> work = new ArrayList<>();
    String[] keys = new String[ITEMS];
    for (int i = 0; i < ITEMS; i++) {
      keys[i] = "i" + i;
      work.add(
          item(keys[i])
              .section("s" + i / A_SECTION)
              .by("anaesthetist")
              .takes(about(USUAL, ONE_IN_TEN)));
    }
    work.add(item("start").after(keys).marks("start").notBefore(TARGET));
    return Mornings.items(work.toArray(new Work[0]));
  }

  private static ForecastInput silent(long beforeTarget, Long lastWord, List<ItemIn> items) {
    Mornings.Person p = person("p", "anaesthetist").in("1").here(TARGET - 50 * MINUTE);
    if (lastWord != null) {
      p.spoke(lastWord);
    }
    return morning(
        TARGET - beforeTarget * MINUTE,
        2000,
        Settings.DEFAULT,
        people(p),
        List.of(room("1", TARGET, TARGET - 60 * MINUTE, items)));
  }

  private static RoomOut forecast(long beforeTarget) {
    return Forecaster.run(silent(beforeTarget, null, setUp())).rooms().get(0);
  }

  /** The same people played forward by other code: shares of the silent that are ready by T. */
  private static double truth(long beforeTarget) {
    Random random = new Random(5);
    double mu = Math.log(USUAL);
    double sigma = Math.log(ONE_IN_TEN / USUAL) / 1.2816;
    int silent = 0;
    int ready = 0;
    double now = 50 - beforeTarget;
    for (int n = 0; n < 100_000; n++) {
      double w = random.nextGaussian();
      double style = random.nextDouble();
      double pulled = random.nextDouble() < 0.07 ? random.nextDouble() * ITEMS : Double.MAX_VALUE;
      double t = 0;
      double word = Double.MAX_VALUE;
      for (int i = 0; i < ITEMS; i++) {
        double z = Math.sqrt(0.2) * w + Math.sqrt(0.8) * random.nextGaussian();
        t += Math.exp(mu + sigma * z);
        boolean says =
            style < 0.4
                || (style < 0.75 && i % A_SECTION == A_SECTION - 1)
                || (style < 0.95 && i == ITEMS - 1);
        if (says && word == Double.MAX_VALUE) {
          word = t;
        }
        if (i < pulled && pulled <= i + 1 && i < ITEMS - 1) {
          t += Math.exp(Math.log(12) + Math.log(30 / 12.0) / 1.2816 * random.nextGaussian());
        }
      }
      if (word > now) {
        silent++;
        ready += t <= 50 ? 1 : 0;
      }
    }
    return (double) ready / silent;
  }

  /**
   * Near the figures of a quick trial with other details (how long those called away stay is not
   * known of it); "nobody touched, so nothing is done" said 0.74, 0.13 and 0.00 there.
   */
  @Test
  void shouldTakeSilenceForWorkGoingOn() {
    assertThat(forecast(30).onTime()).isCloseTo(0.96, within(0.04));
    assertThat(forecast(20).onTime()).isCloseTo(0.92, within(0.05));
    assertThat(forecast(5).onTime()).isCloseTo(0.86, within(0.1));
  }

  @Test
  void shouldBeRightAboutTheRoomsThatAreSilent() {
    for (long before : new long[] {40, 30, 20}) {
      assertThat(forecast(before).onTime())
          .as("T-%d", before)
          .isCloseTo(truth(before), within(0.02));
    }
    assertThat(forecast(5).onTime()).as("T-5").isCloseTo(truth(5), within(0.05));
  }

  @Test
  void shouldSayHowManyHistoriesWereKept() {
    RoomOut early = forecast(45);
    RoomOut late = forecast(20);
    assertThat(early.kept()).isEqualTo(2000);
    assertThat(late.tried()).isGreaterThan(4 * early.tried());
  }

  @Test
  void shouldFallToNothingAfterTheTargetWithoutAWord() {
    assertThat(forecast(-1).onTime()).isZero();
  }

  @Test
  void shouldNotCallARoomLateForSilenceAlone() {
    RoomOut room = forecast(20);
    assertThat(room.start50()).isEqualTo(TARGET);
    assertThat(room.could50()).isLessThan(TARGET);
  }

  @Test
  void shouldNotHideWorkWhenAWordWasHeardJustNow() {
    long now = TARGET - 20 * MINUTE;
    RoomOut spoke = Forecaster.run(silent(20, now, setUp())).rooms().get(0);
    assertThat(spoke.onTime()).isLessThan(0.5);
    assertThat(spoke.tried()).isEqualTo(spoke.kept());
  }

  /** Items of 2 minutes since 7 minutes ago: three would have been told by now, or none yet. */
  @Test
  void shouldNotMissAWordThatMayStillBeOnItsWay() {
    Work[] work = new Work[6];
    for (int i = 0; i < work.length; i++) {
      work[i] = item("i" + i).by("anaesthetist").takes(Mornings.exactly(2));
    }
    work[5] = item("start").after("i4").marks("start");
    long now = TARGET - 30 * MINUTE;
    for (double delay : new double[] {4.9, 5.1}) {
      Settings told =
          new Settings(
              0,
              0,
              240 * MINUTE,
              0,
              new ForecastInput.Silence(
                  1, 0, 0, 0, 0, Mornings.exactly(0), Mornings.exactly(delay)));
      RoomOut out =
          Forecaster.run(
                  morning(
                      now,
                      10,
                      told,
                      people(person("p", "anaesthetist").in("1").here(now - 7 * MINUTE)),
                      List.of(room("1", TARGET, now, Mornings.items(work)))))
              .rooms()
              .get(0);
      assertThat(out.kept()).isEqualTo(delay < 5 ? 0 : 10);
      if (delay > 5) {
        assertThat(out.start50()).isEqualTo(now + 3 * MINUTE);
      }
    }
  }

  @Test
  void shouldCallNobodyAwayFromASetUpThatHasNoWorkOfHisOrHerOwn() {
    Draw long12 = new Draw.Constant(12 * MINUTE);
    Settings calls = new Settings(0, 0, 240 * MINUTE, 0, new Silence(0, 0, 0, 1, 1, long12));
    Draw five = new Draw.Constant(5 * MINUTE);
    Work in = item("in").by("nurse").takes(five).marks("in");
    Work start = item("start").by("nurse").takes(five).after("in").marks("start");
    ForecastInput morning =
        morning(
            TARGET,
            8,
            calls,
            people(
                person("n", "nurse").in("1").here(TARGET - 9 * MINUTE).spoke(TARGET - 3 * MINUTE)),
            List.of(room("1", TARGET, TARGET, Mornings.items(in, start))));
    assertThat(Forecaster.run(morning).rooms().get(0).start90()).isEqualTo(TARGET + 10 * MINUTE);
  }
}
