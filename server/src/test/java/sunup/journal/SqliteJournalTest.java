package sunup.journal;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.sql.Connection;
import java.sql.DriverManager;
import java.sql.Statement;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.CompletableFuture;
import java.util.concurrent.CountDownLatch;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class SqliteJournalTest extends JournalContract {
  @TempDir Path folder;

  @Override
  protected Journal open() throws IOException {
    return SqliteJournal.open(folder.resolve("data"));
  }

  @Test
  void shouldRefuseAFolderThatIsInUse() {
    assertThatThrownBy(this::open)
        .isInstanceOf(IOException.class)
        .hasMessageContaining("is in use by process " + ProcessHandle.current().pid())
        .hasMessageContaining("Stop that one");
    assertThat(load(MONDAY).events()).isEmpty();
  }

  @Test
  void shouldRefuseAJournalOfANewerSunup() throws Exception {
    journal.close();
    sql(
        "INSERT INTO schema_history VALUES"
            + " (99, '99', 'later', 'SQL', 'V99__later.sql', 0, 'x',"
            + " '2026-11-25 00:00:00.000', 0, 1)");
    assertThatThrownBy(this::open).hasMessageContaining("schema 99").hasMessageContaining("newer");
    sql("DELETE FROM schema_history WHERE version = '99'");
    journal = open();
  }

  /** The tables as the first Sunup made them, before there were migrations. */
  @Test
  void shouldReadAndContinueAFileFromBeforeThereWereMigrations() throws Exception {
    Head head = takeOver(MONDAY);
    Append before = command(MONDAY, head, "a", "one", "two");
    append(before);
    journal.close();
    sql("DROP TABLE schema_history");
    sql("ALTER TABLE receipt DROP COLUMN refused_by");
    sql("ALTER TABLE receipt DROP COLUMN refused_at");
    sql("CREATE TABLE schema_version (version INTEGER NOT NULL)");
    sql("INSERT INTO schema_version (version) VALUES (1)");
    journal = open();
    assertThat(load(MONDAY).events()).hasSize(2);
    assertThat(takeOver(MONDAY)).isEqualTo(new Head(2, 2, before.chain()));
    Append more = command(MONDAY, new Head(2, 2, before.chain()), "b", "three");
    assertThat(append(more)).isEqualTo(new Appended.Durable());
    journal.close();
    journal = open();
    assertThat(JournalCheck.check(load(MONDAY)).problems()).isEmpty();
  }

  @Test
  void shouldWriteNothingAndSaySoWhenTheDiskIsFull() throws Exception {
    journal.close();
    journal = SqliteJournal.open(folder.resolve("small"), 40, Moments.NOBODY);
    Head head = takeOver(MONDAY);
    int durable = 0;
    Appended outcome = new Appended.Durable();
    String large = "x".repeat(20_000);
    while (outcome instanceof Appended.Durable && durable < 100) {
      Append append = command(MONDAY, head, "c" + durable, large + durable);
      outcome = append(append);
      if (outcome instanceof Appended.Durable) {
        head = after(append);
        durable++;
      }
    }
    assertThat(durable).isBetween(1, 40);
    assertThat(outcome).isInstanceOf(Appended.NotWritten.class);
    assertThat(((Appended.NotWritten) outcome).words()).contains("disk is full");
    Stored stored = load(MONDAY);
    assertThat(stored.events()).hasSize(durable);
    assertThat(stored.receipts()).hasSize(durable);
    assertThat(JournalCheck.check(stored).problems()).isEmpty();
    Append small = command(MONDAY, head, "small", "fits");
    assertThat(append(small)).isEqualTo(new Appended.Durable());
  }

  @Test
  void shouldAnswerAtOnceWhenMoreWaitsThanItTakes() throws Exception {
    journal.close();
    CountDownLatch standing = new CountDownLatch(1);
    CountDownLatch goOn = new CountDownLatch(1);
    Moments stand =
        moment -> {
          if (moment == Moments.Moment.BEFORE_APPEND) {
            standing.countDown();
            await(goOn);
          }
        };
    journal = SqliteJournal.open(folder.resolve("slow"), SqliteDialect.MAX_PAGES, stand);
    Head head = takeOver(MONDAY);
    List<CompletableFuture<Appended>> answers = new ArrayList<>();
    for (int n = 0; n <= JdbcJournal.QUEUE_LIMIT + JdbcJournal.GROUP_LIMIT; n++) {
      if (n == 1) {
        await(standing);
      }
      Append append = command(MONDAY, head, "c" + n, "word " + n);
      head = after(append);
      CompletableFuture<Appended> told = new CompletableFuture<>();
      answers.add(told);
      journal.append(append, told::complete);
    }
    CompletableFuture<Appended> last = answers.get(answers.size() - 1);
    assertThat(last).isCompleted();
    assertThat(last.join()).isInstanceOf(Appended.NotWritten.class);
    assertThat(answers.get(1)).isNotCompleted();
    goOn.countDown();
    long durable =
        answers.stream().map(Waiting::get).filter(a -> a instanceof Appended.Durable).count();
    assertThat(load(MONDAY).events()).hasSize((int) durable);
    assertThat(durable).isEqualTo(JdbcJournal.QUEUE_LIMIT + 1);
  }

  private static void await(CountDownLatch latch) {
    try {
      latch.await();
    } catch (InterruptedException e) {
      throw new AssertionError(e);
    }
  }

  @Test
  void shouldLeaveNoCopyOfAnErasedValueInItsFiles() throws Exception {
    String secret = "zebra-crossing-value";
    Head head = takeOver(MONDAY);
    Append plain = command(MONDAY, head, "a", "one");
    PrivateValue value = new PrivateValue("r1", bytes("k"), bytes(secret), 1_000);
    append(
        new Append(MONDAY, 1, 0, plain.chain(), plain.events(), plain.receipt(), List.of(value)));
    assertThat(filesWith(secret)).isNotEmpty();
    Waiting.<Answer<java.util.Set<sunup.board.MorningId>>>answer(t -> journal.erase(1_000, t));
    assertThat(filesWith(secret)).isEmpty();
  }

  @Test
  void shouldCutTheLogAtTheNextErasingWhenABackupWasReadingAtTheFirst() throws Exception {
    String secret = "zebra-crossing-value";
    Head head = takeOver(MONDAY);
    Append plain = command(MONDAY, head, "a", "one");
    PrivateValue value = new PrivateValue("r1", bytes("k"), bytes(secret), 1_000);
    append(
        new Append(MONDAY, 1, 0, plain.chain(), plain.events(), plain.receipt(), List.of(value)));
    try (Snapshot reading = Snapshot.of(JournalPlace.folder(folder.resolve("data")))) {
      Waiting.<Answer<java.util.Set<sunup.board.MorningId>>>answer(t -> journal.erase(1_000, t));
      assertThat(filesWith(secret)).isNotEmpty();
      assertThat(reading.load(MONDAY).privates()).hasSize(1);
    }
    Waiting.<Answer<java.util.Set<sunup.board.MorningId>>>answer(t -> journal.erase(1_000, t));
    assertThat(filesWith(secret)).isEmpty();
  }

  private List<Path> filesWith(String text) throws IOException {
    List<Path> found = new ArrayList<>();
    try (var files = Files.list(folder.resolve("data"))) {
      for (Path file : files.toList()) {
        String content = Files.readString(file, StandardCharsets.ISO_8859_1);
        if (content.contains(text)) {
          found.add(file);
        }
      }
    }
    return found;
  }

  @Test
  void shouldShowAChangedByteInTheChain() throws Exception {
    Head head = takeOver(MONDAY);
    append(command(MONDAY, head, "a", "one", "two"));
    journal.close();
    sql("UPDATE event SET bytes = x'6f6e66' WHERE seq = 1");
    journal = open();
    assertThat(JournalCheck.check(load(MONDAY)).problems())
        .singleElement()
        .asString()
        .contains("the chain over the events is");
  }

  private void sql(String text) throws Exception {
    Path file = folder.resolve("data").resolve(SqliteJournal.FILE);
    try (Connection c = DriverManager.getConnection("jdbc:sqlite:" + file);
        Statement s = c.createStatement()) {
      s.executeUpdate(text);
    }
  }
}
