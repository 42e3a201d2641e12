package sunup.access;

import java.security.MessageDigest;
import java.sql.Connection;
import java.sql.SQLException;
import java.util.Collection;
import java.util.EnumSet;
import java.util.List;
import java.util.Set;
import java.util.concurrent.CompletableFuture;
import sunup.access.Known.PairedScreen;
import sunup.board.Role;
import sunup.board.SuiteId;
import sunup.journal.SideDatabase;

/**
 * The link by which a board that nobody administers gets its first administrator, and a suite that
 * was added to a board gets one, if those of the other suites are none of it.
 */
final class FirstLink {
  /** Its name among the secrets, where its hash is kept. */
  static final String NAME = "first-link";

  /** PINs of people who are known that are tried with one link; after them it counts no more. */
  static final int TRIES_MAX = 5;

  private static final String OVER =
      "This link was used, or is older than 15 minutes, or too many wrong PINs were tried with it."
          + " Start the board again: it prints another one while there is no administrator.";

  private static final Set<Role> FIRST = Set.of(Role.ADMIN, Role.DESK);

  private FirstLink() {}

  /**
   * A link.
   *
   * @param suites that have no administrator
   */
  record Link(String secret, List<SuiteId> suites) {}

  /** Makes it if a suite has no administrator, else null; forgets sign-ons that are old. */
  static Link made(SideDatabase database, Collection<SuiteId> suites, long now)
      throws SQLException {
    return database.inOne(
        c -> {
          AccessStore.forget(c, now - Access.SIGN_ONS_KEPT_MS);
          AccessStore.closeOwn(c, now);
          List<SuiteId> without = without(c, suites);
          if (without.isEmpty()) {
            return null;
          }
          String link = Secrets.token();
          byte[] hash = Secrets.sha256(Secrets.bytes(link));
          AccessStore.keepSecret(c, NAME, hash, now + Access.LINK_MS);
          return new Link(link, without);
        });
  }

  /** The suites in which nobody who can sign on is an administrator. */
  private static List<SuiteId> without(Connection c, Collection<SuiteId> suites)
      throws SQLException {
    List<String> with =
        AccessStore.all(
            c,
            "SELECT DISTINCT r.suite FROM access_role r JOIN access_person p ON p.code = r.person"
                + " WHERE p.ended_at IS NULL AND length(p.hash) > 1 AND r.role = ?",
            r -> r.getString("suite"),
            Role.ADMIN.word());
    return with.contains(Known.EVERYWHERE)
        ? List.of()
        : suites.stream().filter(suite -> !with.contains(suite.value())).toList();
  }

  /**
   * The screen of whoever has the link becomes a desk, and he or she is signed on there.
   *
   * @param code what the person is called here; of somebody who is known, with the present PIN
   * @param asked the suite that the page shows; if that has an administrator, one that has none
   */
  static CompletableFuture<Void> claim(
      Access access, String fingerprint, String link, String code, String pin, SuiteId asked) {
    Ledger ledger = access.ledger();
    byte[] bytes = Secrets.bytes(link);
    byte[] hash = bytes == null ? new byte[0] : Secrets.sha256(bytes);
    return ledger
        .inStore(
            c -> {
              check(c, hash, ledger.now(), code);
              return tried(c, hash, code, ledger.now());
            })
        .thenCompose(tried -> kept(access, tried, hash, pin))
        .thenCompose(
            kept ->
                ledger.change(
                    c -> {
                      long now = ledger.now();
                      check(c, hash, now, code);
                      AccessStore.dropSecret(c, NAME);
                      // Before: roles of somebody without a PIN count again once there is one.
                      List<SuiteId> without = without(c, access.suites().keySet());
                      AccessStore.addPerson(c, code, kept, "console", now);
                      SuiteId suite = grant(c, access, code, without, asked);
                      PairedScreen desk =
                          access.paired(c, fingerprint, Page.DESK, suite, null, code);
                      AccessStore.signOn(
                          c, Access.signedOn(desk.id(), code, suite, Role.ADMIN, null, now));
                      return null;
                    }));
  }

  /**
   * What is kept of a code's PIN, or null of a new one.
   *
   * @param count the how manyth PIN of somebody who is known this is with the link
   */
  private record Tried(Pins.Kept before, int count) {}

  /** Counts before the PIN is looked at, so that many at once are not more than many. */
  private static Tried tried(Connection c, byte[] hash, String code, long now) throws SQLException {
    Pins.Kept before = AccessStore.pin(c, code);
    if (before == null) {
      return new Tried(null, 0);
    }
    // A link's tries are its own: of the next one nothing was tried yet.
    String link = NAME + " " + Secrets.text(hash);
    PinTries.tried(c, code, link, now);
    return new Tried(before, PinTries.triedAt(c, link));
  }

  /** A code that is somebody's already is not given another PIN by whoever mistypes a new one. */
  private static CompletableFuture<Pins.Kept> kept(
      Access access, Tried tried, byte[] hash, String pin) {
    if (tried.before() == null) {
      String wrong = Pins.wrong(pin);
      return wrong != null
          ? Access.failed(new Refusal(wrong))
          : access.ledger().hash(() -> access.pins().keep(pin));
    }
    if (tried.count() > TRIES_MAX) {
      return Access.failed(new Refusal(OVER));
    }
    return access
        .ledger()
        .hash(() -> access.pins().right(pin, tried.before()) ? access.pins().keep(pin) : null)
        .thenCompose(
            kept ->
                kept != null
                    ? CompletableFuture.completedFuture(kept)
                    : wrong(access.ledger(), tried, hash));
  }

  private static CompletableFuture<Pins.Kept> wrong(Ledger ledger, Tried tried, byte[] hash) {
    Refusal why = new Refusal("Somebody has this code. Type its PIN, or take another code.");
    return tried.count() < TRIES_MAX
        ? Access.failed(why)
        : ledger
            .inStore(
                c -> {
                  if (isLink(c, hash, ledger.now())) {
                    AccessStore.dropSecret(c, NAME);
                  }
                  return null;
                })
            .thenCompose(v -> Access.failed(new Refusal(OVER)));
  }

  private static SuiteId grant(
      Connection c, Access access, String code, List<SuiteId> without, SuiteId asked)
      throws SQLException, Refusal {
    if (without.size() == access.suites().size()) {
      AccessStore.setRoles(c, code, Known.EVERYWHERE, FIRST);
      return asked;
    }
    if (without.isEmpty()) {
      throw new Refusal("Every suite has an administrator by now. Ask one of them.");
    }
    Known.Person person = AccessStore.read(c, access.ledger().now()).people().get(code);
    for (SuiteId suite : without) {
      Set<Role> roles = EnumSet.copyOf(FIRST);
      for (Role role : Role.values()) {
        if (person.may(suite, role)) {
          roles.add(role);
        }
      }
      AccessStore.setRoles(c, code, suite.value(), roles);
    }
    return without.contains(asked) ? asked : without.get(0);
  }

  private static boolean isLink(Connection c, byte[] hash, long now) throws SQLException {
    byte[] kept = AccessStore.secret(c, NAME, now);
    return kept != null && MessageDigest.isEqual(kept, hash);
  }

  private static void check(Connection c, byte[] hash, long now, String code)
      throws SQLException, Refusal {
    if (!isLink(c, hash, now)) {
      throw new Refusal(OVER);
    }
    Access.checkCode(code);
  }
}
