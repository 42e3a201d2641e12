package sunup.live;

import io.vertx.core.buffer.Buffer;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import sunup.board.MorningId;
import sunup.wire.Audience;

/**
 * The other nodes that show a morning of this one. Each counts as one screen of each audience, so
 * that a frame goes to it once however many screens it has. Kept in the lane.
 */
final class Followers {
  /** One that did not ask again for so long is gone. */
  static final long LEASE_MS = 5_000;

  private final Map<String, Following> following = new HashMap<>();

  private static final class Following {
    final Channel channel;
    final List<NodeScreen> screens = new ArrayList<>();
    long askedAt;

    Following(Channel channel) {
      this.channel = channel;
    }

    void end() {
      screens.forEach(channel::leave);
    }
  }

  /**
   * A node asks to be told what screens are told.
   *
   * @param views whether it wants everything anew
   */
  void follow(Channel channel, String node, Feed feed, boolean views, long nowMs) {
    String key = node + " " + channel.morning();
    Following known = following.get(key);
    if (known == null || known.channel != channel) {
      if (known != null) {
        known.end();
      }
      Following made = new Following(channel);
      following.put(key, made);
      for (Audience audience : Audience.values()) {
        NodeScreen screen = new NodeScreen(channel, audience, feed);
        made.screens.add(screen);
        channel.join(screen, null);
      }
      known = made;
    } else if (views) {
      known.screens.forEach(channel::view);
    }
    known.askedAt = nowMs;
  }

  /** Forgets those who did not ask again. */
  void sweep(long nowMs) {
    following
        .values()
        .removeIf(
            one -> {
              boolean over = nowMs - one.askedAt > LEASE_MS;
              if (over) {
                one.end();
              }
              return over;
            });
  }

  /** A node as a screen. */
  private static final class NodeScreen implements Screen {
    private final Channel channel;
    private final Audience audience;
    private final Feed feed;
    private boolean behind;

    NodeScreen(Channel channel, Audience audience, Feed feed) {
      this.channel = channel;
      this.audience = audience;
      this.feed = feed;
    }

    @Override
    public Audience audience() {
      return audience;
    }

    @Override
    public void view(Buffer message) {
      behind = !tell(Feed.Kind.VIEW, message);
    }

    @Override
    public void frame(Buffer message) {
      if (!behind) {
        behind = !tell(Feed.Kind.FRAME, message);
      }
    }

    @Override
    public void beat(Buffer message, long madeAt) {
      if (behind) {
        channel.view(this);
      }
      if (!behind) {
        tell(Feed.Kind.BEAT, message);
      }
    }

    private boolean tell(Feed.Kind kind, Buffer message) {
      MorningId morning = channel.morning();
      return feed.tell(morning, audience, kind, message);
    }
  }
}
