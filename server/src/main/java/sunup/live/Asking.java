package sunup.live;

import java.util.HashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.function.Supplier;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;
import sunup.board.OpenAsk;
import sunup.suites.Standpoint;

/**
 * Sees what is newly asked of people on one morning, and has them told once if nobody has answered
 * it after a while. Only the morning's owner does. All of it happens in the lane.
 */
final class Asking {
  /** What was asked longer ago, when this node began to look, was told by the one before. */
  static final long NEW_MS = 60_000;

  private static final Logger LOG = LoggerFactory.getLogger(Asking.class);

  private final MorningChannel.Tools tools;
  private final Supplier<Standpoint> known;
  private Set<String> seen = new HashSet<>();

  /**
   * @param known gives what is known now, or null once nothing is to be told any more
   */
  Asking(MorningChannel.Tools tools, Supplier<Standpoint> known) {
    this.tools = tools;
    this.known = known;
  }

  /** The morning has changed. */
  void look(Standpoint now) {
    if (tools.nudges().afterMs() < 0 || !now.owned() || now.readOnly()) {
      return;
    }
    Set<String> open = new HashSet<>();
    for (OpenAsk ask : open(now)) {
      open.add(ask.key());
      boolean fresh = tools.clock().morningMs() - ask.askedAt() < NEW_MS;
      if (!seen.contains(ask.key()) && fresh) {
        tools.lane().after(tools.nudges().afterMs(), () -> due(ask.key()));
      }
    }
    seen = open;
  }

  /** What was asked then: is it still? */
  private void due(String key) {
    Standpoint now = known.get();
    if (now == null || !now.owned()) {
      return;
    }
    Optional<OpenAsk> still = open(now).stream().filter(a -> a.key().equals(key)).findFirst();
    still.ifPresent(ask -> tools.nudges().tell(now.morning(), ask));
  }

  private static List<OpenAsk> open(Standpoint now) {
    try {
      return OpenAsk.in(now.state());
    } catch (RuntimeException e) {
      LOG.error("what is asked on {} can't be seen", now.morning(), e);
      return List.of();
    }
  }
}
