package sunup.archive;

import java.util.Iterator;
import java.util.List;
import java.util.Map;
import sunup.board.MorningId;
import sunup.board.SuiteId;
import sunup.review.facts.FirstCaseFact;

/**
 * Keeps the facts of first cases, one row each, in a form that is quick to count. Nothing in it is
 * the truth: it is made from the journal and from files of history. May be called from any thread;
 * calls that write wait for each other.
 */
public interface FactStore extends AutoCloseable {
  /** Where a row comes from. */
  enum Source {
    /** Made from the journal of a closed morning. */
    JOURNAL,
    /** From a file of the time before Sunup. */
    HISTORY
  }

  /**
   * Replaces whatever is kept of a morning, from whichever source: what the journal says wins.
   *
   * @param seq journal sequence that the facts were made at
   * @param facts may be none
   */
  void replace(MorningId morning, long seq, List<FirstCaseFact> facts);

  /**
   * Adds rows in bulk. Rows of mornings that are kept already are added to them: forget first, or
   * leave them out.
   *
   * @return how many
   */
  long append(Source source, Iterator<FirstCaseFact> facts);

  /**
   * Replaces the history of a suite. Rows of mornings that the journal has are left out.
   *
   * @return how many rows were taken
   */
  long history(SuiteId suite, List<FirstCaseFact> facts);

  /** Drops all rows of a source. */
  void forget(Source source);

  /** The mornings made from the journal, and the sequence that each was made at. */
  Map<MorningId, Long> made();

  /** What can be asked. */
  FactFigures figures();

  /** Finishes what was asked and lets go of the file. */
  @Override
  void close();

  /** The store failed; the message says what to do. */
  final class Trouble extends RuntimeException {
    private static final long serialVersionUID = 1L;

    public Trouble(String message, Throwable cause) {
      super(message, cause);
    }
  }
}
