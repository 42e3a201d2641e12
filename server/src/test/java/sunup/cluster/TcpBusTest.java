package sunup.cluster;

import static org.assertj.core.api.Assertions.assertThat;

import io.vertx.core.Vertx;
import io.vertx.core.buffer.Buffer;
import io.vertx.core.net.NetClient;
import io.vertx.core.net.NetServer;
import io.vertx.core.net.NetSocket;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.BlockingQueue;
import java.util.concurrent.CompletableFuture;
import java.util.concurrent.LinkedBlockingQueue;
import java.util.concurrent.TimeUnit;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import sunup.board.Actor;
import sunup.board.Command;
import sunup.board.CommandId;
import sunup.board.MorningId;
import sunup.board.Private;
import sunup.board.Role;
import sunup.codec.Json;
import sunup.live.Feed;
import sunup.suites.Reply;
import sunup.suites.Submission;
import sunup.wire.Audience;

/** Two nodes' buses over real sockets, in the clear and by TLS. */
class TcpBusTest {
  private static final MorningId MORNING = MorningId.parse("east/2026-11-30");
  private static final String PASSWORD = "of-a-test-only";

  @TempDir Path folder;
  private final Vertx vertx = Vertx.vertx();
  private final List<TcpBus> buses = new ArrayList<>();
  private final List<Node> nodes = new ArrayList<>();
  private final BlockingQueue<Heard> heard = new LinkedBlockingQueue<>();
  private final BlockingQueue<String> ended = new LinkedBlockingQueue<>();

  private record Heard(String from, BusMessage message, Buffer payload) {}

  private final Members members =
      new Members() {
        @Override
        public List<Node> nodes() {
          return List.copyOf(nodes);
        }

        @Override
        public String suggested(String key) {
          return null;
        }
      };

  private TcpBus bus(String id, String cluster, Path keys) throws Exception {
    String address = Nodes.addresses(1).get(0);
    int port = Integer.parseInt(address.substring(address.indexOf(':') + 1));
    Path password = Files.writeString(folder.resolve("password"), PASSWORD);
    ClusterOptions options =
        new ClusterOptions(cluster, "127.0.0.1", port, List.of(address), false, keys, password);
    Node node = new Node(id, "127.0.0.1", port + 1);
    TcpBus made =
        new TcpBus(
            vertx,
            options,
            node,
            new Bus.Listener() {
              @Override
              public void heard(String from, BusMessage message, Buffer payload) {
                heard.add(new Heard(from, message, payload));
              }

              @Override
              public void ended(String gone) {
                ended.add(gone);
              }
            });
    Nodes.get(made.listen());
    nodes.add(node);
    buses.add(made);
    return made;
  }

  @AfterEach
  void end() throws Exception {
    buses.forEach(TcpBus::close);
    Nodes.get(vertx.close());
  }

  private Heard next() throws Exception {
    Heard one = heard.poll(20, TimeUnit.SECONDS);
    assertThat(one).isNotNull();
    return one;
  }

  private static BusMessage ask(String text) {
    Actor desk = new Actor(Role.DESK, null, "desk-1");
    Command note = new Command.AddNote(null, Private.of(text));
    Submission given =
        new Submission(new CommandId("c-1"), note, List.of(note), desk, 7L, 100, -3).on("desk");
    return new BusMessage.Ask(1, MORNING, given);
  }

  private void talk(TcpBus one, TcpBus other) throws Exception {
    one.connect(members);
    other.connect(members);
    Nodes.until(() -> one.send("b", ask("over there"), null), "a line");
    assertThat(next().message()).isInstanceOf(BusMessage.Hello.class);
    Heard asked = heard.take();
    while (asked.message() instanceof BusMessage.Hello) {
      asked = next();
    }
    assertThat(asked).isEqualTo(new Heard("a", ask("over there"), null));
    Buffer large = Buffer.buffer(new byte[3_000_000]).setInt(2_999_000, 77);
    BusMessage told = new BusMessage.Told(MORNING, Audience.WALL, Feed.Kind.VIEW, 5L);
    Nodes.until(() -> other.send("a", told, large), "a line back");
    Heard view = next();
    while (view.message() instanceof BusMessage.Hello) {
      view = next();
    }
    assertThat(view).isEqualTo(new Heard("b", told, large));
  }

  @Test
  void shouldCarryCommandsAndBytesBetweenNodes() throws Exception {
    talk(bus("a", "one", null), bus("b", "one", null));
  }

  @Test
  void shouldTakeTheHeartbeatsOfManyMorningsInOneBurst() throws Exception {
    TcpBus one = bus("a", "one", null);
    talk(one, bus("b", "one", null));
    Buffer beat = Buffer.buffer(new byte[160]);
    int count = 4_000;
    for (long n = 0; n < count; n++) {
      BusMessage told = new BusMessage.Told(MORNING, Audience.WALL, Feed.Kind.BEAT, n);
      assertThat(one.send("b", told, beat)).as("beat %d", n).isTrue();
    }
    for (long n = 0; n < count; n++) {
      BusMessage told = new BusMessage.Told(MORNING, Audience.WALL, Feed.Kind.BEAT, n);
      assertThat(next()).isEqualTo(new Heard("a", told, beat));
    }
  }

  @Test
  void shouldTakeNothingMoreForANodeThatReadsNothing() throws Exception {
    NetServer deaf = vertx.createNetServer().connectHandler(NetSocket::pause);
    Nodes.get(deaf.listen(0, "127.0.0.1"));
    nodes.add(new Node("b", "127.0.0.1", deaf.actualPort()));
    TcpBus one = bus("a", "one", null);
    one.connect(members);
    Buffer large = Buffer.buffer(new byte[1_000_000]);
    BusMessage told = new BusMessage.Told(MORNING, Audience.WALL, Feed.Kind.VIEW, 5L);
    Nodes.until(() -> one.send("b", told, large), "a line");
    int taken = 1;
    while (taken < 100 && one.send("b", told, large)) {
      taken++;
    }
    // What the two sockets hold by themselves goes through.
    assertThat(taken).isBetween(5, 30);
  }

  @Test
  void shouldSayAtOnceThatANodeHasEnded() throws Exception {
    TcpBus other = bus("b", "one", null);
    talk(bus("a", "one", null), other);
    assertThat(ended).isEmpty();
    other.close();
    assertThat(ended.poll(20, TimeUnit.SECONDS)).isEqualTo("b");
  }

  @Test
  void shouldSpeakTlsWithNodesOfTheSameAuthorityOnly() throws Exception {
    Path keys = keys("right");
    TcpBus one = bus("a", "one", keys);
    talk(one, bus("b", "one", keys));
    heard.clear();
    TcpBus stranger = bus("c", "one", keys("stranger"));
    stranger.connect(members);
    NetSocket plain = Nodes.get(vertx.createNetClient().connect(nodes.get(0).port(), "127.0.0.1"));
    plain.write("GET / HTTP/1.1\r\n\r\n");
    // Both are turned away before they are heard; those who belong still are heard.
    Nodes.until(() -> one.send("b", ask("still here"), null), "a line");
    assertThat(next().from()).isEqualTo("a");
    assertThat(stranger.send("a", ask("let me in"), null)).isFalse();
    assertThat(heard).noneMatch(h -> h.from().equals("c"));
  }

  @Test
  void shouldNotListenToAnotherClusterOrToWhatIsNoMessage() throws Exception {
    TcpBus one = bus("a", "one", null);
    TcpBus other = bus("b", "another", null);
    one.connect(members);
    other.connect(members);
    Nodes.until(() -> other.send("a", ask("wrong house"), null), "a line");
    NetSocket rude = Nodes.get(vertx.createNetClient().connect(nodes.get(0).port(), "127.0.0.1"));
    CompletableFuture<Void> closed = new CompletableFuture<>();
    rude.closeHandler(v -> closed.complete(null));
    rude.write(Buffer.buffer().appendInt(Integer.MAX_VALUE));
    closed.get(20, TimeUnit.SECONDS);
    assertThat(heard).isEmpty();
  }

  @Test
  void shouldLeaveOutAMessageThatItCannotReadAndHearTheNext() throws Exception {
    bus("a", "one", null);
    NetClient client = vertx.createNetClient();
    NetSocket newer = Nodes.get(client.connect(nodes.get(0).port(), "127.0.0.1"));
    Nodes.get(newer.write(new BusFrame(new BusMessage.Hello("b", "one"), null).bytes()));
    String later =
        Json.mapper()
            .writeValueAsString(ask("from later"))
            .replace("\"add-note\"", "\"of-next-year\"");
    assertThat(later).contains("of-next-year");
    for (String head : List.of(later, "{", "[]")) {
      byte[] bytes = head.getBytes(StandardCharsets.UTF_8);
      Buffer message =
          Buffer.buffer()
              .appendInt(BusFrame.LENGTH_BYTES + bytes.length)
              .appendInt(bytes.length)
              .appendBytes(bytes);
      Nodes.get(newer.write(message));
    }
    // Its length is right, and that of its head is not.
    Nodes.get(newer.write(Buffer.buffer().appendInt(4).appendInt(99)));
    Nodes.get(newer.write(new BusFrame(ask("still here"), null).bytes()));
    assertThat(next().message()).isInstanceOf(BusMessage.Hello.class);
    assertThat(next()).isEqualTo(new Heard("b", ask("still here"), null));
    Nodes.get(client.close());
  }

  @Test
  void shouldAnswerACommandOfALaterVersionThatItMustWait() throws Exception {
    talk(bus("a", "one", null), bus("b", "one", null));
    NetClient client = vertx.createNetClient();
    NetSocket newer = Nodes.get(client.connect(nodes.get(0).port(), "127.0.0.1"));
    Nodes.get(newer.write(new BusFrame(new BusMessage.Hello("b", "one"), null).bytes()));
    byte[] later =
        Json.mapper()
            .writeValueAsString(ask("from later"))
            .replace("\"add-note\"", "\"of-next-year\"")
            .getBytes(StandardCharsets.UTF_8);
    Nodes.get(
        newer.write(
            Buffer.buffer()
                .appendInt(BusFrame.LENGTH_BYTES + later.length)
                .appendInt(later.length)
                .appendBytes(later)));
    Heard answer = next();
    while (answer.message() instanceof BusMessage.Hello) {
      answer = next();
    }
    assertThat(answer.from()).isEqualTo("a");
    assertThat(answer.message())
        .isEqualTo(new BusMessage.Reply(1, "later", null, null, Reply.Later.MIXED, null));
    Nodes.get(client.close());
  }

  /** A key with its own certificate, which is its own authority. */
  private Path keys(String name) throws Exception {
    Path file = folder.resolve(name + ".p12");
    List<String> line =
        List.of(
            Path.of(System.getProperty("java.home"), "bin", "keytool").toString(),
            "-genkeypair",
            "-alias",
            "node",
            "-keyalg",
            "EC",
            "-groupname",
            "secp256r1",
            "-dname",
            "CN=node",
            "-ext",
            "san=ip:127.0.0.1",
            "-storetype",
            "PKCS12",
            "-storepass",
            PASSWORD,
            "-keystore",
            file.toString());
    Path log = folder.resolve("keytool.log");
    Process made =
        new ProcessBuilder(line)
            .redirectErrorStream(true)
            .redirectOutput(ProcessBuilder.Redirect.appendTo(log.toFile()))
            .start();
    assertThat(made.waitFor()).as(Files.readString(log)).isZero();
    return file;
  }
}
