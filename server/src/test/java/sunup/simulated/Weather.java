package sunup.simulated;

import java.util.ArrayList;
import java.util.List;
import java.util.function.Consumer;

/** What of a script goes wrong now, and what is drawn in it. */
final class Weather {
  private static final long HASH_STEP = 0x9E3779B97F4A7C15L;

  private final Script script;
  private final SimulatedTime time;
  private final Consumer<Fault> struck;
  private final List<Fault> begun = new ArrayList<>();
  private final List<Fault> armed = new ArrayList<>();

  /**
   * @param struck told of a fault of the journal when it strikes
   */
  Weather(Script script, SimulatedTime time, Consumer<Fault> struck) {
    this.script = script;
    this.time = time;
    this.struck = struck;
  }

  /** From now on it goes wrong. */
  void begin(Fault fault) {
    begun.add(fault);
    armed.add(fault);
  }

  /** The fault of this kind that hits the node now, or null. */
  Fault now(Fault.Kind kind, int node) {
    for (Fault fault : begun) {
      if (fault.kind() == kind && fault.node() == node && fault.on(time.now())) {
        return fault;
      }
    }
    return null;
  }

  /** The fault of this kind that hits either end of a line, or null. */
  Fault line(Fault.Kind kind, int from, int to) {
    Fault fault = now(kind, from);
    return fault == null ? now(kind, to) : fault;
  }

  /** The fault that cuts the line in this direction, or null. */
  Fault cut(int from, int to) {
    for (Fault fault : begun) {
      boolean cuts =
          fault.kind() == Fault.Kind.SPLIT && (fault.node() == from || fault.node() == to);
      boolean oneWay =
          fault.kind() == Fault.Kind.ONE_WAY && fault.node() == from && fault.other() == to;
      if ((cuts || oneWay) && fault.on(time.now())) {
        return fault;
      }
    }
    return null;
  }

  /** How much longer than usual the next message between the node and a screen of its takes. */
  long screenLate(int node, String line, long number) {
    Fault fault = now(Fault.Kind.SCREENS, node);
    if (fault == null) {
      return 0;
    }
    long left = fault.ends() - time.now();
    return fault.how() == 0 ? left : draw(line + " late", number, left);
  }

  /** True from so long after a split began until so long after it ended. */
  boolean apart(int one, int other, long noticedMs, long mergedMs) {
    for (Fault fault : begun) {
      boolean between = (fault.node() == one) != (fault.node() == other);
      if (fault.kind() == Fault.Kind.SPLIT
          && between
          && fault.lasts() > noticedMs
          && time.now() > fault.at() + noticedMs
          && time.now() < fault.ends() + mergedMs) {
        return true;
      }
    }
    return false;
  }

  /** True if a fault of this kind waits for the node's next step; it strikes once. */
  boolean strikes(Fault.Kind kind, int node) {
    for (Fault fault : armed) {
      if (fault.kind() == kind && fault.node() == node && fault.on(time.now())) {
        armed.remove(fault);
        struck.accept(fault);
        return true;
      }
    }
    return false;
  }

  /** A number of 64 bits for this case of this purpose. */
  long draw(String purpose, long number) {
    long x = script.seed() * HASH_STEP + purpose.hashCode() * 0xD1342543DE82EF95L + number;
    x = (x ^ (x >>> 30)) * 0xBF58476D1CE4E5B9L;
    x = (x ^ (x >>> 27)) * 0x94D049BB133111EBL;
    return x ^ (x >>> 31);
  }

  long draw(String purpose, long number, long bound) {
    return Long.remainderUnsigned(draw(purpose, number), bound);
  }
}
