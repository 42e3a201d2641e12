package sunup.access;

import java.sql.Connection;
import java.sql.PreparedStatement;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Set;
import java.util.function.Supplier;
import sunup.access.Known.Grant;
import sunup.access.Known.PairedScreen;
import sunup.access.Known.SignedOn;
import sunup.board.PersonId;
import sunup.board.Role;
import sunup.board.RoomId;
import sunup.board.SuiteId;
import sunup.journal.Bytes;
import sunup.journal.SideDatabase;

/** The tables of screens and people, statement by statement; the same on both databases. */
final class AccessStore {
  private static final int KEY_BYTES = 32;

  /** Wrong PINs in a row of a person at a screen before a colleague has to help. */
  static final int TRIES_MAX = 5;

  /** After so long without a try a lock ends by itself. */
  static final long LOCK_MS = 15 * 60_000;

  /** A sign-on ends by itself after so long; so long its touches may still come. */
  static final long SESSION_MS = 14 * 3_600_000L;

  private AccessStore() {}

  interface Row<T> {
    T of(ResultSet row) throws SQLException;
  }

  static <T> List<T> all(Connection c, String sql, Row<T> read, Object... with)
      throws SQLException {
    try (PreparedStatement s = SideDatabase.prepare(c, sql, with);
        ResultSet row = s.executeQuery()) {
      List<T> rows = new ArrayList<>();
      while (row.next()) {
        rows.add(read.of(row));
      }
      return rows;
    }
  }

  /** Null if there is none. */
  static <T> T one(Connection c, String sql, Row<T> read, Object... with) throws SQLException {
    List<T> rows = all(c, sql, read, with);
    return rows.isEmpty() ? null : rows.get(0);
  }

  static int run(Connection c, String sql, Object... with) throws SQLException {
    try (PreparedStatement s = SideDatabase.prepare(c, sql, with)) {
      return s.executeUpdate();
    }
  }

  private static Long longOrNull(ResultSet row, String column) throws SQLException {
    long value = row.getLong(column);
    return row.wasNull() ? null : value;
  }

  static long stamp(Connection c) throws SQLException {
    return one(c, "SELECT n FROM access_stamp", r -> r.getLong("n"));
  }

  static void changed(Connection c) throws SQLException {
    run(c, "UPDATE access_stamp SET n = n + 1");
  }

  static Known read(Connection c, long now) throws SQLException {
    Map<String, PairedScreen> screens = new HashMap<>();
    all(c, "SELECT * FROM access_screen WHERE revoked_at IS NULL", AccessStore::screen)
        .forEach(one -> screens.put(one.id(), one));
    Map<String, Known.Key> keys = new HashMap<>();
    all(
            c,
            "SELECT * FROM access_key",
            r ->
                Map.entry(
                    r.getString("fingerprint"),
                    new Known.Key(r.getString("screen"), longOrNull(r, "used_at") != null)))
        .forEach(each -> keys.put(each.getKey(), each.getValue()));
    Map<String, Set<Grant>> grants = new HashMap<>();
    all(c, "SELECT code FROM access_person WHERE ended_at IS NULL", r -> r.getString("code"))
        .forEach(code -> grants.put(code, new HashSet<>()));
    all(
            c,
            "SELECT * FROM access_role",
            r -> Map.entry(r.getString("person"), new Grant(r.getString("suite"), role(r, "role"))))
        .stream()
        .filter(each -> grants.containsKey(each.getKey()))
        .forEach(each -> grants.get(each.getKey()).add(each.getValue()));
    Map<String, Known.Person> people = new HashMap<>();
    grants.forEach((code, its) -> people.put(code, new Known.Person(code, its)));
    Map<String, SignedOn> sessions = new HashMap<>();
    all(
            c,
            "SELECT * FROM access_sign_on WHERE began_at > ?",
            AccessStore::session,
            now - SESSION_MS)
        .forEach(one -> sessions.put(one.id(), one));
    List<Known.Lock> locks =
        all(
            c,
            "SELECT person, screen FROM access_tries WHERE failed >= ? AND last_at > ?",
            r -> new Known.Lock(r.getString("person"), r.getString("screen")),
            TRIES_MAX,
            now - LOCK_MS);
    return new Known(stamp(c), screens, keys, people, sessions, locks, PushStore.all(c));
  }

  private static PairedScreen screen(ResultSet r) throws SQLException {
    String room = r.getString("room");
    return new PairedScreen(
        r.getString("id"),
        r.getString("name"),
        Page.named(r.getString("page")).orElse(Page.WALL),
        new SuiteId(r.getString("suite")),
        room == null ? null : new RoomId(room),
        r.getLong("paired_at"),
        r.getString("paired_by"),
        r.getInt("own") != 0);
  }

  private static SignedOn session(ResultSet r) throws SQLException {
    String post = r.getString("post");
    return new SignedOn(
        r.getString("id"),
        r.getString("screen"),
        r.getString("person"),
        new SuiteId(r.getString("suite")),
        role(r, "role"),
        post == null ? null : new PersonId(post),
        r.getLong("began_at"),
        longOrNull(r, "ended_at"));
  }

  /** One that a newer board knows and this one does not may do nothing here. */
  private static Role role(ResultSet r, String column) throws SQLException {
    try {
      return Role.valueOf(r.getString(column).toUpperCase(Locale.ROOT));
    } catch (IllegalArgumentException e) {
      return Role.DISPLAY;
    }
  }

  static byte[] secret(Connection c, String name, long now) throws SQLException {
    return one(
        c,
        "SELECT value FROM access_secret WHERE name = ? AND ends_at > ?",
        r -> r.getBytes("value"),
        name,
        now);
  }

  /** A key of all nodes for good, made by the first that asks. */
  static byte[] key(Connection c, String name) throws SQLException {
    return key(c, name, () -> Secrets.bytes(KEY_BYTES));
  }

  /** The same of a kind of its own. */
  static byte[] key(Connection c, String name, Supplier<byte[]> made) throws SQLException {
    byte[] kept = secret(c, name, 0);
    if (kept == null) {
      kept = made.get();
      keepSecret(c, name, kept, Long.MAX_VALUE);
    }
    return kept;
  }

  static void keepSecret(Connection c, String name, byte[] value, long until) throws SQLException {
    dropSecret(c, name);
    run(c, "INSERT INTO access_secret (name, value, ends_at) VALUES (?, ?, ?)", name, value, until);
  }

  static void dropSecret(Connection c, String name) throws SQLException {
    run(c, "DELETE FROM access_secret WHERE name = ?", name);
  }

  static void addScreen(Connection c, PairedScreen s) throws SQLException {
    run(
        c,
        "INSERT INTO access_screen (id, name, page, suite, room, paired_at, paired_by, own)"
            + " VALUES (?, ?, ?, ?, ?, ?, ?, ?)",
        s.id(),
        s.name(),
        s.page().word(),
        s.suite().value(),
        s.room() == null ? null : s.room().value(),
        s.pairedAt(),
        s.pairedBy(),
        s.own() ? 1 : 0);
  }

  /** People's own browsers are known no longer than their sign-on lasts. */
  static void closeOwn(Connection c, long now) throws SQLException {
    List<String> over =
        all(
            c,
            "SELECT id FROM access_screen WHERE own = 1 AND revoked_at IS NULL AND NOT EXISTS"
                + " (SELECT 1 FROM access_sign_on s WHERE s.screen = access_screen.id"
                + " AND s.ended_at IS NULL AND s.began_at > ?)",
            r -> r.getString("id"),
            now - SESSION_MS);
    for (String screen : over) {
      revoke(c, screen, "its sign-on ended", now);
    }
  }

  /** Its keys go, so that no socket of it opens again. */
  static boolean revoke(Connection c, String screen, String by, long now) throws SQLException {
    run(c, "DELETE FROM access_key WHERE screen = ?", screen);
    endAt(c, screen, now);
    return run(
            c,
            "UPDATE access_screen SET revoked_at = ?, revoked_by = ?"
                + " WHERE id = ? AND revoked_at IS NULL",
            now,
            by,
            screen)
        == 1;
  }

  static void addKey(Connection c, String fingerprint, String screen, long now)
      throws SQLException {
    run(
        c,
        "INSERT INTO access_key (fingerprint, screen, made_at) VALUES (?, ?, ?)",
        fingerprint,
        screen,
        now);
  }

  /** Keys of a screen that were given and never used: a screen has one such at most. */
  static void dropUnused(Connection c, String screen) throws SQLException {
    run(c, "DELETE FROM access_key WHERE screen = ? AND used_at IS NULL", screen);
  }

  /** The key was used at a connect: the screen's other keys end. */
  static void keyUsed(Connection c, String fingerprint, String screen, long now)
      throws SQLException {
    run(c, "UPDATE access_key SET used_at = ? WHERE fingerprint = ?", now, fingerprint);
    run(c, "DELETE FROM access_key WHERE screen = ? AND fingerprint <> ?", screen, fingerprint);
  }

  /** What is kept of a person's PIN, or null; also of one whose PIN was lost with its pepper. */
  static Pins.Kept pin(Connection c, String person) throws SQLException {
    return one(
        c,
        "SELECT salt, hash FROM access_person"
            + " WHERE code = ? AND ended_at IS NULL AND length(hash) > 1",
        r -> new Pins.Kept(Bytes.of(r.getBytes("salt")), Bytes.of(r.getBytes("hash"))),
        person);
  }

  /** A new person, or one that was ended and comes back. */
  static void addPerson(Connection c, String code, Pins.Kept pin, String by, long now)
      throws SQLException {
    if (!setPin(c, code, pin)) {
      run(
          c,
          "INSERT INTO access_person (code, salt, hash, made_at, made_by) VALUES (?, ?, ?, ?, ?)",
          code,
          pin.salt().raw(),
          pin.hash().raw(),
          now,
          by);
    }
    run(c, "UPDATE access_person SET ended_at = NULL WHERE code = ?", code);
  }

  static boolean setPin(Connection c, String code, Pins.Kept pin) throws SQLException {
    return run(
            c,
            "UPDATE access_person SET salt = ?, hash = ? WHERE code = ?",
            pin.salt().raw(),
            pin.hash().raw(),
            code)
        == 1;
  }

  /** In one suite, or everywhere, the person has these roles and no others. */
  static void setRoles(Connection c, String person, String suite, Set<Role> roles)
      throws SQLException {
    run(c, "DELETE FROM access_role WHERE person = ? AND suite = ?", person, suite);
    for (Role role : roles) {
      run(
          c,
          "INSERT INTO access_role (person, suite, role) VALUES (?, ?, ?)",
          person,
          suite,
          role.word());
    }
  }

  /** Roles that count everywhere become roles of each suite, so that one suite's can change. */
  static void spreadRoles(Connection c, String person, Set<SuiteId> suites) throws SQLException {
    List<Role> everywhere =
        all(
            c,
            "SELECT role FROM access_role WHERE person = ? AND suite = ?",
            r -> role(r, "role"),
            person,
            Known.EVERYWHERE);
    run(c, "DELETE FROM access_role WHERE person = ? AND suite = ?", person, Known.EVERYWHERE);
    for (SuiteId suite : suites) {
      for (Role role : everywhere) {
        run(
            c,
            "DELETE FROM access_role WHERE person = ? AND suite = ? AND role = ?",
            person,
            suite.value(),
            role.word());
        run(
            c,
            "INSERT INTO access_role (person, suite, role) VALUES (?, ?, ?)",
            person,
            suite.value(),
            role.word());
      }
    }
  }

  static void endPerson(Connection c, String person, long now) throws SQLException {
    run(c, "UPDATE access_person SET ended_at = ? WHERE code = ?", now, person);
    run(c, "DELETE FROM access_role WHERE person = ?", person);
    signOffEverywhere(c, person, now);
  }

  static void signOffEverywhere(Connection c, String person, long now) throws SQLException {
    run(
        c,
        "UPDATE access_sign_on SET ended_at = ? WHERE person = ? AND ended_at IS NULL",
        now,
        person);
  }

  /** Ends a person's sign-ons in one suite. */
  static void signOffIn(Connection c, String person, SuiteId suite, long now) throws SQLException {
    run(
        c,
        "UPDATE access_sign_on SET ended_at = ?"
            + " WHERE person = ? AND suite = ? AND ended_at IS NULL",
        now,
        person,
        suite.value());
  }

  /** The same but for one sign-on. */
  static void signOffElsewhere(Connection c, String person, String but, long now)
      throws SQLException {
    run(
        c,
        "UPDATE access_sign_on SET ended_at = ?"
            + " WHERE person = ? AND id <> ? AND ended_at IS NULL",
        now,
        person,
        but);
  }

  /** Whoever is signed on at a screen is not any more. */
  static void endAt(Connection c, String screen, long now) throws SQLException {
    run(
        c,
        "UPDATE access_sign_on SET ended_at = ? WHERE screen = ? AND ended_at IS NULL",
        now,
        screen);
  }

  static void signOn(Connection c, SignedOn s) throws SQLException {
    endAt(c, s.screen(), s.beganAt());
    keep(c, s);
  }

  /** Keeps a sign-on; one that ended at once is of somebody who signed beside another. */
  static void keep(Connection c, SignedOn s) throws SQLException {
    run(
        c,
        "INSERT INTO access_sign_on (id, screen, person, suite, role, post, began_at, ended_at)"
            + " VALUES (?, ?, ?, ?, ?, ?, ?, ?)",
        s.id(),
        s.screen(),
        s.person(),
        s.suite().value(),
        s.role().word(),
        s.post() == null ? null : s.post().value(),
        s.beganAt(),
        s.endedAt());
  }

  /** Who was signed on where is forgotten. */
  static void forget(Connection c, long before) throws SQLException {
    run(c, "DELETE FROM access_sign_on WHERE began_at < ?", before);
  }
}
