package sunup.forecast;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;
import static sunup.forecast.Mornings.MINUTE;
import static sunup.forecast.Mornings.PLAIN;
import static sunup.forecast.Mornings.about;
import static sunup.forecast.Mornings.at;
import static sunup.forecast.Mornings.exactly;
import static sunup.forecast.Mornings.item;
import static sunup.forecast.Mornings.items;
import static sunup.forecast.Mornings.morning;
import static sunup.forecast.Mornings.people;
import static sunup.forecast.Mornings.person;
import static sunup.forecast.Mornings.room;

import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;
import sunup.forecast.ForecastInput.KindIn;
import sunup.forecast.ForecastInput.RoomIn;
import sunup.forecast.ForecastInput.Settings;
import sunup.forecast.Mornings.Work;
import umontreal.ssj.probdist.NormalDist;

class ClosedFormsTest {
  private static final long NOW = at(6, 0);
  private static final int TRIALS = 20_000;

  /** Mean start after now in minutes: the target is now, so all of it is late minutes. */
  private static double mean(Forecast f, int room) {
    return f.rooms().get(room).meanLateMs() / MINUTE;
  }

  @Test
  void shouldAddTheMeansOfLogNormalDurations() {
    double expected = 0;
    double variance = 0;
    List<Work> chain = new ArrayList<>();
    for (int i = 0; i < 8; i++) {
      double sigma = StrictMath.log(2 + 0.1 * i) / 1.2816;
      double mean = (2 + i) * StrictMath.exp(sigma * sigma / 2);
      expected += mean;
      variance += mean * mean * (StrictMath.exp(sigma * sigma) - 1);
      chain.add(item("i" + i).by("a").takes(about(2 + i, (2 + i) * (2 + 0.1 * i))));
    }
    chain.add(item("start").after("i0", "i1", "i2", "i3", "i4", "i5", "i6", "i7").marks("start"));
    ForecastInput in =
        morning(
            NOW,
            TRIALS,
            PLAIN,
            people(person("p", "a").in("1").here(NOW).spoke(NOW)),
            List.of(room("1", NOW, NOW, items(chain.toArray(new Work[0])))));

    double error = Math.sqrt(variance / TRIALS);
    assertThat(mean(Forecaster.run(in), 0)).isCloseTo(expected, within(4 * error));

    // The person factor moves items together and leaves each one's mean where it is.
    Settings together = new Settings(0.5, 0, PLAIN.capMs(), 0, PLAIN.silence());
    ForecastInput shared = morning(NOW, TRIALS, together, in.people(), in.rooms());
    Forecast f = Forecaster.run(shared);
    assertThat(mean(f, 0)).isCloseTo(expected, within(10 * error));
    long spread = f.rooms().get(0).start90() - f.rooms().get(0).start10();
    Forecast apart = Forecaster.run(in);
    assertThat(spread)
        .isGreaterThan(
            (long) (1.3 * (apart.rooms().get(0).start90() - apart.rooms().get(0).start10())));
  }

  /**
   * E of the maximum of n exponentials of rate 1 is the harmonic number H_n, its variance the sum
   * of 1/k^2 (Renyi's representation; Feller, An Introduction to Probability Theory II, I.6).
   */
  @Test
  void shouldGiveTheMaximumOfExponentials() {
    int[] n = {2, 3, 4, 5, 8, 10, 20};
    double[] expected = {1.5, 1.8333, 2.0833, 2.2833, 2.7179, 2.9290, 3.5977};
    double[] variance = {1.25, 1.3611, 1.4236, 1.4636, 1.5274, 1.5498, 1.5962};
    for (int k = 0; k < n.length; k++) {
      List<Work> all = new ArrayList<>();
      String[] keys = new String[n[k]];
      for (int i = 0; i < n[k]; i++) {
        keys[i] = "i" + i;
        all.add(item(keys[i]).takes(new Draw.Exponential(MINUTE)));
      }
      all.add(item("start").after(keys).marks("start"));
      ForecastInput in =
          morning(
              NOW,
              TRIALS,
              PLAIN,
              List.of(),
              List.of(room("1", NOW, NOW, items(all.toArray(new Work[0])))));
      assertThat(mean(Forecaster.run(in), 0))
          .as("n = %d", n[k])
          .isCloseTo(expected[k], within(4 * Math.sqrt(variance[k] / TRIALS)));
    }
  }

  /** One machine for two rooms, both wanted at once: the second waits for the first's R. */
  @Test
  void shouldLetTheSecondRoomWaitForTheOneMachine() {
    List<RoomIn> rooms = new ArrayList<>();
    for (String id : List.of("1", "2")) {
      rooms.add(
          room(
              id,
              NOW,
              NOW,
              items(
                  item("ready").takes(new Draw.Exponential(10 * MINUTE)),
                  item("scan").takes(exactly(12)).needs("ultrasound", 1, null).after("ready"),
                  item("start").after("scan").marks("start"))));
    }
    ForecastInput in =
        Mornings.with(
            morning(NOW, TRIALS, PLAIN, List.of(), rooms),
            List.of(new KindIn("ultrasound", 1, List.of())),
            List.of());
    Forecast f = Forecaster.run(in);
    assertThat(f.components()).hasSize(1);
    // X = |difference of two exponentials| is exponential with the same mean; the later room waits
    // E[max(0, R - X)] = R - mean (1 - exp(-R / mean)), each room is the later one half the time.
    double wait = 12 - 10 * (1 - Math.exp(-1.2));
    double both = mean(f, 0) + mean(f, 1);
    assertThat(both).isCloseTo(2 * (10 + 12) + wait, within(0.5));
    // With two machines nobody waits, and the rooms are apart.
    ForecastInput two =
        Mornings.with(in, List.of(new KindIn("ultrasound", 2, List.of())), List.of());
    Forecast g = Forecaster.run(two);
    assertThat(g.components()).hasSize(2);
    assertThat(mean(g, 0) + mean(g, 1)).isCloseTo(44, within(0.45));
  }

  /**
   * The closed form of one machine wanted a time X after the other room took it for R: E[max(0, R -
   * X)] = R F(d) - m exp(s^2 / 2) F(d - s), d = ln(R / m) / s, for R constant and X log-normal with
   * median m (the put price of Black and Scholes, Journal of Political Economy 81, 1973, without
   * interest); r^2 / (r + x) for both exponential (the memoryless property).
   */
  @Test
  void shouldWaitForTheMachineAsLongAsTheClosedFormsSay() {
    double sigma = Math.log(2) / 1.2816;
    double d = Math.log(12 / 8.0) / sigma;
    double put =
        12 * NormalDist.cdf01(d) - 8 * Math.exp(sigma * sigma / 2) * NormalDist.cdf01(d - sigma);
    assertThat(wait(exactly(12), about(8, 16))).isCloseTo(put, within(4 * 5 / Math.sqrt(TRIALS)));
    Draw.Exponential r = new Draw.Exponential(12 * MINUTE);
    Draw.Exponential x = new Draw.Exponential(8 * MINUTE);
    assertThat(wait(r, x)).isCloseTo(144 / 20.0, within(4 * 11 / Math.sqrt(TRIALS)));
  }

  /** Mean minutes that the second room waits: the same draws with two machines, subtracted. */
  private static double wait(Draw firstHolds, Draw secondReady) {
    RoomIn first =
        room(
            "1",
            NOW,
            NOW,
            items(
                item("scan").takes(firstHolds).needs("ultrasound", 1, null),
                item("start").after("scan").marks("start")));
    RoomIn second =
        room(
            "2",
            NOW,
            NOW,
            items(
                item("ready").takes(secondReady),
                item("scan").takes(exactly(3)).needs("ultrasound", 1, null).after("ready"),
                item("start").after("scan").marks("start")));
    ForecastInput in = morning(NOW, TRIALS, PLAIN, List.of(), List.of(first, second));
    double[] means = new double[3];
    for (int machines = 1; machines <= 2; machines++) {
      KindIn kind = new KindIn("ultrasound", machines, List.of());
      Forecast f = Forecaster.run(Mornings.with(in, List.of(kind), List.of()));
      means[machines] = mean(f, 1);
    }
    return means[1] - means[2];
  }

  /**
   * Epstein and Dexter, Anesthesiology 116 (2012) 683: first-case anaesthesia release 22.2 min; in
   * a teaching hospital one anaesthetist with two first starts for the same minute delayed the
   * second induction 22.3 min more than the first. Setting: one person alone over two rooms, held
   * from induction to release, both rooms ready, release log-normal with mean 22.2 and SD 16 min.
   */
  @Test
  void shouldDelayTheSecondRoomOfOneAnaesthetistByTheReleaseTime() {
    double sigma = Math.sqrt(Math.log(1 + Math.pow(16 / 22.2, 2)));
    double usual = 22.2 / Math.exp(sigma * sigma / 2);
    Draw release = about(usual, usual * Math.exp(1.2816 * sigma));
    for (int rooms : new int[] {2, 3}) {
      List<RoomIn> list = new ArrayList<>();
      for (int r = 1; r <= rooms; r++) {
        list.add(
            room(
                "" + r,
                NOW,
                NOW,
                items(
                    item("induction").by("anaesthetist").marks("start"),
                    item("release")
                        .by("anaesthetist")
                        .takes(release)
                        .after("induction")
                        .marks("release"))));
      }
      ForecastInput in =
          morning(NOW, TRIALS, PLAIN, people(person("p", "anaesthetist").here(NOW)), list);
      Forecast f = Forecaster.run(in);
      double error = 4 * 16 / Math.sqrt(TRIALS);
      assertThat(mean(f, 1) - mean(f, 0)).isCloseTo(22.2, within(error));
      if (rooms == 3) {
        assertThat(mean(f, 2) - mean(f, 0)).isCloseTo(44.4, within(1.5 * error));
      }
    }
  }
}
