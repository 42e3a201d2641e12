package sunup.access;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.attribute.PosixFilePermissions;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.concurrent.ExecutionException;
import java.util.concurrent.TimeUnit;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;
import sunup.access.Known.PairedScreen;
import sunup.board.Role;
import sunup.board.RoomId;
import sunup.board.SuiteId;
import sunup.journal.Backup;
import sunup.journal.Kept;
import sunup.journal.PostgresServer;
import sunup.journal.SideDatabase;
import sunup.live.fake.TickingClock;
import sunup.push.Pushes;
import sunup.wire.AccessAsk;

/** Screens and people in a backup, put back into both kinds of store; and their pepper. */
class AccessBackupTest {
  private static final SuiteId SUITE = new SuiteId("main");
  private static final String PIN = "480915";

  @TempDir Path folder;
  private final TickingClock clock = new TickingClock();

  private Access open(Kept.Store store, Path pepper, boolean lost) throws Exception {
    return open(store, pepper, lost, SUITE);
  }

  private Access open(Kept.Store store, Path pepper, boolean lost, SuiteId... of) throws Exception {
    SideDatabase database =
        store.kind() == Kept.IN_A_FOLDER
            ? SideDatabase.sqlite(store.folder(), "access")
            : SideDatabase.postgres(PostgresServer.shared().address(store.schema()), "access");
    Map<SuiteId, Set<RoomId>> suites = new LinkedHashMap<>();
    for (SuiteId one : of) {
      suites.put(one, Set.of(new RoomId("4")));
    }
    return Access.open(database, pepper, true, lost, null, clock, suites, Pushes.NONE);
  }

  private static <T> T done(java.util.concurrent.Future<T> future) throws Exception {
    return future.get(30, TimeUnit.SECONDS);
  }

  /** An administrator at a desk, signed on; another screen that shows a code. */
  private static void use(Access access) throws Exception {
    done(access.claim("desks-key", access.firstLink().orElseThrow(), "K1", PIN, SUITE));
    done(access.asks("walls-key", "127.0.0.1", "wall"));
  }

  private static PairedScreen desk(Access access) {
    return access.ledger().known().screenOf("desks-key").orElseThrow();
  }

  private static boolean right(Access access, String pin) throws Exception {
    try {
      done(access.checkPin(desk(access), "K1", pin));
      return true;
    } catch (ExecutionException refused) {
      assertThat(refused).hasCauseInstanceOf(Refusal.class);
      return false;
    }
  }

  @ParameterizedTest
  @EnumSource
  void shouldBringBackScreensAndPeopleButNobodySignedOn(Kept kind) throws Exception {
    Kept.Store store = kind.make(folder.resolve("data"));
    store.open().close();
    Path pepper = folder.resolve("pepper");
    Path backup = folder.resolve("all.backup");
    Known was;
    String pass;
    String session;
    try (Access access = open(store, pepper, false)) {
      use(access);
      was = access.ledger().known();
      pass = access.passes().made("desks-key", clock.realMs());
      session = was.sessions().keySet().iterator().next();
      // The board runs on meanwhile.
      assertThat(Backup.write(store.place(), backup, Map.of(), true))
          .containsEntry("access_person", 1L)
          .containsEntry("access_screen", 1L);
      // One that may be kept does not tell who was signed on.
      assertThat(Backup.write(store.place(), folder.resolve("kept"), Map.of(), false))
          .containsEntry("access_person", 1L)
          .containsEntry("access_sign_on", 0L);
    }
    for (Kept other : Kept.values()) {
      Kept.Store target = other.make(folder.resolve("to-" + other));
      Backup.restore(backup, target.place(), clock.realMs(), Backup.Look.NONE);
      try (Access access = open(target, pepper, false)) {
        Known is = access.ledger().known();
        assertThat(is.screens()).isEqualTo(was.screens());
        assertThat(is.keys()).isEqualTo(was.keys());
        assertThat(is.people()).isEqualTo(was.people());
        assertThat(access.firstLink()).isEmpty();
        assertThat(is.signedAt(desk(access).id(), clock.realMs())).isEmpty();
        // A touch from before that still waits at the desk keeps its person.
        assertThat(is.sessions().get(session).endedAt()).isNotNull();
        assertThat(access.asker(pass)).isEmpty();
        assertThat(right(access, PIN)).isTrue();
        assertThat(right(access, "480916")).isFalse();
      }
    }
  }

  @Test
  void shouldSayAtItsStartThatThePepperIsAnother() throws Exception {
    Kept.Store store = Kept.IN_A_FOLDER.make(folder.resolve("data"));
    store.open().close();
    Path pepper = folder.resolve("pepper");
    try (Access access = open(store, pepper, false)) {
      use(access);
    }
    assertThat(PosixFilePermissions.toString(Files.getPosixFilePermissions(pepper)))
        .isEqualTo("rw-------");
    Path none = folder.resolve("none");
    Path other = Files.write(folder.resolve("other"), new byte[Pepper.BYTES]);
    Files.setPosixFilePermissions(other, PosixFilePermissions.fromString("rw-------"));

    for (Path wrong : new Path[] {none, other}) {
      assertThatThrownBy(() -> open(store, wrong, false))
          .isInstanceOf(IOException.class)
          .hasMessageContaining("put the one back")
          .hasMessageContaining("--pepper-lost");
    }
    assertThat(none).doesNotExist();
    try (Access access = open(store, pepper, true)) {
      // It was not lost after all.
      assertThat(access.firstLink()).isEmpty();
      assertThat(right(access, PIN)).isTrue();
    }
  }

  @Test
  void shouldGiveUpAllPinsAndNothingElseWhenThePepperIsLost() throws Exception {
    Kept.Store store = Kept.IN_A_FOLDER.make(folder.resolve("data"));
    store.open().close();
    try (Access access = open(store, folder.resolve("pepper"), false)) {
      use(access);
    }
    Path next = folder.resolve("next");

    open(store, next, true).close();

    try (Access access = open(store, next, false)) {
      assertThat(right(access, PIN)).isFalse();
      assertThat(access.ledger().known().people().get("K1").may(SUITE, Role.ADMIN)).isTrue();
      // The link comes at each start until an administrator has a PIN.
      done(access.claim("new-key", access.firstLink().orElseThrow(), "K1", "739164", SUITE));
      assertThat(right(access, "739164")).isTrue();
    }
    try (Access access = open(store, next, false)) {
      assertThat(access.firstLink()).isEmpty();
    }
  }

  /** The first administrator's roles count in all suites only until one of them is changed. */
  @Test
  void shouldGiveASuiteThatIsAddedLaterAnAdministratorByTheConsole() throws Exception {
    SuiteId east = new SuiteId("east");
    Kept.Store store = Kept.IN_A_FOLDER.make(folder.resolve("data"));
    store.open().close();
    Path pepper = folder.resolve("pepper");
    try (Access access = open(store, pepper, false)) {
      use(access);
      List<Role> more = List.of(Role.ADMIN, Role.DESK, Role.CIRCULATING);
      done(access.managing().ask(desk(access), new AccessAsk.SetPerson("K1", null, more)));
      done(access.managing().ask(desk(access), new AccessAsk.SetPerson("B2", "739164", more)));
    }

    try (Access access = open(store, pepper, false, SUITE, east)) {
      assertThat(access.unadministered()).containsExactly(east);
      String link = access.firstLink().orElseThrow();
      assertThatThrownBy(() -> done(access.claim("new-key", link, "B2", "602581", SUITE)))
          .hasMessageContaining("Somebody has this code");
      done(access.claim("new-key", link, "K1", PIN, SUITE));

      assertThat(access.ledger().known().screenOf("new-key").orElseThrow().suite()).isEqualTo(east);
      Known.Person person = access.ledger().known().people().get("K1");
      assertThat(person.may(east, Role.ADMIN)).isTrue();
      assertThat(person.may(east, Role.CIRCULATING)).isFalse();
      assertThat(person.may(SUITE, Role.CIRCULATING)).isTrue();
      assertThat(right(access, PIN)).isTrue();
    }
    try (Access access = open(store, pepper, false, SUITE, east)) {
      assertThat(access.firstLink()).isEmpty();
    }
  }
}
