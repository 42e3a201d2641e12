package sunup.http;

import io.vertx.core.Vertx;
import io.vertx.ext.web.Router;
import io.vertx.ext.web.RoutingContext;
import io.vertx.ext.web.handler.BodyHandler;
import java.util.List;
import java.util.concurrent.Executor;
import sunup.access.Access;
import sunup.board.Actor;
import sunup.board.Command;
import sunup.board.CommandId;
import sunup.board.Morning;
import sunup.board.MorningId;
import sunup.editions.Editions;
import sunup.intake.CaseList;
import sunup.intake.CaseListResult;
import sunup.intake.Intake;
import sunup.intake.SiteFile;
import sunup.live.Owners;
import sunup.sheets.Sheets;
import sunup.suites.Owner;
import sunup.suites.Reply;
import sunup.suites.Submission;

/** A case list for the desk: what it would change, and taking it if it would still change that. */
final class IntakeApi {
  static final String PREVIEW = "/api/intake/preview";
  static final String TAKE = "/api/intake/take";

  /** Letters of the preview's hash in the id of what it becomes. */
  private static final int HASH_LETTERS = 24;

  private static final String DESKS_ONLY = "A case list is taken at the suite's own desk.";

  private final Vertx vertx;
  private final Executor pool;
  private final Hosted hosted;
  private final Editions editions;
  private final Owners owners;

  IntakeApi(Vertx vertx, Executor pool, Hosted hosted, Editions editions, Owners owners) {
    this.vertx = vertx;
    this.pool = pool;
    this.hosted = hosted;
    this.editions = editions;
    this.owners = owners;
  }

  /**
   * What taking a list did.
   *
   * @param commands how many commands it became
   * @param upTo journal sequence of the last event; it is on the board when a frame's upTo reaches
   *     it
   * @param words the same for people
   */
  record Taken(int commands, long upTo, String words) {}

  void mount(Router router) {
    BodyHandler bodies = BodyHandler.create(false).setBodyLimit(CaseList.MAX_BYTES);
    router.post(PREVIEW).handler(bodies).handler(c -> later(c, false));
    router.post(TAKE).handler(bodies).handler(c -> later(c, true));
  }

  private void later(RoutingContext context, boolean take) {
    String date = context.request().getParam("date");
    String rows = context.request().getParam("rows");
    String hash = context.request().getParam("hash");
    Access.Asker asker = Guard.asker(context);
    Answers.later(
        vertx,
        context,
        pool,
        () -> {
          Hosted.Suite suite = hosted.asked(context);
          SiteFile site = suite.site();
          Actor actor = Guard.planner(asker, site.suite(), DESKS_ONLY, "desk-list");
          byte[] csv = Answers.body(context, "text/csv");
          long at = suite.mornings().nowMs();
          MorningId morning = AskedMorning.of(suite.mornings(), date);
          Owner owner = owners.owner(morning);
          Morning now = OwnerCalls.state(owner);
          Sheets sheets = UsableSheets.of(() -> editions.forMorning(site.suite(), now));
          CaseListResult list =
              CaseList.read("list", csv, site, morning.date(), sheets, takeRows(rows));
          Intake.Taken taken = Intake.compare(list, site, morning.date(), now, at);
          return take ? take(owner, now, taken, hash, at, actor) : taken.preview();
        });
  }

  private static CaseList.Take takeRows(String rows) throws Answers.Wrong {
    if (rows == null || rows.equals("all")) {
      return CaseList.Take.ALL_OR_NOTHING;
    }
    if (rows.equals("right")) {
      return CaseList.Take.ROWS_THAT_ARE_RIGHT;
    }
    throw new Answers.Wrong("Not understood", 400, "rows is all or right.");
  }

  private static Taken take(
      Owner owner, Morning now, Intake.Taken taken, String hash, long at, Actor actor)
      throws Answers.Wrong {
    if (!taken.preview().problems().isEmpty()) {
      throw new Answers.Wrong(
          "Not taken", 422, "The list has mistakes. Look at the preview and mend them first.");
    }
    List<Command> commands = taken.commands();
    if (commands.isEmpty()) {
      // Also after it was taken: who sends it twice, not having heard the answer, is not wrong.
      return new Taken(0, now.seq(), "Nothing changes: the board has this list already.");
    }
    if (!taken.preview().hash().equals(hash)) {
      throw new Answers.Wrong(
          "Changed meanwhile",
          409,
          "The list or the morning is not what the preview showed."
              + " Look at it again, then take it.");
    }
    // One id for one look at one morning: looked at again after a refusal it is asked anew.
    String id =
        "take-" + hash.substring(0, Math.min(HASH_LETTERS, hash.length())) + "-" + now.seq();
    Submission all =
        new Submission(
            new CommandId(id),
            commands.get(0),
            commands.subList(1, commands.size()),
            actor,
            now.seq(),
            at,
            0);
    Reply reply = OwnerCalls.submit(owner, all);
    if (reply instanceof Reply.Done done) {
      return new Taken(commands.size(), Math.max(now.seq(), done.upTo()), "The list is taken.");
    }
    boolean refused = reply instanceof Reply.Refused;
    String words = refused ? ((Reply.Refused) reply).words() : ((Reply.Later) reply).words();
    throw new Answers.Wrong(
        "Not taken", refused ? 409 : 503, "Nothing of the list was taken. " + words);
  }
}
