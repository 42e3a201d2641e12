package sunup.cluster;

import io.vertx.core.Future;
import io.vertx.core.Vertx;
import java.util.ArrayList;
import java.util.List;
import java.util.UUID;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.locks.LockSupport;
import java.util.stream.IntStream;
import sunup.board.Command;
import sunup.board.CommandId;
import sunup.board.Private;
import sunup.live.fake.ManualClock;
import sunup.live.fake.TestScreen;
import sunup.wire.ClientMessage;
import sunup.wire.ServerMessage;

/**
 * A screen as its page is: gives a command under one id until it is answered, and comes back to
 * another node, resuming, when its socket ends or has been silent for long.
 */
final class Client implements AutoCloseable {
  private static final long ANSWER_MS = 1_500;
  private static final long AGAIN_NS = 100_000_000;
  private static final long LIMIT_S = 60;
  private static final long EVERY_NS = 50_000_000;

  /** A command that waited longer tells how. */
  private static final long TOLD_NS = 4_000_000_000L;

  /** What it got is forgotten now and then, so that a long run does not fill the memory. */
  private static final int FORGET_EVERY = 20;

  /** A page gives up a socket that was silent for so long. */
  private static final long SILENT_NS = 4_000_000_000L;

  private final Vertx vertx;
  private final String name;
  private final String page;
  private final List<String> servers;
  private final List<Written> written = new ArrayList<>();
  private TestScreen screen;
  private long connectedAt;
  private int server;
  private int timesBack;
  private volatile boolean stopping;
  private volatile Throwable failed;
  private volatile long longestSilence;
  private Thread thread;

  /**
   * A command that was acknowledged.
   *
   * @param begunAt when it was given first, by {@link System#nanoTime}
   * @param answeredAt when the answer came
   */
  record Written(CommandId id, String text, long begunAt, long answeredAt, long upTo) {}

  Client(Vertx vertx, String name, int... ports) throws Exception {
    this(vertx, name, "desk", IntStream.of(ports).mapToObj(port -> "127.0.0.1:" + port).toList());
  }

  /**
   * Connects to the first.
   *
   * @param servers HOST:PORT of each that it may come back to
   */
  Client(Vertx vertx, String name, String page, List<String> servers) throws Exception {
    this.vertx = vertx;
    this.name = name;
    this.page = page;
    this.servers = List.copyOf(servers);
    this.screen = connect(servers.get(0)).hello(name, page);
    this.connectedAt = System.nanoTime();
  }

  private TestScreen connect(String at) throws Exception {
    int colon = at.indexOf(':');
    int port = Integer.parseInt(at.substring(colon + 1));
    return TestScreen.connect(vertx, TestScreen.options(at.substring(0, colon), port))
        .ticking(vertx);
  }

  String name() {
    return name;
  }

  String page() {
    return page;
  }

  synchronized TestScreen screen() {
    return screen;
  }

  /** How often it had to come back. */
  int timesBack() {
    return timesBack;
  }

  ServerMessage.Answer give(Command command) throws Exception {
    return give(command, "");
  }

  private static long ms(long ns) {
    return ns / 1_000_000;
  }

  private ServerMessage.Answer give(Command command, String text) throws Exception {
    CommandId id = new CommandId(UUID.randomUUID().toString());
    long begun = System.nanoTime();
    long end = System.nanoTime() + TimeUnit.SECONDS.toNanos(LIMIT_S);
    List<String> story = new ArrayList<>();
    while (System.nanoTime() < end) {
      comeBack();
      ServerMessage.Answer answer = ask(id, command);
      story.add(
          "%d ms: %s, back %d times, beat %d ms ago"
              .formatted(
                  ms(System.nanoTime() - begun),
                  answer == null ? "no answer" : answer.status(),
                  timesBack,
                  ms(System.nanoTime() - screen().beatAt())));
      if (answer != null && !answer.status().equals("later")) {
        if (answer.status().equals("done")) {
          synchronized (this) {
            written.add(new Written(id, text, begun, System.nanoTime(), answer.upTo()));
          }
        }
        if (System.nanoTime() - begun > TOLD_NS) {
          System.out.println("  " + name + " waited long: " + String.join("; ", story));
        }
        return answer;
      }
      LockSupport.parkNanos(AGAIN_NS);
    }
    throw new AssertionError(command + " was not answered within " + LIMIT_S + " s");
  }

  /** The newest answer to it, or null. */
  private ServerMessage.Answer ask(CommandId id, Command command) {
    TestScreen now = screen();
    int before = answers(now, id).size();
    now.send(new ClientMessage.Send(id, null, null, ManualClock.START, 0, null, command));
    long end = System.nanoTime() + TimeUnit.MILLISECONDS.toNanos(ANSWER_MS);
    while (System.nanoTime() < end && !now.closed()) {
      List<ServerMessage.Answer> answers = answers(now, id);
      if (answers.size() > before) {
        return answers.get(answers.size() - 1);
      }
      LockSupport.parkNanos(1_000_000);
    }
    return null;
  }

  private static List<ServerMessage.Answer> answers(TestScreen screen, CommandId id) {
    return screen.all(ServerMessage.Answer.class).stream().filter(a -> a.id().equals(id)).toList();
  }

  private void comeBack() {
    while (ended() && !stopping) {
      server = (server + 1) % servers.size();
      try {
        TestScreen next = connect(servers.get(server));
        next.resume(screen(), name, page);
        next.since(screen());
        synchronized (this) {
          screen = next;
        }
        connectedAt = System.nanoTime();
        timesBack++;
      } catch (Exception refused) {
        LockSupport.parkNanos(AGAIN_NS);
      }
    }
  }

  private boolean ended() {
    TestScreen now = screen();
    long heard = Math.max(connectedAt, now.beatAt());
    if (!now.closed() && System.nanoTime() - heard > SILENT_NS) {
      Future<Void> unused = now.socket().close();
      return true;
    }
    return now.closed();
  }

  /** Begins to watch only. */
  Client watch() {
    thread =
        new Thread(
            () -> {
              while (!stopping) {
                comeBack();
                screen().forgetMessages();
                LockSupport.parkNanos(EVERY_NS);
              }
            },
            name);
    thread.start();
    return this;
  }

  /** Begins to write notes, one after another, and to watch the heartbeats. */
  Client begin() {
    thread = new Thread(this::work, name);
    thread.start();
    Thread watch =
        new Thread(
            () -> {
              while (!stopping) {
                long silence = (System.nanoTime() - screen().beatAt()) / 1_000_000;
                longestSilence = Math.max(longestSilence, silence);
                LockSupport.parkNanos(EVERY_NS / 2);
              }
            });
    watch.setDaemon(true);
    watch.start();
    return this;
  }

  private void work() {
    try {
      for (int n = 0; !stopping; n++) {
        String text = name + " writes note " + n;
        ServerMessage.Answer answer = give(new Command.AddNote(null, Private.of(text)), text);
        if (n % FORGET_EVERY == 0) {
          screen().forgetMessages();
        }
        if (!answer.status().equals("done")) {
          throw new AssertionError(text + ": " + answer);
        }
        LockSupport.parkNanos(EVERY_NS);
      }
    } catch (Throwable e) {
      failed = e;
    }
  }

  /** Waits until so many more commands were acknowledged. */
  void awaitMore(int count) {
    int target = count() + count;
    Nodes.until(() -> count() >= target || failed != null, count + " answers");
  }

  synchronized List<CommandId> acknowledged() {
    return written.stream().map(Written::id).toList();
  }

  /** From the given one on. */
  synchronized List<Written> written(int from) {
    return List.copyOf(written.subList(from, written.size()));
  }

  synchronized int count() {
    return written.size();
  }

  /** Milliseconds, the longest while without a heartbeat. */
  long longestSilence() {
    return longestSilence;
  }

  /** Ends the notes. */
  void end() throws Exception {
    stopping = true;
    thread.join();
    if (failed != null) {
      throw new AssertionError(name + " failed", failed);
    }
  }

  @Override
  public void close() {
    stopping = true;
    Future<Void> unused = screen().socket().close();
  }

  static int[] ports(List<Integer> all, int first) {
    return IntStream.range(0, all.size()).map(i -> all.get((i + first) % all.size())).toArray();
  }
}
