package sunup.journal;

import java.io.File;
import java.io.IOException;
import java.net.InetAddress;
import java.net.ServerSocket;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
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
  private static final String LOOPBACK = "127.0.0.1";
  private static final String USER = "sunup";
  private static final String PASSWORD = "of-a-test-only";
  private static final long LIMIT_S = 60;
  private static PostgresServer shared;

  private final Path bin;
  private final Path folder;
  private final Path data;
  private final String runAs;
  private final List<String> within;
  private final String host;
  private final int port;
  private final AtomicInteger schemas = new AtomicInteger();

  private PostgresServer(
      Path bin, Path folder, String runAs, List<String> within, String host, int port) {
    this.bin = bin;
    this.folder = folder;
    this.data = folder.resolve("data");
    this.runAs = runAs;
    this.within = List.copyOf(within);
    this.host = host;
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
    return begin(List.of(), LOOPBACK, freePort());
  }

  private static int freePort() throws IOException {
    try (ServerSocket free = new ServerSocket(0, 1, InetAddress.getLoopbackAddress())) {
      return free.getLocalPort();
    }
  }

  /**
   * A new one elsewhere.
   *
   * @param within what its command lines begin with, so that it runs in another network
   * @param host its address there
   */
  public static PostgresServer begin(List<String> within, String host, int port) throws Exception {
    Path folder = Files.createTempDirectory("sunup-postgres-");
    String runAs = null;
    if (System.getProperty("user.name").equals("root")) {
      runAs =
          Files.readString(Path.of("/etc/passwd")).contains("\npostgres:") ? "postgres" : "nobody";
      var users = folder.getFileSystem().getUserPrincipalLookupService();
      Files.setOwner(folder, users.lookupPrincipalByName(runAs));
    }
    PostgresServer made = new PostgresServer(programs(), folder, runAs, within, host, port);
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
    if (!host.equals(LOOPBACK)) {
      Files.writeString(
          made.data.resolve("pg_hba.conf"),
          "host all all samenet scram-sha-256\n",
          StandardOpenOption.APPEND);
    }
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
        "--options=-c listen_addresses="
            + host
            + " -c port="
            + port
            + " -c unix_socket_directories='' -c fsync=on -c max_connections=60"
            + " -c shared_buffers=32MB"
            + (Files.exists(data.resolve("server.key")) ? " -c ssl=on" : ""));
  }

  /** Stops it as a kill would: nothing is finished, nobody is told. */
  public void stop() throws Exception {
    run(bin.resolve("pg_ctl").toString(), "stop", "--wait", "--mode=immediate", "--pgdata=" + data);
  }

  /** All of its processes at once, with -9. */
  public void kill() throws IOException {
    String pid = Files.readString(data.resolve("postmaster.pid")).lines().findFirst().orElseThrow();
    ProcessHandle first = ProcessHandle.of(Long.parseLong(pid.strip())).orElseThrow();
    List<ProcessHandle> others = first.descendants().toList();
    first.destroyForcibly();
    others.forEach(ProcessHandle::destroyForcibly);
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
    return address(host + ":" + port, schema);
  }

  /** The address by another name or port. */
  public PostgresAddress address(String at, String schema) {
    String clear = host.equals(LOOPBACK) ? "" : "&sslmode=disable";
    return new PostgresAddress(
        "jdbc:postgresql://" + at + "/postgres?currentSchema=" + schema + clear,
        USER,
        passwordFile());
  }

  /** A connection of the test's own. */
  public Connection connect(String schema) throws SQLException {
    Properties who = new Properties();
    who.setProperty("user", USER);
    who.setProperty("password", PASSWORD);
    return DriverManager.getConnection(address(schema).url(), who);
  }

  private void run(String... command) throws Exception {
    List<String> line = new ArrayList<>(within);
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
