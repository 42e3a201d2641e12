package sunup.cluster;

import com.hazelcast.core.HazelcastException;
import io.vertx.core.Vertx;
import io.vertx.core.buffer.Buffer;
import java.io.IOException;
import java.security.SecureRandom;
import java.util.HexFormat;
import java.util.List;
import java.util.concurrent.CompletableFuture;
import java.util.concurrent.CountDownLatch;
import java.util.concurrent.ExecutionException;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.TimeoutException;
import java.util.function.Consumer;
import java.util.function.Function;
import java.util.function.IntSupplier;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;
import sunup.board.MorningId;
import sunup.journal.EventCodec;
import sunup.live.Feed;
import sunup.live.Line;
import sunup.live.MorningsBySuite;
import sunup.live.Owners;
import sunup.live.Place;
import sunup.live.ThreadLane;
import sunup.suites.Clock;
import sunup.suites.Owner;
import sunup.suites.Reply;
import sunup.suites.Standpoint;
import sunup.suites.Submission;
import sunup.suites.Suites;
import sunup.wire.Audience;

/** This node among the others: puts members, bus and placement together. */
public final class Cluster implements Owners, AutoCloseable {
  private static final int ID_BYTES = 4;
  private static final long START_S = 30;

  /** How long others may take for this node's mornings when it leaves. */
  private static final long LEAVE_MS = 5_000;

  private static final Logger LOG = LoggerFactory.getLogger(Cluster.class);

  private final Node self;
  private final Suites suites;
  private final ThreadLane lane = new ThreadLane("sunup-cluster");
  private final TcpBus bus;
  private final HazelcastMembers members;
  private final Placement placement;
  private volatile MorningsBySuite mornings;
  private volatile IntSupplier screens = () -> 0;
  private volatile boolean leaving;
  private volatile boolean ended;

  private Cluster(
      Vertx vertx, ClusterOptions options, Clock clock, Function<Consumer<MorningId>, Suites> open)
      throws IOException {
    byte[] random = new byte[ID_BYTES];
    new SecureRandom().nextBytes(random);
    this.self = new Node(HexFormat.of().formatHex(random), options.host(), options.port() + 1);
    this.bus = new TcpBus(vertx, options, self, EventCodec.types(), this::heard);
    this.suites = open.apply(morning -> this.placement().gone(morning));
    HazelcastMembers joined = null;
    try {
      wait(bus.listen().toCompletionStage().toCompletableFuture());
      joined = new HazelcastMembers(options, self);
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
    this.placement =
        new Placement(
            self.id(),
            options.nodes().size(),
            suites,
            clock,
            lane,
            members,
            bus,
            new Screens() {
              @Override
              public int open() {
                return screens.getAsInt();
              }

              @Override
              public Place.There line(MorningId morning, String node) {
                return new Place.There(new BusLine(morning, node));
              }
            });
    bus.connect(members);
    placement.start();
    LOG.info(
        "node {} at {}:{}, cluster {}", self.id(), self.host(), options.port(), options.name());
  }

  private Placement placement() {
    return placement;
  }

  /**
   * Joins the cluster. Takes seconds.
   *
   * @param open makes the suites over the shared journal, given whom to tell of a morning that went
   * @throws IllegalArgumentException that says what to do if the options can't be used
   * @throws IOException if the addresses can't be had
   */
  public static Cluster join(
      Vertx vertx, ClusterOptions options, Clock clock, Function<Consumer<MorningId>, Suites> open)
      throws IOException {
    options.check();
    return new Cluster(vertx, options, clock, open);
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

  /**
   * Says whose screens are told.
   *
   * @param open counts the open sockets
   */
  public void serve(MorningsBySuite served, IntSupplier open) {
    mornings = served;
    screens = open;
  }

  public Suites suites() {
    return suites;
  }

  /** This node's id. */
  public String id() {
    return self.id();
  }

  @Override
  public Owner owner(MorningId morning) {
    return new RoutedOwner(morning);
  }

  @Override
  public Runnable follow(MorningId morning, Consumer<Place> told) {
    lane.run(() -> placement.watch(morning, told));
    return () -> lane.run(() -> placement.unwatch(morning, told));
  }

  /** Wherever the morning is. */
  private final class RoutedOwner implements Owner {
    private final MorningId morning;

    RoutedOwner(MorningId morning) {
      this.morning = morning;
    }

    @Override
    public MorningId morning() {
      return morning;
    }

    @Override
    public void submit(Submission submission, Consumer<Reply> answer) {
      if (ended) {
        answer.accept(new Reply.Later("The board is being shut down. Send it again."));
        return;
      }
      lane.run(() -> placement.submit(morning, submission, answer));
    }

    /** What the journal says, once; who draws a morning watches its owner, which is here. */
    @Override
    public Runnable watch(Consumer<Standpoint> watcher) {
      suites.look(morning, read -> read.ifPresent(watcher));
      return () -> {};
    }
  }

  /** The line to the owner's node. */
  private final class BusLine implements Line {
    private final MorningId morning;
    private final String node;

    BusLine(MorningId morning, String node) {
      this.morning = morning;
      this.node = node;
    }

    @Override
    public String node() {
      return node;
    }

    @Override
    public void follow(boolean views) {
      bus.send(node, new BusMessage.Follow(morning, views), null);
    }
  }

  /** The line to a node whose screens show a morning of this one. */
  private final class BusFeed implements Feed {
    private final String node;

    BusFeed(String node) {
      this.node = node;
    }

    @Override
    public boolean tell(MorningId morning, Audience audience, Kind kind, Buffer message) {
      Long echo = placement.echoFor(node);
      return bus.send(node, new BusMessage.Told(morning, audience, kind, echo), message);
    }
  }

  /** On the bus's threads. */
  private void heard(String from, BusMessage message, Buffer payload) {
    lane.run(() -> take(from, message, payload));
  }

  private void take(String from, BusMessage message, Buffer payload) {
    MorningsBySuite mine = mornings;
    if (placement == null) {
      return;
    }
    if (message instanceof BusMessage.Pulse pulse) {
      placement.heard(from, pulse);
    } else if (message instanceof BusMessage.Ask ask) {
      placement.commands().asked(placement.want(ask.morning()), from, ask);
    } else if (message instanceof BusMessage.Reply reply) {
      placement.commands().answered(reply);
    } else if (message instanceof BusMessage.HandOver over) {
      placement.handOver(over.morning());
    } else if (mine != null && message instanceof BusMessage.Follow follow) {
      mine.of(follow.morning().suite())
          .ifPresent(
              shown -> {
                placement.want(follow.morning());
                shown.follow(follow.morning(), from, new BusFeed(from), follow.views());
              });
    } else if (mine != null && payload != null && message instanceof BusMessage.Told told) {
      // A heartbeat that lay somewhere while this node or a line stood still proves nothing.
      if (told.kind() != Feed.Kind.BEAT || placement.fresh(told.echo())) {
        mine.of(told.morning().suite())
            .ifPresent(
                shown -> shown.told(told.morning(), from, told.audience(), told.kind(), payload));
      }
    }
  }

  /** How this node sees the cluster. */
  public record State(String node, boolean leaving, boolean clockOff, List<Peers.Seen> nodes) {}

  /** From any thread; half a second old at most. */
  public State state() {
    return new State(self.id(), leaving, placement.clockOff(), placement.seen());
  }

  /** True from the moment on at which it takes nothing new. */
  public boolean leaving() {
    return leaving;
  }

  /** Gives all mornings to other nodes and waits until they have them, if there are any. */
  public void leave() {
    leaving = true;
    CountDownLatch given = new CountDownLatch(1);
    lane.run(() -> placement.leave(given::countDown));
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
    ended = true;
    placement.end();
    suites.close();
    bus.close();
    members.close();
    lane.close();
  }
}
