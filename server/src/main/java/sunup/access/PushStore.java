package sunup.access;

import java.sql.Connection;
import java.sql.SQLException;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import sunup.journal.Bytes;
import sunup.push.PushKey;
import sunup.push.Subscription;

/** The table of phones that are told, statement by statement; the same on both databases. */
final class PushStore {
  private static final String KEY = "push";

  private PushStore() {}

  /** The key of all nodes, made by the first. */
  static byte[] key(Connection c) throws SQLException {
    return AccessStore.key(c, KEY, PushKey::made);
  }

  /** By sign-on. */
  static Map<String, Subscription> all(Connection c) throws SQLException {
    Map<String, Subscription> all = new HashMap<>();
    AccessStore.all(
            c,
            "SELECT * FROM access_push",
            r ->
                Map.entry(
                    r.getString("sign_on"),
                    new Subscription(
                        r.getString("endpoint"),
                        Bytes.of(r.getBytes("public_key")),
                        Bytes.of(r.getBytes("auth")))))
        .forEach(each -> all.put(each.getKey(), each.getValue()));
    return all;
  }

  /** A browser belongs to one sign-on, the last that named it. */
  static void keep(Connection c, String signOn, Subscription its, long now) throws SQLException {
    drop(c, signOn);
    AccessStore.run(c, "DELETE FROM access_push WHERE endpoint = ?", its.endpoint());
    AccessStore.run(
        c,
        "INSERT INTO access_push (sign_on, endpoint, public_key, auth, made_at)"
            + " VALUES (?, ?, ?, ?, ?)",
        signOn,
        its.endpoint(),
        its.key().raw(),
        its.auth().raw(),
        now);
  }

  /** Of a person's phones the ones that were named last stay. */
  static void keepFew(Connection c, String person, int most) throws SQLException {
    List<String> signOns =
        AccessStore.all(
            c,
            "SELECT p.sign_on FROM access_push p JOIN access_sign_on s ON s.id = p.sign_on"
                + " WHERE s.person = ? ORDER BY p.made_at DESC",
            r -> r.getString("sign_on"),
            person);
    for (String more : signOns.subList(Math.min(most, signOns.size()), signOns.size())) {
      drop(c, more);
    }
  }

  static void drop(Connection c, String signOn) throws SQLException {
    AccessStore.run(c, "DELETE FROM access_push WHERE sign_on = ?", signOn);
  }

  /** A phone is told no longer than its sign-on lasts. */
  static void dropEnded(Connection c, long now) throws SQLException {
    AccessStore.run(
        c,
        "DELETE FROM access_push WHERE NOT EXISTS (SELECT 1 FROM access_sign_on s"
            + " WHERE s.id = access_push.sign_on AND s.ended_at IS NULL AND s.began_at > ?)",
        now - AccessStore.SESSION_MS);
  }
}
