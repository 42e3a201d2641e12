package sunup.journal;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.security.KeyStore;
import java.security.cert.Certificate;
import java.util.Base64;
import java.util.concurrent.CompletableFuture;
import java.util.concurrent.TimeUnit;
import java.util.function.Predicate;
import javax.net.ssl.TrustManagerFactory;
import javax.net.ssl.X509TrustManager;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;
import sunup.board.Actor;
import sunup.board.Command;
import sunup.board.CommandId;
import sunup.board.MorningId;
import sunup.board.Private;
import sunup.board.Role;
import sunup.simulated.NoteTaking;
import sunup.simulated.SimulatedClock;
import sunup.simulated.SimulatedTime;
import sunup.suites.Clock;
import sunup.suites.Owner;
import sunup.suites.Reply;
import sunup.suites.Standpoint;
import sunup.suites.Submission;
import sunup.suites.Suites;

/** An owner on a real PostgreSQL that goes away, comes back, or whose line is cut in a commit. */
class PostgresTroubleTest {
  private static final MorningId MORNING = MorningId.parse("east/2026-11-30");
  private static final long LIMIT_S = 30;
  private static PostgresServer server;

  @BeforeAll
  static void begin() throws Exception {
    server = PostgresServer.begin();
  }

  @AfterAll
  static void end() {
    server.close();
  }

  private static Submission note(String id) {
    Actor desk = new Actor(Role.DESK, null, "desk-1");
    Command note = new Command.AddNote(null, Private.of("note " + id));
    return new Submission(new CommandId(id), note, desk, null, 0, 0);
  }

  private static Reply submit(Owner owner, String id) {
    return Waiting.answer(then -> owner.submit(note(id), then));
  }

  private static void until(Owner owner, Predicate<Standpoint> seen) throws Exception {
    CompletableFuture<Standpoint> found = new CompletableFuture<>();
    Runnable end =
        owner.watch(
            at -> {
              if (seen.test(at)) {
                found.complete(at);
              }
            });
    found.get(LIMIT_S, TimeUnit.SECONDS);
    end.run();
  }

  private static Clock clock() {
    return new RealMonotonic(new SimulatedClock(new SimulatedTime(), 0));
  }

  /** The morning stands still; what is silent for two seconds is so in real time. */
  private record RealMonotonic(Clock morning) implements Clock {
    @Override
    public long realMs() {
      return System.currentTimeMillis();
    }

    @Override
    public long monotonicMs() {
      return System.nanoTime() / 1_000_000;
    }

    @Override
    public long morningMs() {
      return morning.morningMs();
    }

    @Override
    public double rate() {
      return 1;
    }
  }

  @Test
  void shouldBeReadOnlyWhileTheDatabaseIsGoneAndGoOnWhenItIsBack() throws Exception {
    Journal journal = PostgresJournal.open(server.address(server.schema()));
    try (Suites suites = Suites.open(journal, new NoteTaking(), clock())) {
      Owner owner = suites.owner(MORNING);
      assertThat(submit(owner, "a")).isEqualTo(new Reply.Done(1));
      server.stop();
      until(owner, Standpoint::readOnly);
      assertThat(submit(owner, "b")).isInstanceOf(Reply.Later.class);
      server.start();
      until(owner, at -> !at.readOnly());
      assertThat(submit(owner, "b")).isEqualTo(new Reply.Done(2));
      assertThat(submit(owner, "a")).isEqualTo(new Reply.Done(1));
    }
  }

  @Test
  void shouldWaitForADatabaseThatIsStillStartingAndNotForOneThatSaysNo() throws Exception {
    PostgresAddress address = server.address(server.schema());
    server.stop();
    CompletableFuture<Journal> opening =
        CompletableFuture.supplyAsync(
            () -> {
              try {
                return PostgresJournal.open(address);
              } catch (IOException e) {
                throw new UncheckedIOException(e);
              }
            });
    server.start();
    opening.get(LIMIT_S, TimeUnit.SECONDS).close();
    PostgresAddress stranger = new PostgresAddress(address.url(), "nobody", address.passwordFile());
    long before = System.nanoTime();
    assertThatThrownBy(() -> PostgresJournal.open(stranger))
        .hasMessageContaining("let the board in");
    assertThat(System.nanoTime() - before)
        .isLessThan(TimeUnit.MILLISECONDS.toNanos(JournalOpening.TRIES_MS / 2));
  }

  @ParameterizedTest
  @EnumSource(mode = EnumSource.Mode.EXCLUDE, names = "NO")
  void shouldAnswerACommandOnceWhenTheLineIsCutInItsCommit(CutLine.Cut cut) throws Exception {
    String schema = server.schema();
    try (CutLine line = new CutLine(server.port())) {
      Moments cutting =
          moment -> {
            if (moment == Moments.Moment.BEFORE_COMMIT) {
              line.next(cut);
            }
          };
      PostgresAddress by = server.address("127.0.0.1:" + line.port(), schema);
      Journal journal = PostgresJournal.open(by, once(cutting));
      try (Suites suites = Suites.open(journal, new NoteTaking(), clock())) {
        assertThat(submit(suites.owner(MORNING), "a")).isEqualTo(new Reply.Done(1));
        assertThat(submit(suites.owner(MORNING), "a")).isEqualTo(new Reply.Done(1));
      }
    }
    try (Journal journal = PostgresJournal.open(server.address(schema))) {
      Stored stored = Waiting.known(Waiting.answer(then -> journal.load(MORNING, then)));
      assertThat(stored.events()).hasSize(1);
      assertThat(stored.head().epoch()).isGreaterThan(1);
      assertThat(JournalCheck.check(stored).problems()).isEmpty();
    }
  }

  /** Only the first commit is cut; what comes after it goes through. */
  private static Moments once(Moments what) {
    boolean[] done = new boolean[1];
    return moment -> {
      if (!done[0]) {
        what.reached(moment);
        done[0] = moment == Moments.Moment.BEFORE_COMMIT;
      }
    };
  }

  @Test
  void shouldSpeakOnlyToTheServerWhoseCertificateAndNameAreRight(@TempDir Path folder)
      throws Exception {
    Path right = certificate(folder, "right");
    Path other = strangersCertificate(folder);
    server.stop();
    server.useCertificate(key(folder, "right"), Files.readString(right));
    server.start();
    String tls = "&sslmode=verify-full&sslrootcert=";
    PostgresAddress named = server.address("localhost:" + server.port(), server.schema());
    PostgresAddress byNumber = server.address(server.schema());
    PostgresJournal.open(with(named, tls + right)).close();
    assertThatThrownBy(() -> PostgresJournal.open(with(named, tls + other)))
        .hasMessageContaining("can't be reached");
    assertThatThrownBy(() -> PostgresJournal.open(with(byNumber, tls + right)))
        .hasMessageContaining("127.0.0.1");
  }

  @Test
  void shouldCheckTheServersCertificateOfAnotherMachineUnlessToldOtherwise() throws Exception {
    PostgresAddress away = new PostgresAddress("jdbc:postgresql://db.example/sunup", "x", null);
    assertThat(away.properties()).containsEntry("sslmode", "verify-full");
    assertThat(with(away, "?sslmode=disable").properties()).containsEntry("sslmode", "disable");
    assertThat(server.address("any").properties()).doesNotContainKey("sslmode");
  }

  private static PostgresAddress with(PostgresAddress address, String more) {
    return new PostgresAddress(address.url() + more, address.user(), address.passwordFile());
  }

  /** A new key and its own certificate for the name localhost. */
  private static Path certificate(Path folder, String name) throws Exception {
    Process made =
        new ProcessBuilder(
                Path.of(System.getProperty("java.home"), "bin", "keytool").toString(),
                "-genkeypair",
                "-alias",
                "it",
                "-keyalg",
                "EC",
                "-groupname",
                "secp256r1",
                "-dname",
                "CN=localhost",
                "-ext",
                "san=dns:localhost",
                "-storetype",
                "PKCS12",
                "-storepass",
                "of-a-test-only",
                "-keystore",
                folder.resolve(name + ".p12").toString())
            .redirectErrorStream(true)
            .redirectOutput(folder.resolve(name + ".log").toFile())
            .start();
    assertThat(made.waitFor()).isZero();
    Certificate own = keys(folder, name).getCertificate("it");
    return Files.writeString(folder.resolve(name + ".crt"), pem("CERTIFICATE", own.getEncoded()));
  }

  /** The authority of somebody else. */
  private static Path strangersCertificate(Path folder) throws Exception {
    TrustManagerFactory known =
        TrustManagerFactory.getInstance(TrustManagerFactory.getDefaultAlgorithm());
    known.init((KeyStore) null);
    X509TrustManager first = (X509TrustManager) known.getTrustManagers()[0];
    byte[] encoded = first.getAcceptedIssuers()[0].getEncoded();
    return Files.writeString(folder.resolve("other.crt"), pem("CERTIFICATE", encoded));
  }

  private static String key(Path folder, String name) throws Exception {
    char[] password = "of-a-test-only".toCharArray();
    return pem("PRIVATE KEY", keys(folder, name).getKey("it", password).getEncoded());
  }

  private static KeyStore keys(Path folder, String name) throws Exception {
    return KeyStore.getInstance(
        folder.resolve(name + ".p12").toFile(), "of-a-test-only".toCharArray());
  }

  private static String pem(String what, byte[] bytes) {
    return "-----BEGIN "
        + what
        + "-----\n"
        + Base64.getMimeEncoder().encodeToString(bytes)
        + "\n-----END "
        + what
        + "-----\n";
  }
}
