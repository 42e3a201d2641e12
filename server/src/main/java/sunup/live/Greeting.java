package sunup.live;

import java.time.DateTimeException;
import java.time.LocalDate;
import java.util.Optional;
import java.util.regex.Pattern;
import sunup.access.Page;
import sunup.board.MorningId;
import sunup.wire.ClientMessage;

/**
 * What a hello asks for.
 *
 * @param chosen the morning that the screen has chosen, or null for the one that is on
 * @param resumed the morning that it was at, or null
 */
record Greeting(Page page, Mornings mornings, MorningId chosen, MorningId resumed) {
  private static final Pattern SCREEN = Pattern.compile("[A-Za-z0-9][A-Za-z0-9._-]{0,39}");

  /** What is wrong with a hello, as the screen is told. */
  static final class Wrong extends Exception {
    private static final long serialVersionUID = 1L;

    private final String code;

    Wrong(String code, String words) {
      super(words, null, false, false);
      this.code = code;
    }

    String code() {
      return code;
    }
  }

  /** Reads a hello. */
  static Greeting of(ClientMessage.Hello hello, MorningsBySuite suites) throws Wrong {
    Optional<Page> named = Page.named(hello.page());
    Mornings asked = suites.named(hello.suite()).orElse(null);
    if (named.isEmpty()) {
      throw new Wrong("unknown-page", "The page is wall, desk, station, holding or pocket");
    }
    if (!SCREEN.matcher(hello.screen()).matches()) {
      throw new Wrong("bad-screen", "A screen's name is 1 to 40 letters, digits, dots or dashes");
    }
    if (asked == null) {
      throw new Wrong(
          "unknown-suite", "There is no suite of this id here; GET /api/suites lists them");
    }
    if (hello.date() != null && named.get() != Page.DESK) {
      throw new Wrong(
          "bad-date", "Only a desk chooses a date; other pages show the morning that is on");
    }
    MorningId chosen = hello.date() == null ? null : chosen(asked, hello.date());
    if (hello.date() != null && chosen == null) {
      throw new Wrong("bad-date", "The date is one near today, written as 2026-11-25");
    }
    return new Greeting(named.get(), asked, chosen, resumed(hello));
  }

  /** Whether a message means something only where screens are paired. */
  static boolean ofPairing(ClientMessage message) {
    return message instanceof ClientMessage.Prove
        || message instanceof ClientMessage.NewKey
        || message instanceof ClientMessage.FirstLink
        || message instanceof ClientMessage.SignOn
        || message instanceof ClientMessage.SignOff
        || message instanceof ClientMessage.SignIn
        || message instanceof ClientMessage.SignedIn
        || message instanceof ClientMessage.Countersign
        || message instanceof ClientMessage.PushOn
        || message instanceof ClientMessage.PushOff
        || message instanceof ClientMessage.Manage;
  }

  /** The morning of a date that a desk may see, or null. */
  private static MorningId chosen(Mornings mornings, String date) {
    try {
      MorningId morning = mornings.on(LocalDate.parse(date));
      return mornings.takes(morning) ? morning : null;
    } catch (DateTimeException e) {
      return null;
    }
  }

  private static MorningId resumed(ClientMessage.Hello hello) {
    if (hello.morning() == null) {
      return null;
    }
    try {
      return MorningId.parse(hello.morning());
    } catch (RuntimeException e) {
      return null;
    }
  }
}
