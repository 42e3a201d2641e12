package sunup.http;

import com.fasterxml.jackson.annotation.JsonInclude;
import io.vertx.ext.web.Router;
import io.vertx.ext.web.RoutingContext;
import java.util.function.Supplier;
import sunup.cluster.Cluster;
import sunup.codec.Maybe;
import sunup.live.Mornings;

/** Whether the server is alive, and whether it can take commands. */
final class Health {
  private final Mornings mornings;
  private final Supplier<Cluster.State> cluster;

  /**
   * @param cluster how this node sees it; gives null for one node alone
   */
  Health(Mornings mornings, Supplier<Cluster.State> cluster) {
    this.mornings = mornings;
    this.cluster = cluster;
  }

  /**
   * @param status up or down
   * @param morning the one that screens see
   * @param journal answers, read-only, silent or opening
   * @param loopback true: this machine only
   * @param cluster the nodes as this one sees them; none for one node alone
   */
  @JsonInclude(JsonInclude.Include.NON_NULL)
  record Status(
      String status,
      String morning,
      String journal,
      boolean loopback,
      @Maybe Cluster.State cluster) {}

  void mount(Router router) {
    router.get("/health/live").handler(context -> Answers.json(context, 200, new Live("up")));
    router.get("/health").handler(this::ready);
    router.get("/health/ready").handler(this::ready);
  }

  /** Answers at all. */
  record Live(String status) {}

  private void ready(RoutingContext context) {
    String journal = mornings.journal();
    Cluster.State nodes = cluster.get();
    boolean up = mornings.tells() && (nodes == null || !nodes.leaving());
    Status status =
        new Status(up ? "up" : "down", mornings.today().toString(), journal, true, nodes);
    Answers.json(context, up ? 200 : 503, status);
  }
}
