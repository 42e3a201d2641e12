package sunup.live;

import java.util.List;
import sunup.board.Morning;
import sunup.board.MorningId;
import sunup.forecast.Forecast;
import sunup.moves.Ideas;
import sunup.outlook.Foretold;
import sunup.review.facts.ForecastNote;
import sunup.wire.Part;

/**
 * What is to be seen of a morning: pure functions of its state, the figures and the time. Called
 * from several threads.
 */
public interface Sight {
  /**
   * Prepares the figures of the rest of the morning. May take long.
   *
   * @param now the morning's time, epoch milliseconds
   * @param trialsMost the most trials that will be asked for
   * @return null if there is nothing to forecast
   */
  Figuring figuring(Morning state, long now, int trialsMost);

  /** A forecast under way, on one thread at a time but for what is shared. */
  interface Figuring {
    /** Runs until so many trials are done. May take long. */
    default void advance(int upTo) {
      sharing(upTo).run();
    }

    /**
     * The same as work that several threads may do together: each takes of it what is left. Nothing
     * else is asked of this until all have come back.
     */
    Runnable sharing(int upTo);

    /** What {@link #result} has to read of the trials done, as such work. */
    default Runnable reading() {
      return () -> {};
    }

    /** The figures of the trials done; at least one. */
    Forecast result();
  }

  /**
   * Prepares a search for moves that may still help.
   *
   * @param of figures of this very state
   * @return null if there is nothing to look for
   */
  default Searching searching(Morning state, Forecast of) {
    return null;
  }

  /** A search under way, on one thread at a time. */
  interface Searching {
    /** One short slice of work. Returns false once the result is there. */
    boolean advance();

    /** What it came to. */
    Ideas result();
  }

  /**
   * The parts for all audiences.
   *
   * @param before what the last call remembered, null at first
   * @param figures the newest there are
   * @param now the morning's time, epoch milliseconds
   */
  Seen see(MorningId morning, Object before, Morning state, Foretold figures, long now);

  /**
   * The lines of the forecast log that are due with what is shown.
   *
   * @param memory of {@link #see} with the same figures
   * @param state that the figures were computed from
   */
  default List<ForecastNote> due(Object memory, Morning state, Forecast figures) {
    return List.of();
  }

  /**
   * What is to be seen.
   *
   * @param memory for the next call
   * @param parts with keys that are unique within each audience
   */
  record Seen(Object memory, List<Part> parts) {
    public Seen {
      parts = List.copyOf(parts);
    }
  }
}
