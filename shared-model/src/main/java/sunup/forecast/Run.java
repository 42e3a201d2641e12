package sunup.forecast;

import java.util.ArrayList;
import java.util.Collection;
import java.util.List;

/**
 * A forecast that can be continued: after n trials its result is that of the same input with n
 * trials. For one thread, but for what {@link #sharing} gives.
 */
public final class Run {
  private final ForecastInput in;
  private String inputs;
  private final List<List<Integer>> components;
  private final List<Part> parts = new ArrayList<>();
  private final boolean isWhole;
  private int trials;
  private Results results;

  /**
   * Prepares a forecast; no trial is run yet.
   *
   * @param in the input; its trials are the most that this run can come to
   * @throws BadInput if the input can't be simulated
   */
  public Run(ForecastInput in) {
    this(in, true);
  }

  /**
   * Prepares a forecast of some rooms and of those that depend on them. Its trials are bit by bit
   * those that the whole suite's forecast gives these rooms.
   *
   * @param rooms ids; every component that has one of them is run
   */
  public static Run of(ForecastInput in, Collection<String> rooms) {
    return new Run(in, true, rooms);
  }

  /**
   * Rooms that depend on each other, each list and the lists in the input's order.
   *
   * @throws BadInput if the input can't be simulated
   */
  public static List<List<String>> components(ForecastInput in) {
    Checks.check(in);
    return Components.of(in).stream().map(rooms -> names(in, rooms)).toList();
  }

  private static List<String> names(ForecastInput in, List<Integer> rooms) {
    return rooms.stream().map(r -> in.rooms().get(r).id()).toList();
  }

  /** With {@code apart} false all rooms are simulated as one component: for tests. */
  Run(ForecastInput in, boolean apart) {
    this(in, apart, null);
  }

  private Run(ForecastInput in, boolean apart, Collection<String> only) {
    Checks.check(in);
    this.in = in;
    isWhole = only == null;
    components = Components.of(in);
    if (apart) {
      for (List<Integer> rooms : components) {
        if (only == null || names(in, rooms).stream().anyMatch(only::contains)) {
          parts.add(new Part(in, rooms));
        }
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
    sharing(upTo).run();
  }

  /**
   * The trials that are not done yet, up to a number, as work that several threads may do together.
   * Each that runs it takes trials until none is left to begin; the bits do not depend on how many
   * come, nor when. Nothing else may be asked of this run until all have come back.
   *
   * @param upTo at most the input's trials
   */
  public Runnable sharing(int upTo) {
    if (upTo > in.trials()) {
      throw new BadInput("trials: this run was prepared for " + in.trials() + ", not " + upTo);
    }
    trials = Math.max(trials, upTo);
    return () -> parts.forEach(part -> part.run(upTo));
  }

  /**
   * When a room started, trial by trial, so that two runs with the same draws can be compared.
   *
   * @param room one that this run was prepared for
   * @return epoch milliseconds; a trial without a start counts the cap
   */
  public long[] starts(String room) {
    for (Part part : parts) {
      for (int r = 0; r < part.model.rooms; r++) {
        if (part.model.roomId[r].equals(room)) {
          long[] starts = new long[trials];
          for (int n = 0; n < trials; n++) {
            starts[n] = in.now() + part.moments.start[r][n];
          }
          return starts;
        }
      }
    }
    throw new IllegalArgumentException("this run has no room " + room);
  }

  /**
   * The figures of the trials run so far as work that several threads may do together, like {@link
   * #sharing}; {@link #result} does what of it nobody did.
   */
  public Runnable reading() {
    if (!isWhole) {
      throw new IllegalStateException("a run of some rooms has no figures of the suite");
    }
    if (trials == 0) {
      throw new IllegalStateException("advance before asking for a result");
    }
    results = new Results(in, inputs, trials, parts);
    return results;
  }

  /** The figures of the trials run so far, of a run of all rooms; at least one must have been. */
  public Forecast result() {
    if (results == null || results.trials != trials) {
      reading();
    }
    results.run();
    inputs = results.name();
    return results.forecast(components.stream().map(rooms -> names(in, rooms)).toList());
  }
}
