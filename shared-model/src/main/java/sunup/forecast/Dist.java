package sunup.forecast;

/**
 * A {@link Draw} made ready for drawing. Durations are whole milliseconds and at most {@link
 * #LONGEST}.
 */
final class Dist {
  /** Longest duration that is ever drawn: seven days. */
  static final long LONGEST = 7L * 24 * 3_600_000;

  /** The 90 % point of the standard normal distribution as rule 4 writes it. */
  static final double Z90 = 1.2816;

  /** Beyond this upper tail an item in hand is as late as the model can say (rule 4). */
  static final double LEAST_TAIL = 1e-4;

  static final Dist ZERO = new Dist(new Draw.Constant(0));

  private static final int CONSTANT = 0;
  private static final int LOG_NORMAL = 1;
  private static final int EXPONENTIAL = 2;
  private static final int THREE_POINT = 3;

  private final int kind;
  private final double mu;
  private final double sigma;
  private final long low;
  private final long span;
  private final BetaPert beta;

  /** What the model allows for it. */
  final long usual;

  Dist(Draw draw) {
    int k = CONSTANT;
    double m = 0;
    double s = 0;
    long lo = 0;
    long sp = 0;
    BetaPert bp = null;
    if (draw instanceof Draw.Constant c) {
      lo = c.ms();
    } else if (draw instanceof Draw.LogNormal l) {
      lo = l.usualMs();
      if (l.usualMs() != l.oneInTenMs()) {
        k = LOG_NORMAL;
        m = StrictMath.log((double) l.usualMs());
        s = StrictMath.log((double) l.oneInTenMs() / l.usualMs()) / Z90;
      }
    } else if (draw instanceof Draw.Exponential e) {
      k = e.meanMs() == 0 ? CONSTANT : EXPONENTIAL;
      m = e.meanMs();
    } else if (draw instanceof Draw.ThreePoint p) {
      lo = p.lowMs();
      sp = p.highMs() - p.lowMs();
      if (sp > 0) {
        k = THREE_POINT;
        bp =
            new BetaPert(
                1 + 4.0 * (p.likelyMs() - p.lowMs()) / sp,
                1 + 4.0 * (p.highMs() - p.likelyMs()) / sp);
      }
    }
    kind = k;
    mu = m;
    sigma = s;
    low = lo;
    span = sp;
    beta = bp;
    usual = draw.usual();
  }

  static Dist of(Draw draw) {
    return draw == null ? ZERO : new Dist(draw);
  }

  boolean isConstant() {
    return kind == CONSTANT;
  }

  boolean isLogNormal() {
    return kind == LOG_NORMAL;
  }

  boolean isZero() {
    return kind == CONSTANT && low == 0;
  }

  /** The u-quantile. */
  long at(double u) {
    return switch (kind) {
      case LOG_NORMAL -> logNormal(mu, sigma, Normal.quantile(u));
      case EXPONENTIAL -> whole(-mu * StrictMath.log(1 - u));
      case THREE_POINT -> whole(low + span * beta.quantile(u));
      default -> low;
    };
  }

  /** The quantile at a standard normal z. */
  long atNormal(double z) {
    if (kind == LOG_NORMAL) {
      return logNormal(mu, sigma, z);
    }
    return kind == CONSTANT ? low : at(Normal.lower(z));
  }

  /** P(duration > elapsed). */
  double upper(long elapsed) {
    if (elapsed <= 0 && kind != CONSTANT) {
      return 1;
    }
    return switch (kind) {
      case LOG_NORMAL -> Normal.upper((StrictMath.log((double) elapsed) - mu) / sigma);
      case EXPONENTIAL -> StrictMath.exp(-elapsed / mu);
      case THREE_POINT -> 1 - beta.lower((double) (elapsed - low) / span);
      default -> elapsed < low ? 1 : 0;
    };
  }

  /** What is left after {@code elapsed}, given that it is not over: rule 4. */
  long remaining(double u, long elapsed) {
    if (elapsed <= 0) {
      return at(u);
    }
    return switch (kind) {
      case LOG_NORMAL -> remainingLogNormal(u, elapsed);
      case EXPONENTIAL -> at(u);
      case THREE_POINT -> Math.max(0, at(1 - (1 - u) * upper(elapsed)) - elapsed);
      default -> Math.max(0, low - elapsed);
    };
  }

  private long remainingLogNormal(double u, long elapsed) {
    double z = (StrictMath.log((double) elapsed) - mu) / sigma;
    double tail = Normal.upper(z);
    if (tail < LEAST_TAIL) {
      tail = LEAST_TAIL;
      z = Normal.upperQuantile(tail);
    }
    double then = Normal.upperQuantile((1 - u) * tail);
    return Math.max(0, whole(StrictMath.exp(mu + sigma * then) - StrictMath.exp(mu + sigma * z)));
  }

  /** Rule 3: the chance that an item in hand for so long is done and nobody said so. */
  double forgotten(double rate, long elapsed) {
    if (rate <= 0) {
      return 0;
    }
    return Math.min(0.9, rate / (rate + (1 - rate) * upper(elapsed)));
  }

  /** Whole milliseconds of a log-normal duration at z. */
  static long logNormal(double mu, double sigma, double z) {
    return whole(Elementary.exp(mu + sigma * z));
  }

  double mu() {
    return mu;
  }

  double sigma() {
    return sigma;
  }

  private static long whole(double ms) {
    return ms >= LONGEST ? LONGEST : (long) (ms + 0.5);
  }
}
