package sunup.ops.rehearsal;

import io.vertx.core.Future;
import io.vertx.core.Vertx;
import io.vertx.core.buffer.Buffer;
import io.vertx.core.http.HttpServer;
import io.vertx.core.http.HttpServerOptions;
import io.vertx.core.http.ServerWebSocket;
import java.util.ArrayList;
import java.util.List;
import java.util.function.Function;
import sunup.board.MorningId;
import sunup.codec.BadJson;
import sunup.codec.Json;
import sunup.wire.Audience;
import sunup.wire.ClientMessage;
import sunup.wire.ServerMessage;

/** A board on a real socket that answers as a test tells it to. */
final class FakeBoard {
  private static final int BEAT_MS = 20;
  private final Vertx vertx;
  private final MorningId morning;
  private final Function<ClientMessage.Send, ServerMessage.Answer> answers;
  private final List<ServerWebSocket> sockets = new ArrayList<>();
  private final List<ClientMessage.Send> sent = new ArrayList<>();
  private HttpServer http;
  private volatile long clock;

  FakeBoard(
      Vertx vertx,
      MorningId morning,
      long clock,
      Function<ClientMessage.Send, ServerMessage.Answer> answers) {
    this.vertx = vertx;
    this.morning = morning;
    this.clock = clock;
    this.answers = answers;
  }

  Future<Integer> start() {
    http =
        vertx.createHttpServer(
            new HttpServerOptions()
                .setHost("127.0.0.1")
                .setPort(0)
                .addWebSocketSubProtocol(Line.SUBPROTOCOL));
    http.webSocketHandler(this::opened);
    vertx.setPeriodic(BEAT_MS, t -> beat());
    return http.listen().map(HttpServer::actualPort);
  }

  private synchronized void opened(ServerWebSocket socket) {
    sockets.add(socket);
    socket.handler(message -> heard(socket, message));
  }

  private synchronized void heard(ServerWebSocket socket, Buffer message) {
    try {
      ClientMessage m = Json.read(message.getBytes(), ClientMessage.class);
      if (m instanceof ClientMessage.Hello) {
        write(socket, new ServerMessage.View(morning, 1, 0, 0, 0, Audience.STAFF, List.of()));
      } else if (m instanceof ClientMessage.Send s) {
        sent.add(s);
        ServerMessage.Answer answer = answers.apply(s);
        if (answer == null) {
          socket.close();
        } else {
          write(socket, answer);
        }
      }
    } catch (BadJson e) {
      throw new IllegalStateException(e);
    }
  }

  private synchronized void beat() {
    sockets.removeIf(ServerWebSocket::isClosed);
    for (ServerWebSocket socket : sockets) {
      write(socket, new ServerMessage.Beat(morning, 1, 0, 0, clock, 1, 0, false));
    }
  }

  private static void write(ServerWebSocket socket, ServerMessage message) {
    socket.writeBinaryMessage(Buffer.buffer(Json.bytes(message)));
  }

  void clock(long now) {
    clock = now;
  }

  synchronized List<ClientMessage.Send> sent() {
    return List.copyOf(sent);
  }
}
