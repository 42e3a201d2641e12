package sunup.forecast;

/** How long things take in one trial: rule 4's draws, by item. */
final class Drawn {
  private final Model m;

  /** How often each item was done again. */
  private final byte[] redone;

  /** How long the hands take, drawn before the trial; of items that anybody may do the draw. */
  private final long[] duration;

  private final double[] normal;

  /** Person factors of rule 4. */
  final double[] factor;

  int trial;

  Drawn(Model m, byte[] redone) {
    this.m = m;
    this.redone = redone;
    factor = new double[m.people];
    normal = new double[m.items];
    duration = new long[m.items];
    for (int i = 0; i < m.items; i++) {
      duration[i] = m.hands[i].usual;
    }
  }

  /** All hands at once: one loop without surprises is faster than a draw at each beginning. */
  void hands() {
    for (int n = 0; n < m.drawn.length; n++) {
      double z = Normal.quantile(Hash.uniform(m.drawnStream[n], trial));
      int lead = m.drawnLead[n];
      if (lead == Model.ANYBODY) {
        normal[m.drawn[n]] = z;
      } else {
        double with = lead < 0 ? z : m.sqrtShare * factor[lead] + m.sqrtRest * z;
        duration[m.drawn[n]] = Dist.logNormal(m.drawnMu[n], m.drawnSigma[n], with);
      }
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
    return d.isConstant() ? d.usual : d.at(uniform(i, Hash.WAITS));
  }

  long extra(int i) {
    int n = m.extraOneIn[i];
    return n > 0 && uniform(i, Hash.EXTRA) * n < 1 ? m.extraMs[i] : 0;
  }
}
