package sunup.journal;

import java.util.Collection;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.function.Consumer;
import sunup.board.MorningId;

/**
 * The journal of all mornings of a data store. May be called from any thread. Every call is
 * answered exactly once, on a thread of the journal's own; appends of one caller are answered in
 * the order in which they were given. Nothing here throws for what the disk or the database does.
 */
public interface Journal extends AutoCloseable {
  /**
   * Makes the caller the one who may append, by moving the epoch one up. Ask {@link #load} only
   * after it was answered.
   *
   * @param seen the epoch that the caller believes to stand, or null to take whatever stands
   */
  void takeOver(MorningId morning, Long seen, Consumer<TakenOver> then);

  /** All that is kept of a morning; {@link Head#NONE} and nothing if it is not known. */
  default void load(MorningId morning, Consumer<Answer<Stored>> then) {
    load(morning, 0, then);
  }

  /**
   * The same, but of its events only those after one that the caller has read already.
   *
   * @param after the number of that event, or 0
   */
  void load(MorningId morning, long after, Consumer<Answer<Stored>> then);

  /** Adds what one command yields. Answered after the commit, never before. */
  void append(Append append, Consumer<Appended> then);

  /** The epochs that stand, in one question; a morning that is not known is not in the answer. */
  void epochs(Collection<MorningId> mornings, Consumer<Answer<Map<MorningId, Long>>> then);

  /** The mornings that have at least one event, by suite and date. */
  void mornings(Consumer<Answer<List<MorningId>>> then);

  /** How many events each morning has; those that have none are not in the answer. */
  void lengths(Consumer<Answer<Map<MorningId, Long>>> then);

  /**
   * Erases private values that are due.
   *
   * @param now epoch milliseconds of morning time
   * @param then gets the mornings that lost something; their owners must forget it, too
   */
  void erase(long now, Consumer<Answer<Set<MorningId>>> then);

  /** Finishes what was asked, answers it and lets go of the store. */
  @Override
  void close();
}
