package sunup.ops.bench;

import io.vertx.core.Vertx;
import io.vertx.core.http.HttpServerOptions;
import io.vertx.core.http.ServerWebSocket;
import java.util.Set;
import java.util.concurrent.ConcurrentHashMap;

/** A bare Vert.x loop: what comes in goes to everybody as one shared buffer. */
public final class BareLoop {
  private BareLoop() {}

  /** Listens on a free port and says which. */
  public static void main(String[] args) {
    Vertx vertx = Vertx.vertx();
    Set<ServerWebSocket> all = ConcurrentHashMap.newKeySet();
    vertx
        .createHttpServer(
            new HttpServerOptions()
                .setHost("127.0.0.1")
                .setPort(0)
                .setPerFrameWebSocketCompressionSupported(false)
                .setPerMessageWebSocketCompressionSupported(false))
        .webSocketHandler(
            socket -> {
              all.add(socket);
              socket.closeHandler(v -> all.remove(socket));
              socket.exceptionHandler(e -> {});
              socket.binaryMessageHandler(
                  bytes ->
                      all.forEach(
                          one -> {
                            if (!one.isClosed()) {
                              one.writeBinaryMessage(bytes);
                            }
                          }));
            })
        .listen()
        .onSuccess(server -> System.out.println("port " + server.actualPort()))
        .onFailure(e -> System.exit(1));
  }
}
