package sunup.live;

import java.util.Map;
import java.util.function.Supplier;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;
import sunup.board.MorningId;
import sunup.suites.Owner;
import sunup.wire.Audience;

/**
 * A morning that screens of this node see: follows its owner, which may be here or on another node,
 * and has the channel that goes with that. All but reading the channel happens in the lane.
 */
final class Shown {
  private static final Logger LOG = LoggerFactory.getLogger(Shown.class);

  private final Owner owner;
  private final MorningChannel.Tools tools;
  private final Runnable changed;
  private Map<Audience, Long> firstN;
  private Runnable end = () -> {};
  private Place place;
  private volatile Channel channel;
  private boolean closed;

  /**
   * @param owner whom commands are given to, wherever they are decided
   * @param firstN where frame numbers begin, by audience
   * @param changed run after there is another channel, or none
   */
  Shown(Owner owner, MorningChannel.Tools tools, Map<Audience, Long> firstN, Runnable changed) {
    this.owner = owner;
    this.tools = tools;
    this.firstN = firstN;
    this.changed = changed;
  }

  void open(Owners owners) {
    end = owners.follow(morning(), at -> tools.lane().run(() -> placed(at)));
  }

  MorningId morning() {
    return owner.morning();
  }

  Owner owner() {
    return owner;
  }

  /** Null as long as nobody is known to own it. From any thread. */
  Channel channel() {
    return channel;
  }

  /**
   * @return where the next channel of this morning must begin its numbers
   */
  Map<Audience, Long> close() {
    closed = true;
    end.run();
    end();
    return firstN;
  }

  private void end() {
    Channel last = channel;
    if (last != null) {
      last.close();
      if (last instanceof MorningChannel mine) {
        firstN = mine.nextN();
      }
    }
    channel = null;
  }

  /** Tries again what could not be opened. */
  void again() {
    if (channel == null && place != null) {
      placed(place);
    }
  }

  private void placed(Place at) {
    if (closed) {
      return;
    }
    place = at;
    if (at instanceof Place.Here here) {
      if (!(channel instanceof MorningChannel mine) || mine.owner() != here.owner()) {
        replace(() -> new MorningChannel(here.owner(), tools, firstN));
      }
    } else if (at instanceof Place.There there) {
      Line line = there.line();
      if (!(channel instanceof RelayChannel relay) || !relay.line().node().equals(line.node())) {
        replace(() -> new RelayChannel(morning(), line, tools.clock(), tools.lane(), tools.pace()));
      }
    }
    // Nowhere: what is shown stays, and goes stale, since nobody beats.
  }

  private void replace(Supplier<Channel> making) {
    end();
    Channel next = making.get();
    try {
      next.open();
      channel = next;
    } catch (IllegalStateException full) {
      // Nobody may watch it now: tried again at the next check, and the screens go stale.
      LOG.error("{} can't be shown now: {}", morning(), full.getMessage());
      next.close();
    }
    changed.run();
  }
}
