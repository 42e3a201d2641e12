package sunup.moves;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Set;
import sunup.forecast.Forecast;
import sunup.forecast.ForecastInput;
import sunup.forecast.ForecastInput.PersonIn;
import sunup.forecast.ForecastInput.RoomIn;
import sunup.moves.Idea.Gain;
import sunup.moves.Proposals.Proposal;

/**
 * The search for moves that help (rule 4's two streams): all are screened on the morning's own
 * draws, the best few again on draws of their own, and shown if the saving there is large and sure
 * enough. In slices of work; whoever runs it may give it up between two of them. Equal arguments
 * give equal bits. Not thread-safe.
 */
public final class MoveSearch {
  /** Moves that are simulated; the possible ones beyond that are counted only. */
  public static final int SCREENED_AT_MOST = 40;

  public static final int SCREEN_TRIALS = 256;
  public static final int CONFIRMED_AT_MOST = 5;
  public static final int CONFIRM_TRIALS = 2_000;

  /** A saving of less in the mean is not worth anybody's walk. */
  public static final double LEAST_SAVED_MS = 2 * 60_000.0;

  /** Gains and losses of single rooms below this are not told. */
  private static final double LEAST_GAIN_MS = 30_000.0;

  /**
   * One-sided normal quantiles of 1 - 0.05 / m for m moves on the second stream (Bonferroni): the
   * chance that any useless one is shown is 5 % at most.
   */
  private static final double[] SURE = {1.6449, 1.9600, 2.1280, 2.2414, 2.3263};

  /** Separates the second stream's seed from the first's. */
  private static final long SECOND = 0xD1B54A32D192ED03L;

  private record Screened(Proposal proposal, double saved) {}

  private final ForecastInput in;
  private final int possible;
  private final List<Proposal> proposals;
  private final List<sunup.board.Move.Talk> talk;
  private final List<Screened> screened = new ArrayList<>();
  private List<Proposal> best = List.of();
  private final List<Idea> shown = new ArrayList<>();
  private Stream stream;
  private Stream.Copy base;
  private Stream.Copy copy;
  private boolean isSecond;
  private int next;
  private boolean isDone;

  /**
   * @param in the morning; its seed is the first stream's
   * @param free people without a room to serve who are here, whom the input does not have
   * @param forecast figures of it
   * @param off keys of moves that are asked already, or called not safe
   */
  public MoveSearch(ForecastInput in, List<PersonIn> free, Forecast forecast, Set<String> off) {
    this.in = in;
    Proposals all = new Proposals(in, free, forecast, off);
    List<Proposal> found = all.all();
    possible = found.size();
    proposals = List.copyOf(found.subList(0, Math.min(possible, SCREENED_AT_MOST)));
    talk = all.talk();
    isDone = proposals.isEmpty();
    if (!isDone) {
      begin(in.seed(), SCREEN_TRIALS);
    }
  }

  private void begin(long seed, int trials) {
    stream = new Stream(in, seed, trials);
    base = stream.new Copy(in);
    copy = base;
    next = -1;
  }

  /** One slice of work. Returns false once the result is there. */
  public boolean advance() {
    if (!isDone && !copy.advance()) {
      taken();
      next++;
      List<Proposal> of = isSecond ? best : proposals;
      if (next < of.size()) {
        copy = stream.new Copy(of.get(next).copy());
      } else if (isSecond) {
        isDone = true;
      } else {
        choose();
      }
    }
    return !isDone;
  }

  private void taken() {
    if (next < 0) {
      return;
    }
    if (isSecond) {
      confirm(best.get(next));
    } else {
      screened.add(new Screened(proposals.get(next), Paired.of(saved()).mean()));
    }
  }

  private void choose() {
    best =
        screened.stream()
            .filter(s -> s.saved() > 0)
            .sorted(
                Comparator.comparingDouble((Screened s) -> -s.saved())
                    .thenComparing(s -> s.proposal().move().key()))
            .limit(CONFIRMED_AT_MOST)
            .map(Screened::proposal)
            .toList();
    isDone = best.isEmpty();
    if (!isDone) {
      isSecond = true;
      begin(in.seed() ^ SECOND, CONFIRM_TRIALS);
    }
  }

  private void confirm(Proposal proposal) {
    Paired paired = Paired.of(saved());
    boolean isSure = paired.mean() > SURE[best.size() - 1] * paired.error();
    if (paired.mean() >= LEAST_SAVED_MS && isSure) {
      shown.add(
          new Idea(
              proposal.move(),
              proposal.role(),
              proposal.person(),
              paired.mean() / Proposals.MINUTE,
              paired.error() / Proposals.MINUTE,
              gains()));
    }
  }

  /** Late milliseconds of the suite that the copy saves, trial by trial. */
  private long[] saved() {
    long[] saved = null;
    for (RoomIn room : in.rooms()) {
      long[] without = base.late(room);
      long[] with = copy.late(room);
      saved = saved == null ? new long[without.length] : saved;
      for (int n = 0; n < saved.length; n++) {
        saved[n] += without[n] - with[n];
      }
    }
    return saved;
  }

  private List<Gain> gains() {
    List<Gain> gains = new ArrayList<>();
    for (RoomIn room : in.rooms()) {
      long[] without = base.late(room);
      long[] with = copy.late(room);
      long sum = 0;
      for (int n = 0; n < with.length; n++) {
        sum += without[n] - with[n];
      }
      double mean = (double) sum / with.length;
      if (Math.abs(mean) >= LEAST_GAIN_MS) {
        gains.add(new Gain(room.id(), mean / Proposals.MINUTE));
      }
    }
    gains.sort(Comparator.comparingDouble((Gain g) -> -g.minutes()));
    return gains;
  }

  /** What it came to; only once {@link #advance} has said that it is done. */
  public Ideas result() {
    if (!isDone) {
      throw new IllegalStateException("advance until it is done before asking for a result");
    }
    List<Idea> largestFirst =
        shown.stream()
            .sorted(
                Comparator.comparingDouble((Idea i) -> -i.savedMinutes())
                    .thenComparing(i -> i.move().key()))
            .toList();
    return new Ideas(
        in.now(),
        possible,
        proposals.size(),
        best.size(),
        best.isEmpty() ? 0 : CONFIRM_TRIALS,
        largestFirst,
        talk);
  }
}
