package sunup.http;

import io.vertx.core.buffer.Buffer;
import io.vertx.core.http.HttpServerResponse;
import io.vertx.ext.web.Router;
import io.vertx.ext.web.RoutingContext;
import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.util.Map;
import java.util.Optional;
import java.util.concurrent.ConcurrentHashMap;
import java.util.regex.Pattern;

/**
 * The built pages, read from the class path once and kept. Files under {@code assets/} carry a hash
 * in their name and may be cached for ever; pages are asked for each time.
 */
final class Webroot {
  /** Files kept in memory; more are served too, but read each time. */
  private static final int KEPT_MAX = 256;

  private static final Pattern ASSET = Pattern.compile("/assets/[A-Za-z0-9._-]{1,120}");
  private static final Pattern TOP = Pattern.compile("/[A-Za-z0-9_-]{1,60}\\.[a-z0-9]{2,12}");
  private static final Map<String, String> TYPES =
      Map.ofEntries(
          Map.entry("html", "text/html; charset=utf-8"),
          Map.entry("js", "text/javascript; charset=utf-8"),
          Map.entry("css", "text/css; charset=utf-8"),
          Map.entry("svg", "image/svg+xml"),
          Map.entry("json", "application/json"),
          Map.entry("webmanifest", "application/manifest+json"),
          Map.entry("png", "image/png"),
          Map.entry("ico", "image/x-icon"),
          Map.entry("woff2", "font/woff2"),
          Map.entry("txt", "text/plain; charset=utf-8"));

  private final String root;
  private final Map<String, Buffer> kept = new ConcurrentHashMap<>();

  /**
   * @param root folder on the class path, without a slash at its end
   */
  Webroot(String root) {
    this.root = root;
  }

  void mount(Router router) {
    router.get("/").handler(context -> page(context, "index"));
    for (String page :
        new String[] {
          "wall", "desk", "holding", "station", "pocket", "paper", "review", "sheets"
        }) {
      router.get("/" + page).handler(context -> page(context, page));
    }
    router.get("/station/:room").handler(context -> page(context, "station"));
    router
        .getWithRegex("/assets/.*")
        .handler(context -> file(context, ASSET, "public, max-age=31536000, immutable"));
    router.getWithRegex("/[^/]+\\.[a-z0-9]+").handler(context -> file(context, TOP, "no-cache"));
  }

  private void page(RoutingContext context, String name) {
    Optional<Buffer> html = read("/" + name + ".html");
    if (html.isEmpty()) {
      new Problem("No pages", 503, "The pages are not built. Start the board with ops/run.")
          .send(context);
    } else {
      send(context, html.get(), TYPES.get("html"), "no-cache");
    }
  }

  private void file(RoutingContext context, Pattern allowed, String caching) {
    String path = context.normalizedPath();
    String type = TYPES.get(path.substring(path.lastIndexOf('.') + 1));
    Optional<Buffer> bytes =
        allowed.matcher(path).matches() && type != null ? read(path) : Optional.empty();
    if (bytes.isEmpty()) {
      context.next();
    } else {
      send(context, bytes.get(), type, caching);
    }
  }

  private static void send(RoutingContext context, Buffer bytes, String type, String caching) {
    HttpServerResponse response = context.response();
    response.putHeader("Content-Type", type).putHeader("Cache-Control", caching).end(bytes);
  }

  private Optional<Buffer> read(String path) {
    Buffer known = kept.get(path);
    if (known != null) {
      return Optional.of(known);
    }
    try (InputStream in = Webroot.class.getClassLoader().getResourceAsStream(root + path)) {
      if (in == null) {
        return Optional.empty();
      }
      Buffer bytes = Buffer.buffer(in.readAllBytes());
      if (kept.size() < KEPT_MAX) {
        kept.put(path, bytes);
      }
      return Optional.of(bytes);
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }
}
