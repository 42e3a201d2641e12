package sunup.journal;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static sunup.journal.Waiting.answer;

import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.attribute.PosixFilePermissions;
import java.sql.Connection;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.sql.Statement;
import java.util.List;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** The contract on a real PostgreSQL with its syncs on, and what only a server can do. */
class PostgresJournalTest extends JournalContract {
  private static PostgresServer server;
  private String schema;

  @Override
  @BeforeEach
  void begin() throws Exception {
    server = PostgresServer.shared();
    schema = server.schema();
    super.begin();
  }

  @Override
  protected Journal open() throws Exception {
    return PostgresJournal.open(server.address(schema));
  }

  private void sql(String text) throws SQLException {
    try (Connection c = server.connect(schema);
        Statement s = c.createStatement()) {
      s.execute(text);
    }
  }

  private long number(String text) throws SQLException {
    try (Connection c = server.connect(schema);
        Statement s = c.createStatement();
        ResultSet row = s.executeQuery(text)) {
      row.next();
      return row.getLong(1);
    }
  }

  /** How often the server has synced its log. */
  private long syncs() throws SQLException {
    boolean older = number("SELECT current_setting('server_version_num')::int") < 180_000;
    return number(
        older
            ? "SELECT wal_sync FROM pg_stat_wal"
            : "SELECT sum(fsyncs) FROM pg_stat_io WHERE object = 'wal'");
  }

  private long syncsOf(int commands) throws Exception {
    Head head = takeOver(MONDAY);
    long before = syncs();
    for (int n = 0; n < commands; n++) {
      Append append = command(MONDAY, head, "c" + n + "-" + head.epoch(), "word " + n);
      assertThat(append(append)).isEqualTo(new Appended.Durable());
      head = after(append);
    }
    // A connection tells what it did at its end.
    journal.close();
    long syncs = syncs() - before;
    journal = open();
    return syncs;
  }

  @Test
  void shouldSyncEveryCommitThatItAcknowledges() throws Exception {
    int commands = 60;
    long syncs = syncsOf(commands);
    System.out.println(commands + " answers with " + syncs + " syncs of PostgreSQL's log");
    assertThat(syncs).isGreaterThanOrEqualTo(commands);
  }

  @Test
  void shouldAskForSyncedCommitsWhateverTheDatabaseIsSetTo() throws Exception {
    sql("ALTER ROLE CURRENT_USER SET synchronous_commit = off");
    try {
      journal.close();
      journal = open();
      int commands = 60;
      assertThat(syncsOf(commands)).isGreaterThanOrEqualTo(commands);
    } finally {
      sql("ALTER ROLE CURRENT_USER RESET synchronous_commit");
    }
  }

  @Test
  void shouldLetTwoNodesOpenItAndOnlyOneWriteAMorning() throws Exception {
    Head mine = takeOver(MONDAY);
    try (Journal other = open()) {
      Head theirs = won(answer(then -> other.takeOver(MONDAY, mine.epoch(), then)));
      assertThat(append(command(MONDAY, mine, "a", "late"))).isEqualTo(new Appended.Fenced());
      Appended fine = answer(then -> other.append(command(MONDAY, theirs, "b", "one"), then));
      assertThat(fine).isEqualTo(new Appended.Durable());
    }
    assertThat(load(MONDAY).events()).containsExactly(new Stored.Event(1, 2, bytes("one")));
  }

  @Test
  void shouldNotWaitForANodeThatStoppedInTheMiddleOfATransaction() throws Exception {
    Head head = takeOver(MONDAY);
    try (Connection stopped = new PostgresDialect(server.address(schema)).openWriting()) {
      JdbcStore.takeOver(stopped, MONDAY, head.epoch());
      // It holds the morning's row now and says nothing more.
      TakenOver taken = answer(then -> journal.takeOver(MONDAY, head.epoch(), then));
      assertThat(won(taken).epoch()).isEqualTo(2);
    }
  }

  @Test
  void shouldRefuseAJournalOfANewerSunup() throws Exception {
    journal.close();
    sql(
        "INSERT INTO schema_history (installed_rank, version, description, type, script,"
            + " installed_by, execution_time, success)"
            + " VALUES (99, '99', 'later', 'SQL', 'V99__later.sql', 'x', 0, true)");
    assertThatThrownBy(this::open).hasMessageContaining("schema 99").hasMessageContaining("newer");
    sql("DELETE FROM schema_history WHERE version = '99'");
    journal = open();
  }

  @Test
  void shouldSayWhatToDoWhenTheDatabaseDoesNotLetItIn(@TempDir Path folder) throws Exception {
    String url = server.address(schema).url();
    Path wrong = Files.writeString(folder.resolve("wrong"), "not it");
    Files.setPosixFilePermissions(wrong, PosixFilePermissions.fromString("rw-------"));
    assertThatThrownBy(() -> PostgresJournal.open(new PostgresAddress(url, "sunup", wrong)))
        .hasMessageContaining("does not let the board in")
        .hasMessageContaining("password file");
    Files.setPosixFilePermissions(wrong, PosixFilePermissions.fromString("rw-r--r--"));
    assertThatThrownBy(() -> PostgresJournal.open(new PostgresAddress(url, "sunup", wrong)))
        .hasMessageContaining("chmod 600");
    for (String bad : List.of(url + "&password=secret", url + "&sslpassword=secret")) {
      assertThatThrownBy(() -> PostgresJournal.open(new PostgresAddress(bad, "sunup", null)))
          .hasMessageContaining("holds a password");
    }
    assertThatThrownBy(() -> PostgresJournal.open(new PostgresAddress("db.example", "x", null)))
        .hasMessageContaining("looks like jdbc:postgresql://");
  }

  @Test
  void shouldKeepLettersOfEveryLanguageInARefusal() {
    Head head = takeOver(MONDAY);
    Receipt.Refusal words =
        new Receipt.Refusal(
            sunup.board.RefusalCode.BAD_COMMAND, "Zurück: naïve 手術 🙂", "desk at é", 1);
    Receipt refused = new Receipt(new sunup.board.CommandId("r"), bytes("h"), 0, 0, words);
    append(new Append(MONDAY, head.epoch(), 0, head.chain(), List.of(), refused, List.of()));
    assertThat(load(MONDAY).receipts()).containsExactly(refused);
  }
}
