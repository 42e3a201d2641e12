package sunup.simulated;

import java.util.List;
import java.util.Map;
import java.util.TreeMap;

/** What histories went through, by name: a fault that never happened proves nothing. */
public final class Coverage {
  /** What a morning can be in when a fault strikes. */
  static final List<String> PHASES_OF_MORNING =
      List.of(
          "nobody",
          "taking",
          "owner still",
          "owner writing",
          "owner read-only",
          "owner handing over",
          "other still",
          "other writing",
          "other read-only",
          "other handing over");

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
