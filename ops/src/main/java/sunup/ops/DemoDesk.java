package sunup.ops;

import com.fasterxml.jackson.databind.JsonNode;
import java.io.IOException;
import java.net.URI;
import java.net.http.HttpClient;
import java.net.http.HttpRequest;
import java.net.http.HttpResponse;
import java.net.http.WebSocket;
import java.nio.ByteBuffer;
import java.time.Duration;
import java.util.UUID;
import java.util.concurrent.ArrayBlockingQueue;
import java.util.concurrent.BlockingQueue;
import java.util.concurrent.CompletionStage;
import java.util.concurrent.CountDownLatch;
import java.util.concurrent.TimeUnit;
import sunup.board.Command;
import sunup.board.CommandId;
import sunup.codec.Json;
import sunup.wire.ClientMessage;

/** Does what somebody at the desk would do first: takes the case list and opens the morning. */
final class DemoDesk {
  private static final Duration PATIENCE = Duration.ofSeconds(20);

  /** Answers that wait to be looked at; there is never more than one. */
  private static final int ANSWERS = 4;

  private final String root;
  private final HttpClient http =
      HttpClient.newBuilder().version(HttpClient.Version.HTTP_1_1).connectTimeout(PATIENCE).build();

  /**
   * @param port of a board on this machine
   */
  DemoDesk(int port) {
    this.root = "127.0.0.1:" + port;
  }

  /**
   * Takes the list, unless the board has cases already, and opens the morning unless it is open.
   *
   * @param nowMs the morning's time, epoch milliseconds
   */
  void begin(String cases, long nowMs) throws IOException, InterruptedException, Wrong {
    Answers answers = new Answers();
    WebSocket socket =
        http.newWebSocketBuilder()
            .subprotocols("sunup.1")
            .connectTimeout(PATIENCE)
            .buildAsync(URI.create("ws://" + root + "/live"), answers)
            .join();
    try {
      send(socket, new ClientMessage.Hello("demo-desk", "desk", null, null, null));
      // On several nodes nobody owns the morning for the first seconds; a view comes from its
      // owner.
      if (!answers.view.await(PATIENCE.toSeconds(), TimeUnit.SECONDS)) {
        throw Wrong.failed("The board showed nothing within " + PATIENCE.toSeconds() + " s.");
      }
      take(cases);
      JsonNode answer = tell(socket, answers, new Command.OpenMorning(), nowMs);
      boolean open = answer.path("code").asText().equals("already-open");
      if (!answer.path("status").asText().equals("done") && !open) {
        throw Wrong.failed("The demo's morning did not open: " + answer.path("words").asText());
      }
    } finally {
      socket.abort();
    }
  }

  private void take(String cases) throws IOException, InterruptedException, Wrong {
    JsonNode preview = post("preview", "", cases);
    if (preview.path("unchanged").asInt() == 0
        && preview.path("changed").isEmpty()
        && preview.path("removed").isEmpty()) {
      post("take", "?hash=" + preview.path("hash").asText(), cases);
    }
  }

  private JsonNode post(String what, String query, String csv)
      throws IOException, InterruptedException, Wrong {
    HttpRequest request =
        HttpRequest.newBuilder(URI.create("http://" + root + "/api/intake/" + what + query))
            .timeout(PATIENCE)
            .header("Content-Type", "text/csv")
            .POST(HttpRequest.BodyPublishers.ofString(csv))
            .build();
    HttpResponse<String> answer = http.send(request, HttpResponse.BodyHandlers.ofString());
    if (answer.statusCode() != 200) {
      throw Wrong.failed("The demo's case list was not taken: " + answer.body());
    }
    return Json.mapper().readTree(answer.body());
  }

  private static JsonNode tell(WebSocket socket, Answers answers, Command command, long nowMs)
      throws InterruptedException, Wrong {
    CommandId id = new CommandId(UUID.randomUUID().toString());
    long end = System.nanoTime() + PATIENCE.toNanos();
    while (System.nanoTime() < end) {
      send(socket, new ClientMessage.Send(id, null, null, nowMs, 0, null, command));
      JsonNode answer = answers.got.poll(PATIENCE.toSeconds(), TimeUnit.SECONDS);
      if (answer != null && !answer.path("status").asText().equals("later")) {
        return answer;
      }
    }
    throw Wrong.failed("The board did not answer the desk within " + PATIENCE.toSeconds() + " s.");
  }

  private static void send(WebSocket socket, ClientMessage message) {
    socket.sendBinary(ByteBuffer.wrap(Json.bytes(message)), true).join();
  }

  /** Keeps the answers to commands, tells of the first view and passes over all else. */
  private static final class Answers implements WebSocket.Listener {
    private final BlockingQueue<JsonNode> got = new ArrayBlockingQueue<>(ANSWERS);
    private final CountDownLatch view = new CountDownLatch(1);
    private final java.io.ByteArrayOutputStream message = new java.io.ByteArrayOutputStream();

    @Override
    public CompletionStage<?> onBinary(WebSocket socket, ByteBuffer data, boolean last) {
      byte[] part = new byte[data.remaining()];
      data.get(part);
      message.writeBytes(part);
      if (last) {
        try {
          JsonNode m = Json.mapper().readTree(message.toByteArray());
          if (m.path("m").asText().equals("answer")) {
            got.add(m);
          } else if (m.path("m").asText().equals("view")) {
            view.countDown();
          }
        } catch (IOException e) {
          socket.abort();
        }
        message.reset();
      }
      socket.request(1);
      return null;
    }
  }
}
