package sunup.suites;

import java.util.Collection;
import java.util.HashMap;
import java.util.Map;
import java.util.function.Supplier;
import sunup.board.MorningId;
import sunup.journal.Answer;

/**
 * Asks the journal whether the epochs of this node's mornings still stand, one question for all of
 * them, and tells the actors. Runs on the actors' executor.
 */
final class EpochWatch {
  /** Between two questions; an owner must be confirmed at least once a second. */
  static final long EVERY_MS = 500;

  private final Means means;
  private final Supplier<Collection<SuiteActor>> actors;
  private Runnable next = () -> {};
  private boolean asking;
  private boolean ended;

  EpochWatch(Means means, Supplier<Collection<SuiteActor>> actors) {
    this.means = means;
    this.actors = actors;
  }

  void start() {
    next = means.timers().after(EVERY_MS, this::round);
  }

  void end() {
    ended = true;
    next.run();
  }

  private void round() {
    if (ended) {
      return;
    }
    Map<MorningId, SuiteActor> asked = new HashMap<>();
    for (SuiteActor actor : actors.get()) {
      actor.tick();
      asked.put(actor.morning(), actor);
    }
    // One question at a time: a journal that does not answer is not asked more and more.
    if (!asking && !asked.isEmpty()) {
      asking = true;
      long askedAt = means.clock().monotonicMs();
      means
          .journal()
          .epochs(
              asked.keySet(),
              answer -> means.executor().execute(() -> answered(asked, askedAt, answer)));
    }
    start();
  }

  private void answered(
      Map<MorningId, SuiteActor> asked, long askedAt, Answer<Map<MorningId, Long>> answer) {
    asking = false;
    if (answer instanceof Answer.Known<Map<MorningId, Long>> known && !ended) {
      asked.forEach((id, actor) -> actor.confirm(known.value().get(id), askedAt));
    }
  }
}
