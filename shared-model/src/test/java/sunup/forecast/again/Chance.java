package sunup.forecast.again;

import sunup.forecast.Draw;
import umontreal.ssj.probdist.BetaDist;
import umontreal.ssj.probdist.NormalDist;
import umontreal.ssj.rng.MRG32k3a;

/** Durations of the model page's section 1, with random numbers and distributions of a library. */
final class Chance {
  private static final long WEEK = 7L * 24 * 60 * 60_000;
  private static final double TAIL_LEAST = 1e-4;

  private final MRG32k3a stream = new MRG32k3a();

  Chance(long seed) {
    long[] state = new long[6];
    for (int i = 0; i < state.length; i++) {
      state[i] = 1 + Math.floorMod(seed * 7919 + i * 104_729L, 4_000_000_000L);
    }
    stream.setSeed(state);
  }

  double u() {
    return stream.nextDouble();
  }

  boolean happens(double p) {
    return u() < p;
  }

  double normal() {
    return NormalDist.inverseF01(u());
  }

  long plain(Draw d) {
    return d == null ? 0 : drawn(d, u());
  }

  /** The u-quantile. */
  long drawn(Draw d, double u) {
    return whole(quantile(d, u));
  }

  /** A duration by a normal number, which may be shared with others by a person's factor. */
  long byNormal(Draw d, double z) {
    if (d instanceof Draw.LogNormal l) {
      return whole(l.usualMs() * Math.exp(sigma(l) * z));
    }
    return whole(quantile(d, NormalDist.cdf01(z)));
  }

  /** What is left of a duration that is not over after e. */
  long left(Draw d, long e, double z) {
    if (e <= 0) {
      return byNormal(d, z);
    }
    double u = NormalDist.cdf01(z);
    if (d instanceof Draw.Exponential) {
      return drawn(d, u);
    }
    if (d instanceof Draw.LogNormal l && sigma(l) > 0) {
      double sigma = sigma(l);
      double highest = NormalDist.inverseF01(1 - TAIL_LEAST);
      double from = Math.min(Math.log(e / (double) l.usualMs()) / sigma, highest);
      // Upper tail by symmetry, for accuracy.
      double to = -NormalDist.inverseF01((1 - u) * NormalDist.cdf01(-from));
      return whole(l.usualMs() * (Math.exp(sigma * to) - Math.exp(sigma * from)));
    }
    if (d instanceof Draw.ThreePoint) {
      return Math.max(0, whole(quantile(d, 1 - (1 - u) * tail(d, (double) e))) - e);
    }
    return Math.max(0, drawn(d, 0.5) - e);
  }

  /** P(duration > e). */
  static double tail(Draw d, double e) {
    if (e <= 0) {
      return 1;
    }
    if (d instanceof Draw.LogNormal l && sigma(l) > 0) {
      return NormalDist.barF01(Math.log(e / l.usualMs()) / sigma(l));
    }
    if (d instanceof Draw.Exponential x) {
      return Math.exp(-e / x.meanMs());
    }
    if (d instanceof Draw.ThreePoint p && p.highMs() > p.lowMs()) {
      if (e >= p.highMs()) {
        return 0;
      }
      return e <= p.lowMs()
          ? 1
          : BetaDist.barF(a(p), b(p), (double) p.lowMs(), (double) p.highMs(), e);
    }
    return quantile(d, 0.5) > e ? 1 : 0;
  }

  /** Chance that what is in hand for e was done and not told. */
  static double forgotten(double p, Draw d, long e) {
    return p == 0 ? 0 : Math.min(0.9, p / (p + (1 - p) * tail(d, (double) e)));
  }

  private static double quantile(Draw d, double u) {
    if (d instanceof Draw.Constant c) {
      return c.ms();
    }
    if (d instanceof Draw.LogNormal l) {
      return l.usualMs() * Math.exp(sigma(l) * NormalDist.inverseF01(u));
    }
    if (d instanceof Draw.Exponential e) {
      return -e.meanMs() * Math.log1p(-u);
    }
    Draw.ThreePoint p = (Draw.ThreePoint) d;
    return p.highMs() == p.lowMs()
        ? p.lowMs()
        : BetaDist.inverseF(a(p), b(p), (double) p.lowMs(), (double) p.highMs(), u);
  }

  private static double sigma(Draw.LogNormal l) {
    return Math.log(l.oneInTenMs() / (double) l.usualMs()) / 1.2816;
  }

  private static double a(Draw.ThreePoint p) {
    return 1 + 4.0 * (p.likelyMs() - p.lowMs()) / (p.highMs() - p.lowMs());
  }

  private static double b(Draw.ThreePoint p) {
    return 1 + 4.0 * (p.highMs() - p.likelyMs()) / (p.highMs() - p.lowMs());
  }

  private static long whole(double x) {
    return (long) Math.min(WEEK, Math.max(0, Math.floor(x + 0.5)));
  }
}
