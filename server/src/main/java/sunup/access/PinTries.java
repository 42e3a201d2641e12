package sunup.access;

import java.sql.Connection;
import java.sql.SQLException;

/** The table of PINs that were tried and not right yet, statement by statement. */
final class PinTries {
  private PinTries() {}

  /** Counts a try before the PIN is looked at, and tells the how manyth in a row it is. */
  static int tried(Connection c, String person, String screen, long now) throws SQLException {
    AccessStore.run(c, "DELETE FROM access_tries WHERE last_at <= ?", now - AccessStore.LOCK_MS);
    int more =
        AccessStore.run(
            c,
            "UPDATE access_tries SET failed = failed + 1, last_at ="
                + " CASE WHEN failed < ? THEN ? ELSE last_at END WHERE person = ? AND screen = ?",
            AccessStore.TRIES_MAX,
            now,
            person,
            screen);
    if (more == 0) {
      AccessStore.run(
          c,
          "INSERT INTO access_tries (person, screen, failed, last_at) VALUES (?, ?, 1, ?)",
          person,
          screen,
          now);
    }
    return AccessStore.one(
        c,
        "SELECT failed FROM access_tries WHERE person = ? AND screen = ?",
        r -> r.getInt("failed"),
        person,
        screen);
  }

  /** Tries of all codes at a screen that were not right. */
  static int triedAt(Connection c, String screen) throws SQLException {
    return AccessStore.one(
        c,
        "SELECT coalesce(sum(failed), 0) AS n FROM access_tries WHERE screen = ?",
        r -> r.getInt("n"),
        screen);
  }

  static void forgetTries(Connection c, String person, String screen) throws SQLException {
    AccessStore.run(c, "DELETE FROM access_tries WHERE person = ? AND screen = ?", person, screen);
  }
}
