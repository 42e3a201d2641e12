package sunup.trying;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import sunup.board.Morning;
import sunup.forecast.ForecastInput;
import sunup.forecast.ForecastInput.RoomIn;
import sunup.forecast.Run;
import sunup.moves.Paired;
import sunup.outlook.Outlook;
import sunup.wire.Part.ChancePart;
import sunup.wire.Tried;
import sunup.wire.Tried.TriedRoom;
import sunup.wire.TryAsk;
import sunup.wire.TryChange;

/**
 * A morning as it is and a changed copy of it, simulated with the same draws, in slices of work
 * that whoever runs it may stop. Nothing is recorded: both are values. Equal arguments give equal
 * bits. Not thread-safe.
 */
public final class SideBySide {
  private static final double MINUTE = 60_000;

  /** One of the two. */
  private record Side(Morning morning, ForecastInput in, Run run) {
    Side(Morning morning, ForecastInput in) {
      this(morning, in, new Run(in));
    }
  }

  private final long upTo;
  private final Side is;
  private final Side copy;

  /** Targets as they are, by case: what late minutes of both sides count against. */
  private final Map<String, Long> targets = new HashMap<>();

  /**
   * @param now the moment to forecast from
   * @param trials the most that will be run of each
   * @throws CantTry if the board would refuse one of the changes, or there is nothing to change
   */
  public SideBySide(Morning morning, List<TryChange> changes, long now, int trials) throws CantTry {
    if (changes.isEmpty() || changes.size() > TryAsk.CHANGES_AT_MOST) {
      throw new CantTry("Change one to " + TryAsk.CHANGES_AT_MOST + " things.");
    }
    long from = Math.max(now, morning.lastRecordedAt());
    Copy changed = new Copy(morning, from);
    for (TryChange change : changes) {
      changed.make(change);
    }
    upTo = morning.seq();
    is = new Side(morning, Outlook.input(morning, from, trials));
    copy = new Side(changed.morning(), changed.input(trials));
    is.in().rooms().forEach(room -> targets.put(room.caseId(), room.target()));
  }

  /** Trials run of each so far. */
  public int trials() {
    return copy.run().trials();
  }

  /** Runs both until so many trials are done. */
  public void advance(int trials) {
    is.run().advance(trials);
    copy.run().advance(trials);
  }

  /** Both beside each other by the trials run so far; at least one must have been. */
  public Tried result() {
    Map<String, ChancePart> chances = chances(is);
    Map<String, ChancePart> copyChances = chances(copy);
    Map<String, RoomIn> copies = new HashMap<>();
    copy.in().rooms().forEach(room -> copies.put(room.id(), room));
    List<TriedRoom> rooms = new ArrayList<>();
    long[] saved = new long[trials()];
    double late = 0;
    double copyLate = 0;
    for (RoomIn room : is.in().rooms()) {
      long[] without = late(is, room);
      long[] with = late(copy, copies.get(room.id()));
      long[] here = new long[saved.length];
      for (int n = 0; n < here.length; n++) {
        here[n] = without[n] - with[n];
        saved[n] += here[n];
        late += without[n];
        copyLate += with[n];
      }
      ChancePart chance = chances.get(room.id());
      ChancePart copyChance = copyChances.get(room.id());
      Paired paired = Paired.of(here);
      boolean known = chance.onTime() != null && copyChance.onTime() != null;
      rooms.add(
          new TriedRoom(
              room.id(),
              room.target(),
              copies.get(room.id()).target(),
              chance,
              copyChance,
              known ? minutes(paired.mean()) : null,
              known ? minutes(paired.error()) : null));
    }
    Paired all = Paired.of(saved);
    return new Tried(
        is.in().now(),
        upTo,
        trials(),
        minutes(late / saved.length),
        minutes(copyLate / saved.length),
        minutes(all.mean()),
        minutes(all.error()),
        rooms);
  }

  private static Map<String, ChancePart> chances(Side side) {
    Map<String, ChancePart> chances = new HashMap<>();
    Outlook.chances(side.morning(), side.run().result(), side.in().now())
        .forEach(chance -> chances.put(chance.room(), chance));
    return chances;
  }

  /** A trial beyond what is computed counts to there, on both sides alike. */
  private long[] late(Side side, RoomIn room) {
    long target = targets.get(room.caseId());
    long most = side.in().settings().capMs();
    long[] late = side.run().starts(room.id());
    for (int n = 0; n < late.length; n++) {
      late[n] = Math.min(most, Math.max(0, late[n] - target));
    }
    return late;
  }

  private static double minutes(double ms) {
    return Math.round(10 * ms / MINUTE) / 10.0;
  }
}
