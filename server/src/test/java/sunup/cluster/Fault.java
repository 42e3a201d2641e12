package sunup.cluster;

import java.util.Locale;
import java.util.Random;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.locks.LockSupport;

/** What happens to nodes, their lines and their database, and how it ends. */
enum Fault {
  KILL_OWNER(true, 3_000, 3_000),
  KILL_OTHER(false, 3_000, 3_000),
  /** Started again at once, as a supervisor does. */
  KILL_DATABASE(false, 3_000, 3_000),
  PAUSE_OWNER(true, 6_000, 5_000),
  PAUSE_OTHER(false, 6_000, 5_000),
  /** Cut off from all: the other nodes, the database, the proxy. */
  CUT_OWNER(true, 8_000, 5_000),
  CUT_OTHER(false, 8_000, 5_000),
  /** Two nodes against one; all of them reach the database and their screens. */
  TWO_AGAINST_OWNER(true, 8_000, 5_000),
  TWO_AGAINST_OTHER(false, 8_000, 5_000),
  /** What a node says, or what it should hear, is lost: between nodes only, or with all. */
  ONE_WAY_OWNER(true, 8_000, 5_000),
  ONE_WAY_OTHER(false, 8_000, 5_000),
  /** Delay and loss. */
  HAMPER_OWNER(true, 8_000, 5_000),
  CLOCK_OWNER(true, 8_000, 5_000),
  /** Cut off from all and back, six times. */
  FLAP_OWNER(true, 0, 5_000),
  FLAP_OTHER(false, 0, 5_000),
  /** No fault: each node is ended in order and started anew, the next when all are whole again. */
  ROLL(true, 0, 3_000);

  private static final long START_AGAIN_S = 20;
  private static final int CLOCK_OFF_S = 45;
  private static final int FLAPS = 6;

  private final boolean owner;
  private final long holdMs;
  private final long aimMs;

  Fault(boolean owner, long holdMs, long aimMs) {
    this.owner = owner;
    this.holdMs = holdMs;
    this.aimMs = aimMs;
  }

  String words() {
    return name().toLowerCase(Locale.ROOT).replace('_', '-');
  }

  /** True if it happens to the owner, else to another node. */
  boolean owner() {
    return owner;
  }

  /** How long it lasts. */
  long holdMs() {
    return holdMs;
  }

  /** Within so long all should write again, at the 95th percentile. */
  long aimMs() {
    return aimMs;
  }

  void begin(FaultyCluster cluster, int place, Random random) throws Exception {
    switch (this) {
      case KILL_OWNER, KILL_OTHER -> cluster.node(place).kill();
      case KILL_DATABASE -> startAgain(cluster);
      case PAUSE_OWNER, PAUSE_OTHER -> cluster.node(place).signal("STOP");
      case CUT_OWNER, CUT_OTHER -> cluster.network().cut(place, true, true);
      case TWO_AGAINST_OWNER, TWO_AGAINST_OTHER -> fromNodes(cluster, place, true, true);
      case ONE_WAY_OWNER, ONE_WAY_OTHER -> oneWay(cluster, place, random);
      case HAMPER_OWNER -> cluster.network().hamper(place);
      case CLOCK_OWNER ->
          cluster.node(place).setClock(random.nextBoolean() ? CLOCK_OFF_S : -CLOCK_OFF_S);
      case FLAP_OWNER, FLAP_OTHER -> flap(cluster, place, random);
      case ROLL -> roll(cluster);
    }
  }

  void end(FaultyCluster cluster, int place) throws Exception {
    switch (this) {
      case KILL_OWNER, KILL_OTHER -> cluster.begin(place);
      case KILL_DATABASE, FLAP_OWNER, FLAP_OTHER, ROLL -> {}
      case PAUSE_OWNER, PAUSE_OTHER -> cluster.node(place).signal("CONT");
      case CLOCK_OWNER -> cluster.node(place).setClock(0);
      default -> cluster.network().heal();
    }
  }

  private static void flap(FaultyCluster cluster, int place, Random random) throws Exception {
    for (int time = 0; time < FLAPS; time++) {
      cluster.network().cut(place, true, true);
      LockSupport.parkNanos(TimeUnit.MILLISECONDS.toNanos(500 + random.nextInt(1_500)));
      cluster.network().heal();
      LockSupport.parkNanos(TimeUnit.MILLISECONDS.toNanos(200 + random.nextInt(1_000)));
    }
  }

  private static void roll(FaultyCluster cluster) throws Exception {
    for (int place = 1; place <= FaultyCluster.NODES; place++) {
      if (!cluster.node(place).stop()) {
        throw new AssertionError("node " + place + " did not end when it was told to");
      }
      cluster.begin(place);
      Nodes.until(cluster::whole, "all nodes again");
    }
  }

  private static void startAgain(FaultyCluster cluster) throws Exception {
    cluster.server().kill();
    long until = System.nanoTime() + TimeUnit.SECONDS.toNanos(START_AGAIN_S);
    while (true) {
      try {
        cluster.server().start();
        return;
      } catch (AssertionError stillEnding) {
        if (System.nanoTime() > until) {
          throw stillEnding;
        }
        LockSupport.parkNanos(50_000_000);
      }
    }
  }

  private static void fromNodes(FaultyCluster cluster, int place, boolean out, boolean in)
      throws Exception {
    for (int other = 1; other <= FaultyCluster.NODES; other++) {
      if (other != place && out) {
        cluster.network().cut(place, other);
      }
      if (other != place && in) {
        cluster.network().cut(other, place);
      }
    }
  }

  private static void oneWay(FaultyCluster cluster, int place, Random random) throws Exception {
    boolean out = random.nextBoolean();
    if (random.nextBoolean()) {
      cluster.network().cut(place, out, !out);
    } else {
      fromNodes(cluster, place, out, !out);
    }
  }
}
