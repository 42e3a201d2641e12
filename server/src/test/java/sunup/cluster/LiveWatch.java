package sunup.cluster;

import java.time.LocalTime;
import java.time.ZoneOffset;
import java.time.temporal.ChronoUnit;
import java.util.ArrayList;
import java.util.Collections;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;
import java.util.concurrent.atomic.AtomicInteger;
import java.util.concurrent.atomic.AtomicLong;
import java.util.concurrent.locks.LockSupport;
import sunup.live.fake.TestScreen;

/**
 * Looks at screens all the time: does one show an old board as live? Old is what lacks a command
 * that somebody was told is durable; how old it is counts from that answer.
 */
final class LiveWatch {
  /** Rule 2: a screen is stale after so long without a heartbeat. */
  static final long STALE_MS = 5_000;

  /**
   * Of a heartbeat the journal's confirmation is at most 2 s old when it is made, and it at most 2
   * s when another node passes it on; the rest is what a narrow line and a crowded machine may
   * take. It was sent after the tick whose answer came before it: how old the board was is counted
   * from that.
   */
  private static final long PROOF_MS = 2_000 + 2_000 + 700;

  /** What lay in a line together may come together: a board is old only if nothing follows. */
  private static final long TOGETHER_MS = 300;

  private static final long EVERY_NS = 20_000_000;
  private static final long STALL_MS = 500;

  /** Beats come each second: what is longer than this is told, with its time. */
  private static final long TOLD_MS = 2_500;

  private static final int TOLD_MAX = 40;

  private final List<Client> screens;
  private final List<Client> writers;
  private final Set<Client> tied;
  private final int[] read;
  private final TreeMap<Long, Long> answered = new TreeMap<>();
  private final Map<Client, Long> beats = new HashMap<>();
  private final Map<Client, Long> suspects = new HashMap<>();
  private final Thread thread = new Thread(this::look, "live-watch");
  private volatile boolean stopping;
  private final AtomicLong oldestLive = new AtomicLong();
  private final AtomicLong longestSilence = new AtomicLong();
  private final AtomicInteger oldAsLive = new AtomicInteger();
  private final AtomicInteger stalls = new AtomicInteger();
  private final List<String> silences = Collections.synchronizedList(new ArrayList<>());

  LiveWatch(List<Client> screens, List<Client> writers) {
    this(screens, writers, Set.of());
  }

  /**
   * @param tied those of the screens that can go to no other node: their silences do not count
   */
  LiveWatch(List<Client> screens, List<Client> writers, Set<Client> tied) {
    this.screens = List.copyOf(screens);
    this.tied = Set.copyOf(tied);
    this.writers = List.copyOf(writers);
    this.read = new int[writers.size()];
    thread.setDaemon(true);
    thread.start();
  }

  private void look() {
    long last = System.nanoTime();
    while (!stopping) {
      long now = System.nanoTime();
      if (ms(now - last) > STALL_MS) {
        // This process stood still: what it sees now is not what a screen saw.
        stalls.incrementAndGet();
        suspects.clear();
      }
      last = now;
      readAnswers();
      for (Client client : screens) {
        look(client, now);
      }
      LockSupport.parkNanos(EVERY_NS);
    }
  }

  private void readAnswers() {
    for (int at = 0; at < read.length; at++) {
      for (Client.Written one : writers.get(at).written(read[at])) {
        answered.put(one.upTo(), one.answeredAt());
        read[at]++;
      }
    }
    long least = screens.stream().mapToLong(client -> client.screen().upTo()).min().orElse(0);
    answered.headMap(least, true).clear();
  }

  private void look(Client client, long now) {
    TestScreen screen = client.screen();
    long beatAt = screen.beatAt();
    Map.Entry<Long, Long> lacks = answered.higherEntry(screen.upTo());
    long age = lacks == null ? 0 : ms(now - lacks.getValue());
    boolean live = ms(now - beatAt) <= STALE_MS && !screen.readOnly();
    if (!tied.contains(client)) {
      longestSilence.accumulateAndGet(ms(now - beatAt), Math::max);
    }
    if (live) {
      oldestLive.accumulateAndGet(age, Math::max);
    }
    Long before = beats.put(client, beatAt);
    boolean beat = before == null || before != beatAt;
    if (before != null && ms(beatAt - before) > TOLD_MS && silences.size() < TOLD_MAX) {
      silences.add(
          LocalTime.now(ZoneOffset.UTC).truncatedTo(ChronoUnit.MILLIS)
              + " "
              + client.name()
              + " heard again after "
              + ms(beatAt - before)
              + " ms");
    }
    long proof = lacks == null ? 0 : ms(screen.beatEchoAt() - lacks.getValue());
    if (proof <= PROOF_MS || !live) {
      suspects.remove(client);
    } else if (beat) {
      suspects.putIfAbsent(client, now);
    }
    Long since = suspects.get(client);
    if (since != null && ms(now - since) > TOGETHER_MS) {
      suspects.remove(client);
      oldAsLive.incrementAndGet();
      System.out.printf(
          "  %s shows a board as live that is %d ms old, by a heartbeat of %d ms ago, sent less"
              + " than %d ms ago%n",
          client.name(), age, ms(now - beatAt), ms(now - screen.beatEchoAt()));
    }
  }

  private static long ms(long ns) {
    return ns / 1_000_000;
  }

  /** Milliseconds, the oldest board that called itself live; begins anew. */
  long oldestLive() {
    return oldestLive.getAndSet(0);
  }

  /** Milliseconds, the longest while that a screen not tied had no heartbeat; begins anew. */
  long longestSilence() {
    return longestSilence.getAndSet(0);
  }

  /** The long ones among the silences that ended, one a line with its time (UTC). */
  List<String> silences() {
    return List.copyOf(silences);
  }

  /** How often a heartbeat was taken that proved less than it may. */
  int oldAsLive() {
    return oldAsLive.get();
  }

  /** How often this process stood still. */
  int stalls() {
    return stalls.get();
  }

  void end() throws InterruptedException {
    stopping = true;
    thread.join();
  }
}
