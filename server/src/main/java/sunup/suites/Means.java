package sunup.suites;

import java.util.concurrent.Executor;
import java.util.function.Function;
import java.util.function.IntFunction;
import sunup.board.LearnedTimes;
import sunup.board.SuiteId;
import sunup.journal.EventCodec;
import sunup.journal.EventTypes;
import sunup.journal.Journal;

/**
 * What an actor works with.
 *
 * @param executor runs one task after another, in order; all of an actor runs on it
 * @param timers call on that executor
 * @param random gives as many random bytes as asked for
 * @param types of events that this program reads
 * @param company the other nodes; null where nobody places mornings and an owner that lost its
 *     morning comes back by itself
 * @param learned what a suite's closed mornings taught, at once, for an opening to freeze; null if
 *     nothing
 */
record Means(
    Journal journal,
    Decider decider,
    Clock clock,
    Executor executor,
    Timers timers,
    EventCodec codec,
    IntFunction<byte[]> random,
    EventTypes types,
    Company company,
    Function<SuiteId, LearnedTimes> learned) {
  /** Whether events of this type may be written now: whoever takes the morning must read them. */
  boolean mayWrite(String type) {
    return types.settled().contains(type)
        || (types.reads().contains(type) && (company == null || company.reads(type)));
  }
}
