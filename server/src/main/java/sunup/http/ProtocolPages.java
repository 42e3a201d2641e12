package sunup.http;

import io.vertx.core.buffer.Buffer;
import io.vertx.ext.web.Router;
import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;

/** The protocol as documents for programs. Tests compare them with the code. */
final class ProtocolPages {
  static final String ASYNC = "asyncapi.json";
  static final String OPEN = "openapi.json";

  void mount(Router router) {
    for (String name : new String[] {ASYNC, OPEN}) {
      Buffer bytes = Buffer.buffer(read(name));
      router
          .get("/protocol/" + name)
          .handler(
              context ->
                  context
                      .response()
                      .putHeader("Content-Type", "application/json")
                      .putHeader("Cache-Control", "no-cache")
                      .end(bytes));
    }
  }

  static byte[] read(String name) {
    try (InputStream in = ProtocolPages.class.getResourceAsStream("/protocol/" + name)) {
      if (in == null) {
        throw new IllegalStateException("protocol/" + name + " is missing from the program");
      }
      return in.readAllBytes();
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }
}
