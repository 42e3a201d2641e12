package sunup.review.trial;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import sunup.board.MorningId;
import sunup.codec.Maybe;
import sunup.review.Comparison.Difference;
import sunup.review.Comparison.Verdict;
import sunup.review.Split;
import sunup.review.facts.FirstCaseFact;
import sunup.review.facts.Withheld;
import sunup.review.stats.Corrections;
import sunup.review.stats.Interval;
import sunup.review.stats.MeanOfClusters;

/**
 * What the board said at one moment, on trial in each group by itself: rooms, services. Of the
 * forecasts that it kept when it said them. The average is the group's own share on time of earlier
 * dates, as if the group alone had been asked about; chances are corrected by Holm for all groups
 * and both questions.
 *
 * @param minutesBefore 60, 40, 20 or 10
 */
public record TrialApart(int minutesBefore, List<Group> groups) {
  /** Of fewer that came on time, or did not, nobody can be called the better guide. */
  private static final int LEAST_OF_EACH = 5;

  /**
   * One group.
   *
   * @param large whether as many came as was said; null if there are too few forecasts: withheld
   * @param overAverage skill over the group's average, 1 - score / its score; null with it
   */
  public record Group(
      String name,
      int forecasts,
      int mornings,
      @Maybe InTheLarge large,
      @Maybe Difference overAverage) {}

  /**
   * Sums over the mornings of a group.
   *
   * @param off of said less came, over the forecasts
   * @param came how many came on time
   * @param chance sum of p (1 - p)
   * @param ratio of the board's squares over those of the average, of forecasts that have both
   * @param beside how many have both
   * @param besideCame how many of them came on time
   */
  public record Sums(
      MeanOfClusters off,
      double came,
      double chance,
      MeanOfClusters ratio,
      int beside,
      int besideCame) {}

  /** The trial of the sums of each group. */
  public static TrialApart of(int minutesBefore, Map<String, Sums> sums) {
    List<Group> groups = new ArrayList<>();
    sums.forEach((name, of) -> groups.add(group(name, of)));
    return new TrialApart(minutesBefore, corrected(groups));
  }

  /** The same of facts. */
  public static TrialApart of(List<FirstCaseFact> facts, Split split, int minutesBefore) {
    Map<String, Sums> sums = new TreeMap<>();
    split
        .apart(facts)
        .forEach(
            (name, group) -> {
              Sums of = sums(Said.of(group, minutesBefore));
              if (of != null) {
                sums.put(name, of);
              }
            });
    return of(minutesBefore, sums);
  }

  private static Group group(String name, Sums of) {
    int n = (int) of.off.n();
    int mornings = of.off.clusters();
    if (Withheld.isWithheld(n)) {
      return new Group(name, n, mornings, null, null);
    }
    return new Group(name, n, mornings, InTheLarge.of(of.off, of.came, of.chance), skill(of));
  }

  /**
   * Whether nearly all came on time, or nearly none: then the better guide is whoever happened to
   * be nearer to that, morning after morning alike.
   */
  static boolean isOneSided(double came, double n) {
    return Math.min(came, n - came) < LEAST_OF_EACH;
  }

  private static Difference skill(Sums of) {
    if (Withheld.isWithheld(of.beside) || isOneSided(of.besideCame, of.beside)) {
      return Difference.TOO_FEW;
    }
    Difference more = InTheLarge.judged(of.ratio, 1, 0);
    if (more.verdict() == Verdict.TOO_FEW) {
      return more;
    }
    Interval i = more.interval();
    return new Difference(
        more.verdict(),
        -more.value(),
        null,
        new Interval(-i.upper(), -i.lower()),
        more.p(),
        more.adjusted());
  }

  private static List<Group> corrected(List<Group> groups) {
    List<Double> p = new ArrayList<>();
    for (Group group : groups) {
      if (group.large != null) {
        add(p, group.large.off());
        add(p, group.overAverage);
      }
    }
    List<Double> holm = Corrections.holm(p);
    List<Group> corrected = new ArrayList<>();
    int at = 0;
    for (Group g : groups) {
      if (g.large == null) {
        corrected.add(g);
        continue;
      }
      Difference off = g.large.off();
      Difference skill = g.overAverage;
      off = off.p() == null ? off : off.adjusted(holm.get(at++));
      skill = skill.p() == null ? skill : skill.adjusted(holm.get(at++));
      InTheLarge large = new InTheLarge(g.large.said(), g.large.came(), off);
      corrected.add(new Group(g.name, g.forecasts, g.mornings, large, skill));
    }
    return corrected;
  }

  private static void add(List<Double> p, Difference d) {
    if (d.p() != null) {
      p.add(d.p());
    }
  }

  /** Null if the board kept none. */
  private static Sums sums(List<Said> said) {
    Map<LocalDate, Double> averages = averages(said);
    Map<MorningId, double[]> mornings = new LinkedHashMap<>();
    int beside = 0;
    int besideCame = 0;
    double came = 0;
    double chance = 0;
    for (Said s : said) {
      if (s.recomputed()) {
        continue;
      }
      double[] of = mornings.computeIfAbsent(s.morning(), k -> new double[5]);
      of[0]++;
      of[1] += s.chance() - (s.came() ? 1 : 0);
      came += s.came() ? 1 : 0;
      chance += s.chance() * (1 - s.chance());
      Double average = averages.get(s.morning().date());
      if (average != null) {
        of[2] += s.squared();
        of[3] += s.squared(average);
        of[4]++;
        beside++;
        besideCame += s.came() ? 1 : 0;
      }
    }
    if (mornings.isEmpty()) {
      return null;
    }
    List<double[]> both = mornings.values().stream().filter(m -> m[4] > 0).toList();
    MeanOfClusters off = mean(List.copyOf(mornings.values()), 1, 0);
    return new Sums(off, came, chance, mean(both, 2, 3), beside, besideCame);
  }

  private static MeanOfClusters mean(List<double[]> mornings, int x, int n) {
    double[] s = new double[5];
    for (double[] m : mornings) {
      s[0] += m[x];
      s[1] += m[n];
      s[2] += m[x] * m[x];
      s[3] += m[x] * m[n];
      s[4] += m[n] * m[n];
    }
    return new MeanOfClusters(mornings.size(), s[0], s[1], s[2], s[3], s[4]);
  }

  /** The share on time of earlier dates, by date; none while there were too few. */
  private static Map<LocalDate, Double> averages(List<Said> said) {
    Map<LocalDate, Double> averages = new HashMap<>();
    int dates = 0;
    int n = 0;
    int came = 0;
    for (int i = 0; i < said.size(); ) {
      LocalDate date = said.get(i).morning().date();
      if (n >= Baselines.LEAST_STARTS && dates >= Baselines.LEAST_MORNINGS) {
        averages.put(date, (double) came / n);
      }
      for (; i < said.size() && said.get(i).morning().date().equals(date); i++) {
        n++;
        came += said.get(i).came() ? 1 : 0;
      }
      dates++;
    }
    return averages;
  }
}
