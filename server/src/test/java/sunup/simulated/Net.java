package sunup.simulated;

import io.vertx.core.buffer.Buffer;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import sunup.cluster.Bus;
import sunup.cluster.BusMessage;
import sunup.cluster.Members;
import sunup.cluster.Node;
import sunup.journal.EventTypes;
import sunup.live.Feed;

/**
 * The lines between nodes and what the grid says of members. Harder than the real ones, which keep
 * the order and double nothing: nothing durable may rest on that.
 */
final class Net {
  /** All nodes read what this program reads. */
  private static final Set<String> READ = EventTypes.ofProgram().reads();

  private static final long USUAL_MS = 12;
  private static final long LONG_MS = 3_000;

  /** Of three messages one is hit while a fault of messages is on. */
  private static final long ONE_IN = 3;

  /** When the grid notices that a member has come, gone or was cut off. */
  private static final long JOIN_MS = 400;

  /** Within so long a line refuses; one that is cut says nothing. */
  private static final long REFUSED_MS = 300;

  private static final long GONE_MS = 5_000;
  private static final long CUT_MS = 4_000;
  private static final long MERGE_MS = 2_000;

  private final SimulatedTime time;
  private final Weather weather;
  private final Bug bug;
  private final List<Machine> ever = new ArrayList<>();
  private final Map<String, Way> ways = new HashMap<>();

  /** One direction between two processes. */
  private static final class Way {
    long sent;
    long lastArrival;
  }

  Net(SimulatedTime time, Weather weather, Bug bug) {
    this.time = time;
    this.weather = weather;
    this.bug = bug;
  }

  void add(Machine machine) {
    ever.add(machine);
  }

  Bus busOf(Machine from) {
    return (node, message, payload) -> send(from, node, message, payload);
  }

  private boolean send(Machine from, String node, BusMessage message, Buffer payload) {
    Machine to = ever.stream().filter(one -> one.id.equals(node)).findFirst().orElse(null);
    if (to == null || !to.process.alive()) {
      return false;
    }
    Way way = ways.computeIfAbsent(from.id + ">" + node, w -> new Way());
    String name = from.id + ">" + node;
    long number = ++way.sent;
    long delay = 1 + weather.draw(name, number, USUAL_MS);
    Fault cut = weather.cut(from.index, to.index);
    if (cut != null) {
      if (cut.how() == 0) {
        return true;
      }
      delay += cut.ends() - time.now();
    }
    if (hit(Fault.Kind.DROP, from, to, name, number)) {
      return true;
    }
    if (weather.line(Fault.Kind.DELAY, from.index, to.index) != null) {
      delay += weather.draw(name + " late", number, LONG_MS);
    }
    long at = time.now() + delay;
    if (hit(Fault.Kind.REORDER, from, to, name, number)) {
      at += weather.draw(name + " out of turn", number, LONG_MS);
    } else {
      at = Math.max(at, way.lastArrival);
      way.lastArrival = at;
    }
    to.net.after(at - time.now(), () -> arrive(from, to, message, payload));
    if (hit(Fault.Kind.DOUBLE, from, to, name, number)) {
      long again = at + weather.draw(name + " twice", number, LONG_MS);
      to.net.after(again - time.now(), () -> arrive(from, to, message, payload));
    }
    return true;
  }

  private boolean hit(Fault.Kind kind, Machine from, Machine to, String name, long number) {
    return weather.line(kind, from.index, to.index) != null
        && weather.draw(name + kind.words(), number, ONE_IN) == 0;
  }

  private void arrive(Machine from, Machine to, BusMessage message, Buffer payload) {
    BusMessage heard = message;
    if (bug == Bug.PASS_ON_OLD_BEATS
        && message instanceof BusMessage.Told told
        && told.kind() == Feed.Kind.BEAT) {
      heard =
          new BusMessage.Told(told.morning(), told.audience(), told.kind(), to.clock.monotonicMs());
    }
    to.routing.heard(from.id, heard, payload);
  }

  /** Its lines end where they are whole, and its port refuses. */
  void ended(Machine dead) {
    for (Machine other : ever) {
      String name = other.id + "!" + dead.id;
      boolean cut =
          weather.cut(dead.index, other.index) != null
              || weather.cut(other.index, dead.index) != null;
      if (other.process.alive() && !cut) {
        long delay = 1 + weather.draw(name, 0, REFUSED_MS);
        other.net.after(delay, () -> other.routing.ended(dead.id));
      }
    }
  }

  Members membersOf(Machine self) {
    return new Members() {
      @Override
      public List<Node> nodes() {
        return ever.stream()
            .filter(one -> one == self || sees(self, one))
            .map(one -> new Node(one.id, "10.0.0." + (one.index + 1), 7460, READ))
            .toList();
      }

      @Override
      public String suggested(String key) {
        String best = null;
        for (Node node : nodes()) {
          boolean first =
              best == null
                  || weather.draw(node.id(), key.hashCode()) < weather.draw(best, key.hashCode());
          best = first ? node.id() : best;
        }
        return best;
      }
    };
  }

  private boolean sees(Machine self, Machine other) {
    long now = time.now();
    if (now < other.bornAt + weather.draw(other.id + " joins", self.index, JOIN_MS)) {
      return false;
    }
    if (!other.process.alive()
        && now > other.diedAt + weather.draw(other.id + " goes", self.index, GONE_MS)) {
      return false;
    }
    return !weather.apart(self.index, other.index, CUT_MS, MERGE_MS);
  }
}
