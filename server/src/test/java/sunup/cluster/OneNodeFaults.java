package sunup.cluster;

import io.vertx.core.Vertx;
import java.io.IOException;
import java.io.OutputStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.concurrent.TimeUnit;
import sunup.journal.Journal;
import sunup.journal.SqliteJournal;

/** What happens to one node alone with its journal in a file. */
final class OneNodeFaults {
  private static final int HTTP = 7449;
  private static final String AT = "127.0.0.1:" + HTTP;
  private static final long SECOND_LIMIT_S = 60;
  private static final long FULL_FOR_MS = 3_000;

  private OneNodeFaults() {}

  /** True if all is well. */
  static boolean run(Path folder) throws Exception {
    Network.begin();
    Network.run("mount", "-t", "tmpfs", "-o", "size=24m", "sunup", folder.toString());
    NodeProcess node = new NodeProcess(folder, List.of(), HTTP, null, List.of(), 0);
    Vertx vertx = Vertx.vertx();
    try {
      Nodes.until(() -> Nodes.up(AT), "one node alone");
      Nodes.begin(vertx, AT);
      boolean refused = second(folder, node);
      return full(vertx, folder) && refused;
    } finally {
      node.kill();
      Nodes.get(vertx.close());
      Network.run("umount", "--lazy", folder.toString());
      Files.delete(folder);
    }
  }

  /** A second process on the same file is refused and says what to do; the first goes on. */
  private static boolean second(Path folder, NodeProcess first) throws Exception {
    NodeProcess second = new NodeProcess(folder, List.of(), 0, null, List.of(), 0);
    boolean ended = second.awaitEnd(SECOND_LIMIT_S);
    second.kill();
    String said = second.errors().strip();
    boolean well = ended && said.contains("another") && Nodes.up(AT) && first.alive();
    System.out.printf(
        "second-process     %s: \"%s\"%n", well ? "refused, the first goes on" : "WRONG", said);
    return well;
  }

  /** On a full disk nothing is acknowledged, and all goes on when there is room again. */
  private static boolean full(Vertx vertx, Path folder) throws Exception {
    Client desk = new Client(vertx, "desk-1", "desk", List.of(AT)).begin();
    desk.awaitMore(20);
    LiveWatch live = new LiveWatch(List.of(desk), List.of(desk));
    Path filler = folder.resolve("filler");
    fill(filler);
    int before = desk.count();
    long fullAt = System.nanoTime();
    Nodes.until(() -> desk.screen().readOnly(), "a screen that says that nothing is taken");
    long saidMs = ms(fullAt);
    Nodes.until(() -> ms(fullAt) > FULL_FOR_MS, "a while");
    int meanwhile = desk.count() - before;
    Files.delete(filler);
    long freeAt = System.nanoTime();
    desk.awaitMore(1);
    long backMs = ms(freeAt);
    desk.awaitMore(20);
    desk.end();
    live.end();
    desk.close();
    long lost = lost(folder, desk.written(0));
    boolean well = lost == 0 && live.oldAsLive() == 0;
    System.out.printf(
        "disk-full          the screen says read-only after %d ms; %d acknowledged while it was"
            + " full; %d ms after there is room it writes again; %d acknowledged, not once in the"
            + " journal: %d; an old board as live %d times%n",
        saidMs, meanwhile, backMs, desk.count(), lost, live.oldAsLive());
    return well;
  }

  private static void fill(Path filler) throws IOException {
    byte[] some = new byte[4_096];
    try (OutputStream out = Files.newOutputStream(filler)) {
      while (true) {
        out.write(some);
      }
    } catch (IOException full) {
      // That was the aim.
    }
  }

  /** How many of them are not in the journal exactly once. */
  private static long lost(Path folder, List<Client.Written> written) throws Exception {
    Path copy = Files.createTempDirectory("sunup-copy-");
    // The node holds the folder; what it wrote is in the files.
    Network.run("cp", "-r", folder.resolve("node-0") + "/.", copy.toString());
    try (Journal journal = SqliteJournal.open(copy)) {
      Kept.Found found = Kept.find(journal);
      return written.stream().filter(w -> found.times(w.id()) != 1).count()
          + found.problems().size();
    } finally {
      Network.run("rm", "-r", copy.toString());
    }
  }

  private static long ms(long since) {
    return TimeUnit.NANOSECONDS.toMillis(System.nanoTime() - since);
  }
}
