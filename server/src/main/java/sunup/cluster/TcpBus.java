package sunup.cluster;

import io.vertx.core.Future;
import io.vertx.core.Vertx;
import io.vertx.core.buffer.Buffer;
import io.vertx.core.http.ClientAuth;
import io.vertx.core.net.NetClient;
import io.vertx.core.net.NetClientOptions;
import io.vertx.core.net.NetServer;
import io.vertx.core.net.NetServerOptions;
import io.vertx.core.net.NetSocket;
import io.vertx.core.net.PfxOptions;
import io.vertx.core.parsetools.RecordParser;
import java.io.IOException;
import java.net.ConnectException;
import java.nio.file.Files;
import java.util.HashSet;
import java.util.Map;
import java.util.Set;
import java.util.concurrent.ConcurrentHashMap;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.atomic.AtomicLong;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;
import sunup.codec.BadJson;
import sunup.suites.Reply;

/**
 * The bus over TCP: each node has a line to each other one for what it says. A message is a length,
 * the length of its head, the head as JSON, and the payload as it is. A line that ended is opened
 * again; what was on it is lost.
 */
final class TcpBus implements Bus, AutoCloseable {
  /**
   * Bytes of one message; a line that brings a larger one is closed. One that can't be read is left
   * out, and the line stays.
   */
  static final int MESSAGE_MAX = 32 * 1024 * 1024;

  /** Unsent bytes of a line beyond which nothing more is taken for it. */
  static final int UNSENT_MAX = 4 * 1024 * 1024;

  /** Between two looks at who is there. */
  static final long LOOK_MS = 200;

  private static final int CONNECT_MS = 1_000;
  private static final int LEFT_OUT_TOLD_EACH = 1_000;
  private static final Logger LOG = LoggerFactory.getLogger(TcpBus.class);

  private final Vertx vertx;
  private final ClusterOptions options;
  private final Node self;
  private final BusMessage.Hello hello;
  private final Listener listener;
  private final NetServer server;
  private final NetClient client;
  private final Map<String, Line> lines = new ConcurrentHashMap<>();

  /** What others say here. */
  private final Map<String, NetSocket> callers = new ConcurrentHashMap<>();

  private final Set<String> opening = ConcurrentHashMap.newKeySet();
  private volatile Members members;
  private volatile boolean closed;
  private long timer;

  TcpBus(Vertx vertx, ClusterOptions options, Node self, Listener listener) throws IOException {
    this.vertx = vertx;
    this.options = options;
    this.self = self;
    this.hello = new BusMessage.Hello(self.id(), options.name());
    this.listener = listener;
    NetServerOptions serving =
        new NetServerOptions().setHost(self.host()).setPort(self.port()).setTcpNoDelay(true);
    NetClientOptions calling =
        new NetClientOptions()
            .setConnectTimeout(CONNECT_MS)
            .setTcpNoDelay(true)
            .setLocalAddress(self.host());
    if (options.keys() != null) {
      PfxOptions keys =
          new PfxOptions()
              .setPath(options.keys().toString())
              .setPassword(
                  Files.readString(options.keysPasswordFile()).lines().findFirst().orElse(""));
      serving.setSsl(true).setKeyCertOptions(keys).setTrustOptions(keys);
      serving.setClientAuth(ClientAuth.REQUIRED);
      calling.setSsl(true).setKeyCertOptions(keys).setTrustOptions(keys);
      calling.setHostnameVerificationAlgorithm("HTTPS");
    }
    this.server = vertx.createNetServer(serving).connectHandler(this::called);
    this.client = vertx.createNetClient(calling);
  }

  Future<Void> listen() {
    return server.listen().mapEmpty();
  }

  /** Opens lines to who is there, and goes on looking. */
  void connect(Members who) {
    members = who;
    timer = vertx.setPeriodic(1, LOOK_MS, t -> look());
  }

  private void look() {
    if (closed) {
      return;
    }
    Set<String> there = new HashSet<>();
    for (Node node : members.nodes()) {
      there.add(node.id());
      if (!node.id().equals(self.id()) && !lines.containsKey(node.id()) && opening.add(node.id())) {
        open(node);
      }
    }
    lines.forEach(
        (id, line) -> {
          if (!there.contains(id)) {
            line.close();
          }
        });
  }

  private void open(Node node) {
    client
        .connect(node.port(), node.host())
        .onComplete(
            done -> {
              opening.remove(node.id());
              if (done.failed()) {
                LOG.debug("no line to {}: {}", node.id(), done.cause().toString());
                if (refused(done.cause()) && !callers.containsKey(node.id())) {
                  listener.ended(node.id());
                }
                return;
              }
              NetSocket socket = done.result();
              Line line = new Line(socket);
              socket.exceptionHandler(
                  e -> LOG.debug("a line to {} broke: {}", node.id(), e.toString()));
              long openedAt = System.nanoTime();
              socket.closeHandler(
                  v -> {
                    lines.remove(node.id(), line);
                    if (System.nanoTime() - openedAt > TimeUnit.MILLISECONDS.toNanos(LOOK_MS)) {
                      look(); // at once: if its port refuses, its process has ended
                    }
                  });
              line.take(new BusFrame(hello, null).bytes());
              lines.put(node.id(), line);
            });
  }

  /** Its machine is there and nobody listens. */
  private static boolean refused(Throwable why) {
    String words = why.getMessage();
    return why instanceof ConnectException && words != null && words.contains("refused");
  }

  @Override
  public boolean send(String node, BusMessage message, Buffer payload) {
    Line line = lines.get(node);
    return line != null && line.take(new BusFrame(message, payload).bytes());
  }

  /**
   * What is said to one node. Counts the unsent bytes itself: the socket's own queue also calls
   * itself full after some messages from another thread, however small they are, and the heartbeats
   * of many mornings come in one burst.
   */
  private static final class Line {
    private final NetSocket socket;
    private final AtomicLong unsent = new AtomicLong();

    Line(NetSocket socket) {
      this.socket = socket;
    }

    /** From any thread; false if so much is unsent that it was left out. */
    boolean take(Buffer bytes) {
      if (unsent.get() > UNSENT_MAX) {
        return false;
      }
      int length = bytes.length();
      unsent.addAndGet(length);
      Future<Void> unused = socket.write(bytes).onComplete(written -> unsent.addAndGet(-length));
      return true;
    }

    void close() {
      Future<Void> unused = socket.close();
    }
  }

  /** Somebody opened a line to here. */
  private void called(NetSocket line) {
    Incoming incoming = new Incoming(line);
    line.exceptionHandler(e -> LOG.debug("a line broke: {}", e.toString()));
    line.handler(incoming.parser);
    line.closeHandler(v -> incoming.ended());
  }

  private final class Incoming {
    private final NetSocket line;
    private final RecordParser parser = RecordParser.newFixed(4);
    private int size = -1;
    private String from;
    private long leftOut;

    Incoming(NetSocket line) {
      this.line = line;
      parser.handler(this::part);
    }

    private void part(Buffer bytes) {
      if (size < 0) {
        size = bytes.getInt(0);
        if (size < BusFrame.LENGTH_BYTES || size > MESSAGE_MAX) {
          refuse("a message of " + size + " bytes");
          return;
        }
        parser.fixedSizeMode(size);
        return;
      }
      size = -1;
      parser.fixedSizeMode(4);
      BusFrame frame;
      try {
        frame = BusFrame.read(bytes);
      } catch (BadJson | RuntimeException e) {
        if (from == null) {
          refuse("what can't be read: " + e.getMessage());
        } else {
          leftOut(bytes, e);
        }
        return;
      }
      take(frame);
    }

    /**
     * Its length is known, so the next one can be read: a newer node may say more than this one. If
     * it was a command, its screen is told why it must wait.
     */
    private void leftOut(Buffer bytes, Exception why) {
      Long asked = BusFrame.idOfAsk(bytes);
      if (asked != null) {
        send(from, new BusMessage.Reply(asked, "later", null, null, Reply.Later.MIXED, null), null);
      }
      if (leftOut++ % LEFT_OUT_TOLD_EACH == 0) {
        LOG.warn(
            "from {} came what this node can't read ({} so far); it is left out: {}",
            from,
            leftOut,
            why.getMessage());
      }
    }

    private void take(BusFrame frame) {
      if (from == null) {
        if (!(frame.message() instanceof BusMessage.Hello first)
            || !options.name().equals(first.cluster())
            || first.from() == null) {
          refuse("no hello of this cluster");
          return;
        }
        from = first.from();
        callers.put(from, line);
      }
      try {
        listener.heard(from, frame.message(), frame.payload());
      } catch (RuntimeException e) {
        // Ours, not the sender's: the line has nothing to do with it.
        LOG.error("a message from {} could not be dealt with", from, e);
      }
    }

    private void ended() {
      if (from != null) {
        callers.remove(from, line);
      }
    }

    private void refuse(String why) {
      LOG.warn("a line from {} is closed: it brought {}", line.remoteAddress(), why);
      parser.handler(b -> {});
      line.close();
    }
  }

  @Override
  public void close() {
    closed = true;
    vertx.cancelTimer(timer);
    lines.values().forEach(Line::close);
    Future<Void> unused = Future.all(server.close(), client.close()).mapEmpty();
  }
}
