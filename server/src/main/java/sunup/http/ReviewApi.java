package sunup.http;

import io.vertx.core.Vertx;
import io.vertx.ext.web.Router;
import io.vertx.ext.web.RoutingContext;
import io.vertx.ext.web.handler.BodyHandler;
import java.math.BigDecimal;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.concurrent.Executor;
import sunup.archive.Archivist;
import sunup.archive.FactFigures;
import sunup.archive.FactStore;
import sunup.archive.Filter;
import sunup.board.MorningId;
import sunup.board.SuiteId;
import sunup.codec.Maybe;
import sunup.intake.History;
import sunup.review.Cost;
import sunup.review.Measures;
import sunup.review.Split;
import sunup.review.charts.MinutesByCause;
import sunup.review.charts.Period;
import sunup.review.charts.RunRule;
import sunup.review.charts.ShareChart;
import sunup.review.charts.ValueChart;
import sunup.review.facts.BoardSaid;
import sunup.review.learn.Closing;
import sunup.review.replay.PastWall;
import sunup.review.trial.Trial;
import sunup.review.trial.TrialApart;

/** The review's figures of the cases that the parameters let pass. */
final class ReviewApi {
  static final String ROOT = "/api/review";

  /** Of all drawing and dealing: the same question has the same answer. */
  static final long SEED = 20_260_302;

  private final Vertx vertx;
  private final Executor pool;
  private final Executor pasts;
  private final Hosted hosted;
  private final FactStore store;
  private final Archivist archivist;

  /**
   * @param pool answers questions about the figures
   * @param pasts plays past mornings, of which each may take seconds
   */
  ReviewApi(
      Vertx vertx,
      Executor pool,
      Executor pasts,
      Hosted hosted,
      FactStore store,
      Archivist archivist) {
    this.vertx = vertx;
    this.pool = pool;
    this.pasts = pasts;
    this.hosted = hosted;
    this.store = store;
    this.archivist = archivist;
  }

  /**
   * The measures.
   *
   * @param cost what the late minutes come to, or null if no price was given
   */
  record Summary(Measures measures, @Maybe Cost cost) {}

  /** The measures of one group. */
  record Group(String name, Measures measures) {}

  /** The measures of each group. */
  record Groups(List<Group> groups) {}

  /** A rule that charts are read by. */
  record Rule(RunRule rule, String words, String source) {
    static List<Rule> of(List<RunRule> rules) {
      return rules.stream().map(r -> new Rule(r, r.words(), r.source())).toList();
    }
  }

  /**
   * Shares on time by period.
   *
   * @param unjudged starts that are left out, as nobody knows whether they were on time
   */
  record Shares(ShareChart chart, List<Rule> rules, int unjudged) {}

  /** Mean minutes late by period. */
  record Minutes(ValueChart chart, List<Rule> rules) {}

  /** Computed and reported causes of late starts side by side; null if too few. */
  record Reasons(@Maybe List<MinutesByCause.Beside> rows) {}

  /** The board on trial in each group by itself, at each of its moments. */
  record TrialsApart(Split split, List<TrialApart> moments) {}

  /** The closed mornings of a suite, the newest first. */
  record Closed(List<LocalDate> dates) {}

  /** One row for each first case. */
  record Rows(List<FactFigures.Row> rows) {}

  /** What became of a file of history. */
  record Taken(long rows, List<Mistake> problems, String words) {}

  /** What is wrong in it, and where. */
  record Mistake(int line, String field, String message) {}

  /** A question about the cases that pass. */
  private interface Question {
    Object ask(FactFigures figures, ReviewQuery query) throws Answers.Wrong;
  }

  void mount(Router router) {
    get(router, "/choices", (f, q) -> f.choices(Filter.ALL.inSuite(q.suite())));
    get(router, "/measures", ReviewApi::summary);
    get(router, "/groups", (f, q) -> groups(f.measures(q.filter(), q.split())));
    get(router, "/shares", (f, q) -> shares(f, q));
    get(router, "/minutes", (f, q) -> minutes(f, q));
    get(router, "/causes", ReviewCauses::all);
    get(router, "/causes-apart", ReviewCauses::apart);
    get(router, "/causes-compared", ReviewCausesCompared::of);
    get(router, "/reasons", (f, q) -> new Reasons(f.sideBySide(q.filter())));
    get(router, "/rooms", (f, q) -> f.roomByWeekday(q.filter()));
    get(router, "/lateness", (f, q) -> f.lateness(q.filter()));
    get(router, "/compare", ReviewCompare::all);
    get(router, "/trial", (f, q) -> trial(f, q));
    get(router, "/trial-apart", ReviewApi::trialApart);
    get(router, "/learned", (f, q) -> closing(f, new SuiteId(q.suite())));
    get(router, "/closed", (f, q) -> new Closed(f.closed(new SuiteId(q.suite()))));
    router
        .get(ROOT + "/past")
        .handler(c -> Answers.later(vertx, c, pasts, () -> kept(f -> past(query(c)))));
    router.get(ROOT + "/rows").handler(this::rows);
    router.get(ROOT + "/archive").handler(c -> Answers.now(c, archivist::progress));
    router
        .post(ROOT + "/remake")
        .handler(
            c ->
                Answers.now(
                    c,
                    () -> {
                      suite(c);
                      archivist.remake();
                      return archivist.progress();
                    }));
    BodyHandler bodies = BodyHandler.create(false).setBodyLimit(History.MAX_BYTES);
    router.post(ROOT + "/history").handler(bodies).handler(this::history);
  }

  private void get(Router router, String path, Question question) {
    router
        .get(ROOT + path)
        .handler(c -> Answers.later(vertx, c, pool, () -> kept(f -> question.ask(f, query(c)))));
  }

  /** Work on the figures, if they can be had. */
  private interface OnFigures<T> {
    T with(FactFigures figures) throws Answers.Wrong;
  }

  private <T> T kept(OnFigures<T> work) throws Answers.Wrong {
    try {
      return work.with(store.figures());
    } catch (FactStore.Trouble e) {
      throw new Answers.Wrong("Not now", 503, e.getMessage());
    }
  }

  private ReviewQuery query(RoutingContext context) throws Answers.Wrong {
    return new ReviewQuery(suite(context).site().suite().value(), context.request().params());
  }

  private Hosted.Suite suite(RoutingContext context) throws Answers.Wrong {
    Hosted.Suite suite = hosted.asked(context);
    Guard.mustBeDesk(
        Guard.asker(context), suite.site().suite(), "The review is for the suite's own desk.");
    return suite;
  }

  private static Summary summary(FactFigures figures, ReviewQuery query) throws Answers.Wrong {
    Measures measures = figures.measures(query.filter());
    BigDecimal price = query.price();
    if (price == null || measures.figures() == null) {
      return new Summary(measures, null);
    }
    try {
      Cost.Price site = new Cost.Price(price, query.text("currency"), query.text("source"));
      return new Summary(measures, Cost.of(measures.figures().minutes().total(), site));
    } catch (IllegalArgumentException e) {
      throw new Answers.Wrong("No price", 400, e.getMessage());
    }
  }

  private static Groups groups(Map<String, Measures> groups) {
    return new Groups(
        groups.entrySet().stream().map(e -> new Group(e.getKey(), e.getValue())).toList());
  }

  private static Shares shares(FactFigures figures, ReviewQuery query) throws Answers.Wrong {
    Period period = query.period();
    List<ShareChart.Counted> counted = period.shares(figures.days(query.filter(), query.grace()));
    List<String> labels = counted.stream().map(ShareChart.Counted::label).toList();
    return new Shares(
        ShareChart.of(counted, period.changesAt(labels, query.changes())),
        Rule.of(RunRule.FOR_SHARES),
        figures.unjudged(query.filter(), query.grace()));
  }

  private static Minutes minutes(FactFigures figures, ReviewQuery query) throws Answers.Wrong {
    Period period = query.period();
    List<ValueChart.Valued> values = period.meanMinutes(figures.days(query.filter()));
    List<String> labels = values.stream().map(ValueChart.Valued::label).toList();
    return new Minutes(
        ValueChart.of(
            values, period.changesAt(labels, query.changes()), RunRule.WESTERN_ELECTRIC, 0),
        Rule.of(RunRule.WESTERN_ELECTRIC));
  }

  private static Trial trial(FactFigures figures, ReviewQuery query) throws Answers.Wrong {
    int before = query.minutesBefore();
    return figures.trial(query.filter(), before, SEED);
  }

  private static TrialsApart trialApart(FactFigures figures, ReviewQuery query)
      throws Answers.Wrong {
    Filter filter = query.filter();
    Split split = query.split();
    return new TrialsApart(
        split, BoardSaid.MOMENTS.stream().map(at -> figures.trial(filter, at, split)).toList());
  }

  private Closing closing(FactFigures figures, SuiteId suite) {
    boolean learns =
        hosted.all().stream()
            .map(Hosted.Suite::site)
            .anyMatch(site -> site.suite().equals(suite) && site.learns());
    return figures.closing(suite).used(learns);
  }

  private PastWall past(ReviewQuery query) throws Answers.Wrong {
    LocalDate date = query.date("date");
    if (date == null) {
      throw new Answers.Wrong("No date", 400, "Say which morning: date=2026-11-25.");
    }
    PastWall past = archivist.past(new MorningId(new SuiteId(query.suite()), date));
    if (past == null) {
      throw new Answers.Wrong("No such morning", 404, "No morning of " + date + " is closed.");
    }
    return past;
  }

  private void rows(RoutingContext context) {
    if ("json".equals(context.request().params().get("format"))) {
      Answers.later(
          vertx, context, pool, () -> kept(f -> new Rows(ReviewRows.rows(f, query(context)))));
      return;
    }
    Answers.csv(
        vertx,
        context,
        pool,
        "first-cases.csv",
        () -> kept(f -> ReviewRows.csv(f, query(context))));
  }

  private void history(RoutingContext context) {
    Answers.later(
        vertx,
        context,
        pool,
        () -> {
          Hosted.Suite suite = suite(context);
          byte[] csv = Answers.body(context, "text/csv");
          History.Result read = History.read("history", csv, suite.site());
          if (!read.problems().isEmpty()) {
            Set<Mistake> mistakes = new LinkedHashSet<>();
            read.problems()
                .forEach(p -> mistakes.add(new Mistake(p.line(), p.field(), p.message())));
            return new Taken(
                0, new ArrayList<>(mistakes), "Nothing was taken: mend these lines first.");
          }
          long rows = kept(f -> archivist.history(suite.site().suite(), read.facts()));
          return new Taken(
              rows,
              List.of(),
              "Taken: " + rows + " first cases of the time before; what was there is replaced.");
        });
  }
}
