package sunup.journal;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.sql.Connection;
import java.sql.DriverManager;
import java.sql.Statement;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.CompletableFuture;
import java.util.stream.Stream;
import sunup.board.CommandId;
import sunup.board.MorningId;
import sunup.board.Recorded;
import sunup.codec.Json;

/** A real store of a test: a data folder, or a schema of a PostgreSQL with its syncs on. */
public enum Kept {
  IN_A_FOLDER,
  IN_POSTGRESQL;

  private static final Path GOLDEN = Path.of("../shared-model/src/test/resources/golden");

  /** One of them, empty. */
  public record Store(Kept kind, Path folder, String schema) {
    public Journal open() throws Exception {
      return kind == IN_A_FOLDER
          ? SqliteJournal.open(folder)
          : PostgresJournal.open(PostgresServer.shared().address(schema));
    }

    public JournalPlace place() throws Exception {
      return kind == IN_A_FOLDER
          ? JournalPlace.folder(folder)
          : JournalPlace.database(PostgresServer.shared().address(schema));
    }

    /** As somebody who can write to the store would, past the journal. */
    public void sql(String text) throws Exception {
      try (Connection c = connect();
          Statement s = c.createStatement()) {
        s.execute(text);
      }
    }

    public Connection connect() throws Exception {
      return kind == IN_A_FOLDER
          ? DriverManager.getConnection("jdbc:sqlite:" + folder.resolve(SqliteJournal.FILE))
          : PostgresServer.shared().connect(schema);
    }
  }

  public Store make(Path folder) throws Exception {
    return new Store(this, folder, this == IN_A_FOLDER ? "" : PostgresServer.shared().schema());
  }

  /** The mornings that old journals were kept of, by name. */
  public static List<String> goldenNames() throws IOException {
    try (Stream<Path> files = Files.list(GOLDEN)) {
      return files
          .map(file -> file.getFileName().toString())
          .filter(name -> name.endsWith(".journal"))
          .map(name -> name.replace(".journal", ""))
          .sorted()
          .toList();
    }
  }

  public static MorningId golden(String name) {
    return MorningId.parse(name + "/2026-11-25");
  }

  /**
   * Writes a whole morning into a journal, an event a command, and one refusal at its end.
   *
   * @param eraseAfter of its private values
   */
  public static Head write(Journal journal, String name, EventCodec codec, long eraseAfter)
      throws Exception {
    MorningId morning = golden(name);
    TakenOver taken = Waiting.answer(then -> journal.takeOver(morning, null, then));
    Head head = ((TakenOver.Won) taken).head();
    List<CompletableFuture<Appended>> done = new ArrayList<>();
    int n = 0;
    for (String line : Files.readAllLines(GOLDEN.resolve(name + ".journal"))) {
      EventCodec.Encoded event = codec.encode(Json.read(line, Recorded.class), eraseAfter);
      head = append(journal, morning, head, name + n++, event, null, done);
    }
    Receipt.Refusal no =
        new Receipt.Refusal(
            sunup.board.RefusalCode.CHANGED_MEANWHILE, "Zurück: 手術", "desk k1 at desk-1", 5);
    head = append(journal, morning, head, name + "-refused", null, no, done);
    for (CompletableFuture<Appended> each : done) {
      if (!Waiting.get(each).equals(new Appended.Durable())) {
        throw new AssertionError("not durable: " + each);
      }
    }
    return head;
  }

  private static Head append(
      Journal journal,
      MorningId morning,
      Head head,
      String id,
      EventCodec.Encoded event,
      Receipt.Refusal refusal,
      List<CompletableFuture<Appended>> done) {
    Head after = event == null ? head : head.after(event.bytes());
    Receipt receipt =
        new Receipt(
            new CommandId(id),
            Bytes.of(id.getBytes(java.nio.charset.StandardCharsets.UTF_8)),
            head.seq(),
            after.seq(),
            refusal);
    List<Bytes> events = new ArrayList<>();
    if (event != null) {
      events.add(event.bytes());
    }
    Append append =
        new Append(
            morning,
            head.epoch(),
            head.seq(),
            after.chain(),
            events,
            receipt,
            event == null ? List.of() : event.privates());
    CompletableFuture<Appended> told = new CompletableFuture<>();
    done.add(told);
    journal.append(append, told::complete);
    return after;
  }
}
