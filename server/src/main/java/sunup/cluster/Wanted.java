package sunup.cluster;

import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.Deque;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.function.Consumer;
import sunup.board.MorningId;
import sunup.live.Place;
import sunup.suites.Owner;
import sunup.suites.Reply;
import sunup.suites.Standpoint;
import sunup.suites.Submission;

/** A morning that somebody on this node wants, and what is known of it. Kept in the lane. */
final class Wanted {
  /** Commands that wait for an owner or for its answer; beyond it one is answered "not now". */
  static final int WAITING_LIMIT = 1_024;

  /** Lost so often within a minute, it is left alone also if who has it is heard. */
  private static final int LOST_OFTEN = 3;

  final MorningId morning;
  final List<Consumer<Place>> watchers = new ArrayList<>();
  final Deque<Pending> parked = new ArrayDeque<>();

  /** Sent to another node and not answered. */
  final Map<Long, Pending> sent = new HashMap<>();

  Place place = new Place.Nowhere();
  long wantedAt;

  /** Since when nobody is known to have it. */
  long nobodySince;

  /** Since when its owner says that the journal is away, though it answers here; or never. */
  long ownerAwaySince = Long.MAX_VALUE;

  /** Here, if this node took it or is taking it. */
  Owner local;

  Standpoint at;
  Runnable unwatch = () -> {};

  /** Not taken again before this. */
  long holdUntil;

  /** How often it was lost to another node lately. */
  int lost;

  /** Long ago as long as it never was. */
  private long lostAt = Long.MIN_VALUE / 2;

  /** The epoch that the journal had when it was last asked. */
  long journalEpoch;

  /** Being given to another node: not to be taken back meanwhile. */
  boolean leaving;

  /** Who reads it now, before it is given to that node; or null. */
  String heir;

  /** What is still claimed of it while it is given away, or null. */
  BusMessage.Claim giving;

  /** Being taken from an owner that has lost the journal. */
  boolean relieving;

  Wanted(MorningId morning, long nowMs) {
    this.morning = morning;
    this.wantedAt = nowMs;
    this.nobodySince = nowMs;
  }

  /** A command on its way. */
  static final class Pending {
    final Submission submission;
    final Consumer<Reply> answer;
    final long until;

    /** Who has it now, or null. */
    String with;

    Pending(Submission submission, Consumer<Reply> answer, long until) {
      this.submission = submission;
      this.answer = answer;
      this.until = until;
    }
  }

  /** Another node took it: it is left alone for a while, longer each time within a minute. */
  void isLost(long nowMs) {
    lost = nowMs - lostAt < Placement.HOLD_OFF_MOST_MS ? lost + 1 : 0;
    lostAt = nowMs;
    long hold = Placement.HOLD_OFF_MS << Math.min(lost, 5);
    holdUntil = nowMs + Math.min(Placement.HOLD_OFF_MOST_MS, hold);
  }

  /** Who has it is in hearing: it is to be taken without a pause if that one falls silent. */
  void rivalIsHeard() {
    if (lost < LOST_OFTEN) {
      holdUntil = 0;
    }
  }

  boolean owned() {
    return local != null && at != null && at.owned();
  }

  boolean full() {
    return parked.size() + sent.size() >= WAITING_LIMIT;
  }

  /** What the others are told of it while it is owned here. */
  BusMessage.Claim claim() {
    return new BusMessage.Claim(morning, at.epoch(), at.readOnly());
  }

  void tell(Place now) {
    place = now;
    List.copyOf(watchers).forEach(watcher -> watcher.accept(now));
  }

  /** What was sent to a node that will not answer waits again, under its own id. */
  void callBack(String node) {
    sent.values()
        .removeIf(
            one -> {
              boolean lostWithIt = one.with.equals(node);
              if (lostWithIt) {
                one.with = null;
                parked.addLast(one);
              }
              return lostWithIt;
            });
  }
}
