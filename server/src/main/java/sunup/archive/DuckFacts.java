package sunup.archive;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.sql.Connection;
import java.sql.PreparedStatement;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.sql.Statement;
import java.time.LocalDate;
import java.util.HashMap;
import java.util.Iterator;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Properties;
import java.util.Set;
import org.duckdb.DuckDBConnection;
import org.duckdb.DuckDBDriver;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;
import sunup.board.MorningId;
import sunup.board.SuiteId;
import sunup.review.facts.FirstCaseFact;
import sunup.review.facts.ForecastNote;

/** The facts in an embedded columnar database, in one file of the data folder. */
public final class DuckFacts implements FactStore {
  /** The archive's file in its data folder. */
  public static final String FILE = "review.duckdb";

  /** Rows that are written in one transaction. */
  private static final int ROWS_AT_ONCE = 100_000;

  private static final Logger LOG = LoggerFactory.getLogger(DuckFacts.class);

  private final DuckDBConnection writing;
  private final DuckFigures figures;

  /** Guarded by this. */
  private long nextId;

  private DuckFacts(DuckDBConnection writing) throws SQLException {
    this.writing = writing;
    this.nextId = lastId() + 1;
    this.figures = new DuckFigures(writing);
  }

  /**
   * Opens the archive in a data folder, making what is missing. One that can't be read, or is of
   * another form, is put aside and made anew: nothing in it is the truth.
   *
   * @param folder that this process holds, or null to keep all in memory
   * @throws IOException if the folder can't be written
   */
  public static DuckFacts open(Path folder) throws IOException {
    if (folder == null) {
      return inMemory();
    }
    Path file = folder.resolve(FILE);
    try {
      return open(file.toString());
    } catch (SQLException e) {
      if (String.valueOf(e.getMessage()).contains("set lock")) {
        LOG.warn(
            "{} is another process's: this one keeps its archive in memory and makes it anew at"
                + " each start. Give it a data folder of its own.",
            file);
        return inMemory();
      }
      LOG.warn("the review's archive {} is made anew: {}", file, e.getMessage());
      aside(file);
      aside(folder.resolve(FILE + ".wal"));
    }
    try {
      return open(file.toString());
    } catch (SQLException e) {
      throw new IOException(
          "The review's archive " + file + " can't be made: " + e.getMessage(), e);
    }
  }

  /** Keeps all in memory. */
  public static DuckFacts inMemory() {
    try {
      return open("");
    } catch (SQLException e) {
      throw new Trouble("The review's archive can't be made in memory: " + e.getMessage(), e);
    }
  }

  private static void aside(Path file) throws IOException {
    if (Files.exists(file)) {
      Files.move(
          file,
          file.resolveSibling(file.getFileName() + ".old"),
          java.nio.file.StandardCopyOption.REPLACE_EXISTING);
    }
  }

  private static DuckFacts open(String file) throws SQLException {
    Properties settings = new Properties();
    settings.setProperty("memory_limit", "1GB");
    settings.setProperty("autoinstall_known_extensions", "false");
    settings.setProperty("autoload_known_extensions", "false");
    settings.setProperty("preserve_insertion_order", "false");
    DuckDBConnection c =
        (DuckDBConnection) new DuckDBDriver().connect("jdbc:duckdb:" + file, settings);
    try {
      if (!hasTables(c)) {
        FactTable.make(c);
      }
      int form = (int) number(c, "SELECT max(form) FROM form");
      if (form != FactTable.FORM) {
        throw new SQLException("it has form " + form + " and not " + FactTable.FORM);
      }
      FactTable.makeLater(c);
      run(c, "SET enable_external_access = false");
      run(c, "SET lock_configuration = true");
      return new DuckFacts(c);
    } catch (SQLException e) {
      c.close();
      throw e;
    }
  }

  private static boolean hasTables(Connection c) throws SQLException {
    return number(c, "SELECT count(*) FROM duckdb_tables() WHERE table_name = 'form'") > 0;
  }

  private static long number(Connection c, String question) throws SQLException {
    try (Statement s = c.createStatement();
        ResultSet row = s.executeQuery(question)) {
      row.next();
      return row.getLong(1);
    }
  }

  private static void run(Connection c, String words) throws SQLException {
    try (Statement s = c.createStatement()) {
      s.execute(words);
    }
  }

  private long lastId() throws SQLException {
    return number(writing, "SELECT coalesce(max(id), 0) FROM start");
  }

  /** Work in one transaction. */
  private interface Work {
    void run() throws SQLException;
  }

  private void whole(Work work) {
    try {
      writing.setAutoCommit(false);
      try {
        work.run();
        writing.commit();
      } catch (SQLException | RuntimeException e) {
        writing.rollback();
        nextId = lastId() + 1;
        throw e;
      } finally {
        writing.setAutoCommit(true);
      }
    } catch (SQLException e) {
      throw trouble(e);
    }
  }

  static Trouble trouble(SQLException e) {
    return new Trouble(
        "The review's archive does not answer ("
            + e.getMessage()
            + "). Look at the disk; the board itself does not need it.",
        e);
  }

  @Override
  public synchronized void replace(
      MorningId morning, long seq, List<FirstCaseFact> facts, Taught taught) {
    whole(
        () -> {
          drop(morning);
          try (PreparedStatement s =
              writing.prepareStatement("INSERT INTO made VALUES (?, ?, ?)")) {
            s.setString(1, morning.suite().value());
            s.setInt(2, (int) morning.date().toEpochDay());
            s.setLong(3, seq);
            s.executeUpdate();
          }
          add(Source.JOURNAL, facts.iterator(), facts.size());
          LessonTable.put(writing, morning, taught);
        });
  }

  private void drop(MorningId morning) throws SQLException {
    for (String words :
        List.of(
            "DELETE FROM piece WHERE id IN (SELECT id FROM start WHERE suite = ? AND day = ?)",
            "DELETE FROM start WHERE suite = ? AND day = ?",
            "DELETE FROM lesson WHERE suite = ? AND day = ?",
            "DELETE FROM made WHERE suite = ? AND day = ?")) {
      try (PreparedStatement s = writing.prepareStatement(words)) {
        s.setString(1, morning.suite().value());
        s.setInt(2, (int) morning.date().toEpochDay());
        s.executeUpdate();
      }
    }
  }

  /** Writes the next so many rows. */
  private int add(Source source, Iterator<FirstCaseFact> facts, int most) throws SQLException {
    int count = 0;
    try (FactTable table = new FactTable(writing, nextId)) {
      while (count < most && facts.hasNext()) {
        table.add(source, facts.next());
        count++;
      }
      table.flush();
      nextId = table.nextId();
    }
    return count;
  }

  @Override
  public synchronized long append(Source source, Iterator<FirstCaseFact> facts) {
    long[] count = new long[1];
    while (facts.hasNext()) {
      whole(() -> count[0] += add(source, facts, ROWS_AT_ONCE));
    }
    return count[0];
  }

  @Override
  public synchronized long history(SuiteId suite, int number, List<FirstCaseFact> facts) {
    Set<MorningId> mine = made().keySet();
    List<FirstCaseFact> others =
        facts.stream()
            .filter(f -> f.morning().suite().equals(suite) && !mine.contains(f.morning()))
            .toList();
    whole(
        () -> {
          try (PreparedStatement s =
              writing.prepareStatement(
                  "DELETE FROM start WHERE source = 'history' AND suite = ?")) {
            s.setString(1, suite.value());
            s.executeUpdate();
          }
          add(Source.HISTORY, others.iterator(), others.size());
          try (PreparedStatement s =
              writing.prepareStatement("INSERT OR REPLACE INTO brought VALUES (?, ?)")) {
            s.setString(1, suite.value());
            s.setInt(2, number);
            s.executeUpdate();
          }
        });
    return others.size();
  }

  @Override
  public synchronized Map<SuiteId, Integer> brought() {
    Map<SuiteId, Integer> numbers = new HashMap<>();
    try (Statement s = writing.createStatement();
        ResultSet row = s.executeQuery("SELECT suite, number FROM brought")) {
      while (row.next()) {
        numbers.put(new SuiteId(row.getString(1)), row.getInt(2));
      }
      return numbers;
    } catch (SQLException e) {
      throw trouble(e);
    }
  }

  @Override
  public synchronized void forget(Source source) {
    String word = source.name().toLowerCase(Locale.ROOT);
    whole(
        () -> {
          run(
              writing,
              "DELETE FROM piece WHERE id IN (SELECT id FROM start WHERE source = '" + word + "')");
          run(writing, "DELETE FROM start WHERE source = '" + word + "'");
          if (source == Source.JOURNAL) {
            run(writing, "DELETE FROM made");
            run(writing, "DELETE FROM lesson");
            run(writing, "DELETE FROM remade");
          } else {
            run(writing, "DELETE FROM brought");
          }
        });
  }

  @Override
  public synchronized List<ForecastNote> remade(MorningId morning) {
    try {
      return RemadeTable.of(writing, morning);
    } catch (SQLException e) {
      throw trouble(e);
    }
  }

  @Override
  public synchronized void remade(MorningId morning, List<ForecastNote> notes) {
    whole(() -> RemadeTable.put(writing, morning, notes));
  }

  @Override
  public synchronized Map<MorningId, Long> made() {
    Map<MorningId, Long> made = new HashMap<>();
    try (Statement s = writing.createStatement();
        ResultSet row = s.executeQuery("SELECT suite, day, seq FROM made")) {
      while (row.next()) {
        made.put(
            new MorningId(new SuiteId(row.getString(1)), LocalDate.ofEpochDay(row.getInt(2))),
            row.getLong(3));
      }
      return made;
    } catch (SQLException e) {
      throw trouble(e);
    }
  }

  @Override
  public FactFigures figures() {
    return figures;
  }

  @Override
  public synchronized void close() {
    try {
      writing.close();
    } catch (SQLException e) {
      LOG.warn("the review's archive could not be closed: {}", e.getMessage());
    }
  }
}
