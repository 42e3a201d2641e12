package sunup.http;

import io.vertx.core.Context;
import io.vertx.core.Vertx;
import io.vertx.ext.web.Router;
import io.vertx.ext.web.RoutingContext;
import io.vertx.ext.web.handler.BodyHandler;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.Executor;
import java.util.concurrent.RejectedExecutionException;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;
import sunup.access.Access;
import sunup.board.Morning;
import sunup.board.MorningId;
import sunup.codec.BadJson;
import sunup.codec.Json;
import sunup.live.Complete;
import sunup.live.OutlookSight;
import sunup.live.Owners;
import sunup.live.Tries;
import sunup.trying.CantTry;
import sunup.wire.Tried;
import sunup.wire.TryAsk;
import sunup.wire.TryChange;

/**
 * A changed copy of the morning beside the morning as it is, for the desk. It asks the morning's
 * owner for the state, as a look at a case list does, and gives it no command: nothing is recorded.
 * Whoever hangs up is not computed for any longer.
 */
final class TryApi {
  static final String PATH = "/api/try";

  static final int BODY_BYTES_MAX = 16 * 1024;
  private static final Logger LOG = LoggerFactory.getLogger(TryApi.class);
  private static final String NOT_NOW =
      "The board has more urgent work just now. Ask again in a few seconds.";

  private final Vertx vertx;
  private final Executor pool;
  private final Hosted hosted;
  private final Owners owners;
  private final Tries tries;

  TryApi(Vertx vertx, Executor pool, Hosted hosted, Owners owners, Tries tries) {
    this.vertx = vertx;
    this.pool = pool;
    this.hosted = hosted;
    this.owners = owners;
    this.tries = tries;
  }

  void mount(Router router) {
    router
        .post(PATH)
        .handler(BodyHandler.create(false).setBodyLimit(BODY_BYTES_MAX))
        .handler(context -> new Request(context).begin());
  }

  /** One request until it is answered or its sender has hung up. */
  private final class Request implements Tries.Taker {
    private final RoutingContext context;
    private final Context back = vertx.getOrCreateContext();
    private final Access.Asker asker;

    private volatile boolean gone;

    /** How to give it up; null before it has begun. */
    private volatile Runnable giveUp;

    Request(RoutingContext context) {
      this.context = context;
      this.asker = Guard.asker(context);
    }

    void begin() {
      context.response().closeHandler(v -> hungUp());
      context.response().exceptionHandler(e -> hungUp());
      try {
        pool.execute(this::ask);
      } catch (RejectedExecutionException full) {
        busy();
      }
    }

    private void hungUp() {
      gone = true;
      Runnable how = giveUp;
      if (how != null) {
        how.run();
      }
    }

    private void ask() {
      try {
        Hosted.Suite suite = hosted.asked(context);
        Guard.mustBeDesk(asker, suite.site().suite(), "A copy is tried at the suite's own desk.");
        List<TryChange> changes = read(Answers.body(context, "application/json"));
        MorningId id = AskedMorning.of(suite.mornings(), context.request().getParam("date"));
        long now = suite.mornings().nowMs();
        Morning morning = OwnerCalls.state(OwnerCalls.owner(owners, id));
        if (!OutlookSight.hasFigures(morning, now)) {
          throw new Answers.Wrong(
              "Nothing to forecast",
              422,
              "There are figures of a morning with cases, from the day before until it is closed.");
        }
        giveUp = tries.begin(morning, changes, now, this);
        if (gone) {
          hungUp();
        }
      } catch (Answers.Wrong wrong) {
        back.runOnContext(v -> wrong.send(context));
      } catch (RuntimeException e) {
        LOG.error("{} failed", PATH, e);
        failed();
      }
    }

    @Override
    public void tried(Tried both) {
      back.runOnContext(v -> Answers.json(context, 200, both));
    }

    @Override
    public void cant(CantTry why) {
      back.runOnContext(v -> new Problem("Can't be tried", 422, why.getMessage()).send(context));
    }

    @Override
    public void busy() {
      back.runOnContext(
          v -> {
            if (!context.response().ended()) {
              context.response().putHeader("Retry-After", "2");
              new Problem("Busy", 503, NOT_NOW).send(context);
            }
          });
    }

    @Override
    public void failed() {
      back.runOnContext(v -> Guard.problem(500).send(context));
    }
  }

  static List<TryChange> read(byte[] body) throws Answers.Wrong {
    TryAsk ask;
    try {
      ask = Json.read(body, TryAsk.class);
    } catch (BadJson e) {
      throw new Answers.Wrong("Not understood", 400, e.getMessage());
    }
    if (ask == null || ask.changes() == null) {
      throw new Answers.Wrong("Not understood", 400, "The field changes is missing.");
    }
    for (TryChange change : ask.changes()) {
      Optional<String> missing = change == null ? Optional.of("change") : Complete.missing(change);
      if (missing.isPresent()) {
        throw new Answers.Wrong(
            "Not understood", 400, "The field " + missing.get() + " of a change is missing.");
      }
    }
    return ask.changes();
  }
}
