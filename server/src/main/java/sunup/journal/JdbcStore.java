package sunup.journal;

import java.sql.Connection;
import java.sql.PreparedStatement;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.sql.Statement;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Collection;
import java.util.Comparator;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import sunup.board.CommandId;
import sunup.board.MorningId;
import sunup.board.RefusalCode;
import sunup.board.SuiteId;

/** The statements of the journal. Commits and rolls back nothing: that is its caller's. */
final class JdbcStore {
  /** Mornings asked for in one statement. */
  private static final int ASK_LIMIT = 200;

  private JdbcStore() {}

  /** Moves the epoch one up, unless it is not the one seen. */
  static TakenOver takeOver(Connection c, MorningId morning, Long seen) throws SQLException {
    try (PreparedStatement make =
        c.prepareStatement(
            "INSERT INTO head (suite, morning, epoch, seq, chain) VALUES (?, ?, 0, 0, ?)"
                + " ON CONFLICT DO NOTHING")) {
      name(make, 1, morning);
      make.setBytes(3, Chain.START.raw());
      make.executeUpdate();
    }
    // One statement moves it and says where the morning ends: an append of the owner that was,
    // committed a moment before, is waited for and counted.
    try (PreparedStatement move =
        c.prepareStatement(
            "UPDATE head SET epoch = epoch + 1 WHERE suite = ? AND morning = ?"
                + (seen == null ? "" : " AND epoch = ?")
                + " RETURNING epoch, seq, chain")) {
      name(move, 1, morning);
      if (seen != null) {
        move.setLong(3, seen);
      }
      try (ResultSet row = move.executeQuery()) {
        if (row.next()) {
          return new TakenOver.Won(
              new Head(row.getLong(1), row.getLong(2), Bytes.of(row.getBytes(3))));
        }
      }
    }
    return new TakenOver.Lost(head(c, morning).epoch());
  }

  /**
   * Writes a group. Appends of one morning that follow each other move its head once.
   *
   * @return for each append whether it is in; one that is not was fenced
   */
  static boolean[] write(Connection c, List<Append> group, Moments moments) throws SQLException {
    boolean[] in = new boolean[group.size()];
    try (PreparedStatement move =
        c.prepareStatement(
            "UPDATE head SET seq = ?, chain = ?"
                + " WHERE suite = ? AND morning = ? AND epoch = ? AND seq = ?")) {
      // Always in the same order: two nodes that write at once never wait for each other.
      List<Run> runs = runs(group);
      runs.sort(Comparator.comparing(run -> run.first.morning().toString()));
      for (Run run : runs) {
        move.setLong(1, run.last.to());
        move.setBytes(2, run.last.chain().raw());
        name(move, 3, run.first.morning());
        move.setLong(5, run.first.epoch());
        move.setLong(6, run.first.from());
        boolean mine = move.executeUpdate() == 1;
        for (int at : run.members) {
          in[at] = mine;
        }
      }
    }
    moments.reached(Moments.Moment.HEADS_MOVED);
    writeRows(c, group, in);
    return in;
  }

  /** Appends of one morning and epoch that follow each other without a gap. */
  private static final class Run {
    final Append first;
    final List<Integer> members = new ArrayList<>();
    Append last;

    Run(Append first) {
      this.first = first;
      this.last = first;
    }

    boolean takes(Append next) {
      return next.epoch() == last.epoch() && next.from() == last.to();
    }
  }

  private static List<Run> runs(List<Append> group) {
    List<Run> runs = new ArrayList<>();
    Map<MorningId, Run> current = new HashMap<>();
    for (int at = 0; at < group.size(); at++) {
      Append append = group.get(at);
      Run run = current.get(append.morning());
      if (run == null || !run.takes(append)) {
        run = new Run(append);
        runs.add(run);
        current.put(append.morning(), run);
      }
      run.last = append;
      run.members.add(at);
    }
    return runs;
  }

  private static void writeRows(Connection c, List<Append> group, boolean[] in)
      throws SQLException {
    try (PreparedStatement event =
            c.prepareStatement(
                "INSERT INTO event (suite, morning, seq, epoch, bytes) VALUES (?, ?, ?, ?, ?)");
        PreparedStatement receipt =
            c.prepareStatement(
                "INSERT INTO receipt (suite, morning, command_id, payload_hash, from_seq, to_seq,"
                    + " refusal_code, refusal_words, refused_by, refused_at)"
                    + " VALUES (?, ?, ?, ?, ?, ?, ?, ?, ?, ?)");
        PreparedStatement priv =
            c.prepareStatement(
                "INSERT INTO private (ref, suite, morning, key, value, erase_after)"
                    + " VALUES (?, ?, ?, ?, ?, ?) ON CONFLICT (ref) DO NOTHING")) {
      for (int at = 0; at < group.size(); at++) {
        if (in[at]) {
          addEvents(event, group.get(at));
          addReceipt(receipt, group.get(at));
          addPrivates(priv, group.get(at));
        }
      }
      event.executeBatch();
      receipt.executeBatch();
      priv.executeBatch();
    }
  }

  private static void addEvents(PreparedStatement s, Append append) throws SQLException {
    long seq = append.from();
    for (Bytes bytes : append.events()) {
      name(s, 1, append.morning());
      s.setLong(3, ++seq);
      s.setLong(4, append.epoch());
      s.setBytes(5, bytes.raw());
      s.addBatch();
    }
  }

  private static void addReceipt(PreparedStatement s, Append append) throws SQLException {
    Receipt receipt = append.receipt();
    name(s, 1, append.morning());
    s.setString(3, receipt.command().value());
    s.setBytes(4, receipt.payload().raw());
    s.setLong(5, receipt.fromSeq());
    s.setLong(6, receipt.toSeq());
    Receipt.Refusal refusal = receipt.refusal();
    s.setString(7, refusal == null ? null : refusal.code().code());
    s.setString(8, refusal == null ? null : refusal.words());
    s.setString(9, refusal == null ? null : refusal.by());
    s.setLong(10, refusal == null ? 0 : refusal.at());
    s.addBatch();
  }

  private static void addPrivates(PreparedStatement s, Append append) throws SQLException {
    for (PrivateValue value : append.privates()) {
      s.setString(1, value.ref());
      name(s, 2, append.morning());
      s.setBytes(4, value.key().raw());
      s.setBytes(5, value.value().raw());
      s.setLong(6, value.eraseAfter());
      s.addBatch();
    }
  }

  static Stored load(Connection c, MorningId morning, long after) throws SQLException {
    List<Stored.Event> events = new ArrayList<>();
    try (PreparedStatement s =
        ask(c, "SELECT seq, epoch, bytes FROM event", morning, " AND seq > ? ORDER BY seq")) {
      s.setLong(3, after);
      try (ResultSet row = s.executeQuery()) {
        while (row.next()) {
          events.add(new Stored.Event(row.getLong(1), row.getLong(2), Bytes.of(row.getBytes(3))));
        }
      }
    }
    return new Stored(head(c, morning), events, receipts(c, morning), privates(c, morning));
  }

  private static List<Receipt> receipts(Connection c, MorningId morning) throws SQLException {
    List<Receipt> receipts = new ArrayList<>();
    String what =
        "SELECT command_id, payload_hash, from_seq, to_seq, refusal_code, refusal_words,"
            + " refused_by, refused_at FROM receipt";
    try (PreparedStatement s = ask(c, what, morning, "");
        ResultSet row = s.executeQuery()) {
      while (row.next()) {
        String code = row.getString(5);
        receipts.add(
            new Receipt(
                new CommandId(row.getString(1)),
                Bytes.of(row.getBytes(2)),
                row.getLong(3),
                row.getLong(4),
                code == null
                    ? null
                    : new Receipt.Refusal(
                        refusal(code), row.getString(6), row.getString(7), row.getLong(8))));
      }
    }
    return receipts;
  }

  /** A code of a newer Sunup is told as one that this one knows; the words say what it was. */
  private static RefusalCode refusal(String code) {
    for (RefusalCode known : RefusalCode.values()) {
      if (known.code().equals(code)) {
        return known;
      }
    }
    return RefusalCode.BAD_COMMAND;
  }

  private static Map<String, PrivateValue> privates(Connection c, MorningId morning)
      throws SQLException {
    Map<String, PrivateValue> privates = new HashMap<>();
    String what = "SELECT ref, key, value, erase_after FROM private";
    try (PreparedStatement s = ask(c, what, morning, "");
        ResultSet row = s.executeQuery()) {
      while (row.next()) {
        String ref = row.getString(1);
        privates.put(
            ref,
            new PrivateValue(
                ref, Bytes.of(row.getBytes(2)), Bytes.of(row.getBytes(3)), row.getLong(4)));
      }
    }
    return privates;
  }

  static Head head(Connection c, MorningId morning) throws SQLException {
    try (PreparedStatement s = ask(c, "SELECT epoch, seq, chain FROM head", morning, "");
        ResultSet row = s.executeQuery()) {
      return row.next()
          ? new Head(row.getLong(1), row.getLong(2), Bytes.of(row.getBytes(3)))
          : Head.NONE;
    }
  }

  static Map<MorningId, Long> epochs(Connection c, Collection<MorningId> mornings)
      throws SQLException {
    Map<MorningId, Long> epochs = new HashMap<>();
    List<MorningId> all = List.copyOf(mornings);
    for (int from = 0; from < all.size(); from += ASK_LIMIT) {
      List<MorningId> some = all.subList(from, Math.min(all.size(), from + ASK_LIMIT));
      String rows = "(?, ?)" + ", (?, ?)".repeat(some.size() - 1);
      try (PreparedStatement s =
          c.prepareStatement(
              "SELECT suite, morning, epoch FROM head WHERE (suite, morning) IN (VALUES "
                  + rows
                  + ")")) {
        for (int at = 0; at < some.size(); at++) {
          name(s, 1 + 2 * at, some.get(at));
        }
        try (ResultSet row = s.executeQuery()) {
          while (row.next()) {
            epochs.put(morning(row), row.getLong(3));
          }
        }
      }
    }
    return epochs;
  }

  static List<MorningId> mornings(Connection c) throws SQLException {
    List<MorningId> mornings = new ArrayList<>();
    try (Statement s = c.createStatement();
        ResultSet row =
            s.executeQuery(
                "SELECT suite, morning FROM head WHERE seq > 0 ORDER BY suite, morning")) {
      while (row.next()) {
        mornings.add(morning(row));
      }
    }
    return mornings;
  }

  /** Every morning that any table names, also one whose head or events are gone. */
  static List<MorningId> named(Connection c) throws SQLException {
    List<MorningId> mornings = new ArrayList<>();
    try (Statement s = c.createStatement();
        ResultSet row =
            s.executeQuery(
                "SELECT suite, morning FROM head UNION SELECT suite, morning FROM event"
                    + " UNION SELECT suite, morning FROM receipt ORDER BY suite, morning")) {
      while (row.next()) {
        mornings.add(morning(row));
      }
    }
    return mornings;
  }

  static long receiptCount(Connection c, MorningId morning) throws SQLException {
    try (PreparedStatement s = ask(c, "SELECT count(*) FROM receipt", morning, "");
        ResultSet row = s.executeQuery()) {
      row.next();
      return row.getLong(1);
    }
  }

  static Map<MorningId, Long> lengths(Connection c) throws SQLException {
    Map<MorningId, Long> lengths = new HashMap<>();
    try (Statement s = c.createStatement();
        ResultSet row = s.executeQuery("SELECT suite, morning, seq FROM head WHERE seq > 0")) {
      while (row.next()) {
        lengths.put(morning(row), row.getLong(3));
      }
    }
    return lengths;
  }

  static Set<MorningId> erase(Connection c, long now) throws SQLException {
    Set<MorningId> mornings = new HashSet<>();
    try (PreparedStatement s =
        c.prepareStatement("SELECT DISTINCT suite, morning FROM private WHERE erase_after <= ?")) {
      s.setLong(1, now);
      try (ResultSet row = s.executeQuery()) {
        while (row.next()) {
          mornings.add(morning(row));
        }
      }
    }
    if (!mornings.isEmpty()) {
      try (PreparedStatement s = c.prepareStatement("DELETE FROM private WHERE erase_after <= ?")) {
        s.setLong(1, now);
        s.executeUpdate();
      }
    }
    return mornings;
  }

  private static PreparedStatement ask(Connection c, String what, MorningId morning, String order)
      throws SQLException {
    PreparedStatement s = c.prepareStatement(what + " WHERE suite = ? AND morning = ?" + order);
    name(s, 1, morning);
    return s;
  }

  private static void name(PreparedStatement s, int at, MorningId morning) throws SQLException {
    s.setString(at, morning.suite().value());
    s.setString(at + 1, morning.date().toString());
  }

  private static MorningId morning(ResultSet row) throws SQLException {
    return new MorningId(new SuiteId(row.getString(1)), LocalDate.parse(row.getString(2)));
  }
}
