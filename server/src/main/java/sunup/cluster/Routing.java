package sunup.cluster;

import io.vertx.core.buffer.Buffer;
import java.util.List;
import java.util.function.BooleanSupplier;
import java.util.function.Consumer;
import java.util.function.IntSupplier;
import sunup.board.MorningId;
import sunup.journal.EventTypes;
import sunup.live.Feed;
import sunup.live.Lane;
import sunup.live.Line;
import sunup.live.MorningsBySuite;
import sunup.live.Owners;
import sunup.live.Place;
import sunup.suites.Clock;
import sunup.suites.Company;
import sunup.suites.Owner;
import sunup.suites.Reply;
import sunup.suites.Standpoint;
import sunup.suites.Submission;
import sunup.suites.Suites;
import sunup.wire.Audience;

/**
 * Carries commands to the owner of a morning and what the owner's node draws to the screens of this
 * one, wherever the owner is. Stands on plain interfaces: neither sockets nor threads are its own.
 */
public final class Routing implements Owners, Company {
  private final String self;
  private final Suites suites;
  private final Lane lane;
  private final Bus bus;
  private final Placement placement;
  private volatile MorningsBySuite mornings;
  private volatile IntSupplier screens = () -> 0;
  private volatile boolean leaving;
  private volatile boolean ended;

  /**
   * @param self this node's id
   * @param nodesMeant how many nodes there are when all are up
   * @param suites whose company this is
   * @param types of events that this program reads
   * @param lane where all of it happens
   */
  public Routing(
      String self,
      int nodesMeant,
      Suites suites,
      EventTypes types,
      Clock clock,
      Lane lane,
      Members members,
      Bus bus) {
    this.self = self;
    this.suites = suites;
    this.lane = lane;
    this.bus = bus;
    this.placement =
        new Placement(
            self,
            nodesMeant,
            suites,
            types.recent(),
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
  }

  /** Begins to speak to the others. */
  public void start() {
    placement.start();
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

  @Override
  public Owner owner(MorningId morning) {
    return new RoutedOwner(morning);
  }

  @Override
  public Runnable follow(MorningId morning, Consumer<Place> told) {
    lane.run(() -> placement.watch(morning, told));
    return () -> lane.run(() -> placement.unwatch(morning, told));
  }

  @Override
  public void gone(MorningId morning) {
    placement.gone(morning);
  }

  @Override
  public boolean reads(String type) {
    return placement.reading().byAll(type);
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
      Long echo = placement.peers().echoFor(node);
      return bus.send(node, new BusMessage.Told(morning, audience, kind, echo), message);
    }
  }

  /** The process of another node has ended. From any thread. */
  public void ended(String node) {
    lane.run(() -> placement.ended(node));
  }

  /** What another node says. From any thread. */
  public void heard(String from, BusMessage message, Buffer payload) {
    lane.run(() -> take(from, message, payload));
  }

  private void take(String from, BusMessage message, Buffer payload) {
    MorningsBySuite mine = mornings;
    if (message instanceof BusMessage.Pulse pulse) {
      placement.heard(from, pulse);
    } else if (message instanceof BusMessage.Ask ask) {
      placement.commands().asked(placement.want(ask.morning()), from, ask);
    } else if (message instanceof BusMessage.Reply reply) {
      placement.commands().answered(reply);
    } else if (message instanceof BusMessage.Prepare soon) {
      MorningId morning = soon.morning();
      suites.prepare(morning, () -> bus.send(from, new BusMessage.Prepared(morning), null));
    } else if (message instanceof BusMessage.Prepared ready) {
      placement.prepared(from, ready.morning());
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
      BooleanSupplier fresh = () -> placement.peers().fresh(told.echo());
      mine.of(told.morning().suite())
          .ifPresent(
              shown ->
                  shown.told(told.morning(), from, told.audience(), told.kind(), payload, fresh));
    }
  }

  /**
   * How this node sees the cluster.
   *
   * @param amongMost whether it and more than half of the nodes hear each other
   * @param unread mornings that are left to other nodes, and why
   */
  public record State(
      String node,
      boolean leaving,
      boolean clockOff,
      boolean amongMost,
      List<Unread> unread,
      List<Peers.Seen> nodes) {}

  /** A morning that this node can't read, and why, in words. */
  public record Unread(String morning, String why) {}

  /** From any thread; half a second old at most. */
  public State state() {
    List<Unread> unread =
        placement.reading().unread().entrySet().stream()
            .map(each -> new Unread(each.getKey().toString(), each.getValue()))
            .toList();
    Peers peers = placement.peers();
    return new State(self, leaving, placement.clockOff(), peers.amongMost(), unread, peers.seen());
  }

  /**
   * Gives all mornings to other nodes.
   *
   * @param then run in the lane when they have them, or there is nobody to take them
   */
  public void leave(Runnable then) {
    leaving = true;
    lane.run(() -> placement.leave(then));
  }

  /** Takes no more commands and says nothing more. */
  public void end() {
    ended = true;
    placement.end();
  }
}
