package sunup.access;

import java.util.Iterator;
import java.util.LinkedHashMap;
import java.util.Map;
import sunup.access.Known.SignedOn;
import sunup.board.CommandId;
import sunup.board.CommandKind;
import sunup.board.MorningId;

/**
 * Signatures that second people gave by PIN and that no command has shown yet. A token counts for a
 * minute and for the first command that shows it; that one may come again, as every command may.
 * Kept in memory: after a restart the second person signs again.
 */
final class Seconds {
  /** How long a token counts that no command has shown. */
  static final long COUNTS_MS = 60_000;

  /** How long a command that has shown it in time may come again with it. */
  static final long AGAIN_MS = 15 * 60_000;

  /** Tokens of a node; beyond it the oldest counts no more. */
  static final int TOKENS_MAX = 1_024;

  private final Map<String, Given> given = new LinkedHashMap<>();

  /**
   * What a signature is for.
   *
   * @param session the sign-on of whoever is the first, at the screen
   */
  record Purpose(String session, MorningId morning, CommandKind kind) {}

  private record Given(SignedOn by, Purpose purpose, long at, CommandId shownBy) {}

  synchronized String give(SignedOn by, Purpose purpose, long now) {
    Iterator<Given> oldest = given.values().iterator();
    while (oldest.hasNext()) {
      boolean old = oldest.next().at() <= now - AGAIN_MS;
      if (!old && given.size() < TOKENS_MAX) {
        break;
      }
      oldest.remove();
    }
    String token = Secrets.token();
    given.put(token, new Given(by, purpose, now, null));
    return token;
  }

  /** Who signed this command, or null if its token does not count for it. */
  synchronized SignedOn shown(String token, CommandId by, Purpose purpose, long now) {
    Given one = token == null ? null : given.get(token);
    if (one == null || !one.purpose().equals(purpose)) {
      return null;
    }
    if (one.shownBy() == null && now < one.at() + COUNTS_MS) {
      given.replace(token, new Given(one.by(), purpose, one.at(), by));
      return one.by();
    }
    return by.equals(one.shownBy()) && now < one.at() + AGAIN_MS ? one.by() : null;
  }
}
