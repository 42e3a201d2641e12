package sunup.forecast;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.List;
import sunup.forecast.Forecast.ItemOut;
import sunup.forecast.Forecast.RoomOut;
import sunup.forecast.Forecast.Share;

/** Reads one room after another from what was taken down of the trials. For one thread. */
final class RoomFigures {
  /** Shares of less than this many late milliseconds in the mean are not said: 0.1 min. */
  private static final long LEAST_MEAN = 6_000;

  /** A room's figures, and its shares of the whole suite's late minutes. */
  record Read(RoomOut room, List<Share> ofSuite) {}

  private static final double[] BAND = {0.1, 0.5, 0.9};
  private static final double[] MIDDLE = {0.5};
  static final Comparator<Share> LARGEST_FIRST =
      Comparator.comparingDouble((Share s) -> -s.share());

  private final long now;
  private final int trials;
  private final long suiteTotal;
  private final Select select = new Select();
  private final int[] scratch;
  private final int[] found = new int[BAND.length];

  /** Of the component that is read. */
  private Part part;

  private Tally tally;

  /**
   * @param suiteTotal late milliseconds of all rooms in all trials
   */
  RoomFigures(long now, int trials, long suiteTotal) {
    this.now = now;
    this.trials = trials;
    this.suiteTotal = suiteTotal;
    scratch = new int[trials];
  }

  Read read(Part of, Tally counted, int r) {
    part = of;
    tally = counted;
    Model m = part.model;
    Tally.Late late = tally.late[r];
    double already = 0;
    List<Share> shares = new ArrayList<>();
    List<Share> ofSuite = new ArrayList<>();
    if (late.total >= LEAST_MEAN * trials && late.total > 0) {
      already = (double) late.lost / late.total;
      Sums sums = late.sums;
      for (int k : sums.inOrder()) {
        Share share = share(r, sums.key(k), (double) sums.ms(k) / late.total, until(sums, k));
        shares.add(share);
        if (suiteTotal >= LEAST_MEAN * trials) {
          ofSuite.add(share.as((double) sums.ms(k) / suiteTotal));
        }
      }
      shares.sort(LARGEST_FIRST);
    }
    int[] kept = silent(r);
    long[] start = band(part.moments.start[r]);
    long[] could = band(part.moments.could[r]);
    RoomOut room =
        new RoomOut(
            m.roomId[r],
            (double) late.onTime / trials,
            start[0],
            start[1],
            start[2],
            could[0],
            could[1],
            could[2],
            (double) late.total / trials,
            late.capped,
            kept[0],
            kept[1],
            List.copyOf(shares),
            already,
            items(r));
    return new Read(room, ofSuite);
  }

  private long[] band(int[] of) {
    select.quantiles(of, trials, BAND, found);
    return new long[] {moment(found[0]), moment(found[1]), moment(found[2])};
  }

  private long until(Sums sums, int k) {
    select.quantiles(sums.ends(k), sums.endCount(k), MIDDLE, found);
    return moment(found[0]);
  }

  private Share share(int r, long key, double share, long until) {
    Model m = part.model;
    int kind = Tally.kindOf(key);
    int item = Tally.itemOf(key);
    int where = Tally.whereOf(key);
    return new Share(
        m.roomId[r],
        Chain.KINDS[kind],
        item < 0 ? null : m.key[item],
        Chain.nameOf(m, kind, Tally.thingOf(key)),
        where < 0 ? null : m.roomId[where],
        share,
        until);
  }

  /** Kept and tried of the silent person of the room of whom the least share was kept. */
  private int[] silent(int r) {
    Silence silence = part.silence();
    int[] least = {trials, trials};
    for (int p = 0; p < part.model.people; p++) {
      if (silence.isSilent(p) && part.model.personRoom[p] == r) {
        int kept = silence.kept[p].count();
        int tried = silence.kept[p].tried();
        if ((long) kept * least[1] < (long) least[0] * tried) {
          least[0] = kept;
          least[1] = tried;
        }
      }
    }
    return least;
  }

  private List<ItemOut> items(int r) {
    Model m = part.model;
    List<ItemOut> items = new ArrayList<>();
    for (int i = m.firstItem[r]; i < m.firstItem[r + 1]; i++) {
      if (m.mends[i] < 0) {
        items.add(item(i));
      }
    }
    return List.copyOf(items);
  }

  private ItemOut item(int i) {
    Model m = part.model;
    double critical = (double) tally.critical[i] / trials;
    int undone = Arrays.binarySearch(m.undone, i);
    if (undone < 0) {
      Long good = m.good[i] > Model.EVER ? Long.valueOf(now + m.good[i]) : null;
      return new ItemOut(m.key[i], critical, good, good, good, null, null);
    }
    part.moments.readDone(undone, trials, scratch);
    select.quantiles(scratch, trials, BAND, found);
    Long[] done = {momentOrNull(found[0]), momentOrNull(found[1]), momentOrNull(found[2])};
    Long last50 = null;
    Long last90 = null;
    if (m.state[i] == Model.OPEN) {
      part.moments.readLast(undone, trials, scratch);
      select.quantiles(scratch, trials, BAND, found);
      last50 = momentOrNull(found[1]);
      last90 = momentOrNull(found[0]);
    }
    return new ItemOut(m.key[i], critical, done[0], done[1], done[2], last50, last90);
  }

  private long moment(int ms) {
    return now + ms;
  }

  private Long momentOrNull(int ms) {
    return ms == Moments.NONE || ms == -Moments.NONE ? null : Long.valueOf(now + ms);
  }
}
