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
              check(c, hash, ledger.now(), code, pin);
              return new Pins.Kept[] {AccessStore.pin(c, code)};
            })
        .thenCompose(before -> ledger.hash(() -> kept(access, before[0], pin)))
        .thenCompose(
            kept ->
                ledger.change(
                    c -> {
                      long now = ledger.now();
                      check(c, hash, now, code, pin);
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

  /** A code that is somebody's already is not given another PIN by whoever mistypes a new one. */
  private static Pins.Kept kept(Access access, Pins.Kept before, String pin) throws Refusal {
    if (before != null && !access.pins().right(pin, before)) {
      throw new Refusal("Somebody has this code. Type its PIN, or take another code.");
    }
    return access.pins().keep(pin);
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

  private static void check(Connection c, byte[] hash, long now, String code, String pin)
      throws SQLException, Refusal {
    byte[] kept = AccessStore.secret(c, NAME, now);
    if (kept == null || !MessageDigest.isEqual(kept, hash)) {
      throw new Refusal(
          "This link was used, or is older than 15 minutes. Start the board again: it prints"
              + " another one while there is no administrator.");
    }
    Access.checkCode(code);
    String wrong = Pins.wrong(pin);
    if (wrong != null) {
      throw new Refusal(wrong);
    }
  }
}
