package sunup.review.stats;

import java.util.Map;
import java.util.TreeMap;

/**
 * A chance that follows one number: ln(p / (1 - p)) = a + b x, by greatest likelihood. Half a yes
 * and half a no at x = 0 and at x = 1 stand in for what is known before, so that a fit exists also
 * where all of few cases went one way.
 */
public record Logistic(double a, double b) {
  /** Yes and all at one x. */
  private record Counted(double yes, double all) {
    Counted plus(double moreYes, double more) {
      return new Counted(yes + moreYes, all + more);
    }
  }

  /** Cases to fit to; they may be added to and fitted again. */
  public static final class Cases {
    private final Map<Double, Counted> at = new TreeMap<>();

    public Cases() {
      at.put(0.0, new Counted(0.5, 1));
      at.put(1.0, new Counted(0.5, 1));
    }

    public void add(double x, boolean yes) {
      add(x, yes ? 1 : 0, 1);
    }

    /** So many cases at one x, and of how many of them it is yes. */
    public void add(double x, int yes, int all) {
      at.merge(x, new Counted(yes, all), (old, one) -> old.plus(one.yes(), one.all()));
    }

    /** Newton's method; steps are halved while they make the fit worse. */
    public Logistic fit() {
      Logistic now = new Logistic(0, 0);
      double best = likelihood(now);
      for (int round = 0; round < 100; round++) {
        Logistic next = step(now, best);
        double there = likelihood(next);
        if (!(there > best + 1e-12)) {
          return now;
        }
        now = next;
        best = there;
      }
      return now;
    }

    private Logistic step(Logistic from, double before) {
      double ga = 0;
      double gb = 0;
      double aa = 0;
      double ab = 0;
      double bb = 0;
      for (Map.Entry<Double, Counted> e : at.entrySet()) {
        double x = e.getKey();
        double p = from.at(x);
        double off = e.getValue().yes() - e.getValue().all() * p;
        double weight = e.getValue().all() * p * (1 - p);
        ga += off;
        gb += off * x;
        aa += weight;
        ab += weight * x;
        bb += weight * x * x;
      }
      double det = aa * bb - ab * ab;
      double da = (bb * ga - ab * gb) / det;
      double db = (aa * gb - ab * ga) / det;
      for (double size = 1; size > 1e-6; size /= 2) {
        Logistic to = new Logistic(from.a + size * da, from.b + size * db);
        if (likelihood(to) >= before) {
          return to;
        }
      }
      return from;
    }

    private double likelihood(Logistic of) {
      double sum = 0;
      for (Map.Entry<Double, Counted> e : at.entrySet()) {
        double eta = of.a + of.b * e.getKey();
        double all = e.getValue().all();
        sum += e.getValue().yes() * eta - all * softPlus(eta);
      }
      return sum;
    }
  }

  private static double softPlus(double eta) {
    return eta > 0
        ? eta + StrictMath.log1p(StrictMath.exp(-eta))
        : StrictMath.log1p(StrictMath.exp(eta));
  }

  /** The chance at x. */
  public double at(double x) {
    return 1 / (1 + StrictMath.exp(-(a + b * x)));
  }
}
