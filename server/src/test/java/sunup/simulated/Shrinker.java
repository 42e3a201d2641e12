package sunup.simulated;

import java.util.ArrayList;
import java.util.List;
import java.util.function.Predicate;

/** Makes a script that goes wrong as short as it can while it still goes wrong. */
final class Shrinker {
  private static final int TRIES = 400;
  private static final long SHORTEST_MS = 50;

  private final Predicate<Script> wrong;
  private int tries;

  Shrinker(Predicate<Script> wrong) {
    this.wrong = wrong;
  }

  Script shrink(Script first) {
    Script best = first;
    boolean better = true;
    while (better && tries < TRIES) {
      Script next = shorter(withoutTouches(withoutFaults(best)));
      better = !next.equals(best);
      best = next;
    }
    return best;
  }

  private boolean wrong(Script script) {
    return tries++ < TRIES && wrong.test(script);
  }

  private Script withoutFaults(Script from) {
    Script best = from;
    for (int at = from.faults().size() - 1; at >= 0; at--) {
      List<Fault> fewer = new ArrayList<>(best.faults());
      fewer.remove(at);
      Script next = best.with(fewer, best.touches());
      best = wrong(next) ? next : best;
    }
    return best;
  }

  /** By halves first, then one by one. */
  private Script withoutTouches(Script from) {
    Script best = from;
    for (int size = from.touches().size(); size >= 1; size /= 2) {
      for (int at = best.touches().size() - size; at >= 0; at -= size) {
        List<Script.Touch> fewer = new ArrayList<>(best.touches());
        fewer.subList(at, at + size).clear();
        Script next = best.with(best.faults(), fewer);
        best = wrong(next) ? next : best;
      }
    }
    return best;
  }

  private Script shorter(Script from) {
    Script best = from;
    for (int at = 0; at < from.faults().size(); at++) {
      long lasts = best.faults().get(at).lasts();
      if (lasts / 2 >= SHORTEST_MS) {
        List<Fault> shorter = new ArrayList<>(best.faults());
        shorter.set(at, shorter.get(at).lasting(lasts / 2));
        Script next = best.with(shorter, best.touches());
        best = wrong(next) ? next : best;
      }
    }
    return best;
  }
}
