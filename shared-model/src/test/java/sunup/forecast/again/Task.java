package sunup.forecast.again;

import java.util.ArrayList;
import java.util.List;
import sunup.forecast.Draw;
import sunup.forecast.ForecastInput.ItemIn;
import sunup.forecast.ForecastInput.Need;
import sunup.forecast.ForecastInput.RoomIn;

/** An item of a room, or the mending of its fault, in one trial. */
final class Task {
  enum State {
    OPEN,
    BEGUN,
    GOOD
  }

  final RoomIn room;
  final int roomAt;
  final ItemIn item;
  final boolean mending;
  final List<Task> before = new ArrayList<>();
  final List<Task> dependants = new ArrayList<>();
  final List<List<Somebody>> slots = new ArrayList<>();

  private Boolean gating;
  private Double tail;

  /** Set while its units are claimed. */
  boolean holdsUnits;

  State state = State.OPEN;
  long readyAt = Long.MIN_VALUE;
  long comesAt;
  int redone;

  Task(RoomIn room, int roomAt, ItemIn item, boolean mending) {
    this.room = room;
    this.roomAt = roomAt;
    this.item = item;
    this.mending = mending;
  }

  List<List<String>> who() {
    if (mending) {
      List<String> one = item.progress().mender();
      return one.isEmpty() ? List.of() : List.of(one);
    }
    return item.who();
  }

  Draw hands() {
    return mending ? item.progress().mend() : item.hands();
  }

  Draw waits() {
    return mending ? null : item.waits();
  }

  List<Need> needs() {
    return mending ? List.of() : item.needs();
  }

  String place() {
    return mending ? null : item.place();
  }

  String marks() {
    return mending ? null : item.marks();
  }

  boolean arrives() {
    return !mending && item.arrival() != null;
  }

  boolean byItself() {
    return who().isEmpty() && needs().isEmpty();
  }

  /** Where the hands are. */
  String where() {
    return place() == null ? room.id() : place();
  }

  boolean prerequisitesGood() {
    return before.stream().allMatch(b -> b.state == State.GOOD);
  }

  boolean followsAStep() {
    return before.stream().anyMatch(b -> b.marks() != null || b.followsAStep());
  }

  /** It, or something that follows from it, gates or marks a step. */
  boolean gating() {
    if (gating == null) {
      gating =
          item.gates() != null
              || item.marks() != null
              || dependants.stream().anyMatch(Task::gating);
    }
    return gating;
  }

  /** Its usual minutes and those of the longest path of what depends on it. */
  double tail() {
    if (tail == null) {
      double longest = dependants.stream().mapToDouble(Task::tail).max().orElse(0);
      tail = usual(hands()) + usual(waits()) + longest;
    }
    return tail;
  }

  static double usual(Draw d) {
    if (d == null) {
      return 0;
    }
    if (d instanceof Draw.Constant c) {
      return c.ms();
    }
    if (d instanceof Draw.LogNormal l) {
      return l.usualMs();
    }
    if (d instanceof Draw.Exponential e) {
      return e.meanMs() * Math.log(2);
    }
    Draw.ThreePoint p = (Draw.ThreePoint) d;
    return (p.lowMs() + 4.0 * p.likelyMs() + p.highMs()) / 6;
  }
}
