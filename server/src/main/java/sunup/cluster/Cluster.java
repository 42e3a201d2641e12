package sunup.cluster;

import com.hazelcast.core.HazelcastException;
import io.vertx.core.Vertx;
import io.vertx.core.buffer.Buffer;
import java.io.IOException;
import java.security.SecureRandom;
import java.util.HexFormat;
import java.util.concurrent.CompletableFuture;
import java.util.concurrent.CountDownLatch;
import java.util.concurrent.ExecutionException;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.TimeoutException;
import java.util.function.Function;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;
import sunup.board.MorningId;
import sunup.journal.EventTypes;
import sunup.live.ThreadLane;
import sunup.suites.Clock;
import sunup.suites.Company;
import sunup.suites.Seal;
import sunup.suites.Suites;

/** This node among the others: puts members, bus and routing together. */
public final class Cluster implements AutoCloseable {
  private static final int ID_BYTES = 4;
  private static final long START_S = 30;

  /** How long others may take for this node's mornings when it leaves. */
  private static final long LEAVE_MS = 5_000;

  private static final Logger LOG = LoggerFactory.getLogger(Cluster.class);

  private final Node self;
  private final Suites suites;
  private final ThreadLane lane = new ThreadLane("sunup-cluster");
  private final TcpBus bus;
  private final SealedBus sealed;
  private final HazelcastMembers members;

  /** Null until this node has joined: what is heard before that is lost. */
  private volatile Routing routing;

  private Cluster(
      Vertx vertx,
      ClusterOptions options,
      EventTypes types,
      Clock clock,
      Seal seal,
      Function<Company, Suites> open)
      throws IOException {
    byte[] random = new byte[ID_BYTES];
    new SecureRandom().nextBytes(random);
    this.self =
        new Node(
            HexFormat.of().formatHex(random), options.host(), options.port() + 1, types.reads());
    this.bus = new TcpBus(vertx, options, self, new Heard());
    this.sealed = new SealedBus(bus, seal);
    this.suites = open.apply(new Others());
    HazelcastMembers joined = null;
    try {
      wait(bus.listen().toCompletionStage().toCompletableFuture());
      joined = new HazelcastMembers(options, self, clock);
    } catch (HazelcastException e) {
      throw new IOException(
          "The node can't join at " + options.host() + ":" + options.port() + ": " + e.getMessage(),
          e);
    } finally {
      if (joined == null) {
        bus.close();
        lane.close();
        suites.close();
      }
    }
    this.members = joined;
    this.routing =
        new Routing(self.id(), options.nodes().size(), suites, types, clock, lane, members, sealed);
    bus.connect(members);
    routing.start();
    LOG.info(
        "node {} at {}:{}, cluster {}", self.id(), self.host(), options.port(), options.name());
  }

  /** On the bus's threads. */
  private final class Heard implements Bus.Listener {
    @Override
    public void heard(String from, BusMessage message, Buffer payload) {
      Routing there = routing;
      if (there != null && sealed.mayBeHeard(from, message)) {
        there.heard(from, message, payload);
      }
    }

    @Override
    public void ended(String node) {
      Routing there = routing;
      if (there != null) {
        there.ended(node);
      }
    }
  }

  /** As the suites see the others, from before this node has joined. */
  private final class Others implements Company {
    @Override
    public void gone(MorningId morning) {
      routing.gone(morning);
    }

    @Override
    public boolean reads(String type) {
      return routing.reads(type);
    }
  }

  /** Finds owners, commands and screens their way to them. */
  public Routing routing() {
    return routing;
  }

  /**
   * Joins the cluster. Takes seconds.
   *
   * @param types of events that this program reads
   * @param seal of the commands that nodes give each other
   * @param open makes the suites over the shared journal
   * @throws IllegalArgumentException that says what to do if the options can't be used
   * @throws IOException if the addresses can't be had
   */
  public static Cluster join(
      Vertx vertx,
      ClusterOptions options,
      EventTypes types,
      Clock clock,
      Seal seal,
      Function<Company, Suites> open)
      throws IOException {
    options.check();
    return new Cluster(vertx, options, types, clock, seal, open);
  }

  private static void wait(CompletableFuture<Void> done) throws IOException {
    try {
      done.get(START_S, TimeUnit.SECONDS);
    } catch (ExecutionException | TimeoutException e) {
      Throwable why = e.getCause() == null ? e : e.getCause();
      throw new IOException("The bus can't listen: " + why.getMessage(), why);
    } catch (InterruptedException e) {
      Thread.currentThread().interrupt();
      throw new IOException("interrupted", e);
    }
  }

  public Suites suites() {
    return suites;
  }

  /** This node's id. */
  public String id() {
    return self.id();
  }

  /** Gives all mornings to other nodes and waits until they have them, if there are any. */
  public void leave() {
    CountDownLatch given = new CountDownLatch(1);
    routing.leave(given::countDown);
    try {
      if (!given.await(LEAVE_MS, TimeUnit.MILLISECONDS)) {
        LOG.warn("the other nodes did not take all mornings in time");
      }
    } catch (InterruptedException e) {
      Thread.currentThread().interrupt();
    }
  }

  /** After {@link #leave}, and after the screens were told. */
  @Override
  public void close() {
    routing.end();
    suites.close();
    bus.close();
    members.close();
    lane.close();
  }
}
