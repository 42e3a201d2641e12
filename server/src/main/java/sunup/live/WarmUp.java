package sunup.live;

import java.util.concurrent.Callable;
import java.util.function.BooleanSupplier;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;
import sunup.board.Morning;
import sunup.outlook.Foretold;

/**
 * Forecasts a made-up morning over and over at the start of a program, so that the first real one
 * finds its code compiled: cold it would take seconds. It changes nothing and is shown to nobody.
 */
public final class WarmUp {
  /** As often as it takes until it is hardly any faster. */
  private static final int ROUNDS = 60;

  private static final Logger LOG = LoggerFactory.getLogger(WarmUp.class);

  private WarmUp() {}

  /**
   * Runs it on this thread.
   *
   * @param madeUp makes the morning
   * @param now the moment that it stands at
   * @param wanted true as soon as there is real work: it ends then
   */
  public static void run(
      Sight sight, Pace pace, Callable<Morning> madeUp, long now, BooleanSupplier wanted) {
    try {
      Morning morning = madeUp.call();
      for (int n = 0; n < ROUNDS && !wanted.getAsBoolean(); n++) {
        Sight.Figuring figuring = sight.figuring(morning, now, pace.trialsFull());
        figuring.advance(pace.trialsFirst());
        Foretold figures = new Foretold(figuring.result(), morning.seq(), false);
        sight.see(morning.id(), null, morning, figures, now);
      }
    } catch (Exception e) {
      LOG.warn("the warm-up failed: the first forecast takes longer", e);
    }
  }
}
