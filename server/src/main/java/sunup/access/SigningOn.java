package sunup.access;

import java.util.Set;
import java.util.concurrent.CompletableFuture;
import sunup.access.Known.PairedScreen;
import sunup.access.Known.SignedOn;
import sunup.board.Actor;
import sunup.board.CommandId;
import sunup.board.CommandKind;
import sunup.board.MorningId;
import sunup.board.PersonId;
import sunup.board.Rights;
import sunup.board.Role;
import sunup.board.SuiteId;
import sunup.wire.ClientMessage;

/** People who prove themselves at a paired screen: to be signed on there, or to sign beside. */
final class SigningOn {
  private static final int LETTERS_MAX = 64;

  /** PINs are for screens of the site: at a browser of one's own nobody could see who tries. */
  private static final String OWN =
      "This browser is one person's own. PINs count at the site's screens only.";

  private final Access access;
  private final Ledger ledger;
  private final Seconds seconds;

  SigningOn(Access access) {
    this.access = access;
    this.ledger = access.ledger();
    this.seconds = new Seconds();
  }

  /**
   * Signs somebody on.
   *
   * @param planned the role of the person of the plan that it shall be, or null if not known
   */
  CompletableFuture<Void> on(PairedScreen at, ClientMessage.SignOn on, Role planned) {
    if (at.own()) {
      return Access.failed(new Refusal(OWN));
    }
    if (at.page() == Page.WALL || tooLong(on.code(), on.pin())) {
      return Access.failed(new Refusal("Nobody signs on here like that."));
    }
    return access
        .checkPin(at, on.code(), on.pin())
        .thenCompose(
            v -> {
              try {
                Asked asked = new Asked(on.role(), on.as(), planned);
                Role role = role(new At(at), on.code(), asked, Set.of(Role.values()));
                return access.signOn(at, on.code(), role, on.as());
              } catch (Refusal e) {
                return Access.failed(e);
              }
            });
  }

  /**
   * A second person signs.
   *
   * @param first who is signed on at the screen, or null
   * @return the token for the command
   */
  CompletableFuture<String> second(
      PairedScreen at, SignedOn first, ClientMessage.Countersign by, Role planned) {
    Set<Role> may = CommandKind.named(by.kind()).map(Rights::whoSigns).orElse(Set.of());
    String wrong = null;
    if (at.own()) {
      wrong = OWN;
    } else if (at.page() == Page.WALL || tooLong(by.code(), by.pin()) || may.isEmpty()) {
      wrong = "Nobody signs beside another here like that.";
    } else if (first == null) {
      wrong = "Whoever did it signs on at this screen first, then the other signs.";
    } else if (first.person().equals(by.code())) {
      wrong = by.code() + " is signed on here already. The second signature is another person's.";
    }
    if (wrong != null) {
      return Access.failed(new Refusal(wrong));
    }
    CommandKind kind = CommandKind.named(by.kind()).orElseThrow();
    return access
        .checkPin(at, by.code(), by.pin())
        .thenCompose(
            v -> {
              try {
                Role role = role(new At(at), by.code(), new Asked(null, by.as(), planned), may);
                PersonId who = by.as() == null ? new PersonId(by.code()) : by.as();
                long now = ledger.now();
                SignedOn kept =
                    new SignedOn(
                        Secrets.token(), at.id(), by.code(), at.suite(), role, who, now, now);
                // The event names the post; whose code it was is kept as that of a sign-on is.
                return ledger
                    .inStore(
                        c -> {
                          AccessStore.keep(c, kept);
                          return null;
                        })
                    .thenApply(
                        done ->
                            seconds.give(
                                kept, new Seconds.Purpose(first.id(), by.morning(), kind), now));
              } catch (Refusal e) {
                return Access.failed(e);
              }
            });
  }

  /** Who signed a command beside whoever gave it under this sign-on, or null. */
  Actor.Second shown(
      String session, CommandId id, MorningId morning, String token, CommandKind kind) {
    SignedOn by =
        seconds.shown(token, id, new Seconds.Purpose(session, morning, kind), ledger.now());
    boolean counts = by != null && ledger.known().stillMay(by);
    return counts ? new Actor.Second(by.post(), by.role()) : null;
  }

  private static boolean tooLong(String code, String pin) {
    return code.length() > LETTERS_MAX || pin.length() > LETTERS_MAX;
  }

  /**
   * As what somebody wants to be taken.
   *
   * @param role or null for the one that fits
   * @param as the person of the plan, or null
   * @param planned that person's role, or null if not known here
   */
  record Asked(Role role, PersonId as, Role planned) {}

  /** Where somebody wants to be taken as that. */
  record At(Page page, SuiteId suite) {
    At(PairedScreen screen) {
      this(screen.page(), screen.suite());
    }
  }

  /** In which of these roles somebody is taken who has proved who he or she is. */
  Role role(At at, String code, Asked asked, Set<Role> any) throws Refusal {
    Known.Person person = ledger.known().people().get(code);
    Role wanted = asked.role() != null ? asked.role() : asked.planned();
    if (asked.planned() != null && wanted != asked.planned()) {
      throw new Refusal(
          asked.as()
              + " is planned as "
              + asked.planned().word()
              + ". Sign on as that, or as yourself.");
    }
    for (Role role : Role.values()) {
      boolean fits = any.contains(role) && (wanted == null || role == wanted);
      if (fits && at.page().mayBe(role) && person != null && person.may(at.suite(), role)) {
        return role;
      }
    }
    throw new Refusal(
        wanted == null
            ? "You have no role for this here. An administrator gives roles at the desk."
            : "You may not sign as "
                + wanted.word()
                + " here. An administrator gives roles at the desk.");
  }
}
