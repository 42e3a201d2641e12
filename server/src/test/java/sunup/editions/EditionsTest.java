package sunup.editions;

import static java.util.concurrent.TimeUnit.SECONDS;
import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.concurrent.CompletableFuture;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;
import sunup.board.Actor;
import sunup.board.Role;
import sunup.board.SuiteId;
import sunup.journal.Backup;
import sunup.journal.Kept;
import sunup.journal.PostgresServer;
import sunup.sheets.Edition;
import sunup.sheets.SheetDraft;
import sunup.sheets.SheetEdit;

/** Editions of the sheets on a real store of both kinds. */
class EditionsTest {
  private static final SuiteId MAIN = new SuiteId("main");
  private static final SuiteId EAST = new SuiteId("east");
  private static final Actor DESK = new Actor(Role.DESK, null, "desk-main");

  @TempDir Path folder;

  private Editions open(Kept.Store store) throws Exception {
    return Editions.beside(
        store.folder(),
        store.kind() == Kept.IN_A_FOLDER ? null : PostgresServer.shared().address(store.schema()));
  }

  private static SheetDraft draft(Edition on, double usual) {
    Map<String, Object> hands = Map.of("hands", Map.of("usual", usual, "oneInTen", usual + 2));
    SheetEdit edit =
        new SheetEdit(SheetEdit.Does.CHANGE, "general", "airway.tubes", hands, null, null);
    return SheetDraft.of(on, List.of(edit), n -> n == 0 ? Edition.standard().files() : null);
  }

  private static int publish(Editions to, String id, double usual) throws Exception {
    return to.publish(MAIN, id, draft(to.current(MAIN), usual), "said", DESK, 1_000);
  }

  @ParameterizedTest
  @EnumSource(Kept.class)
  void shouldKeepWhatWasPublishedForTheSuiteThatPublishedIt(Kept kind) throws Exception {
    Kept.Store store = kind.make(folder);
    try (Editions editions = open(store)) {
      assertThat(editions.current(MAIN).number()).isZero();
      assertThat(editions.list(MAIN)).isEmpty();
      assertThat(publish(editions, "draft-aaa", 3)).isEqualTo(1);
      assertThat(publish(editions, "draft-bbb", 4)).isEqualTo(2);
      // Sent again, not having heard the answer: no second edition.
      assertThat(publish(editions, "draft-aaa", 5)).isEqualTo(1);
      assertThat(editions.publishedAs(MAIN, "draft-bbb")).isEqualTo(2);
      assertThat(editions.publishedAs(MAIN, "draft-ccc")).isZero();
    }

    try (Editions again = open(store)) {
      Edition now = again.current(MAIN);
      assertThat(now.number()).isEqualTo(2);
      assertThat(now.sheets().compose("general", List.of()).from())
          .containsExactly("edition:2", "general 4");
      assertThat(again.of(MAIN, 1).files()).isNotEqualTo(now.files());
      assertThat(again.of(MAIN, 3)).isNull();
      assertThat(again.current(EAST).number()).isZero();
      assertThat(again.list(MAIN)).extracting(Published::edition).containsExactly(2, 1);
      Published first = again.list(MAIN).get(1);
      assertThat(first.changes())
          .containsExactly("general, airway.tubes: hands 2 (3.5), now 3 (5)");
      assertThat(first.role()).isEqualTo("desk");
      assertThat(first.screen()).isEqualTo("desk-main");
      assertThat(first.note()).isEqualTo("said");
      assertThat(first.at()).isEqualTo(1_000);
    }
  }

  @ParameterizedTest
  @EnumSource(Kept.class)
  void shouldTakeOneOfTwoThatArePublishedAtOnceAndTellTheOther(Kept kind) throws Exception {
    Kept.Store store = kind.make(folder);
    // A folder is one node's; two nodes share a PostgreSQL.
    try (Editions one = open(store);
        Editions other = kind == Kept.IN_A_FOLDER ? one : open(store)) {
      SheetDraft mine = draft(one.current(MAIN), 3);
      SheetDraft theirs = draft(other.current(MAIN), 5);
      CompletableFuture<String> first = publishing(one, "draft-aaa", mine);
      CompletableFuture<String> second = publishing(other, "draft-bbb", theirs);

      assertThat(List.of(first.get(20, SECONDS), second.get(20, SECONDS)))
          .containsExactlyInAnyOrder("edition 1", "overtaken by 1");
      assertThat(one.current(MAIN).files()).isEqualTo(other.current(MAIN).files());
      assertThat(other.list(MAIN)).hasSize(1);
    }
  }

  private static CompletableFuture<String> publishing(Editions to, String id, SheetDraft draft) {
    return CompletableFuture.supplyAsync(
        () -> {
          try {
            return "edition " + to.publish(MAIN, id, draft, null, DESK, 2_000);
          } catch (Overtaken e) {
            return "overtaken by " + e.now();
          } catch (IOException e) {
            throw new UncheckedIOException(e);
          }
        });
  }

  @Test
  void shouldComeBackWithABackup() throws Exception {
    Kept.Store store = Kept.IN_A_FOLDER.make(folder.resolve("old"));
    store.open().close();
    try (Editions editions = open(store)) {
      publish(editions, "draft-aaa", 3);
    }
    Path copy = folder.resolve("copy.zip");
    Backup.write(store.place(), copy, Map.of(), true);

    Kept.Store restored = Kept.IN_A_FOLDER.make(folder.resolve("new"));
    Backup.restore(copy, restored.place(), 2_000, Backup.Look.NONE);

    try (Editions editions = open(restored)) {
      assertThat(editions.current(MAIN).number()).isEqualTo(1);
    }
  }

  @Test
  void shouldCostAFolderNothingUntilSomethingIsPublished() throws IOException {
    try (Editions editions = Editions.beside(folder, null)) {
      editions.current(MAIN);
      editions.list(MAIN);
    }
    try (Stream<Path> files = Files.list(folder)) {
      assertThat(files).isEmpty();
    }
  }

  @Test
  void shouldSayWhyAnEditionCanNotBeUsedInsteadOfUsingIt() {
    Map<String, String> files = new HashMap<>(Edition.standard().files());
    files.put("general.json", files.get("general.json").replace("machine.bag", "machine.sack"));

    Edition broken = Edition.of(4, files);

    assertThat(broken.sheets()).isNull();
    assertThat(broken.problems().toString()).contains("may never be left out");
  }
}
