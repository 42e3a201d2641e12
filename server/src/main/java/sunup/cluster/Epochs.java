package sunup.cluster;

import java.util.Collection;
import java.util.List;
import java.util.Map;
import java.util.function.Supplier;
import sunup.board.MorningId;
import sunup.journal.Answer;
import sunup.live.Lane;
import sunup.suites.Clock;
import sunup.suites.Suites;

/**
 * The epochs that stand in the journal of mornings that are not owned here (those that are watch
 * their own): who claims a lower one is an owner that was. Kept in the lane.
 */
final class Epochs {
  /** A question that waits so long counts as not answered. */
  private static final long SILENT_MS = 2_000;

  private final Suites suites;
  private final Clock clock;
  private final Lane lane;
  private final Supplier<Collection<Wanted>> wanted;
  private boolean asking;
  private long askedAt;
  private boolean refused;

  /** Since when the journal has answered here without a gap, or never. */
  private long answersSince = Long.MAX_VALUE;

  Epochs(Suites suites, Clock clock, Lane lane, Supplier<Collection<Wanted>> wanted) {
    this.suites = suites;
    this.clock = clock;
    this.lane = lane;
    this.wanted = wanted;
  }

  long answersSince() {
    return answersSince;
  }

  /** True if the journal did not answer of late: nobody here could do anything with a morning. */
  boolean away() {
    return refused || (asking && clock.monotonicMs() - askedAt > SILENT_MS);
  }

  /** Asks, unless it waits for an answer. */
  void ask() {
    List<MorningId> others =
        wanted.get().stream().filter(one -> !one.owned()).map(one -> one.morning).toList();
    if (asking) {
      return;
    }
    if (others.isEmpty()) {
      refused = false; // its own mornings say how the journal is
      return;
    }
    asking = true;
    askedAt = clock.monotonicMs();
    suites.epochs(others, answer -> lane.run(() -> answered(answer)));
  }

  private void answered(Answer<Map<MorningId, Long>> answer) {
    asking = false;
    if (clock.monotonicMs() - askedAt > SILENT_MS) {
      answersSince = Long.MAX_VALUE;
    }
    refused = !(answer instanceof Answer.Known);
    if (answer instanceof Answer.Known<Map<MorningId, Long>> known) {
      answersSince = Math.min(answersSince, clock.monotonicMs());
      for (Wanted one : wanted.get()) {
        one.journalEpoch = Math.max(one.journalEpoch, known.value().getOrDefault(one.morning, 0L));
      }
    } else {
      answersSince = Long.MAX_VALUE;
    }
  }
}
