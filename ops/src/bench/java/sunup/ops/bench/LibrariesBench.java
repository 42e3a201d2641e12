package sunup.ops.bench;

import com.sun.management.OperatingSystemMXBean;
import java.lang.management.ManagementFactory;
import java.util.Arrays;
import java.util.Locale;
import java.util.function.Supplier;
import sunup.forecast.Forecast;
import sunup.forecast.Forecast.RoomOut;
import sunup.forecast.ForecastInput;
import sunup.forecast.Forecaster;
import sunup.forecast.StartsOnly;

/**
 * The forecast beside two general simulation libraries: the same model ({@link SharedRooms}), the
 * same answers within the error of so many trials, in turns in one run. The forecast also says what
 * the libraries' models don't: reasons, last moments, all items' figures.
 */
public final class LibrariesBench {
  private static final int TRIALS = 2_000;
  private static final int ROUNDS = 5;
  private static final int BARE = 100_000;
  private static final int WARM_UPS = 3;
  private static final double ERRORS = 4.5;
  private static final int[] ROOMS = {1, 4, 16};
  private static final double[] POINTS = {0.1, 0.5, 0.9};

  /** Means of rarely late rooms have no error to speak of. */
  private static final double LATE_ENOUGH = 60_000;

  private static final OperatingSystemMXBean SYSTEM =
      (OperatingSystemMXBean) ManagementFactory.getOperatingSystemMXBean();

  /** Processor time of the thread that asks. */
  static long ofThisThread() {
    return ManagementFactory.getThreadMXBean().getCurrentThreadCpuTime();
  }

  /** Processor time of the whole program: what takes turns on many threads is not told apart. */
  static long ofAllThreads() {
    return SYSTEM.getProcessCpuTime();
  }

  /** Time that passed and time of the processor, of one way to do it. */
  private static final class Cost {
    final Times passed = new Times();
    final Times taken = new Times();
    private int round;

    void add(long ofPassed, long ofTaken) {
      if (round++ >= WARM_UPS) {
        passed.add(ofPassed);
        taken.add(ofTaken);
      }
    }

    <T> T of(Supplier<T> work) {
      long cpu = ofThisThread();
      long from = System.nanoTime();
      T result = work.get();
      add(System.nanoTime() - from, ofThisThread() - cpu);
      return result;
    }

    Played add(Played played) {
      add(played.passed(), played.taken());
      return played;
    }

    double passed() {
      return passed.quantile(0.5);
    }

    double taken() {
      return taken.quantile(0.5);
    }
  }

  private LibrariesBench() {}

  /** No arguments. Fails if the answers differ by more than the error of the trials. */
  public static void main(String[] args) {
    System.out.println(
        BenchCommand.machine() + "; rooms with items in order, one technician and one machine of");
    System.out.println(
        "all rooms, log-normal durations, start when all is good; " + TRIALS + " trials,");
    System.out.println(
        "median of " + ROUNDS + " rounds in turns; times as much as the first line, by processor");
    for (int rooms : ROOMS) {
      compare(new SharedRooms(rooms));
    }
  }

  private static void compare(SharedRooms model) {
    Cost whole = new Cost();
    Cost starts = new Cost();
    Cost list = new Cost();
    Cost threads = new Cost();
    Cost bareList = new Cost();
    Cost bareThreads = new Cost();
    double worst = 0;
    long events = 0;
    long switches = 0;
    for (int round = 0; round < WARM_UPS + ROUNDS; round++) {
      ForecastInput in = model.input(round, TRIALS);
      Forecast forecast = whole.of(() -> Forecaster.run(in));
      long[][] ours = starts.of(() -> StartsOnly.play(in));
      Played byEvents = list.add(EventList.play(model.rooms(), TRIALS, round));
      Played byProcesses = threads.add(Processes.play(model.rooms(), TRIALS, round));
      bareList.add(EventList.idle(BARE));
      bareThreads.add(Processes.idle(BARE));
      worst = Math.max(worst, apart(model, forecast, byEvents, "event list"));
      worst = Math.max(worst, apart(model, forecast, byProcesses, "processes"));
      check(forecast, ours);
      events = byEvents.events();
      switches = byProcesses.events();
    }
    double items = (double) model.rooms() * SharedRooms.ITEMS * TRIALS;
    System.out.printf(
        Locale.ROOT,
        "%d rooms: equal answers (furthest apart %.1f standard errors, %.1f allowed)%n",
        model.rooms(),
        worst,
        ERRORS);
    line("forecast, starts only", starts, starts, items, "draws and the order of events");
    line("forecast, all it says", whole, starts, items, "reasons, last moments, figures by item");
    line("event list (DSOL 4.2.1)", list, starts, items, each(events, list, bareList));
    line("processes (SSJ 2.5)", threads, starts, items, each(switches, threads, bareThreads));
  }

  /** The starts that are timed are those of which the forecast tells. */
  private static void check(Forecast forecast, long[][] starts) {
    for (int r = 0; r < starts.length; r++) {
      long[] sorted = starts[r].clone();
      Arrays.sort(sorted);
      if (sorted[TRIALS / 2 - 1] != forecast.rooms().get(r).start50()) {
        throw new IllegalStateException("room " + r + " starts otherwise than the forecast says");
      }
    }
  }

  private static String each(long n, Cost cost, Cost bare) {
    return String.format(
        Locale.ROOT,
        "%.0f ns an event; one that does nothing %.0f",
        cost.taken() / n,
        bare.taken() / BARE);
  }

  private static void line(String what, Cost cost, Cost ours, double items, String bound) {
    System.out.printf(
        Locale.ROOT,
        "  %-24s %9.2f ms  %6.0f ns a completion, %6.0f of processor: %5.1f times  %s%n",
        what,
        cost.passed() / 1e6,
        cost.passed() / items,
        cost.taken() / items,
        cost.taken() / ours.taken(),
        bound);
    System.out.flush();
  }

  /** The largest distance in standard errors of the difference, over rooms and figures. */
  private static double apart(SharedRooms model, Forecast forecast, Played played, String who) {
    double worst = 0;
    for (int r = 0; r < model.rooms(); r++) {
      RoomOut room = forecast.rooms().get(r);
      long[] points = {room.start10(), room.start50(), room.start90()};
      for (int k = 0; k < POINTS.length; k++) {
        double q = POINTS[k];
        double below = played.share(r, points[k]);
        worst = Math.max(worst, Math.abs(below - q) / Math.sqrt(2 * q * (1 - q) / TRIALS));
      }
      double mean = played.meanLate(r, model.target());
      if (room.meanLateMs() > LATE_ENOUGH && mean > LATE_ENOUGH) {
        double error = Math.sqrt(2 * played.varianceLate(r, model.target()) / TRIALS);
        worst = Math.max(worst, Math.abs(room.meanLateMs() - mean) / error);
      }
    }
    if (worst > ERRORS) {
      throw new IllegalStateException(
          who + " and forecast are " + worst + " standard errors apart: not the same model");
    }
    return worst;
  }
}
