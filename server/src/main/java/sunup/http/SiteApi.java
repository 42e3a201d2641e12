package sunup.http;

import io.vertx.core.Vertx;
import io.vertx.ext.web.Router;
import java.util.List;
import java.util.concurrent.Executor;
import sunup.board.HouseStyle;
import sunup.board.Step;
import sunup.codec.Maybe;
import sunup.editions.Editions;
import sunup.intake.SiteFile;
import sunup.sheets.Sheets;

/** What the site's file and the sheets say, for the desk. */
final class SiteApi {
  static final String PATH = "/api/site";
  static final String SUITES = "/api/suites";

  private final Hosted hosted;
  private final Vertx vertx;
  private final Executor pool;
  private final Editions editions;

  SiteApi(Vertx vertx, Executor pool, Hosted hosted, Editions editions) {
    this.vertx = vertx;
    this.pool = pool;
    this.hosted = hosted;
    this.editions = editions;
  }

  /** A suite of this server. */
  record SuiteName(String suite, String hospital, String suiteName, int rooms) {}

  /** The suites of this server; the first is that of addresses which name none. */
  record SuiteNames(List<SuiteName> suites) {}

  /**
   * The site.
   *
   * @param date today by the morning's time, in the site's zone
   * @param style how its pages write, if its file says anything of it
   */
  record Site(
      String suite,
      String hospital,
      String suiteName,
      String zone,
      String date,
      Step startEvent,
      int graceMinutes,
      boolean demo,
      @Maybe HouseStyle style,
      List<Room> rooms,
      List<Choice> techniques,
      List<Choice> options,
      List<Thing> units,
      List<Thing> places) {}

  /** A room and the options that every case in it has. */
  record Room(String room, List<String> options) {}

  /** What a case list may name. */
  record Choice(String name, String title) {}

  /** A piece of equipment, or a place. */
  record Thing(String id, String label) {}

  void mount(Router router) {
    router.get(PATH).handler(c -> Answers.later(vertx, c, pool, () -> now(hosted.asked(c))));
    router.get(SUITES).handler(c -> Answers.json(c, 200, suites()));
  }

  private SuiteNames suites() {
    return new SuiteNames(
        hosted.all().stream().map(Hosted.Suite::site).map(SiteApi::name).toList());
  }

  private static SuiteName name(SiteFile site) {
    return new SuiteName(
        site.suite().value(),
        site.settings().hospital(),
        site.settings().suiteName(),
        site.rooms().size());
  }

  private Site now(Hosted.Suite suite) throws Answers.Wrong {
    SiteFile site = suite.site();
    Sheets sheets = UsableSheets.of(() -> editions.current(site.suite()));
    return new Site(
        site.suite().value(),
        site.settings().hospital(),
        site.settings().suiteName(),
        site.settings().zone(),
        suite.mornings().today().date().toString(),
        site.settings().startEvent(),
        site.settings().graceMinutes(),
        site.settings().demo(),
        site.settings().style(),
        site.rooms().stream().map(r -> new Room(r.id().value(), r.options())).toList(),
        sheets.techniques().stream().map(c -> new Choice(c.name(), c.title())).toList(),
        sheets.options().stream().map(c -> new Choice(c.name(), c.title())).toList(),
        site.units().stream().map(u -> new Thing(u.id().value(), u.wall())).toList(),
        site.places().stream().map(p -> new Thing(p.id().value(), p.wall())).toList());
  }
}
