package sunup.review.trial;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import sunup.review.stats.Logistic;

/**
 * Two plain ways to say a chance, from earlier mornings only: the share on time so far, and percent
 * done through a logistic fit. Silent until {@link #LEAST_STARTS} starts of {@link #LEAST_MORNINGS}
 * mornings came before.
 */
final class Baselines {
  static final int LEAST_STARTS = 30;
  static final int LEAST_MORNINGS = 5;

  /**
   * What both would have said of one forecast.
   *
   * @param said the board's
   * @param average the share so far
   * @param fitted by percent done
   */
  record Beside(Said said, double average, double fitted) {}

  private Baselines() {}

  /**
   * @param said in order of time
   */
  static List<Beside> of(List<Said> said) {
    List<Beside> beside = new ArrayList<>();
    Logistic.Cases cases = new Logistic.Cases();
    int came = 0;
    int n = 0;
    int mornings = 0;
    int from = 0;
    while (from < said.size()) {
      LocalDate date = said.get(from).morning().date();
      int to = from;
      while (to < said.size() && said.get(to).morning().date().equals(date)) {
        to++;
      }
      List<Said> day = said.subList(from, to);
      if (n >= LEAST_STARTS && mornings >= LEAST_MORNINGS) {
        Logistic fit = cases.fit();
        double average = (double) came / n;
        day.forEach(s -> beside.add(new Beside(s, average, fit.at(s.done()))));
      }
      for (Said s : day) {
        cases.add(s.done(), s.came());
        came += s.came() ? 1 : 0;
        n++;
      }
      mornings++;
      from = to;
    }
    return beside;
  }
}
