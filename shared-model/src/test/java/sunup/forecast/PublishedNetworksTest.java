package sunup.forecast;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;
import static sunup.forecast.Mornings.MINUTE;
import static sunup.forecast.Mornings.PLAIN;
import static sunup.forecast.Mornings.at;
import static sunup.forecast.Mornings.exactly;
import static sunup.forecast.Mornings.item;
import static sunup.forecast.Mornings.morning;
import static sunup.forecast.Mornings.room;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.function.ToDoubleFunction;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;
import sunup.forecast.Forecast.ItemOut;
import sunup.forecast.Mornings.Work;
import umontreal.ssj.probdist.NormalDist;

/**
 * Networks of textbooks with the results that they print. Times in the books' units are minutes
 * here. The normal answer of PERT looks at one path only and is too hopeful where other paths are
 * nearly as long (merge bias); a simulation must come out lower.
 */
class PublishedNetworksTest {
  private static final long START = at(6, 0);
  private static final int TRIALS = 4000;

  /** An activity with its three times, equal for a fixed one, and who it waits for. */
  private record Activity(String key, double low, double likely, double high, List<String> after) {
    double mean() {
      return (low + 4 * likely + high) / 6;
    }

    /** The books' variance. */
    double variance() {
      return (high - low) * (high - low) / 36;
    }

    /** The variance of the beta distribution that a three-point duration has. */
    double betaVariance() {
      return high == low ? 0 : (mean() - low) * (high - mean()) / 7;
    }

    Draw draw() {
      return high == low
          ? exactly(low)
          : new Draw.ThreePoint(minutes(low), minutes(likely), minutes(high));
    }
  }

  private enum Book {
    /**
     * Heizer and Render, Operations Management, Milwaukee Paper: times and slack as printed, three
     * times and the printed probability .7157 from memory.
     */
    MILWAUKEE(
        "A 1 2 3 -; B 2 3 4 -; C 1 2 3 A; D 2 4 6 B; E 1 4 7 C; F 1 2 9 C; G 3 4 11 D,E;"
            + "H 1 2 3 F,G",
        "A 0, B 1, C 0, D 1, E 0, F 6, G 0, H 0",
        15,
        28 / 9.0,
        16,
        0.7157),
    /** A PERT exercise of 14 activities from a collection of exercises (wizedu, 717873). */
    FOURTEEN(
        "A 5 5 7 -; B 1 2 5 -; C 5 5 5 A; D 4 8 13 A; E 1 10 17 B,C; F 1 5 7 D; G 2 6 9 D;"
            + "H 4 4 6 E,F; I 2 7 10 G,H; J 2 4 7 I; K 6 10 13 I; L 2 6 6 J; M 2 2 3 K;"
            + "N 7 7 12 L,M",
        "A 0, B 8, C 0, D 1.833, E 0, F 1.833, G 5, H 0, I 0, J 2.5, K 0, L 2.5, M 0, N 0",
        50.8333,
        11.19,
        55,
        0.8935),
    /**
     * Taylor, Introduction to Management Science, order processing: the critical path 1-3-5-7 is
     * all that the project has of it, so there is one path and no merge bias.
     */
    ORDERS(
        "1 5 8 17 -; 3 3 5 7 1; 5 4 6 8 3; 7 3 4 5 5", "1 0, 3 0, 5 0, 7 0", 24, 5.0, 28, 0.9633),
    /** Taylor, Introduction to Management Science, solutions to chapter 8, problem 1. */
    TAYLOR_ONE(
        "1-2 7 7 7 -; 1-3 10 10 10 -; 2-4 6 6 6 1-2; 3-4 5 5 5 1-3; 3-5 4 4 4 1-3;"
            + "4-5 3 3 3 2-4,3-4; 5-6 2 2 2 3-5,4-5",
        "1-2 2, 1-3 0, 2-4 2, 3-4 0, 3-5 4, 4-5 0, 5-6 0",
        20,
        0,
        20,
        1),
    /** The same, problem 2, with the dummy 4-5. */
    TAYLOR_TWO(
        "1-2 8 8 8 -; 1-3 10 10 10 -; 1-4 9 9 9 -; 2-5 6 6 6 1-2; 2-6 4 4 4 1-2; 3-5 5 5 5 1-3;"
            + "4-5 0 0 0 1-4; 4-7 7 7 7 1-4; 5-7 12 12 12 2-5,3-5,4-5; 5-8 15 15 15 2-5,3-5,4-5;"
            + "6-9 18 18 18 2-6; 7-8 4 4 4 4-7,5-7; 8-9 7 7 7 5-8,7-8",
        "1-2 1, 1-3 0, 1-4 6, 2-5 1, 2-6 8, 3-5 0, 4-5 6, 4-7 11, 5-7 0, 5-8 1, 6-9 8, 7-8 0,"
            + "8-9 0",
        38,
        0,
        38,
        1),
    /**
     * Hillier and Lieberman, Introduction to Operations Research, Reliable Construction:
     * predecessors, the three times and P = .84 from memory.
     */
    RELIABLE(
        "A 1 2 3 -; B 2 3.5 8 A; C 6 9 18 B; D 4 5.5 10 C; E 1 4.5 5 C; F 4 4 10 E; G 5 6.5 11 D;"
            + "H 5 8 17 E,G; I 3 7.5 9 C; J 3 9 9 F,I; K 4 4 4 J; L 1 5.5 7 J; M 1 2 3 H;"
            + "N 5 5.5 9 K,L",
        "A 0, B 0, C 0, E 0, F 0, J 0, L 0, N 0, K 1",
        44,
        9,
        47,
        0.84);

    private final String net;
    private final String slacks;
    private final double length;
    private final double variance;
    private final double due;
    private final double printed;

    Book(String net, String slacks, double length, double variance, double due, double printed) {
      this.net = net;
      this.slacks = slacks;
      this.length = length;
      this.variance = variance;
      this.due = due;
      this.printed = printed;
    }

    Map<String, Activity> activities() {
      Map<String, Activity> all = new LinkedHashMap<>();
      for (String line : net.split(";", -1)) {
        String[] w = line.trim().split(" ", -1);
        List<String> after = w[4].equals("-") ? List.of() : List.of(w[4].split(",", -1));
        all.put(w[0], new Activity(w[0], number(w[1]), number(w[2]), number(w[3]), after));
      }
      return all;
    }

    Map<String, Double> slack() {
      Map<String, Double> all = new LinkedHashMap<>();
      for (String s : slacks.split(",", -1)) {
        String[] w = s.trim().split(" ", -1);
        all.put(w[0], number(w[1]));
      }
      return all;
    }

    List<String> all() {
      return List.copyOf(activities().keySet());
    }

    double sumOverThePath(ToDoubleFunction<Activity> of) {
      return critical().stream().map(activities()::get).mapToDouble(of).sum();
    }

    List<String> critical() {
      Map<String, Double> slack = slack();
      return slack.keySet().stream().filter(k -> slack.get(k) == 0).toList();
    }

    boolean onePath() {
      return critical().size() == activities().size();
    }
  }

  private static double number(String s) {
    return Double.parseDouble(s);
  }

  private static long minutes(double m) {
    return Math.round(m * MINUTE);
  }

  /** The network's activities in `keys`, each for its mean or as drawn, against a due time. */
  private static ForecastInput network(Book book, List<String> keys, boolean drawn, double due) {
    List<Work> works = new ArrayList<>();
    for (String key : keys) {
      Activity a = book.activities().get(key);
      Draw draw = drawn ? a.draw() : exactly(a.mean());
      String[] after = a.after.stream().filter(keys::contains).toArray(String[]::new);
      works.add(item(key).takes(draw).after(after));
    }
    works.add(item("end").after(keys.toArray(new String[0])).marks("start"));
    return morning(
        START,
        TRIALS,
        PLAIN,
        List.of(),
        List.of(
            room("1", START + minutes(due), START, Mornings.items(works.toArray(new Work[0])))));
  }

  private static double onTime(ForecastInput in) {
    return Forecaster.run(in).rooms().get(0).onTime();
  }

  @ParameterizedTest
  @EnumSource(Book.class)
  void shouldGiveThePrintedLengthAndSlack(Book book) {
    List<String> all = book.all();
    Forecast f = Forecaster.run(network(book, all, false, book.length).withTrials(1));
    long start = f.rooms().get(0).start50();
    assertThat((start - START) / (double) MINUTE).isCloseTo(book.length, within(0.001));
    for (ItemOut item : f.rooms().get(0).items()) {
      Double slack = book.slack().get(item.key());
      if (slack != null) {
        double ends = (item.done50() - START) / (double) MINUTE;
        double mean = book.activities().get(item.key()).mean();
        double last = (item.last50() - START) / (double) MINUTE;
        assertThat(last - (ends - mean)).as(item.key()).isCloseTo(slack, within(0.002));
      }
    }
    double variance = book.sumOverThePath(Activity::variance);
    assertThat(variance).isCloseTo(book.variance, within(0.01));
  }

  /** Early starts and finishes as printed: Taylor, chapter 8, problems 1 and 2. */
  @Test
  void shouldGiveThePrintedEarlyFinishes() {
    Map<Book, String> finishes =
        Map.of(
            Book.TAYLOR_ONE,
            "7 10 13 15 14 18 20",
            Book.TAYLOR_TWO,
            "8 10 9 14 12 15 9 16 27 30 30 31 38");
    finishes.forEach(
        (book, printed) -> {
          List<String> all = book.all();
          Forecast f = Forecaster.run(network(book, all, false, book.length).withTrials(1));
          String[] ends = printed.split(" ", -1);
          for (int i = 0; i < ends.length; i++) {
            assertThat(f.rooms().get(0).items().get(i).done50())
                .as(all.get(i))
                .isEqualTo(START + minutes(number(ends[i])));
          }
        });
  }

  /** Mean and variance of the critical path alone, trial by trial. */
  @ParameterizedTest
  @EnumSource(
      value = Book.class,
      names = {"MILWAUKEE", "FOURTEEN", "ORDERS", "RELIABLE"})
  void shouldDrawThePathWithTheMomentsOfItsBetaTimes(Book book) {
    ForecastInput in = network(book, book.critical(), true, 0).withTrials(1);
    int n = 2000;
    double sum = 0;
    double squares = 0;
    for (int seed = 1; seed <= n; seed++) {
      ForecastInput one = Mornings.withSeed(in, seed);
      double t = (Forecaster.run(one).rooms().get(0).start50() - START) / (double) MINUTE;
      sum += t;
      squares += t * t;
    }
    double mean = sum / n;
    double variance = squares / n - mean * mean;
    double expected = book.sumOverThePath(Activity::betaVariance);
    assertThat(mean).isCloseTo(book.length, within(4 * Math.sqrt(expected / n)));
    // A sum of bounded times has no heavier tails than the normal: variance of a variance 2/n.
    assertThat(variance / expected).isCloseTo(1, within(4 * Math.sqrt(2.0 / n)));
  }

  @ParameterizedTest
  @EnumSource(
      value = Book.class,
      names = {"MILWAUKEE", "FOURTEEN", "ORDERS", "RELIABLE"})
  void shouldBeLessHopefulThanTheNormalAnswerWhereMoreThanOnePathCounts(Book book) {
    List<String> all = book.all();
    double path = onTime(network(book, book.critical(), true, book.due - 1));
    double whole = onTime(network(book, all, true, book.due - 1));
    double expected = book.sumOverThePath(Activity::betaVariance);
    double z = (book.due - book.length) / Math.sqrt(expected);
    double normal = NormalDist.cdf01(z);
    System.out.printf(
        Locale.ROOT,
        "%s: printed %.4f, normal with the beta's variance %.4f, its path %.4f, network %.4f%n",
        book,
        book.printed,
        normal,
        path,
        whole);
    // One path: the normal answer with the variance that the durations have, but for their skew.
    assertThat(path).isCloseTo(normal, within(0.02));
    if (book.onePath()) {
      assertThat(whole).isEqualTo(path);
    } else {
      // The same draws in both: no trial of the network is earlier than its path.
      assertThat(whole).isLessThan(path - 0.005).isLessThan(book.printed - 0.01);
    }
  }
}
