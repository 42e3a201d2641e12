package sunup.http;

import com.fasterxml.jackson.annotation.JsonInclude;
import io.vertx.ext.web.Router;
import io.vertx.ext.web.RoutingContext;
import java.util.function.BooleanSupplier;
import java.util.function.Supplier;
import sunup.cluster.Routing;
import sunup.codec.Maybe;
import sunup.live.Mornings;
import sunup.live.MorningsBySuite;

/** Whether the server is alive, and whether it can take commands. */
final class Health {
  private final MorningsBySuite suites;
  private final boolean loopback;
  private final Supplier<Routing.State> cluster;
  private final BooleanSupplier warming;

  /** A node that has just joined has nothing yet to show. */
  private volatile boolean toldOnce;

  /**
   * @param loopback whether connections are taken from this machine only
   * @param cluster how this node sees it; gives null for one node alone
   * @param warming true while its code is not compiled: its screens would wait for seconds
   */
  Health(
      MorningsBySuite suites,
      boolean loopback,
      Supplier<Routing.State> cluster,
      BooleanSupplier warming) {
    this.suites = suites;
    this.loopback = loopback;
    this.cluster = cluster;
    this.warming = warming;
  }

  /**
   * What is told; to those who only ask whether to send it anything, the status alone.
   *
   * @param status up or down
   * @param morning the one that screens of the first suite see, or of the first that is not told
   * @param journal of that morning: answers, read-only, silent or opening
   * @param suites how many there are
   * @param told how many of them are told what is
   * @param loopback true: this machine only
   * @param cluster the nodes as this one sees them; none for one node alone
   */
  @JsonInclude(JsonInclude.Include.NON_NULL)
  record Status(
      String status,
      @Maybe String morning,
      @Maybe String journal,
      @Maybe Integer suites,
      @Maybe Integer told,
      @Maybe Boolean loopback,
      @Maybe Routing.State cluster) {}

  /**
   * @param inDetail false tells the status alone
   */
  void mount(Router router, boolean inDetail) {
    router.get("/health/live").handler(context -> Answers.json(context, 200, new Live("up")));
    router.get("/health").handler(context -> ready(context, inDetail));
    router.get("/health/ready").handler(context -> ready(context, inDetail));
  }

  /** Answers at all. */
  record Live(String status) {}

  private void ready(RoutingContext context, boolean inDetail) {
    Status told = status();
    Status answer = inDetail ? told : new Status(told.status(), null, null, null, null, null, null);
    Answers.json(context, told.status().equals("up") ? 200 : 503, answer);
  }

  /** A node that is slow for a moment takes no screens while others can have them. */
  private boolean leftToOthers(Routing.State nodes) {
    return warming.getAsBoolean() && nodes.nodes().size() > 1;
  }

  /**
   * Whether a proxy should give it screens: not if another node could tell them more. A morning
   * that nobody can tell, as its owner died or the journal is away, is no reason: then all nodes
   * would be left at once, and no screen could even be told so.
   */
  private boolean up(Routing.State nodes, boolean allTold) {
    toldOnce |= allTold;
    boolean nobodyCould = toldOnce && nodes.amongMost() && nodes.unread().isEmpty();
    return (allTold || nobodyCould) && !nodes.leaving() && !leftToOthers(nodes);
  }

  Status status() {
    Routing.State nodes = cluster.get();
    int all = suites.all().size();
    int told = (int) suites.all().stream().filter(Mornings::tells).count();
    boolean up = nodes == null ? told == all : up(nodes, told == all);
    Mornings shown =
        suites.all().stream().filter(one -> !one.tells()).findFirst().orElse(suites.first());
    return new Status(
        up ? "up" : "down", shown.today().toString(), shown.journal(), all, told, loopback, nodes);
  }
}
