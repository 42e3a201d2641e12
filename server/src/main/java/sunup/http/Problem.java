package sunup.http;

import com.fasterxml.jackson.annotation.JsonInclude;
import io.vertx.core.buffer.Buffer;
import io.vertx.ext.web.RoutingContext;
import sunup.codec.Json;

/**
 * An error as the API tells it (RFC 9457, application/problem+json).
 *
 * @param title what is wrong, the same for all of a kind
 * @param status the HTTP status
 * @param detail this case, and what to do about it
 */
@JsonInclude(JsonInclude.Include.NON_NULL)
public record Problem(String title, int status, String detail) {
  public static final String TYPE = "application/problem+json";

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
