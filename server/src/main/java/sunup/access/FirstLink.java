package sunup.access;

import java.sql.SQLException;
import sunup.journal.SideDatabase;

/** The link by which a board that nobody administers gets its first administrator. */
final class FirstLink {
  /** Its name among the secrets, where its hash is kept. */
  static final String NAME = "first-link";

  private FirstLink() {}

  /** Makes it if there is no administrator, else null; forgets sign-ons that are old. */
  static String made(SideDatabase database, long now) throws SQLException {
    return database.inOne(
        c -> {
          AccessStore.forget(c, now - Access.SIGN_ONS_KEPT_MS);
          AccessStore.closeOwn(c, now);
          if (AccessStore.administered(c)) {
            return null;
          }
          String link = Secrets.token();
          byte[] hash = Secrets.sha256(Secrets.bytes(link));
          AccessStore.keepSecret(c, NAME, hash, now + Access.LINK_MS);
          return link;
        });
  }
}
