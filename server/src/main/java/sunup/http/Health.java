package sunup.http;

import io.vertx.ext.web.Router;
import io.vertx.ext.web.RoutingContext;
import sunup.live.Mornings;
import sunup.suites.Clock;
import sunup.suites.Standpoint;

/** Whether the server is alive, and whether it can take commands. */
final class Health {
  /** Age of the journal's confirmation beyond which it counts as away, milliseconds. */
  private static final long CONFIRMED_MS = 2_000;

  private final Mornings mornings;
  private final Clock clock;

  Health(Mornings mornings, Clock clock) {
    this.mornings = mornings;
    this.clock = clock;
  }

  /**
   * @param status up or down
   * @param morning the one that screens see
   * @param journal answers, read-only, silent or opening
   * @param loopback true: this machine only
   */
  record Status(String status, String morning, String journal, boolean loopback) {}

  void mount(Router router) {
    router.get("/health/live").handler(context -> Answers.json(context, 200, new Live("up")));
    router.get("/health").handler(this::ready);
    router.get("/health/ready").handler(this::ready);
  }

  /** Answers at all. */
  record Live(String status) {}

  private void ready(RoutingContext context) {
    String journal = journal(mornings.standpoint());
    boolean up = journal.equals("answers");
    Status status = new Status(up ? "up" : "down", mornings.today().toString(), journal, true);
    Answers.json(context, up ? 200 : 503, status);
  }

  private String journal(Standpoint at) {
    if (at == null) {
      return "opening";
    }
    if (at.readOnly()) {
      return "read-only";
    }
    return clock.monotonicMs() - at.confirmedAt() <= CONFIRMED_MS ? "answers" : "silent";
  }
}
