package sunup.cluster;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.function.Consumer;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;
import sunup.board.MorningId;
import sunup.live.Lane;
import sunup.live.Place;
import sunup.suites.Clock;
import sunup.suites.Owner;
import sunup.suites.Reply;
import sunup.suites.Standpoint;
import sunup.suites.Submission;
import sunup.suites.Suites;

/**
 * Which node owns which morning. Every node says a few times a second what it owns; a morning whose
 * owner was silent for {@link #SILENT_MS} is taken by the node that the grid suggests, and if that
 * one does not, by the next. Two who take it at once, or one who was only cut off, are told apart
 * by the epoch in the journal. All of it happens in the lane.
 */
final class Placement {
  static final long TICK_MS = 200;
  static final long PULSE_MS = 500;

  /** An owner that was not heard for so long is taken for dead. */
  static final long SILENT_MS = 2_000;

  /** Nobody is called dead before the others had time to speak. */
  static final long SETTLE_MS = 1_500;

  /** How long one that lost a morning leaves it alone; doubled each time within a minute. */
  static final long HOLD_OFF_MS = 3_000;

  static final long HOLD_OFF_MOST_MS = 60_000;

  /** An owner that says so long that the journal is away, while it answers here, is relieved. */
  static final long AWAY_MS = 3_500;

  private static final Logger LOG = LoggerFactory.getLogger(Placement.class);

  private final Suites suites;
  private final Clock clock;
  private final Lane lane;
  private final Commands commands;
  private final Screens screens;
  private final Peers peers;
  private final Epochs epochs;
  private final Succession succession;
  private final Reading reading;
  private final Giving giving;
  private final Map<MorningId, Wanted> wanted = new LinkedHashMap<>();
  private final Resettling resettling = new Resettling();
  private final OwnClock ownClock;
  private final long startedAt;
  private boolean leaving;
  private boolean ended;

  /**
   * @param nodesMeant how many nodes there are when all are up
   * @param suites whose company this is
   * @param recentTypes types of events that this program reads and not every node may
   */
  Placement(
      String self,
      int nodesMeant,
      Suites suites,
      Set<String> recentTypes,
      Clock clock,
      Lane lane,
      Members members,
      Bus bus,
      Screens screens) {
    this.suites = suites;
    this.clock = clock;
    this.lane = lane;
    this.screens = screens;
    this.commands = new Commands(bus, this::now, type -> reading().notByAll(type));
    this.peers = new Peers(self, nodesMeant, clock, members, bus);
    this.succession = new Succession(self, nodesMeant, members, peers);
    this.reading = new Reading(recentTypes, peers);
    this.epochs = new Epochs(suites, clock, lane, wanted::values);
    this.startedAt = now();
    this.ownClock = new OwnClock(peers);
    this.giving = new Giving(succession, peers, bus, lane, new Hands());
  }

  /** What giving a morning away needs of this. */
  private final class Hands implements Giving.Hands {
    @Override
    public void letGo(Wanted one, Runnable then) {
      Placement.this.letGo(one, then);
    }

    @Override
    public void tellAll() {
      Placement.this.tellAll();
    }

    @Override
    public void holdOff(Wanted one) {
      one.holdUntil = now() + HOLD_OFF_MS;
    }

    @Override
    public boolean leaving() {
      return leaving;
    }

    @Override
    public boolean atOnce() {
      return ownClock.off();
    }
  }

  private long now() {
    return clock.monotonicMs();
  }

  void start() {
    lane.run(this::tick);
    lane.run(this::pulse);
  }

  Commands commands() {
    return commands;
  }

  void end() {
    lane.run(() -> ended = true);
  }

  Wanted want(MorningId morning) {
    Wanted known = wanted.computeIfAbsent(morning, m -> new Wanted(m, now()));
    known.wantedAt = now();
    return known;
  }

  void submit(MorningId morning, Submission submission, Consumer<Reply> answer) {
    commands.submit(want(morning), submission, answer);
  }

  void watch(MorningId morning, Consumer<Place> watcher) {
    Wanted one = want(morning);
    one.watchers.add(watcher);
    watcher.accept(one.place);
  }

  void unwatch(MorningId morning, Consumer<Place> watcher) {
    want(morning).watchers.remove(watcher);
  }

  void heard(String from, BusMessage.Pulse pulse) {
    peers.noticeStanding();
    peers.heard(from, pulse);
    wanted.values().forEach(this::look);
  }

  /** A node's process is gone: nobody waits until it was silent for long. */
  void ended(String node) {
    if (peers.ended(node)) {
      LOG.warn("node {} has ended", node);
      wanted.values().forEach(this::look);
    }
  }

  /** Another node let go of the morning for this one. */
  void handOver(MorningId morning) {
    Wanted one = want(morning);
    one.holdUntil = 0;
    if (one.local == null && mayTake(one)) {
      take(one, "it was handed over");
    }
  }

  /** The suites: another node took the morning, or this program can't read it. From any thread. */
  void gone(MorningId morning) {
    lane.run(
        () -> {
          Wanted one = want(morning);
          if (one.local == null) {
            return;
          }
          suites.trouble(morning).ifPresent(why -> reading.cannot(morning, why));
          one.isLost(now());
          letGo(one, () -> {});
          look(one);
        });
  }

  private void pulse() {
    if (ended) {
      return;
    }
    lane.after(PULSE_MS, this::pulse);
    tellAll();
    epochs.ask();
    int mine = (int) wanted.values().stream().filter(Wanted::owned).count();
    peers.look(screens.open(), mine);
  }

  private void tellAll() {
    List<BusMessage.Claim> claims = new ArrayList<>();
    for (Wanted one : wanted.values()) {
      if (one.owned()) {
        claims.add(one.claim());
      } else if (one.giving != null) {
        claims.add(one.giving);
      }
    }
    peers.tell(takes(), screens.open(), claims, reading.unfit(), reading.recent());
  }

  private void tick() {
    if (ended) {
      return;
    }
    lane.after(TICK_MS, this::tick);
    peers.noticeStanding();
    long now = now();
    peers.forget(HOLD_OFF_MOST_MS);
    if (peers.lostOne()) {
      tellAll();
    }
    reading.tick();
    watchClock();
    for (Wanted one : List.copyOf(wanted.values())) {
      look(one);
      commands.tick(one);
      boolean idle = one.local == null && one.watchers.isEmpty() && one.parked.isEmpty();
      if (idle && one.sent.isEmpty() && now - one.wantedAt > HOLD_OFF_MOST_MS) {
        wanted.remove(one.morning);
      }
    }
  }

  private void watchClock() {
    if (ownClock.goesWrong()) {
      for (Wanted one : wanted.values()) {
        if (one.local != null) {
          giving.give(one);
        }
      }
    }
  }

  /** Where is it now, and is it this node's turn? */
  private void look(Wanted one) {
    long now = now();
    Peer owner = owner(one);
    if (owner != null) {
      one.nobodySince = Long.MAX_VALUE;
      one.rivalIsHeard();
      if (one.owned()) {
        // Epochs are the journal's: who has a higher one has it, also if that can't be read here.
        LOG.warn("{}: given up, {} has taken it", one.morning, owner.id);
        letGo(one, () -> {});
      }
      boolean relieving = one.relieving && owner.claim(one.morning).readOnly();
      if (one.local != null && !relieving) {
        letGo(one, () -> {});
      }
      if (one.local == null) {
        one.leaving = false;
        place(one, owner.id);
      }
      relieve(one, owner);
    } else if (one.owned()) {
      one.nobodySince = Long.MAX_VALUE;
      placeHere(one);
      moveWhereSuggested(one);
    } else {
      one.nobodySince = Math.min(one.nobodySince, now);
      if (one.place instanceof Place.There there) {
        LOG.warn("{}: {} is silent", one.morning, there.line().node());
        one.callBack(there.line().node());
        one.tell(new Place.Nowhere());
      }
      if (one.local == null
          && mayTake(one)
          && now - succession.waitMs(one.morning) >= quietSince(one)) {
        take(one, "nobody has it");
      }
    }
  }

  /**
   * Since when nobody has it. Who hears few nodes and reaches the journal only since was cut off by
   * itself: the others may well have it.
   */
  private long quietSince(Wanted one) {
    return succession.few() ? Math.max(one.nobodySince, epochs.answersSince()) : one.nobodySince;
  }

  /** The live node with the highest epoch, unless it is lower than this node's or the journal's. */
  private Peer owner(Wanted one) {
    long least = Math.max(one.journalEpoch, one.owned() ? one.at.epoch() + 1 : 0);
    Peer best = null;
    for (Peer peer : peers.live()) {
      BusMessage.Claim claim = peer.claim(one.morning);
      if (claim != null && claim.epoch() >= least) {
        least = claim.epoch() + 1;
        best = peer;
      }
    }
    return best;
  }

  private void relieve(Wanted one, Peer owner) {
    long now = now();
    boolean away = owner.claim(one.morning).readOnly() && epochs.answersSince() != Long.MAX_VALUE;
    long since = Math.max(one.ownerAwaySince, epochs.answersSince());
    if (!away) {
      one.ownerAwaySince = Long.MAX_VALUE;
    } else if (one.ownerAwaySince == Long.MAX_VALUE) {
      one.ownerAwaySince = now;
    } else if (one.local == null
        && mayTake(one)
        && now - since > AWAY_MS + succession.waitMs(one.morning, owner.id)) {
      one.relieving = true;
      take(one, "its owner has lost the journal");
    }
  }

  private boolean mayTake(Wanted one) {
    boolean able = takes() && reading.can(one.morning) && !one.leaving;
    return able && now() >= one.holdUntil && now() - startedAt >= SETTLE_MS;
  }

  private boolean takes() {
    return !leaving && !ownClock.off() && !epochs.away();
  }

  private void take(Wanted one, String why) {
    LOG.info("{}: taken, {}", one.morning, why);
    try {
      Owner taken = suites.owner(one.morning);
      one.local = taken;
      one.unwatch = taken.watch(at -> lane.run(() -> stands(one, taken, at)));
    } catch (IllegalStateException e) {
      LOG.error("{} can't be taken: {}", one.morning, e.getMessage());
      one.local = null;
      one.holdUntil = now() + HOLD_OFF_MS;
    }
  }

  private void stands(Wanted one, Owner taken, Standpoint at) {
    if (one.local != taken) {
      return;
    }
    boolean before = one.owned();
    one.at = at;
    one.journalEpoch = Math.max(one.journalEpoch, at.owned() ? at.epoch() : 0);
    if (one.owned() && !before) {
      look(one);
      tellAll(); // the others need not wait for the next pulse
    }
  }

  private void placeHere(Wanted one) {
    if (!(one.place instanceof Place.Here here) || here.owner() != one.local) {
      one.tell(new Place.Here(one.local));
      commands.goOn(one);
    }
  }

  private void place(Wanted one, String node) {
    if (!(one.place instanceof Place.There there) || !there.line().node().equals(node)) {
      if (one.place instanceof Place.There there) {
        one.callBack(there.line().node());
      }
      one.tell(screens.line(one.morning, node));
    }
    commands.goOn(one);
  }

  /** Takes its hands off; {@code then} is run in the lane when all under way is answered. */
  private void letGo(Wanted one, Runnable then) {
    if (one.local == null) {
      then.run();
      return;
    }
    one.unwatch.run();
    one.unwatch = () -> {};
    one.local = null;
    one.at = null;
    one.relieving = false;
    if (one.heir != null) {
      one.leaving = leaving;
      one.heir = null;
    }
    one.nobodySince = now();
    one.tell(new Place.Nowhere());
    suites.release(one.morning, () -> lane.run(then));
  }

  /** A node has read what is to be given to it. */
  void prepared(String node, MorningId morning) {
    Wanted one = wanted.get(morning);
    if (one != null) {
      giving.prepared(one, node);
    }
  }

  private void moveWhereSuggested(Wanted one) {
    Peer there = succession.suggestedOther(one.morning);
    if (there == null || !there.mayTake(one.morning)) {
      resettling.stays(one.morning);
    } else if (resettling.moves(one.morning, now())) {
      giving.give(one);
    }
  }

  /**
   * Gives all mornings away.
   *
   * @param then run in the lane when the others have them, or there is nobody to take them
   */
  void leave(Runnable then) {
    leaving = true;
    tellAll();
    for (Wanted one : wanted.values()) {
      if (one.local != null) {
        giving.give(one);
      }
    }
    giving.waitForOthers(wanted.values(), then);
  }

  Reading reading() {
    return reading;
  }

  Peers peers() {
    return peers;
  }

  boolean clockOff() {
    return ownClock.off();
  }
}
