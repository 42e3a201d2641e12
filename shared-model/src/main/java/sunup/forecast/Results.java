package sunup.forecast;

import java.util.ArrayList;
import java.util.List;
import sunup.forecast.Forecast.RoomOut;
import sunup.forecast.Forecast.Share;

/**
 * From the tallies of the components to the figures of so many trials. As many threads as come take
 * what is left to read: each room, and the input's name.
 */
final class Results implements Runnable {
  /** A room of a component. */
  private record Place(Part part, Tally tally, int room) {}

  final int trials;
  private final ForecastInput in;
  private final List<Place> places = new ArrayList<>();
  private final RoomFigures.Read[] read;
  private int begun;
  private final long suiteTotal;
  private volatile String name;

  /**
   * @param name of the input, or null if it is to be made
   */
  Results(ForecastInput in, String name, int trials, List<Part> parts) {
    this.in = in;
    this.name = name;
    this.trials = trials;
    long total = 0;
    for (Part part : parts) {
      Tally tally = part.tally();
      for (int r = 0; r < part.model.rooms; r++) {
        places.add(new Place(part, tally, r));
        total += tally.late[r].total;
      }
    }
    suiteTotal = total;
    read = new RoomFigures.Read[places.size()];
  }

  /** Reads what nobody has begun to read. */
  @Override
  public void run() {
    RoomFigures figures = null;
    for (int n = begin(); n <= read.length; n = begin()) {
      if (n == 0) {
        name = name == null ? InputKey.of(in) : name;
        continue;
      }
      if (figures == null) {
        figures = new RoomFigures(in.now(), trials, suiteTotal);
      }
      Place place = places.get(n - 1);
      read[n - 1] = figures.read(place.part(), place.tally(), place.room());
    }
  }

  /** The next that nobody has begun; beyond all of them if none is left. */
  private synchronized int begin() {
    return begun > read.length ? begun : begun++;
  }

  /** The input's name, once all have come back. */
  String name() {
    return name;
  }

  /** All figures, once all have come back. */
  Forecast forecast(List<List<String>> components) {
    RoomOut[] rooms = new RoomOut[read.length];
    List<Share> suite = new ArrayList<>();
    for (int n = 0; n < read.length; n++) {
      Place place = places.get(n);
      rooms[place.part().model.roomOrder[place.room()]] = read[n].room();
      suite.addAll(read[n].ofSuite());
    }
    suite.sort(RoomFigures.LARGEST_FIRST);
    return new Forecast(
        Forecaster.MODEL,
        name,
        in.seed(),
        trials,
        in.now(),
        List.of(rooms),
        List.copyOf(suite),
        components);
  }
}
