package sunup.ops;

import com.fasterxml.jackson.databind.JsonNode;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.net.URI;
import java.net.http.HttpClient;
import java.net.http.WebSocket;
import java.nio.ByteBuffer;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.concurrent.CompletionStage;
import java.util.function.Predicate;
import sunup.codec.Json;
import sunup.wire.ClientMessage;

/** A screen on a real socket that keeps what it is shown. */
final class TestScreen implements WebSocket.Listener, AutoCloseable {
  private static final long PATIENCE_MS = 120_000;
  private final ByteArrayOutputStream message = new ByteArrayOutputStream();
  private final Map<String, JsonNode> parts = new TreeMap<>();
  private final Map<String, JsonNode> answers = new HashMap<>();
  private final List<JsonNode> rooms = new ArrayList<>();
  private final List<String> heard = new ArrayList<>();
  private final boolean keepsAll;
  private WebSocket socket;
  private long upTo;
  private long clock;
  private boolean viewed;

  private TestScreen(boolean keepsAll) {
    this.keepsAll = keepsAll;
  }

  /**
   * @param keepsAll true to keep every message as text
   */
  static TestScreen open(int port, String page, boolean keepsAll) {
    TestScreen screen = new TestScreen(keepsAll);
    screen.socket =
        HttpClient.newHttpClient()
            .newWebSocketBuilder()
            .subprotocols("sunup.1")
            .buildAsync(URI.create("ws://127.0.0.1:" + port + "/live"), screen)
            .join();
    screen.send(new ClientMessage.Hello("test-" + page, page, null, null, null));
    screen.await(s -> s.viewed && s.clock > 0);
    return screen;
  }

  void send(ClientMessage m) {
    socket.sendBinary(ByteBuffer.wrap(Json.bytes(m)), true).join();
  }

  @Override
  public CompletionStage<?> onBinary(WebSocket ws, ByteBuffer data, boolean last) {
    byte[] part = new byte[data.remaining()];
    data.get(part);
    message.writeBytes(part);
    if (last) {
      hear(message.toByteArray());
      message.reset();
    }
    ws.request(1);
    return null;
  }

  private synchronized void hear(byte[] bytes) {
    JsonNode m;
    try {
      m = Json.mapper().readTree(bytes);
    } catch (IOException e) {
      throw new IllegalStateException(e);
    }
    if (keepsAll) {
      heard.add(m.toString());
    }
    switch (m.path("m").asText()) {
      case "view" -> {
        parts.clear();
        viewed = true;
        upTo = m.path("upTo").asLong();
        m.path("parts").forEach(this::show);
      }
      case "frame" -> {
        upTo = m.path("upTo").asLong();
        m.path("gone").forEach(key -> parts.remove(key.asText()));
        m.path("set").forEach(this::show);
      }
      case "beat" -> clock = m.path("morningClock").asLong();
      case "answer" -> answers.put(m.path("id").asText(), m);
      default -> {}
    }
    notifyAll();
  }

  private void show(JsonNode part) {
    parts.put(part.path("key").asText(), part);
    if (part.path("part").asText().equals("room")) {
      rooms.add(part);
    }
  }

  /** Waits until the screen has been told something that makes it so. */
  synchronized void await(Predicate<TestScreen> so) {
    long end = System.nanoTime() / 1_000_000 + PATIENCE_MS;
    while (!so.test(this)) {
      long left = end - System.nanoTime() / 1_000_000;
      if (left <= 0) {
        throw new AssertionError("it did not come about; the screen shows " + parts.keySet());
      }
      try {
        wait(left);
      } catch (InterruptedException e) {
        Thread.currentThread().interrupt();
        throw new IllegalStateException(e);
      }
    }
  }

  synchronized Map<String, JsonNode> parts() {
    return new TreeMap<>(parts);
  }

  synchronized JsonNode part(String key) {
    return parts.get(key);
  }

  synchronized JsonNode answer(String id) {
    return answers.get(id);
  }

  /** Every form of every room that was shown, in order. */
  synchronized List<JsonNode> rooms() {
    return List.copyOf(rooms);
  }

  synchronized List<String> heard() {
    return List.copyOf(heard);
  }

  synchronized long upTo() {
    return upTo;
  }

  synchronized long clock() {
    return clock;
  }

  @Override
  public void close() {
    socket.abort();
  }
}
