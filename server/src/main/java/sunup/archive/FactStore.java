package sunup.archive;

import java.util.Iterator;
import java.util.List;
import java.util.Map;
import sunup.board.LearnedTimes;
import sunup.board.MorningId;
import sunup.board.SuiteId;
import sunup.review.facts.FirstCaseFact;
import sunup.review.facts.ForecastNote;
import sunup.review.learn.Lessons;
import sunup.sheets.ComposedSheet;

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
   * @param taught what the morning teaches
   */
  void replace(MorningId morning, long seq, List<FirstCaseFact> facts, Taught taught);

  /**
   * What a closed morning teaches.
   *
   * @param sheets that it was worked by; kept of the newest morning of a suite only
   * @param went the learned times that it went by, or null
   */
  record Taught(Lessons lessons, List<ComposedSheet> sheets, LearnedTimes went) {
    public Taught {
      sheets = List.copyOf(sheets);
    }
  }

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
   * @param number of what the suite brought
   * @return how many rows were taken
   */
  long history(SuiteId suite, int number, List<FirstCaseFact> facts);

  /** The number of the history of each suite that is kept here. */
  Map<SuiteId, Integer> brought();

  /** Drops all rows of a source. */
  void forget(Source source);

  /**
   * Forecasts that were made again for moments of a morning of which the board kept nothing: by the
   * model of then. A moment's never change by what is recorded after it.
   */
  List<ForecastNote> remade(MorningId morning);

  /** Keeps them in the place of those that were kept. */
  void remade(MorningId morning, List<ForecastNote> notes);

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
