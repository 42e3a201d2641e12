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
 * A desk as its page is: gives a command under one id until it is answered, and comes back to
 * another node, resuming, when its socket ends.
 */
final class Client implements AutoCloseable {
  private static final long ANSWER_MS = 1_500;
  private static final long AGAIN_NS = 100_000_000;
  private static final long LIMIT_S = 60;
  private static final long EVERY_NS = 50_000_000;

  private final Vertx vertx;
  private final String name;
  private final int[] ports;
  private final List<CommandId> acknowledged = new ArrayList<>();
  private TestScreen screen;
  private int port;
  private int timesBack;
  private volatile boolean stopping;
  private volatile Throwable failed;
  private volatile long longestSilence;
  private Thread thread;

  Client(Vertx vertx, String name, int... ports) throws Exception {
    this.vertx = vertx;
    this.name = name;
    this.ports = ports;
    this.screen = TestScreen.connect(vertx, ports[0]).hello(name, "desk");
  }

  synchronized TestScreen screen() {
    return screen;
  }

  /** How often it had to come back. */
  int timesBack() {
    return timesBack;
  }

  ServerMessage.Answer give(Command command) throws Exception {
    CommandId id = new CommandId(UUID.randomUUID().toString());
    long end = System.nanoTime() + TimeUnit.SECONDS.toNanos(LIMIT_S);
    while (System.nanoTime() < end) {
      comeBack();
      ServerMessage.Answer answer = ask(id, command);
      if (answer != null && !answer.status().equals("later")) {
        if (answer.status().equals("done")) {
          synchronized (this) {
            acknowledged.add(id);
          }
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
    while (screen().closed() && !stopping) {
      port = (port + 1) % ports.length;
      try {
        TestScreen next = TestScreen.connect(vertx, ports[port]);
        next.resume(screen(), name, "desk");
        next.since(screen());
        synchronized (this) {
          screen = next;
        }
        timesBack++;
      } catch (Exception refused) {
        LockSupport.parkNanos(AGAIN_NS);
      }
    }
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
        ServerMessage.Answer answer = give(new Command.AddNote(null, Private.of(text)));
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
    int target = acknowledged().size() + count;
    Nodes.until(() -> acknowledged().size() >= target || failed != null, count + " answers");
  }

  synchronized List<CommandId> acknowledged() {
    return List.copyOf(acknowledged);
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
