package sunup.cluster;

import io.vertx.core.Vertx;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.locks.LockSupport;
import sunup.journal.PostgresAddress;

/**
 * Desks that write and walls that watch beside a running {@code ops/cluster}, while {@code
 * ops/cluster roll} starts its nodes anew: says how long a screen was without a heartbeat and
 * whether what was acknowledged is in the journal once.
 */
public final class ClusterWatch {
  private static final int WRITERS = 2;

  private ClusterWatch() {}

  /**
   * Goes on until the file is there.
   *
   * @param args the board's HOST:PORT, the database's URL, user and password file, the file that
   *     ends it
   */
  public static void main(String[] args) throws Exception {
    Vertx vertx = Vertx.vertx();
    List<String> at = List.of(args[0]);
    List<Client> writers = new ArrayList<>();
    for (int n = 0; n < WRITERS; n++) {
      writers.add(new Client(vertx, "watch-desk-" + n, "desk", at).begin());
    }
    List<Client> screens = new ArrayList<>(writers);
    for (String page : List.of("wall", "wall", "holding")) {
      screens.add(new Client(vertx, "watch-" + page, page, at).watch());
    }
    LiveWatch live = new LiveWatch(screens, writers);
    Path ends = Path.of(args[4]);
    while (!Files.exists(ends)) {
      LockSupport.parkNanos(100_000_000);
    }
    List<Client.Written> all = new ArrayList<>();
    for (Client writer : writers) {
      writer.end();
      all.addAll(writer.written(0));
    }
    live.end();
    live.silences().forEach(System.out::println);
    Kept.Found found = Kept.find(new PostgresAddress(args[1], args[2], Path.of(args[3])));
    long wrong = all.stream().filter(w -> found.times(w.id()) != 1).count();
    long longest =
        all.stream().mapToLong(w -> w.answeredAt() - w.begunAt()).max().orElse(0) / 1_000_000;
    long silent = live.longestSilence();
    System.out.printf(
        "%d commands acknowledged, not once in the journal: %d; longest wait for an answer %d ms;"
            + " longest time without a heartbeat on %d screens %d ms (stale from %d); an old board"
            + " as live %d times; came back %s times%n",
        all.size(),
        wrong,
        longest,
        screens.size(),
        silent,
        LiveWatch.STALE_MS,
        live.oldAsLive(),
        screens.stream().map(Client::timesBack).toList());
    System.exit(wrong == 0 && silent < LiveWatch.STALE_MS && live.oldAsLive() == 0 ? 0 : 1);
  }
}
