package sunup.http;

import io.vertx.core.Vertx;
import io.vertx.ext.web.Router;
import io.vertx.ext.web.RoutingContext;
import io.vertx.ext.web.handler.BodyHandler;
import java.io.IOException;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.concurrent.Executor;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import sunup.access.Access;
import sunup.board.Actor;
import sunup.board.HouseStyle;
import sunup.board.SuiteId;
import sunup.codec.BadJson;
import sunup.codec.Json;
import sunup.codec.Maybe;
import sunup.codec.Problem;
import sunup.editions.Editions;
import sunup.editions.Overtaken;
import sunup.editions.Published;
import sunup.intake.Planner;
import sunup.sheets.Edition;
import sunup.sheets.EditionChanges;
import sunup.sheets.SheetDraft;
import sunup.sheets.SheetEdit;
import sunup.suites.Clock;
import sunup.suites.Suites;

/** The editor of a suite's sheets: what a draft would do, and publishing it. */
final class SheetsApi {
  static final String PATH = "/api/sheets";
  static final String CHECK = "/api/sheets/check";
  static final String PUBLISH = "/api/sheets/publish";

  /** Bytes of a draft. */
  private static final int MAX_BYTES = 1 << 19;

  /** Lines that a refusal tells. */
  private static final int TOLD_MAX = 6;

  private static final Pattern DRAFT = Pattern.compile("[A-Za-z0-9-]{8,64}");
  private static final String DESKS_ONLY = "Sheets are changed at the suite's own desk.";

  private final Vertx vertx;
  private final Executor pool;
  private final Hosted hosted;
  private final Editions editions;
  private final Clock clock;
  private final ComingCases coming;

  SheetsApi(
      Vertx vertx, Executor pool, Hosted hosted, Editions editions, Clock clock, Suites suites) {
    this.vertx = vertx;
    this.pool = pool;
    this.hosted = hosted;
    this.editions = editions;
    this.clock = clock;
    this.coming = new ComingCases(suites);
  }

  /**
   * The sheets of a suite.
   *
   * @param edition the one that is used; 0 for what comes with the program
   * @param zone of the suite's clocks
   * @param style how its pages write, if its file says anything of it
   * @param sheets in the order in which they are read
   * @param places away from the rooms that the site has
   * @param editions the newest that were published, newest first
   */
  record Overview(
      int edition,
      String zone,
      @Maybe HouseStyle style,
      List<SheetView.Named> sheets,
      List<String> places,
      List<Published> editions) {}

  /**
   * A draft to look at.
   *
   * @param on the edition that it was begun on
   * @param edits in their order
   * @param sheet the sheet to show of it; the first without it
   */
  record Draft(int on, List<SheetEdit> edits, @Maybe String sheet) {}

  /**
   * A draft to publish.
   *
   * @param draft an id of its own, so that one sent twice becomes one edition
   * @param note what is to be said of it
   */
  record ToPublish(int on, List<SheetEdit> edits, String draft, @Maybe String note) {}

  /**
   * What a draft would do. Nothing has happened yet.
   *
   * @param edition the one that is used now
   * @param ready true if it can be published
   * @param changes all that it changes, one line each
   * @param problems what must be mended first, all of it
   * @param sheets all that the draft leaves
   * @param since what others published since it was begun, if they did
   * @param sheet the sheet that was asked for, as the draft makes it
   * @param coming the next booked cases, and what it changes for them
   */
  record Checked(
      int on,
      int edition,
      boolean ready,
      List<String> changes,
      List<Problem> problems,
      List<SheetView.Named> sheets,
      @Maybe SheetDraft.Since since,
      SheetView sheet,
      List<ComingCases.Coming> coming) {}

  /** What publishing did. */
  record Done(int edition, String words) {}

  void mount(Router router) {
    BodyHandler bodies = BodyHandler.create(false).setBodyLimit(MAX_BYTES);
    router.get(PATH).handler(c -> later(c, (suite, by) -> overview(suite)));
    router
        .post(CHECK)
        .handler(bodies)
        .handler(c -> later(c, (suite, by) -> check(suite, read(c, Draft.class))));
    router
        .post(PUBLISH)
        .handler(bodies)
        .handler(c -> later(c, (suite, by) -> publish(suite, read(c, ToPublish.class), by)));
  }

  /** Work for a desk of a suite. */
  private interface Work {
    Object of(Hosted.Suite suite, Actor by) throws Answers.Wrong;
  }

  private void later(RoutingContext context, Work work) {
    Access.Asker asker = Guard.asker(context);
    Answers.later(
        vertx,
        context,
        pool,
        () -> {
          Hosted.Suite suite = hosted.asked(context);
          return work.of(
              suite, Guard.planner(asker, suite.site().suite(), DESKS_ONLY, "desk-sheets"));
        });
  }

  private static <T> T read(RoutingContext context, Class<T> type) throws Answers.Wrong {
    try {
      return Json.read(Answers.body(context, "application/json"), type);
    } catch (BadJson e) {
      throw new Answers.Wrong("Not understood", 400, e.getMessage());
    }
  }

  private Overview overview(Hosted.Suite suite) throws Answers.Wrong {
    SuiteId id = suite.site().suite();
    Edition now = UsableSheets.ask(() -> editions.current(id));
    return new Overview(
        now.number(),
        suite.site().settings().zone(),
        suite.site().settings().style(),
        SheetView.Written.of(now.files()).names(),
        suite.site().places().stream().map(place -> place.id().value()).toList(),
        UsableSheets.ask(() -> editions.list(id)));
  }

  private SheetDraft draft(SuiteId suite, int on, List<SheetEdit> edits) throws Answers.Wrong {
    checkEdits(edits);
    Edition base = UsableSheets.ask(() -> editions.of(suite, on));
    if (base == null) {
      throw new Answers.Wrong(
          "No such edition", 404, "There is no edition " + on + " of the sheets. Begin anew.");
    }
    return SheetDraft.of(base, edits, number -> files(suite, number));
  }

  static void checkEdits(List<SheetEdit> edits) throws Answers.Wrong {
    if (edits == null || edits.stream().anyMatch(e -> e == null || e.does() == null)) {
      throw new Answers.Wrong(
          "Not understood", 400, "A draft has edits, and each says what it does.");
    }
  }

  /** The texts of an edition that an edit names, or null. */
  private Map<String, String> files(SuiteId suite, int number) {
    try {
      Edition found = UsableSheets.ask(() -> editions.of(suite, number));
      return found == null ? null : found.files();
    } catch (Answers.Wrong away) {
      return null;
    }
  }

  private Checked check(Hosted.Suite suite, Draft asked) throws Answers.Wrong {
    SuiteId id = suite.site().suite();
    SheetDraft draft = draft(id, asked.on(), asked.edits());
    Edition now = UsableSheets.ask(() -> editions.current(id));
    boolean overtaken = now.number() != asked.on();
    List<Problem> problems = problems(suite, draft);
    SheetView.Written written = SheetView.Written.of(draft.files());
    return new Checked(
        asked.on(),
        now.number(),
        problems.isEmpty() && !draft.changes().isEmpty() && !overtaken,
        draft.changes().stream().map(EditionChanges.Changed::words).toList(),
        problems,
        written.names(),
        overtaken ? SheetDraft.Since.of(draft.on(), now, asked.edits()) : null,
        SheetView.of(draft, written, asked.sheet()),
        coming.of(suite, draft));
  }

  /** What is wrong with the texts, and who still needs a sheet that goes. */
  private List<Problem> problems(Hosted.Suite suite, SheetDraft draft) throws Answers.Wrong {
    List<Problem> all = new ArrayList<>(draft.problems());
    all.addAll(coming.needing(suite, draft.gone()));
    if (draft.sheets() != null) {
      List<Problem> lacks = new ArrayList<>(Planner.check(suite.site(), draft.sheets()));
      if (draft.on().sheets() != null) {
        lacks.removeAll(Planner.check(suite.site(), draft.on().sheets()));
      }
      all.addAll(lacks);
    }
    return all;
  }

  private Done publish(Hosted.Suite of, ToPublish asked, Actor by) throws Answers.Wrong {
    SuiteId suite = of.site().suite();
    if (asked.draft() == null || !DRAFT.matcher(asked.draft()).matches()) {
      throw new Answers.Wrong(
          "Not understood", 400, "draft is an id of 8 to 64 letters, digits and dashes.");
    }
    String note = asked.note() == null || asked.note().isBlank() ? null : asked.note().strip();
    if (note != null && note.length() > Editions.MAX_NOTE) {
      throw new Answers.Wrong(
          "Too long", 422, "Say it in at most " + Editions.MAX_NOTE + " letters.");
    }
    int already = UsableSheets.ask(() -> editions.publishedAs(suite, asked.draft()));
    if (already > 0) {
      return done(already);
    }
    SheetDraft draft = draft(suite, asked.on(), asked.edits());
    Edition now = UsableSheets.ask(() -> editions.current(suite));
    if (now.number() != asked.on()) {
      throw overtaken(suite, draft, now.number(), asked.edits());
    }
    List<Problem> problems = problems(of, draft);
    if (!problems.isEmpty()) {
      throw new Answers.Wrong(
          "Not published",
          422,
          "Nothing was published. Mend this first: "
              + told(problems.stream().map(Object::toString).toList()));
    }
    if (draft.changes().isEmpty()) {
      throw new Answers.Wrong(
          "Nothing changes", 422, "Nothing was published: the draft changes nothing.");
    }
    try {
      return done(editions.publish(suite, asked.draft(), draft, note, by, clock.realMs()));
    } catch (Overtaken e) {
      throw overtaken(suite, draft, e.now(), asked.edits());
    } catch (IOException e) {
      throw new Answers.Wrong("Not now", 503, e.getMessage());
    }
  }

  private static Done done(int edition) {
    return new Done(
        edition,
        "Published as edition "
            + edition
            + ". Mornings that are open keep theirs;"
            + " a case list that is taken from now on uses it.");
  }

  private Answers.Wrong overtaken(
      SuiteId suite, SheetDraft draft, int number, List<SheetEdit> edits) throws Answers.Wrong {
    Edition now = UsableSheets.ask(() -> editions.of(suite, number));
    SheetDraft.Since since = SheetDraft.Since.of(draft.on(), now, edits);
    String both = since.both().isEmpty() ? "" : " Both are at work on " + told(since.both()) + ".";
    return new Answers.Wrong(
        "Published meanwhile",
        409,
        "Nothing was published: edition "
            + number
            + " was published meanwhile. It changed: "
            + told(since.changes().stream().map(EditionChanges.Changed::words).toList())
            + "."
            + both
            + " Your changes are kept; lay them on edition "
            + number
            + ", look again, then publish.");
  }

  private static String told(List<String> lines) {
    int more = lines.size() - TOLD_MAX;
    String some = lines.stream().limit(TOLD_MAX).collect(Collectors.joining("; "));
    return more > 0 ? some + "; and " + more + " more" : some;
  }
}
