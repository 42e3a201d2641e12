package sunup.http;

import io.vertx.core.buffer.Buffer;
import io.vertx.ext.web.RoutingContext;
import sunup.codec.Json;

/**
 * An error as the API tells it (RFC 9457, application/problem+json).
 *
 * @param title what is wrong, the same for all of a kind
 * @param status the HTTP status
 * @param detail this case, and what to do about it
 * @param words the same, under the name that sentences for people have on the wire
 */
public record Problem(String title, int status, String detail, String words) {
  public static final String TYPE = "application/problem+json";

  Problem(String title, int status, String detail) {
    this(title, status, detail, detail);
  }

  void send(RoutingContext context) {
    if (!context.response().ended()) {
      context
          .response()
          .setStatusCode(status)
          .putHeader("Content-Type", TYPE)
          .putHeader("Cache-Control", "no-store")
          .end(Buffer.buffer(Json.bytes(this)));
    }
  }
}
