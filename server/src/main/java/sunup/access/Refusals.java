package sunup.access;

import java.util.Map;
import java.util.TreeMap;
import java.util.concurrent.ConcurrentHashMap;
import java.util.concurrent.atomic.LongAdder;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;

/**
 * What was refused at the door, before anybody could say who they are: counted by reason, and
 * written to the log seldom enough that nobody can fill a disk with it.
 */
public final class Refusals {
  /** Of each reason the first is written, and then one in so many. */
  private static final int WRITTEN_ONE_IN = 100;

  private static final Logger LOG = LoggerFactory.getLogger(Refusals.class);

  private final Map<String, LongAdder> counts = new ConcurrentHashMap<>();

  /**
   * @param reason a short word of ours, never of the one who was refused
   * @param remote the peer's address
   */
  public void count(String reason, String remote) {
    LongAdder adder = counts.computeIfAbsent(reason, r -> new LongAdder());
    adder.increment();
    long times = adder.sum();
    if (times == 1 || times % WRITTEN_ONE_IN == 0) {
      LOG.warn("refused at the door: {}, from {}, {} times so far", reason, remote, times);
    }
  }

  /** How often, by reason. */
  public Map<String, Long> counts() {
    Map<String, Long> all = new TreeMap<>();
    counts.forEach((reason, adder) -> all.put(reason, adder.sum()));
    return all;
  }
}
