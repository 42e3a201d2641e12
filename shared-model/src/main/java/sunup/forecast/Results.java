package sunup.forecast;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import sunup.forecast.Forecast.ItemOut;
import sunup.forecast.Forecast.RoomOut;
import sunup.forecast.Forecast.Share;

/** From the tallies of the components to the figures. */
final class Results {
  /** Shares of less than this many late milliseconds in the mean are not said: 0.1 min. */
  static final long LEAST_MEAN = 6_000;

  /** Late minutes of one kind of piece. */
  private static final class Sum {
    long ms;
    int count;
    int[] ends = new int[8];

    void add(long piece, int end) {
      ms += piece;
      if (count == ends.length) {
        ends = java.util.Arrays.copyOf(ends, 2 * count);
      }
      ends[count++] = end;
    }
  }

  private final ForecastInput in;
  private final String inputs;
  private final int trials;
  private final RoomOut[] rooms;
  private final List<Share> suite = new ArrayList<>();
  private final Select select = new Select();
  private final int[] scratch;
  private static final double[] BAND = {0.1, 0.5, 0.9};
  private static final double[] MIDDLE = {0.5};
  private final int[] found = new int[BAND.length];
  private long suiteTotal;

  /** Of the component that is read. */
  private Tally tally;

  Results(ForecastInput in, String inputs, int trials) {
    this.in = in;
    this.inputs = inputs;
    this.trials = trials;
    rooms = new RoomOut[in.rooms().size()];
    scratch = new int[trials];
  }

  Forecast read(List<Part> parts, List<List<Integer>> components) {
    for (Part part : parts) {
      for (Tally.Late late : part.tally().late) {
        suiteTotal += late.total;
      }
    }
    for (Part part : parts) {
      tally = part.tally();
      for (int r = 0; r < part.model.rooms; r++) {
        rooms[part.model.roomOrder[r]] = room(part, r);
      }
    }
    suite.sort(LARGEST_FIRST);
    List<List<String>> names = new ArrayList<>();
    for (List<Integer> component : components) {
      names.add(component.stream().map(r -> in.rooms().get(r).id()).toList());
    }
    return new Forecast(
        Forecaster.MODEL,
        inputs,
        in.seed(),
        trials,
        in.now(),
        List.of(rooms),
        List.copyOf(suite),
        List.copyOf(names));
  }

  private static final Comparator<Share> LARGEST_FIRST =
      Comparator.comparingDouble((Share s) -> -s.share());

  private RoomOut room(Part part, int r) {
    Model m = part.model;
    Tally.Late late = tally.late[r];
    double already = 0;
    List<Share> shares = new ArrayList<>();
    if (late.total >= LEAST_MEAN * trials && late.total > 0) {
      Map<Long, Sum> sums = new TreeMap<>();
      long lost = 0;
      for (int n = 0; n < late.count; n++) {
        if (late.end[n] <= 0 && Tally.kindOf(late.key[n]) != Chain.PLAN) {
          lost += late.piece[n];
        } else {
          sums.computeIfAbsent(late.key[n], k -> new Sum()).add(late.piece[n], late.end[n]);
        }
      }
      already = (double) lost / late.total;
      for (Map.Entry<Long, Sum> e : sums.entrySet()) {
        share(m, r, e.getKey(), e.getValue(), late.total, shares);
      }
      shares.sort(LARGEST_FIRST);
    }
    int[] kept = silent(part, r);
    long[] start = band(part.moments.start[r]);
    long[] could = band(part.moments.could[r]);
    return new RoomOut(
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
        items(part, r));
  }

  private long[] band(int[] of) {
    select.quantiles(of, trials, BAND, found);
    return new long[] {moment(found[0]), moment(found[1]), moment(found[2])};
  }

  private void share(Model m, int r, long key, Sum sum, long total, List<Share> shares) {
    int kind = Tally.kindOf(key);
    int item = Tally.itemOf(key);
    int thing = Tally.thingOf(key);
    int where = Tally.whereOf(key);
    Share of =
        new Share(
            m.roomId[r],
            Chain.KINDS[kind],
            item < 0 ? null : m.key[item],
            Chain.nameOf(m, kind, thing),
            where < 0 ? null : m.roomId[where],
            (double) sum.ms / total,
            middle(sum.ends, sum.count));
    shares.add(of);
    if (suiteTotal >= LEAST_MEAN * trials) {
      suite.add(
          new Share(
              of.room(),
              of.kind(),
              of.item(),
              of.thing(),
              of.where(),
              (double) sum.ms / suiteTotal,
              of.until()));
    }
  }

  /** Kept and tried of the silent person of the room of whom the least share was kept. */
  private int[] silent(Part part, int r) {
    Silence silence = part.silence();
    int[] found = {trials, trials};
    for (int p = 0; p < part.model.people; p++) {
      if (silence.isSilent(p) && part.model.personRoom[p] == r) {
        int kept = silence.kept[p].count();
        int tried = silence.kept[p].tried();
        if ((long) kept * found[1] < (long) found[0] * tried) {
          found[0] = kept;
          found[1] = tried;
        }
      }
    }
    return found;
  }

  private List<ItemOut> items(Part part, int r) {
    Model m = part.model;
    List<ItemOut> items = new ArrayList<>();
    for (int i = m.firstItem[r]; i < m.firstItem[r + 1]; i++) {
      if (m.mends[i] < 0) {
        items.add(item(part, i));
      }
    }
    return List.copyOf(items);
  }

  private ItemOut item(Part part, int i) {
    Model m = part.model;
    double critical = (double) tally.critical[i] / trials;
    int undone = java.util.Arrays.binarySearch(m.undone, i);
    if (undone < 0) {
      Long good = m.good[i] > Model.EVER ? Long.valueOf(in.now() + m.good[i]) : null;
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

  private long middle(int[] of, int n) {
    select.quantiles(of, n, MIDDLE, found);
    return moment(found[0]);
  }

  private long moment(int ms) {
    return in.now() + ms;
  }

  private Long momentOrNull(int ms) {
    return ms == Moments.NONE || ms == -Moments.NONE ? null : Long.valueOf(in.now() + ms);
  }
}
