package sunup.archive;

import java.io.IOException;
import java.sql.Connection;
import java.sql.PreparedStatement;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import sunup.board.SuiteId;
import sunup.codec.Json;
import sunup.journal.SideDatabase;
import sunup.review.facts.FirstCaseFact;

/**
 * The history that suites brought, beside the journal and as durable as it is: the one thing in the
 * review that no journal can make again. Each node's archive takes it from here. For threads that
 * may wait.
 */
public final class Brought implements AutoCloseable {
  /** Names the tables. */
  public static final String PART = "brought";

  private final ForecastLog.Opening opening;

  /** Null until it is needed. */
  private SideDatabase database;

  private boolean closed;

  public Brought(ForecastLog.Opening opening) {
    this.opening = opening;
  }

  private <T> T asked(SideDatabase.Work<T, IOException> work) {
    try {
      if (closed) {
        throw new IOException("the board is closing");
      }
      if (database == null) {
        database = opening.open();
      }
      return database.inOne(work);
    } catch (SQLException | IOException e) {
      throw new FactStore.Trouble("The history's database does not answer: " + e.getMessage(), e);
    }
  }

  /**
   * Replaces what a suite brought; when this returns it is on the disk.
   *
   * @return its number: each bringing has the next one
   */
  public synchronized int replace(SuiteId suite, List<FirstCaseFact> facts) {
    Map<String, List<BroughtCase>> months = new TreeMap<>();
    for (FirstCaseFact fact : facts) {
      String month = fact.morning().date().toString().substring(0, 7);
      months.computeIfAbsent(month, m -> new ArrayList<>()).add(BroughtCase.of(fact));
    }
    return asked(c -> replace(c, suite.value(), months, facts.size()));
  }

  private static int replace(
      Connection c, String suite, Map<String, List<BroughtCase>> months, int cases)
      throws SQLException, IOException {
    // First, so that two nodes that bring at once wait for each other.
    String next =
        "INSERT INTO brought_suite (suite, number, cases) VALUES (?, 1, ?) ON CONFLICT (suite)"
            + " DO UPDATE SET number = brought_suite.number + 1, cases = excluded.cases";
    try (PreparedStatement s = SideDatabase.prepare(c, next, suite, (long) cases)) {
      s.executeUpdate();
    }
    String drop = "DELETE FROM brought_month WHERE suite = ?";
    try (PreparedStatement s = SideDatabase.prepare(c, drop, suite)) {
      s.executeUpdate();
    }
    String add = "INSERT INTO brought_month (suite, month, body) VALUES (?, ?, ?)";
    for (Map.Entry<String, List<BroughtCase>> month : months.entrySet()) {
      String body = Json.mapper().writeValueAsString(month.getValue());
      try (PreparedStatement s = SideDatabase.prepare(c, add, suite, month.getKey(), body)) {
        s.executeUpdate();
      }
    }
    return numbers(c).get(new SuiteId(suite));
  }

  /** The number of what each suite brought. */
  public synchronized Map<SuiteId, Integer> numbers() {
    return asked(Brought::numbers);
  }

  private static Map<SuiteId, Integer> numbers(Connection c) throws SQLException {
    Map<SuiteId, Integer> numbers = new HashMap<>();
    try (PreparedStatement s = c.prepareStatement("SELECT suite, number FROM brought_suite");
        ResultSet row = s.executeQuery()) {
      while (row.next()) {
        numbers.put(new SuiteId(row.getString(1)), row.getInt(2));
      }
    }
    return numbers;
  }

  /** What a suite brought, by date. */
  public synchronized List<FirstCaseFact> of(SuiteId suite) {
    return asked(
        c -> {
          List<FirstCaseFact> facts = new ArrayList<>();
          String sql = "SELECT body FROM brought_month WHERE suite = ? ORDER BY month";
          try (PreparedStatement s = SideDatabase.prepare(c, sql, suite.value());
              ResultSet row = s.executeQuery()) {
            while (row.next()) {
              BroughtCase[] cases = Json.mapper().readValue(row.getString(1), BroughtCase[].class);
              for (BroughtCase one : cases) {
                facts.add(one.fact(suite));
              }
            }
          }
          return facts;
        });
  }

  @Override
  public synchronized void close() {
    closed = true;
    if (database != null) {
      database.close();
      database = null;
    }
  }
}
