package sunup.suites;

import java.util.concurrent.Executor;
import java.util.function.Consumer;
import java.util.function.IntFunction;
import sunup.board.MorningId;
import sunup.journal.EventCodec;
import sunup.journal.Journal;

/**
 * What an actor works with.
 *
 * @param executor runs one task after another, in order; all of an actor runs on it
 * @param timers call on that executor
 * @param random gives as many random bytes as asked for
 * @param gone told on the executor of a morning that another node took, or that this program can't
 *     read; null where nobody places mornings and the owner comes back by itself
 */
record Means(
    Journal journal,
    Decider decider,
    Clock clock,
    Executor executor,
    Timers timers,
    EventCodec codec,
    IntFunction<byte[]> random,
    Consumer<MorningId> gone) {}
