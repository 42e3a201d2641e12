package sunup.http;

import io.vertx.ext.web.RoutingContext;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.stream.Collectors;
import sunup.intake.SiteFile;
import sunup.live.Mornings;
import sunup.live.MorningsBySuite;

/** The suites of this server, each with what its site file says and its mornings. */
final class Hosted {
  private final Map<String, Suite> suites = new LinkedHashMap<>();
  private final MorningsBySuite mornings;

  /** One of them. */
  record Suite(SiteFile site, Mornings mornings) {}

  Hosted(List<Suite> all) {
    this.mornings = new MorningsBySuite(all.stream().map(Suite::mornings).toList());
    all.forEach(one -> suites.put(one.site().suite().value(), one));
  }

  MorningsBySuite mornings() {
    return mornings;
  }

  List<Suite> all() {
    return List.copyOf(suites.values());
  }

  /**
   * The suite that a request is for: its parameter {@code suite}, or the first.
   *
   * @throws Answers.Wrong 404 if there is none of this id
   */
  Suite asked(RoutingContext context) throws Answers.Wrong {
    String id = context.request().getParam("suite");
    Suite found = id == null || id.isEmpty() ? suites.values().iterator().next() : suites.get(id);
    if (found == null) {
      String some = suites.keySet().stream().limit(10).collect(Collectors.joining(", "));
      throw new Answers.Wrong(
          "No such suite",
          404,
          "This server has " + some + (suites.size() > 10 ? " and more" : "") + ".");
    }
    return found;
  }
}
