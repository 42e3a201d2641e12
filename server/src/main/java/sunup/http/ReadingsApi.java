package sunup.http;

import io.vertx.core.Vertx;
import io.vertx.ext.web.Router;
import io.vertx.ext.web.RoutingContext;
import java.util.List;
import java.util.concurrent.Executor;
import sunup.board.Morning;
import sunup.board.MorningId;
import sunup.live.Owners;
import sunup.review.readings.Readings;
import sunup.suites.Clock;
import sunup.suites.Suites;

/**
 * Readings of the rooms' machines over the last mornings, those that change slowly to the worse
 * marked. What has not been read today is not in the answer: an earlier number invites copying.
 */
final class ReadingsApi {
  static final String PATH = "/api/readings";

  private final Vertx vertx;
  private final Executor pool;
  private final Hosted hosted;
  private final Owners owners;
  private final Clock clock;
  private final PastReadings past;

  ReadingsApi(
      Vertx vertx, Executor pool, Hosted hosted, Owners owners, Clock clock, Suites suites) {
    this.vertx = vertx;
    this.pool = pool;
    this.hosted = hosted;
    this.owners = owners;
    this.clock = clock;
    this.past = new PastReadings(suites);
  }

  /**
   * The answer.
   *
   * @param series of one room, or without a room those of all rooms that change slowly
   */
  record Found(List<Readings.Series> series) {}

  void mount(Router router) {
    router.get(PATH).handler(c -> Answers.later(vertx, c, pool, () -> found(c)));
  }

  private Found found(RoutingContext context) throws Answers.Wrong {
    Hosted.Suite suite = hosted.asked(context);
    String room = context.request().getParam("room");
    MorningId today = suite.mornings().today();
    Morning morning = OwnerCalls.state(OwnerCalls.owner(owners, today));
    List<Readings.Series> all =
        Readings.today(morning, past.before(today, clock.monotonicMs())).stream()
            .filter(s -> room == null ? s.slow() != null : s.room().equals(room))
            .toList();
    return new Found(all);
  }
}
