package sunup.ops.bench;

import io.vertx.core.buffer.Buffer;
import java.io.IOException;
import java.net.URI;
import java.net.http.HttpClient;
import java.net.http.HttpRequest;
import java.net.http.HttpResponse;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.UUID;
import java.util.regex.Pattern;
import sunup.board.Command;
import sunup.board.CommandId;
import sunup.board.Private;
import sunup.codec.Json;
import sunup.wire.ClientMessage;

/** What is measured, and how it is spoken to. */
enum WireServer {
  BOARD,
  VERTX,
  NODE,
  BROKER;

  /**
   * The board's screens watch a morning so many days from now, of which there is no forecast yet:
   * the wire alone is measured.
   */
  private static final int DAYS_AHEAD = 5;

  private static final String CSV =
      """
      room,start,technique,size,options,procedure,service,surgeon,age_group,case
      1,07:30,general,adult,,Knee,orthopaedics,surgeon-1,,c1
      """;

  private static final Pattern PORT = Pattern.compile("^port (\\d+)");
  private static final byte[] MQTT_CONNACK = {0x20};
  private static final String TOPIC = "t";

  ServerProcess start(Path folder) throws Exception {
    Files.createDirectories(folder);
    Path log = folder.resolve("log");
    return switch (this) {
      case BOARD -> board(folder, log);
      case VERTX -> ServerProcess.start(java(List.of(), BareLoop.class.getName()), log, PORT);
      case NODE -> node("broadcast.mjs", log);
      case BROKER -> node("broker.mjs", log);
    };
  }

  private static List<String> java(List<String> options, String... main) {
    List<String> line = new ArrayList<>();
    line.add(Path.of(System.getProperty("java.home"), "bin", "java").toString());
    line.add("-Xmx512m");
    line.addAll(options);
    line.addAll(List.of("-cp", System.getProperty("java.class.path")));
    line.addAll(List.of(main));
    return line;
  }

  private static ServerProcess board(Path folder, Path log) throws Exception {
    ServerProcess board =
        ServerProcess.start(
            java(
                List.of("-Dsunup.home=" + folder),
                "sunup.ops.Main",
                "run",
                "--empty",
                "--screens-from-one-address",
                "4096",
                "--port",
                "0",
                "--data",
                folder.toString()),
            log,
            Pattern.compile("^board http://127.0.0.1:(\\d+)/"));
    String root = "http://127.0.0.1:" + board.port() + "/api/intake/";
    String preview = post(root + "preview?date=" + date());
    String hash = Json.mapper().readTree(preview).path("hash").asText();
    post(root + "take?date=" + date() + "&hash=" + hash);
    return board;
  }

  private static String date() {
    return LocalDate.now(java.time.ZoneOffset.UTC).plusDays(DAYS_AHEAD).toString();
  }

  private static String post(String url) throws IOException, InterruptedException {
    HttpResponse<String> answer =
        HttpClient.newHttpClient()
            .send(
                HttpRequest.newBuilder(URI.create(url))
                    .version(HttpClient.Version.HTTP_1_1)
                    .header("Content-Type", "text/csv")
                    .POST(HttpRequest.BodyPublishers.ofString(CSV))
                    .build(),
                HttpResponse.BodyHandlers.ofString());
    if (answer.statusCode() != 200) {
      throw new IOException("the board did not take the list: " + answer.body());
    }
    return answer.body();
  }

  private static ServerProcess node(String script, Path log) throws IOException {
    return ServerProcess.start(
        List.of(
            "node",
            Path.of("src/bench/node", script).toAbsolutePath().toString(),
            WireBench.nodeModules().toString()),
        log,
        PORT);
  }

  String path() {
    return this == BOARD ? "/live" : this == BROKER ? "/mqtt" : "/";
  }

  /** Null for none. */
  String subprotocol() {
    return this == BOARD ? "sunup.1" : this == BROKER ? "mqtt" : null;
  }

  /** What a screen says first, or null. */
  Buffer hello(String name) throws IOException {
    return switch (this) {
      case BOARD -> board(new ClientMessage.Hello(name, "desk", null, null, null, date(), null));
      case BROKER -> mqttConnect(name);
      default -> null;
    };
  }

  /** What a screen says after the first thing that it hears, or null. */
  Buffer second(Buffer heard) {
    return this == BROKER && heard.getByte(0) == MQTT_CONNACK[0] ? mqttSubscribe() : null;
  }

  /** True if the message is the one after which a screen has what there is. */
  boolean ready(Buffer heard) {
    return switch (this) {
      case BOARD -> heard.getString(0, Math.min(14, heard.length())).contains("\"view\"");
      case BROKER -> (heard.getByte(0) & 0xf0) == 0x90;
      default -> false;
    };
  }

  /**
   * One change.
   *
   * @param text is found in it by who receives it
   * @param like a frame of the board with another text, which the others send on
   */
  Buffer change(String text, byte[] like) throws IOException {
    return switch (this) {
      case BOARD ->
          board(
              new ClientMessage.Send(
                  new CommandId(UUID.randomUUID().toString()),
                  null,
                  null,
                  System.currentTimeMillis(),
                  0,
                  null,
                  new Command.AddNote(null, Private.of(text))));
      case BROKER -> mqttPublish(WireScreen.withText(like, text));
      default -> Buffer.buffer(WireScreen.withText(like, text));
    };
  }

  /** What a page sends to the board once a second. */
  static Buffer tick() {
    return board(new ClientMessage.Tick(System.nanoTime() / 1_000_000));
  }

  private static Buffer board(ClientMessage message) {
    return Buffer.buffer(Json.bytes(message));
  }

  private static Buffer mqttConnect(String name) {
    byte[] id = name.getBytes(StandardCharsets.UTF_8);
    Buffer rest =
        Buffer.buffer()
            .appendUnsignedShort(4)
            .appendString("MQTT")
            .appendByte((byte) 4)
            .appendByte((byte) 2)
            .appendUnsignedShort(0)
            .appendUnsignedShort(id.length)
            .appendBytes(id);
    return mqtt(0x10, rest);
  }

  private static Buffer mqttSubscribe() {
    return mqtt(
        0x82,
        Buffer.buffer()
            .appendUnsignedShort(1)
            .appendUnsignedShort(TOPIC.length())
            .appendString(TOPIC)
            .appendByte((byte) 0));
  }

  private static Buffer mqttPublish(byte[] payload) {
    return mqtt(
        0x30,
        Buffer.buffer()
            .appendUnsignedShort(TOPIC.length())
            .appendString(TOPIC)
            .appendBytes(payload));
  }

  private static Buffer mqtt(int head, Buffer rest) {
    Buffer all = Buffer.buffer().appendByte((byte) head);
    int left = rest.length();
    do {
      int digit = left % 128;
      left /= 128;
      all.appendByte((byte) (left > 0 ? digit | 0x80 : digit));
    } while (left > 0);
    return all.appendBuffer(rest);
  }
}
