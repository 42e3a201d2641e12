package sunup.forecast;

/**
 * The forecast of a morning. Pure: equal inputs give equal bits, on any machine. The model is
 * written down in FORECAST.md.
 */
public final class Forecaster {
  /** Version of the model; another one may give other figures for the same input. */
  public static final int MODEL = 1;

  private Forecaster() {}

  /**
   * Simulates the rest of the morning.
   *
   * @throws BadInput if the input can't be simulated; the message names the field and what to do
   */
  public static Forecast run(ForecastInput in) {
    Run run = new Run(in);
    run.advance(in.trials());
    return run.result();
  }

  /**
   * The same of an input that somebody sent: says what it asks for that can't be had. A board goes
   * on with such a morning, whoever writes one by hand has made a mistake.
   *
   * @throws BadInput also if a room can never start
   */
  public static Forecast ofSent(ForecastInput in) {
    Checks.check(in);
    Doubts doubts = Doubts.of(in);
    if (doubts.never() != null) {
      throw new BadInput(doubts.never() + ". Give what it waits for, or leave the item out");
    }
    return run(in).with(doubts.told());
  }
}
