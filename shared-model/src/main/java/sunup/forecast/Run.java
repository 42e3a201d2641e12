package sunup.forecast;

import java.util.ArrayList;
import java.util.List;

/**
 * A forecast that can be continued: after n trials its result is that of the same input with n
 * trials. Not thread-safe.
 */
public final class Run {
  /** One component: compiled, simulated, tallied. */
  static final class Part {
    final Model model;
    final Trial trial;
    final Tally tally;

    Part(ForecastInput in, List<Integer> rooms) {
      model = Compiler.compile(in, rooms);
      trial = new Trial(model);
      tally = new Tally(model, in.trials(), in.now());
    }
  }

  private final ForecastInput in;
  private String inputs;
  private final List<List<Integer>> components;
  private final List<Part> parts = new ArrayList<>();
  private int trials;

  /**
   * Prepares a forecast; no trial is run yet.
   *
   * @param in the input; its trials are the most that this run can come to
   * @throws BadInput if the input can't be simulated
   */
  public Run(ForecastInput in) {
    this(in, true);
  }

  /** With {@code apart} false all rooms are simulated as one component: for tests. */
  Run(ForecastInput in, boolean apart) {
    Checks.check(in);
    this.in = in;
    components = Components.of(in);
    if (apart) {
      for (List<Integer> rooms : components) {
        parts.add(new Part(in, rooms));
      }
    } else {
      List<Integer> all = new ArrayList<>();
      for (int r = 0; r < in.rooms().size(); r++) {
        all.add(r);
      }
      parts.add(new Part(in, all));
    }
  }

  /** Trials run so far. */
  public int trials() {
    return trials;
  }

  /**
   * Runs until so many trials are done; no effect if they are.
   *
   * @param upTo at most the input's trials
   */
  public void advance(int upTo) {
    if (upTo > in.trials()) {
      throw new BadInput("trials: this run was prepared for " + in.trials() + ", not " + upTo);
    }
    for (Part part : parts) {
      for (int n = part.tally.trials; n < upTo; n++) {
        part.trial.run(n);
        part.tally.take(part.trial.course);
      }
    }
    trials = Math.max(trials, upTo);
  }

  /** The figures of the trials run so far; at least one must have been run. */
  public Forecast result() {
    if (trials == 0) {
      throw new IllegalStateException("advance before asking for a result");
    }
    if (inputs == null) {
      inputs = InputKey.of(in);
    }
    return new Results(in, inputs, trials).read(parts, components);
  }
}
