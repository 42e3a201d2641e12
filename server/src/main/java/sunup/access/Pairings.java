package sunup.access;

import java.sql.Connection;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.util.List;
import java.util.Map;
import java.util.stream.Collectors;

/** Screens that show a code and wait for a desk to type it. */
final class Pairings {
  /** How many may wait at once. */
  static final int WAITING_MAX = 64;

  private Pairings() {}

  /** A screen that shows a code. */
  record Asks(String code, String fingerprint, String address, String page, long at, long until) {}

  private static Asks asks(ResultSet r) throws SQLException {
    return new Asks(
        r.getString("code"),
        r.getString("fingerprint"),
        r.getString("address"),
        r.getString("page"),
        r.getLong("asked_at"),
        r.getLong("until"));
  }

  /**
   * Keeps one. Where too many wait, the oldest from where most come goes, so that nobody can fill
   * the list for others.
   *
   * @return false if there is no room: most come from where this one does
   */
  static boolean ask(Connection c, Asks asks) throws SQLException {
    AccessStore.run(
        c,
        "DELETE FROM access_pairing WHERE until <= ? OR fingerprint = ?",
        asks.at(),
        asks.fingerprint());
    List<Asks> waiting =
        AccessStore.all(c, "SELECT * FROM access_pairing ORDER BY asked_at", Pairings::asks);
    if (waiting.size() >= WAITING_MAX) {
      Map<String, Long> from =
          waiting.stream()
              .collect(
                  Collectors.groupingBy(one -> Sources.of(one.address()), Collectors.counting()));
      long most = from.values().stream().mapToLong(Long::longValue).max().orElse(0);
      if (from.getOrDefault(Sources.of(asks.address()), 0L) >= most) {
        return false;
      }
      for (Asks one : waiting) {
        if (from.get(Sources.of(one.address())) == most) {
          noMore(c, one.fingerprint());
          break;
        }
      }
    }
    AccessStore.run(
        c,
        "INSERT INTO access_pairing (code, fingerprint, address, page, asked_at, until)"
            + " VALUES (?, ?, ?, ?, ?, ?)",
        asks.code(),
        asks.fingerprint(),
        asks.address(),
        asks.page(),
        asks.at(),
        asks.until());
    return true;
  }

  /** The screen that shows this code, or null. */
  static Asks shown(Connection c, String code, long now) throws SQLException {
    return AccessStore.one(
        c, "SELECT * FROM access_pairing WHERE code = ? AND until > ?", Pairings::asks, code, now);
  }

  static void noMore(Connection c, String fingerprint) throws SQLException {
    AccessStore.run(c, "DELETE FROM access_pairing WHERE fingerprint = ?", fingerprint);
  }
}
