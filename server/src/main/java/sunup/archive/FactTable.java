package sunup.archive;

import java.sql.Connection;
import java.sql.SQLException;
import java.sql.Statement;
import java.util.LinkedHashMap;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import org.duckdb.DuckDBAppender;
import org.duckdb.DuckDBConnection;
import sunup.archive.FactStore.Source;
import sunup.review.Measures;
import sunup.review.charts.Lateness;
import sunup.review.charts.MinutesByCause;
import sunup.review.charts.MinutesByCause.Grouping;
import sunup.review.charts.MinutesByCause.Sum;
import sunup.review.facts.AsRunFact;
import sunup.review.facts.BoardSaid;
import sunup.review.facts.Cause;
import sunup.review.facts.FirstCaseFact;
import sunup.review.facts.FirstCaseFact.Beside;
import sunup.review.facts.ForecastNote;
import sunup.review.trial.Said;

/**
 * The tables and how a fact is written into them. Whatever takes more than a comparison or a sum to
 * find out is found out here, once, by the same functions that count facts themselves.
 */
final class FactTable implements AutoCloseable {
  /** Changed whenever a table or what it holds is: an archive of another form is made anew. */
  static final int FORM = 5;

  private static final String COLUMNS =
      """
      id BIGINT NOT NULL, source VARCHAR NOT NULL, suite VARCHAR NOT NULL, day INTEGER NOT NULL,
      weekday TINYINT NOT NULL, room VARCHAR NOT NULL, service VARCHAR NOT NULL,
      technique VARCHAR NOT NULL, cancelled BOOLEAN NOT NULL, grace SMALLINT NOT NULL,
      booked BIGINT NOT NULL, agreed BIGINT, started BIGINT, inferred BOOLEAN NOT NULL,
      late BIGINT, cut BIGINT, cut_from BIGINT, on_time BOOLEAN, bin SMALLINT,
      weak BIGINT NOT NULL, took BIGINT,
      asked INTEGER NOT NULL, left_out INTEGER NOT NULL, open_at_step INTEGER NOT NULL,
      together INTEGER NOT NULL,
      late_entries INTEGER NOT NULL, faults INTEGER NOT NULL, reported VARCHAR, settled VARCHAR,
      cause VARCHAR, shown BOOLEAN, instead VARCHAR, event VARCHAR NOT NULL, arrivals VARCHAR,
      ready BIGINT, sent_for BIGINT, wheels_in BIGINT, induction BIGINT, release BIGINT,
      incision BIGINT\
      """;

  private final DuckDBAppender starts;
  private final DuckDBAppender pieces;
  private long nextId;

  FactTable(DuckDBConnection connection, long nextId) throws SQLException {
    this.nextId = nextId;
    this.starts = connection.createAppender("main", "start");
    this.pieces = connection.createAppender("main", "piece");
  }

  static void make(Connection c) throws SQLException {
    StringBuilder said = new StringBuilder();
    for (int before : BoardSaid.MOMENTS) {
      said.append(
          (", chance_M DOUBLE, done_M DOUBLE, came_M BOOLEAN, acted_M BOOLEAN, again_M BOOLEAN,"
                  + " named_M TINYINT, low_M BIGINT, mid_M BIGINT, high_M BIGINT, holdup_M VARCHAR")
              .replace("M", String.valueOf(before)));
    }
    try (Statement s = c.createStatement()) {
      s.execute("CREATE TABLE form (form INTEGER NOT NULL)");
      s.execute("INSERT INTO form VALUES (" + FORM + ")");
      s.execute("CREATE TABLE start (" + COLUMNS + said + ")");
      s.execute(
          "CREATE TABLE piece (id BIGINT NOT NULL, kind VARCHAR NOT NULL, section VARCHAR NOT NULL,"
              + " item VARCHAR NOT NULL, ms BIGINT NOT NULL, weak BIGINT NOT NULL,"
              + " new_kind BOOLEAN NOT NULL, new_section BOOLEAN NOT NULL)");
      s.execute(
          "CREATE TABLE made (suite VARCHAR NOT NULL, day INTEGER NOT NULL, seq BIGINT NOT NULL)");
    }
    RemadeTable.make(c);
  }

  /** What came later and leaves what is kept as it is. */
  static void makeLater(Connection c) throws SQLException {
    try (Statement s = c.createStatement()) {
      s.execute(
          "CREATE TABLE IF NOT EXISTS brought (suite VARCHAR PRIMARY KEY,"
              + " number INTEGER NOT NULL)");
      if (!LessonTable.isThere(c)) {
        LessonTable.make(c);
        // What was made without lessons is made anew.
        s.execute("DELETE FROM made");
      }
      LessonTable.makeLater(c);
    }
  }

  long nextId() {
    return nextId;
  }

  void add(Source source, FirstCaseFact fact) throws SQLException {
    long id = nextId++;
    addStart(id, source, fact);
    addPieces(id, fact);
  }

  private void addStart(long id, Source source, FirstCaseFact f) throws SQLException {
    Long started = f.startedAt();
    starts.beginRow();
    starts.append(id).append(source.name().toLowerCase(Locale.ROOT));
    starts.append(f.morning().suite().value()).append((int) f.morning().date().toEpochDay());
    starts.append((byte) f.weekday().getValue()).append(f.room().value());
    starts.append(named(f.service())).append(named(f.technique()));
    starts.append(f.cancelled()).append((short) f.graceMinutes());
    starts.append(f.bookedAt()).append(f.agreedAt()).append(started);
    starts.append(f.startInferred());
    starts.append(started == null ? null : Long.valueOf(f.lateMs()));
    starts.append(started == null ? null : Long.valueOf(minuteOf(started) - f.target()));
    Long from = f.startedFrom();
    starts.append(from == null ? null : Long.valueOf(minuteOf(from) - f.target()));
    starts.append(f.judged() ? Boolean.valueOf(f.onTime()) : null);
    starts.append(started == null ? null : Short.valueOf(bin(f)));
    starts.append(f.asRun().weakMs());
    addBeside(f.beside());
    FirstCaseFact.Reported reported = f.reported();
    starts.append(reported == null ? null : MinutesByCause.word(reported));
    starts.append(reported == null ? null : reported.settled().name().toLowerCase(Locale.ROOT));
    starts.append(f.asRun().largest().map(Cause::section).orElse(null));
    starts.append(started == null ? null : Measures.shownAhead(f));
    boolean disputed = reported != null && reported.instead() != null;
    starts.append(disputed ? MinutesByCause.word(reported.instead()) : null);
    addTimes(f);
    for (int before : BoardSaid.MOMENTS) {
      addSaid(f, before);
    }
    starts.endRow();
  }

  private static String named(String value) {
    return value == null ? "none" : value;
  }

  private static long minuteOf(long at) {
    return Math.floorDiv(at, FirstCaseFact.MINUTE) * FirstCaseFact.MINUTE;
  }

  private static short bin(FirstCaseFact f) {
    return (short) Lateness.binOf((double) f.latenessMs() / FirstCaseFact.MINUTE);
  }

  private void addBeside(Beside b) throws SQLException {
    starts.append(b.wheelsInToInductionMs()).append(b.asked()).append(b.leftOut());
    starts.append(b.openAtStep()).append(b.together()).append(b.lateEntries()).append(b.faults());
  }

  private void addTimes(FirstCaseFact f) throws SQLException {
    FirstCaseFact.Times t = f.times();
    starts.append(f.startEvent().name().toLowerCase(Locale.ROOT).replace('_', '-'));
    starts.append(FactRows.word(t.arrivals()));
    starts.append(t.readyAt()).append(t.sentFor()).append(t.wheelsIn()).append(t.induction());
    starts.append(t.release()).append(t.incision());
  }

  private void addSaid(FirstCaseFact f, int before) throws SQLException {
    Optional<BoardSaid> one =
        f.said().stream().filter(s -> s.minutesBefore() == before && s.note() != null).findFirst();
    if (one.isEmpty()) {
      starts.append((Double) null).append((Double) null).append((Boolean) null);
      starts.append((Boolean) null).append((Boolean) null).append((Byte) null);
      starts.append((Long) null).append((Long) null).append((Long) null).append((String) null);
      return;
    }
    BoardSaid said = one.get();
    Integer named = said.came() == null ? null : Said.named(f, said);
    starts.append(said.note().onTime()).append(said.done()).append(said.came());
    starts.append(said.deskActed());
    starts.append(said.note().origin() == ForecastNote.Origin.RECOMPUTED);
    starts.append(named == null ? null : Byte.valueOf(named.byteValue()));
    ForecastNote note = said.note();
    starts.append(note.start10()).append(note.start50()).append(note.start90());
    starts.append(note.named().isEmpty() ? null : FactRows.word(note.named().get(0).cause()));
  }

  private void addPieces(long id, FirstCaseFact f) throws SQLException {
    Map<String, AsRunFact.Piece> labels = new LinkedHashMap<>();
    for (AsRunFact.Piece piece : f.asRun().pieces()) {
      if (piece.lateMs() > 0) {
        labels.putIfAbsent(MinutesByCause.label(piece, Grouping.ITEM), piece);
      }
    }
    Map<String, Sum> sums = MinutesByCause.computed(f, Grouping.ITEM);
    java.util.Set<String> seen = new java.util.HashSet<>();
    for (Map.Entry<String, AsRunFact.Piece> e : labels.entrySet()) {
      String kind = MinutesByCause.label(e.getValue(), Grouping.KIND);
      String section = MinutesByCause.label(e.getValue(), Grouping.SECTION);
      Sum sum = sums.get(e.getKey());
      pieces.beginRow();
      pieces.append(id).append(kind).append(section).append(e.getKey());
      pieces.append(sum.ms()).append(sum.weak());
      pieces.append(seen.add("kind " + kind)).append(seen.add("section " + section));
      pieces.endRow();
    }
  }

  void flush() throws SQLException {
    starts.flush();
    pieces.flush();
  }

  @Override
  public void close() throws SQLException {
    starts.close();
    pieces.close();
  }
}
