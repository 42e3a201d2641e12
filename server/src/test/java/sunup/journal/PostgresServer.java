package sunup.journal;

import java.io.File;
import java.io.IOException;
import java.net.InetAddress;
import java.net.ServerSocket;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.attribute.PosixFilePermissions;
import java.sql.Connection;
import java.sql.DriverManager;
import java.sql.SQLException;
import java.sql.Statement;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Properties;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.atomic.AtomicInteger;
import java.util.stream.Stream;

/**
 * A real PostgreSQL of the test's own: a cluster in a new folder, on loopback and a free port, with
 * its syncs on. As root it is run as the user {@code postgres} or {@code nobody}, since it refuses
 * root.
 */
public final class PostgresServer implements AutoCloseable {
  private static final String USER = "sunup";
  private static final String PASSWORD = "of-a-test-only";
  private static final long LIMIT_S = 60;
  private static PostgresServer shared;

  private final Path bin;
  private final Path folder;
  private final Path data;
  private final String runAs;
  private final int port;
  private final AtomicInteger schemas = new AtomicInteger();

  private PostgresServer(Path bin, Path folder, String runAs, int port) {
    this.bin = bin;
    this.folder = folder;
    this.data = folder.resolve("data");
    this.runAs = runAs;
    this.port = port;
  }

  /** One for all tests of this process; it ends with it. */
  public static synchronized PostgresServer shared() throws Exception {
    if (shared == null) {
      PostgresServer made = begin();
      Runtime.getRuntime().addShutdownHook(new Thread(made::close));
      shared = made;
    }
    return shared;
  }

  /** A new one. */
  public static PostgresServer begin() throws Exception {
    Path folder = Files.createTempDirectory("sunup-postgres-");
    String runAs = null;
    if (System.getProperty("user.name").equals("root")) {
      runAs =
          Files.readString(Path.of("/etc/passwd")).contains("\npostgres:") ? "postgres" : "nobody";
      var users = folder.getFileSystem().getUserPrincipalLookupService();
      Files.setOwner(folder, users.lookupPrincipalByName(runAs));
    }
    int port;
    try (ServerSocket free = new ServerSocket(0, 1, InetAddress.getLoopbackAddress())) {
      port = free.getLocalPort();
    }
    PostgresServer made = new PostgresServer(programs(), folder, runAs, port);
    Files.writeString(made.passwordFile(), PASSWORD);
    Files.setPosixFilePermissions(
        made.passwordFile(), PosixFilePermissions.fromString("rw-r-----"));
    Path forInit = folder.resolve("init-password");
    Files.writeString(forInit, PASSWORD);
    // The cluster is thrown away if the machine fails while it is made; what runs on it is synced.
    made.run(
        made.bin.resolve("initdb").toString(),
        "--no-sync",
        "--encoding=UTF8",
        "--locale=C",
        "--username=" + USER,
        "--auth=scram-sha-256",
        "--pwfile=" + forInit,
        "--pgdata=" + made.data);
    made.start();
    return made;
  }

  /** The newest PostgreSQL of this machine. */
  private static Path programs() throws IOException {
    List<Path> found = new ArrayList<>();
    Path debian = Path.of("/usr/lib/postgresql");
    if (Files.isDirectory(debian)) {
      try (Stream<Path> versions = Files.list(debian)) {
        versions.map(v -> v.resolve("bin")).sorted(Comparator.reverseOrder()).forEach(found::add);
      }
    }
    for (String entry : System.getenv("PATH").split(File.pathSeparator, -1)) {
      found.add(Path.of(entry));
    }
    return found.stream()
        .filter(p -> Files.isExecutable(p.resolve("initdb")))
        .findFirst()
        .orElseThrow(
            () ->
                new AssertionError(
                    "This test runs a PostgreSQL of its own and can't find one. Install it:"
                        + " apt-get install postgresql"));
  }

  /** Starts it, or starts it again on the same data and port. */
  public void start() throws Exception {
    run(
        bin.resolve("pg_ctl").toString(),
        "start",
        "--wait",
        "--silent",
        "--pgdata=" + data,
        "--log=" + folder.resolve("log"),
        "--options=-c listen_addresses=127.0.0.1 -c port="
            + port
            + " -c unix_socket_directories='' -c fsync=on -c max_connections=60"
            + " -c shared_buffers=32MB"
            + (Files.exists(data.resolve("server.key")) ? " -c ssl=on" : ""));
  }

  /** Stops it as a kill would: nothing is finished, nobody is told. */
  public void stop() throws Exception {
    run(bin.resolve("pg_ctl").toString(), "stop", "--wait", "--mode=immediate", "--pgdata=" + data);
  }

  /** From the next start on it speaks TLS with this key and certificate, PEM. */
  public void useCertificate(String key, String certificate) throws Exception {
    Path keyFile = data.resolve("server.key");
    Files.writeString(keyFile, key);
    Files.writeString(data.resolve("server.crt"), certificate);
    Files.setOwner(keyFile, Files.getOwner(data));
    Files.setOwner(data.resolve("server.crt"), Files.getOwner(data));
    Files.setPosixFilePermissions(keyFile, PosixFilePermissions.fromString("rw-------"));
  }

  public int port() {
    return port;
  }

  public Path passwordFile() {
    return folder.resolve("password");
  }

  /** A new, empty schema: as good as a database of one's own, and made at once. */
  public String schema() throws SQLException {
    String name = "test" + schemas.incrementAndGet();
    try (Connection c = connect("public");
        Statement s = c.createStatement()) {
      s.execute("CREATE SCHEMA " + name);
    }
    return name;
  }

  public PostgresAddress address(String schema) {
    return address("127.0.0.1:" + port, schema);
  }

  /** The address by another name or port. */
  public PostgresAddress address(String host, String schema) {
    return new PostgresAddress(
        "jdbc:postgresql://" + host + "/postgres?currentSchema=" + schema, USER, passwordFile());
  }

  /** A connection of the test's own. */
  public Connection connect(String schema) throws SQLException {
    Properties who = new Properties();
    who.setProperty("user", USER);
    who.setProperty("password", PASSWORD);
    return DriverManager.getConnection(address(schema).url(), who);
  }

  private void run(String... command) throws Exception {
    List<String> line = new ArrayList<>();
    if (runAs != null) {
      line.addAll(List.of("setpriv", "--reuid=" + runAs, "--regid=" + groupId(), "--clear-groups"));
    }
    line.addAll(List.of(command));
    File out = Files.createTempFile("sunup-postgres-", ".log").toFile();
    try {
      Process process =
          new ProcessBuilder(line)
              .directory(folder.toFile())
              .redirectErrorStream(true)
              .redirectOutput(out)
              .start();
      if (!process.waitFor(LIMIT_S, TimeUnit.SECONDS) || process.exitValue() != 0) {
        process.destroyForcibly();
        Path log = folder.resolve("log");
        throw new AssertionError(
            line
                + " failed: "
                + Files.readString(out.toPath())
                + (Files.exists(log) ? Files.readString(log) : ""));
      }
    } finally {
      Files.deleteIfExists(out.toPath());
    }
  }

  /** The first group of the user. */
  private String groupId() throws IOException {
    return Files.readString(Path.of("/etc/passwd"))
        .lines()
        .filter(line -> line.startsWith(runAs + ":"))
        .map(line -> line.split(":", -1)[3])
        .findFirst()
        .orElseThrow();
  }

  /** Stops it and removes its folder. */
  @Override
  public void close() {
    try {
      if (Files.exists(data.resolve("postmaster.pid"))) {
        stop();
      }
      try (Stream<Path> all = Files.walk(folder)) {
        for (Path path : all.sorted(Comparator.reverseOrder()).toList()) {
          Files.deleteIfExists(path);
        }
      }
    } catch (Exception e) {
      throw new IllegalStateException(e);
    }
  }
}
