package sunup.review.trial;

import java.time.LocalDate;
import java.util.HashMap;
import java.util.Map;
import sunup.review.stats.Logistic;

/**
 * Two plain ways to say a chance, from earlier mornings only: the share on time so far, and percent
 * done through a logistic fit. Silent until {@link #LEAST_STARTS} starts of {@link #LEAST_MORNINGS}
 * mornings came before.
 */
public final class Baselines {
  public static final int LEAST_STARTS = 30;
  public static final int LEAST_MORNINGS = 5;

  private final Map<LocalDate, Plain> on;

  /**
   * What both say on one date.
   *
   * @param average the share so far
   * @param fit by percent done
   */
  record Plain(double average, Logistic fit) {}

  private Baselines(Map<LocalDate, Plain> on) {
    this.on = on;
  }

  /** Null while they are silent. */
  Plain on(LocalDate date) {
    return on.get(date);
  }

  /** Counts what came, date after date. */
  public static final class Learning {
    private final Map<LocalDate, Plain> on = new HashMap<>();
    private final Logistic.Cases cases = new Logistic.Cases();

    /** Of the dates before; the date's own are added to {@code cases} when the next one begins. */
    private final Map<Double, int[]> ofDate = new HashMap<>();

    private LocalDate date;
    private int came;
    private int n;
    private int mornings;

    /**
     * Forecasts of one date with one share done; dates in order.
     *
     * @param all how many
     * @param yes of how many of them the start came on time
     */
    public void count(LocalDate day, double done, int yes, int all) {
      if (!day.equals(date)) {
        begin(day);
      }
      int[] counted = ofDate.computeIfAbsent(done, k -> new int[2]);
      counted[0] += yes;
      counted[1] += all;
    }

    private void begin(LocalDate day) {
      if (date != null) {
        mornings++;
      }
      ofDate.forEach(
          (done, counted) -> {
            cases.add(done, counted[0], counted[1]);
            came += counted[0];
            n += counted[1];
          });
      ofDate.clear();
      date = day;
      if (n >= LEAST_STARTS && mornings >= LEAST_MORNINGS) {
        on.put(day, new Plain((double) came / n, cases.fit()));
      }
    }

    public Baselines learned() {
      return new Baselines(Map.copyOf(on));
    }
  }
}
