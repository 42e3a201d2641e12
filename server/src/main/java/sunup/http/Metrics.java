package sunup.http;

import io.vertx.ext.web.Router;
import io.vertx.ext.web.RoutingContext;
import java.lang.management.GarbageCollectorMXBean;
import java.lang.management.ManagementFactory;
import java.util.Locale;
import java.util.Map;
import sunup.access.Refusals;
import sunup.live.LiveEndpoint;
import sunup.suites.Clock;
import sunup.tls.Identity;

/** Figures of the program for a machine that collects them, in the text format 0.0.4. */
final class Metrics {
  static final String PATH = "/metrics";
  private static final String TYPE = "text/plain; version=0.0.4; charset=utf-8";

  private final Clock clock;
  private final Health health;
  private final LiveEndpoint live;
  private final Connected connected;
  private final Refusals refusals;
  private final Identity identity;

  /**
   * @param identity null without TLS
   */
  Metrics(
      Clock clock,
      Health health,
      LiveEndpoint live,
      Connected connected,
      Refusals refusals,
      Identity identity) {
    this.clock = clock;
    this.health = health;
    this.live = live;
    this.connected = connected;
    this.refusals = refusals;
    this.identity = identity;
  }

  void mount(Router router) {
    router.get(PATH).handler(this::tell);
  }

  private void tell(RoutingContext context) {
    context
        .response()
        .putHeader("Content-Type", TYPE)
        .putHeader("Cache-Control", "no-store")
        .end(text());
  }

  String text() {
    StringBuilder out = new StringBuilder();
    Health.Status status = health.status();
    gauge(out, "sunup_up", "1 if it takes commands.", status.status().equals("up") ? 1 : 0);
    gauge(out, "sunup_suites", "Suites served.", status.suites());
    gauge(out, "sunup_suites_told", "Suites whose screens are told what is.", status.told());
    gauge(out, "sunup_sockets", "Open sockets of screens.", live.count());
    gauge(out, "sunup_connections", "Open connections.", connected.count());
    gauge(out, "sunup_clock_rate", "Morning seconds a real second; 1 but in a demo.", clock.rate());
    head(out, "sunup_refused_total", "Refused at the door, by reason.", "counter");
    for (Map.Entry<String, Long> each : refusals.counts().entrySet()) {
      String name = "sunup_refused_total{reason=\"" + each.getKey() + "\"}";
      line(out, name, each.getValue().doubleValue());
    }
    if (identity != null) {
      gauge(
          out,
          "sunup_certificate_end_seconds",
          "When the certificate runs out, seconds since 1970.",
          (double) identity.until().getEpochSecond());
    }
    machine(out);
    return out.toString();
  }

  private static void machine(StringBuilder out) {
    Runtime runtime = Runtime.getRuntime();
    gauge(
        out,
        "sunup_heap_bytes",
        "Heap in use.",
        (double) (runtime.totalMemory() - runtime.freeMemory()));
    gauge(out, "sunup_heap_max_bytes", "Heap at most.", (double) runtime.maxMemory());
    gauge(out, "sunup_threads", "Threads.", ManagementFactory.getThreadMXBean().getThreadCount());
    long collected =
        ManagementFactory.getGarbageCollectorMXBeans().stream()
            .mapToLong(GarbageCollectorMXBean::getCollectionTime)
            .sum();
    head(out, "sunup_gc_seconds_total", "Time spent collecting garbage.", "counter");
    line(out, "sunup_gc_seconds_total", collected / 1_000.0);
    gauge(
        out,
        "sunup_uptime_seconds",
        "Since the program began.",
        ManagementFactory.getRuntimeMXBean().getUptime() / 1_000.0);
  }

  private static void gauge(StringBuilder out, String name, String help, double value) {
    head(out, name, help, "gauge");
    line(out, name, value);
  }

  private static void head(StringBuilder out, String name, String help, String type) {
    out.append("# HELP ").append(name).append(' ').append(help).append('\n');
    out.append("# TYPE ").append(name).append(' ').append(type).append('\n');
  }

  private static void line(StringBuilder out, String name, double value) {
    String figure =
        value == Math.rint(value)
            ? String.format(Locale.ROOT, "%.0f", value)
            : String.valueOf(value);
    out.append(name).append(' ').append(figure).append('\n');
  }
}
