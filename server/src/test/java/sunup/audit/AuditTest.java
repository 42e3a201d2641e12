package sunup.audit;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.sql.Connection;
import java.sql.PreparedStatement;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;
import sunup.board.MorningId;
import sunup.journal.Bytes;
import sunup.journal.Chain;
import sunup.journal.EventCodec;
import sunup.journal.Journal;
import sunup.journal.Kept;
import sunup.journal.Snapshot;
import sunup.journal.Stored;

/** Who can write to the store changes it; the audit says what, where and since when. */
class AuditTest {
  private static final Instant MORNING = Instant.parse("2026-11-25T06:10:00Z");
  private static final MorningId DESK = Kept.golden("desk");
  private static final String OF_DESK = " WHERE suite = 'desk'";

  @TempDir Path folder;
  private Kept.Store store;
  private Path key;
  private Path heads;

  private void begin(Kept kind) throws Exception {
    store = kind.make(folder.resolve("data"));
    try (Journal journal = store.open()) {
      for (String name : List.of("desk", "trouble")) {
        Kept.write(journal, name, new EventCodec(AuditTest::random), Long.MAX_VALUE);
      }
    }
    key = folder.resolve("signing.pem");
    SigningKeys.make(key);
    heads = folder.resolve("elsewhere.heads");
    assertThat(sign().findings()).isEmpty();
  }

  private static byte[] random(int count) {
    byte[] bytes = new byte[count];
    java.util.concurrent.ThreadLocalRandom.current().nextBytes(bytes);
    return bytes;
  }

  private Signer.Done sign() throws Exception {
    try (Snapshot open = Snapshot.of(store.place())) {
      return new Signer(signed(), SigningKeys.readPrivate(key)).sign(open, MORNING);
    }
  }

  private SignedHeads signed() throws Exception {
    return SignedHeads.read(heads, SigningKeys.readPublic(SigningKeys.publicFile(key)));
  }

  private List<String> plain() throws Exception {
    try (Snapshot open = Snapshot.of(store.place())) {
      return Audit.of(open, null, 0).findings();
    }
  }

  private List<String> compared() throws Exception {
    try (Snapshot open = Snapshot.of(store.place())) {
      return Audit.of(open, signed(), 0).findings();
    }
  }

  private Stored desk() throws Exception {
    try (Snapshot open = Snapshot.of(store.place())) {
      return open.load(DESK);
    }
  }

  /** Writes events and a head that fit each other, as somebody would who knows how chains go. */
  private void forge(List<Bytes> events) throws Exception {
    Bytes chain = Chain.START;
    store.sql("DELETE FROM event" + OF_DESK);
    try (Connection c = store.connect()) {
      try (PreparedStatement s =
          c.prepareStatement("INSERT INTO event VALUES ('desk', '2026-11-25', ?, 1, ?)")) {
        for (int i = 0; i < events.size(); i++) {
          chain = Chain.next(chain, events.get(i));
          s.setLong(1, i + 1);
          s.setBytes(2, events.get(i).raw());
          s.executeUpdate();
        }
      }
      try (PreparedStatement s =
          c.prepareStatement("UPDATE head SET seq = ?, chain = ?" + OF_DESK)) {
        s.setLong(1, events.size());
        s.setBytes(2, chain.raw());
        s.executeUpdate();
      }
    }
    store.sql("DELETE FROM receipt" + OF_DESK + " AND to_seq > " + events.size());
  }

  private List<Bytes> events() throws Exception {
    return new ArrayList<>(desk().events().stream().map(Stored.Event::bytes).toList());
  }

  @ParameterizedTest
  @EnumSource
  void shouldFindNothingWhenNothingWasDone(Kept kind) throws Exception {
    begin(kind);
    assertThat(plain()).isEmpty();
    assertThat(compared()).isEmpty();
    assertThat(sign().signed()).isZero();
    assertThat(signed().moments()).hasSize(2);
    try (Snapshot open = Snapshot.of(store.place())) {
      assertThat(Audit.of(open, null, 0).refused())
          .hasSize(2)
          .allMatch(words -> words.contains("desk k1 at desk-1: changed-meanwhile"));
    }
  }

  @ParameterizedTest
  @EnumSource
  void shouldShowWithoutAnyKeyWhatDoesNotFitTheChain(Kept kind) throws Exception {
    begin(kind);
    store.sql("DELETE FROM event" + OF_DESK + " AND seq = 3");
    assertThat(plain()).anyMatch(words -> words.contains("event 4 follows event 2"));
    assertThat(plain()).allMatch(words -> words.startsWith("desk/2026-11-25: "));
  }

  @ParameterizedTest
  @EnumSource
  void shouldShowAnAlteredEventThoughTheChainWasMadeToFit(Kept kind) throws Exception {
    begin(kind);
    List<Bytes> events = events();
    String third = new String(events.get(2).raw(), StandardCharsets.UTF_8);
    String other = third.replaceFirst("\"happenedAt\":(\\d)", "\"happenedAt\":2");
    assertThat(other).isNotEqualTo(third);
    events.set(2, Bytes.of(other.getBytes(StandardCharsets.UTF_8)));
    forge(events);
    assertThat(plain()).isEmpty();
    assertThat(compared())
        .singleElement()
        .asString()
        .contains("altered between the beginning and event " + events.size());
    // The one who signs does not put a signature under it either.
    assertThat(sign().findings()).singleElement().asString().contains("altered");
    assertThat(compared()).isNotEmpty();
  }

  @ParameterizedTest
  @EnumSource
  void shouldShowACutTailThoughTheHeadWasMadeToFit(Kept kind) throws Exception {
    begin(kind);
    List<Bytes> events = events();
    int end = events.size();
    forge(events.subList(0, end - 2));
    assertThat(plain()).isEmpty();
    assertThat(compared())
        .anyMatch(words -> words.contains("its end was cut off: it stood at event " + end))
        .anyMatch(words -> words.contains("signed at 2026-11-25T06:10:00Z"))
        .anyMatch(words -> words.contains("answers were removed"));
  }

  @ParameterizedTest
  @EnumSource
  void shouldShowAMorningThatIsGoneAndARefusalThatWasRemoved(Kept kind) throws Exception {
    begin(kind);
    store.sql("DELETE FROM receipt WHERE suite = 'trouble' AND refusal_code IS NOT NULL");
    for (String table : List.of("event", "receipt", "head")) {
      store.sql("DELETE FROM " + table + OF_DESK);
    }
    assertThat(plain()).isEmpty();
    assertThat(compared())
        .anyMatch(words -> words.startsWith("desk/2026-11-25: its end was cut off"))
        .anyMatch(words -> words.startsWith("trouble/2026-11-25: answers were removed"));
  }

  @Test
  void shouldShowLinesThatWereChangedTakenOutOrSignedByAnotherKey() throws Exception {
    begin(Kept.IN_A_FOLDER);
    sign();
    sign();
    List<String> lines = Files.readAllLines(heads);
    Files.write(heads, List.of(lines.get(0), lines.get(2)));
    assertThat(compared()).singleElement().asString().contains("lines are missing");
    Files.write(heads, List.of(lines.get(0).replace("\"seq\":", "\"seq\":1"), lines.get(1)));
    assertThat(compared())
        .anyMatch(words -> words.startsWith("line 1 ") && words.contains("not signed"));
    Files.delete(key);
    Files.delete(SigningKeys.publicFile(key));
    SigningKeys.make(key);
    Files.write(heads, lines);
    assertThat(compared()).hasSizeGreaterThanOrEqualTo(3);
  }

  @Test
  void shouldNotSignWithAKeyThatEverybodyCanRead() throws Exception {
    begin(Kept.IN_A_FOLDER);
    Files.setPosixFilePermissions(
        key, java.nio.file.attribute.PosixFilePermissions.fromString("rw-r--r--"));
    assertThatThrownBy(this::sign).hasMessageContaining("chmod 600");
  }
}
