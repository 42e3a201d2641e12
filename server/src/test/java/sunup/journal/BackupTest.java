package sunup.journal;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.attribute.PosixFilePermissions;
import java.util.Map;
import java.util.concurrent.CountDownLatch;
import java.util.concurrent.atomic.AtomicBoolean;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;
import sunup.audit.Audit;
import sunup.board.MorningId;

/** A backup of a journal that is written to, put back into both kinds of store. */
class BackupTest {
  private static final long NOW = 5_000;
  private static final MorningId BUSY = MorningId.parse("busy/2026-11-25");

  @TempDir Path folder;
  private int drawn;

  private final EventCodec codec =
      new EventCodec(
          count -> {
            byte[] bytes = new byte[count];
            drawn++;
            bytes[0] = (byte) drawn;
            bytes[1] = (byte) (drawn >> 8);
            return bytes;
          });

  private static Audit.Report audit(JournalPlace place) throws Exception {
    try (Snapshot open = Snapshot.of(place)) {
      return Audit.of(open, null, NOW);
    }
  }

  private static Map<String, byte[]> site() {
    return Map.of("site.json", "{}".getBytes(StandardCharsets.UTF_8));
  }

  @ParameterizedTest
  @EnumSource
  void shouldReplayTheSameInBothStoresWhenTheBoardWroteOnDuringTheBackup(Kept kind)
      throws Exception {
    Kept.Store store = kind.make(folder.resolve("data"));
    Path backup = folder.resolve("all.backup");
    try (Journal journal = store.open()) {
      for (String name : Kept.goldenNames()) {
        Kept.write(journal, name, codec, NOW + 1);
      }
      AtomicBoolean enough = new AtomicBoolean();
      CountDownLatch underWay = new CountDownLatch(50);
      Thread writer = new Thread(() -> writeOn(journal, enough, underWay));
      writer.start();
      underWay.await();
      Backup.write(store.place(), backup, site(), true);
      enough.set(true);
      writer.join();
      checkThatItIsWhatWas(journal, backup);
    }
    for (Kept other : Kept.values()) {
      Kept.Store target = other.make(folder.resolve("to-" + other));
      Backup.restore(backup, target.place(), NOW, Backup.Look.NONE);
      Audit.Report was = audit(JournalPlace.file(backup));
      assertThat(audit(target.place())).isEqualTo(was);
      assertThat(was.findings()).isEmpty();
      assertThatThrownBy(() -> Backup.restore(backup, target.place(), NOW, Backup.Look.NONE))
          .isInstanceOf(Backup.NotEmpty.class)
          .hasMessageContaining("not empty");
      // A board opens it and goes on.
      try (Journal goesOn = target.open()) {
        String name = Kept.goldenNames().get(0);
        TakenOver taken = Waiting.answer(then -> goesOn.takeOver(Kept.golden(name), null, then));
        assertThat(((TakenOver.Won) taken).head().epoch()).isEqualTo(2);
      }
    }
    assertThat(Backup.files(backup)).containsOnlyKeys("site.json");
  }

  private static void writeOn(Journal journal, AtomicBoolean enough, CountDownLatch underWay) {
    TakenOver taken = Waiting.answer(then -> journal.takeOver(BUSY, null, then));
    Head head = ((TakenOver.Won) taken).head();
    for (int n = 0; !enough.get(); n++) {
      Append append = JournalContract.command(BUSY, head, "b" + n, "{\"v\":1}");
      Appended done = Waiting.answer(then -> journal.append(append, then));
      assertThat(done).isEqualTo(new Appended.Durable());
      head = JournalContract.after(append);
      underWay.countDown();
    }
  }

  /** What stood is the same; what was written meanwhile is there up to one moment. */
  private static void checkThatItIsWhatWas(Journal journal, Path backup) throws Exception {
    try (Snapshot copy = Snapshot.of(JournalPlace.file(backup))) {
      for (String name : Kept.goldenNames()) {
        MorningId morning = Kept.golden(name);
        Answer<Stored> now = Waiting.answer(then -> journal.load(morning, then));
        Stored kept = copy.load(morning);
        assertThat(kept.events()).isEqualTo(Waiting.known(now).events());
        assertThat(kept.receipts())
            .containsExactlyInAnyOrderElementsOf(Waiting.known(now).receipts());
        assertThat(kept.privates()).isEqualTo(Waiting.known(now).privates());
      }
      Stored busy = copy.load(BUSY);
      assertThat(JournalCheck.check(busy).problems()).isEmpty();
      assertThat(busy.events()).hasSizeGreaterThanOrEqualTo(50);
      Answer<Stored> later = Waiting.answer(then -> journal.load(BUSY, then));
      assertThat(Waiting.known(later).events())
          .hasSizeGreaterThanOrEqualTo(busy.events().size())
          .startsWith(busy.events().toArray(Stored.Event[]::new));
    }
    // Of the busy one the events are no real ones: the figures below are without it.
    try (var c = java.sql.DriverManager.getConnection("jdbc:sqlite:" + backup);
        var s = c.createStatement()) {
      for (String table : new String[] {"head", "event", "receipt"}) {
        s.execute("DELETE FROM " + table + " WHERE suite = 'busy'");
      }
    }
  }

  @ParameterizedTest
  @EnumSource
  void shouldLeaveOutWhatIsDueAndOnRequestAllPrivateValues(Kept kind) throws Exception {
    Kept.Store store = kind.make(folder.resolve("data"));
    Path whole = folder.resolve("whole.backup");
    Path bare = folder.resolve("bare.backup");
    try (Journal journal = store.open()) {
      Kept.write(journal, "desk", codec, NOW);
      Kept.write(journal, "trouble", codec, NOW + 1);
    }
    assertThat(Backup.write(store.place(), whole, Map.of(), true).get("private")).isPositive();
    assertThat(Backup.write(store.place(), bare, Map.of(), false)).containsEntry("private", 0L);
    Kept.Store later = Kept.IN_A_FOLDER.make(folder.resolve("later"));
    Backup.restore(whole, later.place(), NOW, Backup.Look.NONE);
    try (Snapshot open = Snapshot.of(later.place())) {
      assertThat(open.load(Kept.golden("desk")).privates()).isEmpty();
      assertThat(open.load(Kept.golden("trouble")).privates()).isNotEmpty();
    }
    assertThat(audit(later.place())).isEqualTo(audit(JournalPlace.file(whole)));
    assertThat(audit(JournalPlace.file(bare)).heads()).isEqualTo(audit(store.place()).heads());
    assertThat(audit(JournalPlace.file(bare)).findings()).isEmpty();
  }

  @ParameterizedTest
  @EnumSource
  void shouldKeepTheTablesThatOtherPartsHaveBesideTheJournal(Kept kind) throws Exception {
    Kept.Store store = kind.make(folder.resolve("data"));
    store.open().close();
    Dialect beside = store.place().part("trial").dialect();
    Migrations.part(beside.migrating(), "trial", beside.scripts(), "latest");
    try (var c = beside.openWriting();
        var s = c.createStatement()) {
      s.execute("UPDATE trial_stamp SET n = 7");
      s.execute("INSERT INTO trial_screen VALUES (5, 'wall')");
      s.execute("INSERT INTO trial_key VALUES (1, 5)");
      c.commit();
    }
    Path backup = folder.resolve("parts.backup");
    Backup.write(store.place(), backup, Map.of(), true);
    for (Kept other : Kept.values()) {
      Kept.Store target = other.make(folder.resolve("parts-" + other));
      assertThat(Backup.restore(backup, target.place(), NOW, Backup.Look.NONE))
          .containsEntry("trial_screen", 1L)
          .containsEntry("trial_key", 1L);
      try (var c = target.place().part("trial").dialect().openReading();
          var row = c.createStatement().executeQuery("SELECT n FROM trial_stamp")) {
        row.next();
        assertThat(row.getInt(1)).isEqualTo(7);
      }
    }
  }

  /** As an upgrade of Sunup meets a backup from before it. */
  @Test
  void shouldBringABackupOfAnOlderSunupToItsOwnTablesInEitherStore() throws Exception {
    Path old = folder.resolve("old");
    Files.createDirectories(old);
    JournalPlace place = JournalPlace.folder(old);
    Migrations.run(place.dialect().migrating(), "sqlite", "1");
    Kept.Store now = Kept.IN_A_FOLDER.make(folder.resolve("now"));
    try (Journal journal = now.open()) {
      Kept.write(journal, "desk", codec, NOW + 1);
    }
    try (var c = place.dialect().openWriting();
        var s = c.createStatement()) {
      c.commit();
      c.setAutoCommit(true);
      s.execute("ATTACH '" + folder.resolve("now/journal.db") + "' AS now");
      for (String table : new String[] {"head", "event", "private"}) {
        s.execute("INSERT INTO " + table + " SELECT * FROM now." + table);
      }
      s.execute(
          "INSERT INTO receipt SELECT suite, morning, command_id, payload_hash, from_seq, to_seq,"
              + " refusal_code, refusal_words FROM now.receipt");
    }
    Path backup = folder.resolve("old.backup");
    Backup.write(place, backup, Map.of(), true);
    for (Kept kind : Kept.values()) {
      Kept.Store target = kind.make(folder.resolve("up-" + kind));
      Backup.restore(backup, target.place(), NOW, Backup.Look.NONE);
      Audit.Report is = audit(target.place());
      Audit.Report same = audit(now.place());
      assertThat(is.findings()).isEmpty();
      assertThat(is.heads()).isEqualTo(same.heads());
      assertThat(is.states()).isEqualTo(same.states());
      assertThat(is.refused()).singleElement().asString().contains("by somebody: changed-mean");
    }
  }

  @Test
  void shouldGiveABackupToItsOwnerAloneAndWriteOverNothing() throws Exception {
    Kept.Store store = Kept.IN_A_FOLDER.make(folder.resolve("data"));
    try (Journal journal = store.open()) {
      Kept.write(journal, "desk", codec, NOW);
    }
    Path backup = folder.resolve("a.backup");
    Backup.write(store.place(), backup, Map.of(), true);
    assertThat(PosixFilePermissions.toString(Files.getPosixFilePermissions(backup)))
        .isEqualTo("rw-------");
    byte[] before = Files.readAllBytes(backup);
    assertThatThrownBy(() -> Backup.write(store.place(), backup, Map.of(), true))
        .isInstanceOf(Backup.NotEmpty.class);
    assertThat(Files.readAllBytes(backup)).isEqualTo(before);
    Path text = Files.writeString(folder.resolve("notes.txt"), "no backup");
    assertThatThrownBy(
            () ->
                Backup.restore(text, Kept.IN_A_FOLDER.make(folder).place(), NOW, Backup.Look.NONE))
        .hasMessageContaining("notes.txt");
  }
}
