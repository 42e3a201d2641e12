package sunup.ops.bench;

import com.fasterxml.jackson.databind.JsonNode;
import io.vertx.core.Vertx;
import java.io.IOException;
import java.net.URI;
import java.net.http.HttpClient;
import java.net.http.HttpRequest;
import java.net.http.HttpResponse;
import java.util.ArrayList;
import java.util.List;
import java.util.UUID;
import java.util.concurrent.Callable;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;
import java.util.concurrent.TimeUnit;
import sunup.board.Command;
import sunup.board.CommandId;
import sunup.board.Evidence;
import sunup.board.ItemRef;
import sunup.board.ItemState;
import sunup.board.Private;
import sunup.codec.Json;
import sunup.sheets.EvidenceRule;
import sunup.wire.ClientMessage;
import sunup.wire.Part;
import sunup.wire.ServerMessage.Answer;

/** The suites of a group of hospitals on some nodes: their lists, a desk and a station of each. */
final class BenchGroup implements AutoCloseable {
  /** Suites that are served at the same time by the clients. */
  static final int AT_ONCE = 16;

  /** A command without an answer for so long is given again. */
  private static final long ANSWER_MS = 8_000;

  /** How long a frame takes is what is measured: one is missed only after this. */
  private static final long FRAME_MS = 30_000;

  private static final long AGAIN_MS = 250;
  private static final int ASKED_AT_MOST = 20;

  private final Vertx vertx = Vertx.vertx();
  private final HttpClient http =
      HttpClient.newBuilder().version(HttpClient.Version.HTTP_1_1).build();
  private final List<BenchNode> nodes;
  private final List<Suite> suites = new ArrayList<>();

  /** A suite's screens; used by one thread at a time. */
  static final class Suite {
    final String name;
    final BenchScreen desk;
    final BenchScreen station;
    private final List<ItemRef> open = new ArrayList<>();

    Suite(String name, BenchScreen desk, BenchScreen station) {
      this.name = name;
      this.desk = desk;
      this.station = station;
    }
  }

  BenchGroup(List<BenchNode> nodes) {
    this.nodes = List.copyOf(nodes);
  }

  List<Suite> suites() {
    return suites;
  }

  /** Gives each suite its list, opens its morning, and its screens at different nodes. */
  void begin(int count, String cases) throws Exception {
    List<Callable<Suite>> work = new ArrayList<>();
    for (int i = 0; i < count; i++) {
      int number = i;
      work.add(() -> made(count, number, cases));
    }
    suites.addAll(all(work, AT_ONCE));
  }

  private Suite made(int of, int number, String cases) throws Exception {
    String name = BenchSite.suite(of, number + 1);
    // The first node is the one that is killed later: no desk hangs on it.
    int away = nodes.size() == 1 ? 0 : 1 + number % (nodes.size() - 1);
    BenchScreen desk = BenchScreen.open(vertx, nodes.get(away).port(), "desk", "desk", name);
    String at = "http://127.0.0.1:" + nodes.get(away).port() + "/api/intake/";
    JsonNode preview = post(at + "preview?suite=" + name, cases);
    if (!preview.path("problems").isEmpty()) {
      throw new IllegalStateException("The list of " + name + ": " + preview.path("problems"));
    }
    post(at + "take?suite=" + name + "&hash=" + preview.path("hash").asText(), cases);
    Answer opened = told(desk, new Command.OpenMorning());
    if (opened.upTo() != null) {
      desk.frameAt(opened.upTo(), FRAME_MS);
    }
    int near = nodes.get(number % nodes.size()).port();
    BenchScreen station = BenchScreen.open(vertx, near, "station", "station-1", name);
    Suite suite = new Suite(name, desk, station);
    for (Part part : desk.parts()) {
      if (part instanceof Part.ItemPart item
          && item.room().equals("1")
          && item.section().isSetUp()
          && item.state() == ItemState.OPEN
          && item.asks().kind() == EvidenceRule.Kind.TOUCH
          && !item.asks().witness()) {
        suite.open.add(item.item());
      }
    }
    return suite;
  }

  private JsonNode post(String at, String csv) throws IOException, InterruptedException {
    HttpRequest request =
        HttpRequest.newBuilder(URI.create(at))
            .header("Content-Type", "text/csv")
            .POST(HttpRequest.BodyPublishers.ofString(csv))
            .build();
    for (int asked = 1; ; asked++) {
      HttpResponse<String> got = http.send(request, HttpResponse.BodyHandlers.ofString());
      if (got.statusCode() == 200) {
        return Json.mapper().readTree(got.body());
      }
      if (got.statusCode() != 503 || asked == ASKED_AT_MOST) {
        throw new IllegalStateException("A list was not taken: " + got.body());
      }
    }
  }

  /** Sends it until it is answered for good; the answer. */
  static Answer told(BenchScreen screen, Command command) throws Exception {
    CommandId id = new CommandId(UUID.randomUUID().toString());
    Answer last = null;
    for (int asked = 0; asked < ASKED_AT_MOST; asked++) {
      screen.send(new ClientMessage.Send(id, null, null, screen.morningNow(), 0, null, command));
      Answer answer = screen.answer(id, ANSWER_MS);
      if (answer != null && !answer.status().equals("later")) {
        return answer;
      }
      last = answer;
      Pacing.rest(AGAIN_MS, TimeUnit.MILLISECONDS);
    }
    throw new IllegalStateException("A command was not answered: " + last);
  }

  /** A touch at a suite's station; false if nothing is left to touch. */
  static boolean touch(Suite suite, Times answers, Times frames) throws Exception {
    if (suite.open.isEmpty()) {
      return false;
    }
    ItemRef item = suite.open.remove(suite.open.size() - 1);
    Command good = new Command.Good(item, new Evidence.Touch(), null, null);
    long from = System.nanoTime();
    Answer answer = told(suite.station, good);
    if (answer.upTo() == null) {
      throw new IllegalStateException("A touch was not taken: " + answer);
    }
    long answered = System.nanoTime() - from;
    long framed = suite.desk.frameAt(answer.upTo(), FRAME_MS) - from;
    synchronized (answers) {
      answers.add(answered);
      frames.add(framed);
    }
    return true;
  }

  /** A note at a suite's desk, kept for good. */
  static void note(Suite suite) throws Exception {
    Answer answer = told(suite.desk, new Command.AddNote(null, Private.of("still here")));
    if (!answer.status().equals("done")) {
      throw new IllegalStateException("A note was not taken: " + answer);
    }
  }

  /** Does all of it, so much at the same time. */
  static <T> List<T> all(List<Callable<T>> work, int atOnce) throws Exception {
    ExecutorService hands = Executors.newFixedThreadPool(atOnce);
    try {
      List<T> done = new ArrayList<>();
      for (Future<T> one : hands.invokeAll(work)) {
        done.add(one.get());
      }
      return done;
    } finally {
      hands.shutdownNow();
    }
  }

  @Override
  public void close() {
    vertx.close().toCompletionStage().toCompletableFuture().join();
  }
}
