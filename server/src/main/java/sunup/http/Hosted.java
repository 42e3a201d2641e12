package sunup.http;

import io.vertx.ext.web.RoutingContext;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.stream.Collectors;
import sunup.access.Access;
import sunup.board.SuiteId;
import sunup.intake.SiteFile;
import sunup.live.Mornings;
import sunup.live.MorningsBySuite;

/** The suites of this server, each with what its site file says and its mornings. */
final class Hosted {
  /** Suites that an answer names before it says "and more". */
  private static final int NAMED_MOST = 10;

  private final MorningsBySuite mornings;
  private final Map<SuiteId, SiteFile> sites = new HashMap<>();

  /** One of them. */
  record Suite(SiteFile site, Mornings mornings) {}

  Hosted(List<Suite> all) {
    this.mornings = new MorningsBySuite(all.stream().map(Suite::mornings).toList());
    all.forEach(one -> sites.put(one.site().suite(), one.site()));
  }

  MorningsBySuite mornings() {
    return mornings;
  }

  List<Suite> all() {
    return mornings.all().stream().map(this::suite).toList();
  }

  private Suite suite(Mornings one) {
    return new Suite(sites.get(one.suite()), one);
  }

  /**
   * The suite that a request is for, by its parameter {@code suite}.
   *
   * @throws Answers.Wrong 404 if there is none of this id
   */
  Suite asked(RoutingContext context) throws Answers.Wrong {
    String named = context.request().getParam("suite");
    Access.Asker asker = Guard.asker(context);
    if (asker != null) {
      String own = asker.suite().value();
      if (named != null && !named.equals(own)) {
        throw new Answers.Wrong("Not allowed", 403, "This screen is of another suite.");
      }
      named = own;
    }
    return mornings
        .named(named)
        .map(this::suite)
        .orElseThrow(() -> new Answers.Wrong("No such suite", 404, named()));
  }

  private String named() {
    String some =
        mornings.all().stream()
            .limit(NAMED_MOST)
            .map(one -> one.suite().value())
            .collect(Collectors.joining(", "));
    return "This server has " + some + (sites.size() > NAMED_MOST ? " and more" : "") + ".";
  }
}
