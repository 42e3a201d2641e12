package sunup.forecast;

/** How long things take in one trial: rule 4's draws, by item. */
final class Drawn {
  private final Model m;

  /** How often each item was done again. */
  private final byte[] redone;

  /** Draws made in one go: they stay in the nearest memory. */
  private static final int CHUNK = 256;

  /**
   * How long hands take, by item, and after them how long waits do, drawn before the trial; of
   * items that anybody may do the draw.
   */
  private final int[] duration;

  private final double[] normal;
  private final double[] u = new double[CHUNK];
  private final double[] z = new double[CHUNK];
  private final int[] tails = new int[CHUNK];

  /** Person factors of rule 4. */
  final double[] factor;

  int trial;

  Drawn(Model m, byte[] redone) {
    this.m = m;
    this.redone = redone;
    factor = new double[m.people];
    normal = new double[m.items];
    duration = new int[2 * m.items];
    for (int i = 0; i < m.items; i++) {
      duration[i] = (int) m.hands[i].usual;
      duration[m.items + i] = (int) m.waits[i].usual;
    }
  }

  /** All at once: loops without surprises are faster than a draw at each beginning. */
  void hands() {
    int all = m.drawn.length;
    for (int from = 0; from < all; from += CHUNK) {
      int n = Math.min(CHUNK, all - from);
      quantiles(from, n);
      int led = Math.max(0, Math.min(n, m.drawnLed - from));
      int known = Math.max(0, Math.min(n, m.drawnKnown - from));
      for (int k = 0; k < led; k++) {
        z[k] = m.sqrtShare * factor[m.drawnLead[from + k]] + m.sqrtRest * z[k];
      }
      for (int k = 0; k < known; k++) {
        int d = from + k;
        duration[m.drawn[d]] = (int) Dist.logNormal(m.drawnMu[d], m.drawnSigma[d], z[k]);
      }
      for (int k = known; k < n; k++) {
        normal[m.drawn[from + k]] = z[k];
      }
    }
  }

  /** Normal quantiles: of all as if they were in the middle, then of those that are not. */
  private void quantiles(int from, int n) {
    int count = 0;
    for (int k = 0; k < n; k++) {
      double x = Hash.uniform(m.drawnStream[from + k], trial);
      u[k] = x;
      tails[count] = k;
      count += Normal.isTail(x) ? 1 : 0;
    }
    Normal.central(u, z, n);
    for (int t = 0; t < count; t++) {
      z[tails[t]] = Normal.tail(u[tails[t]]);
    }
  }

  double uniform(int i, int purpose) {
    return Hash.uniform(Hash.stream(m.scope[i], purpose, redone[i]), trial);
  }

  /** The hands of a {@link Rows#PLAIN} item. */
  long plain(int i) {
    return duration[i];
  }

  /** The hands of an item that is led by somebody, or by nobody (-1). */
  long hands(int i, int lead) {
    Dist d = m.hands[i];
    double f = lead < 0 ? 0 : factor[lead];
    int what = m.row[(i << Rows.SHIFT) + Rows.WHAT];
    if ((what & Rows.DRAWN) != 0 && redone[i] == 0) {
      return m.lead[i] == Model.ANYBODY
          ? d.atNormal(m.sqrtShare * f + m.sqrtRest * normal[i])
          : duration[i];
    }
    if (d.isConstant()) {
      return d.usual;
    }
    double u = uniform(i, Hash.HANDS);
    if (lead < 0 || m.sqrtShare == 0) {
      return d.at(u);
    }
    return d.atNormal(m.sqrtShare * f + m.sqrtRest * Normal.quantile(u));
  }

  long waits(int i) {
    Dist d = m.waits[i];
    if (redone[i] == 0 && (m.row[(i << Rows.SHIFT) + Rows.WHAT] & Rows.WAITS_DRAWN) != 0) {
      return duration[m.items + i];
    }
    return d.isConstant() ? d.usual : d.at(uniform(i, Hash.WAITS));
  }

  long extra(int i) {
    int n = m.extraOneIn[i];
    return n > 0 && uniform(i, Hash.EXTRA) * n < 1 ? m.extraMs[i] : 0;
  }
}
