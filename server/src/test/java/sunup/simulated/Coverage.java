package sunup.simulated;

import java.util.Map;
import java.util.TreeMap;

/** What histories went through, by name: a fault that never happened proves nothing. */
public final class Coverage {
  private final Map<String, Integer> counts = new TreeMap<>();

  public void saw(String what) {
    counts.merge(what, 1, Integer::sum);
  }

  public int of(String what) {
    return counts.getOrDefault(what, 0);
  }

  @Override
  public String toString() {
    return counts.toString();
  }
}
