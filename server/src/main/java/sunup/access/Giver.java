package sunup.access;

import java.util.Optional;
import sunup.access.Known.PairedScreen;
import sunup.access.Known.SignedOn;
import sunup.board.Actor;
import sunup.board.CommandKind;
import sunup.wire.ClientMessage;

/**
 * Who gave a command at a paired screen: whoever is signed on there, whatever the message says;
 * only one that was touched before may be of an earlier sign-on there, or of none.
 */
final class Giver {
  /** A touch may be this much younger than the end of its sign-on: clocks of screens differ. */
  private static final long CLOCK_SLACK_MS = 120_000;

  private Giver() {}

  /**
   * @param now who is signed on there, or null
   * @return null if it is nobody's: a browser of one's own without its person
   */
  static Actor of(Access access, PairedScreen screen, SignedOn now, ClientMessage.Send send) {
    if (screen.own() && now == null) {
      return null;
    }
    if (now != null && now.id().equals(send.session())) {
      return signed(access, screen, now, send);
    }
    Known all = access.ledger().known();
    SignedOn before = send.session() == null ? null : all.sessions().get(send.session());
    if (before != null
        && before.endedAt() != null
        && before.screen().equals(screen.id())
        && send.touchedAt() <= before.endedAt() + CLOCK_SLACK_MS
        && all.stillMay(before)) {
      return signed(access, screen, before, send);
    }
    if (screen.own()) {
      // Of no sign-on that counts: never the page's own rights, which nobody here was given.
      return Page.WALL.actor(screen.name(), null, null);
    }
    boolean earlier = now == null || send.touchedAt() < now.beganAt() - CLOCK_SLACK_MS;
    return earlier ? Access.actor(screen, Optional.empty()) : signed(access, screen, now, send);
  }

  /** By whoever is signed on, and by the second person whose signature it shows. */
  private static Actor signed(
      Access access, PairedScreen screen, SignedOn by, ClientMessage.Send send) {
    Actor actor = Access.actor(screen, Optional.of(by));
    return send.second() == null || send.morning() == null
        ? actor
        : actor.with(
            access
                .signingOn()
                .shown(
                    by.id(),
                    send.id(),
                    send.morning(),
                    send.second(),
                    CommandKind.of(send.command())));
  }
}
