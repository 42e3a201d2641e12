package sunup.http;

import io.vertx.core.Vertx;
import io.vertx.ext.web.Router;
import io.vertx.ext.web.RoutingContext;
import io.vertx.ext.web.handler.BodyHandler;
import java.nio.file.Path;
import java.time.LocalDate;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.concurrent.Executor;
import sunup.bedside.BedsideFigures;
import sunup.bedside.CaseAnswer;
import sunup.bedside.CaseInputs;
import sunup.bedside.Entry;
import sunup.board.CaseId;
import sunup.board.Morning;
import sunup.board.MorningId;
import sunup.board.NextCase;
import sunup.board.SuiteId;
import sunup.codec.BadJson;
import sunup.codec.Json;
import sunup.codec.Maybe;
import sunup.live.Owners;

/**
 * Bedside figures: which there are, those off with the reason, and one worked out for the case that
 * is in a room. Of what is entered nothing is kept, neither in the journal nor in the log.
 */
final class BedsideApi {
  static final String PATH = "/api/bedside";
  static final String WORK = "/api/bedside/work";

  /** Bytes of a question. */
  static final int BODY_BYTES_MAX = 16 * 1024;

  private static final int ENTRIES_MAX = 40;

  private final Vertx vertx;
  private final Executor pool;
  private final Hosted hosted;
  private final Owners owners;
  private final Map<SuiteId, SiteFigures> figures = new HashMap<>();

  /**
   * @param files the site's file of each suite
   */
  BedsideApi(Vertx vertx, Executor pool, Hosted hosted, Map<SuiteId, Path> files, Owners owners) {
    this.vertx = vertx;
    this.pool = pool;
    this.hosted = hosted;
    this.owners = owners;
    files.forEach((suite, file) -> figures.put(suite, new SiteFigures(suite, file)));
  }

  /**
   * The figures of a site.
   *
   * @param today the site's day, by which releases count
   */
  record Figures(
      String suite, String hospital, LocalDate today, List<BedsideFigures.Listed> figures) {}

  /**
   * A question.
   *
   * @param room where it is asked
   * @param caseId the case that weight, age, height and sex were entered for
   * @param revision of these facts, counted by the screen and given back
   * @param patient facts of the patient by input name
   * @param own what the figure asks for beside them, by input name
   */
  record Question(
      String figure,
      String room,
      String caseId,
      long revision,
      @Maybe Map<String, Entry> patient,
      @Maybe Map<String, Entry> own) {}

  void mount(Router router) {
    router.get(PATH).handler(c -> Answers.later(vertx, c, pool, () -> list(hosted.asked(c))));
    router
        .post(WORK)
        .handler(BodyHandler.create(false).setBodyLimit(BODY_BYTES_MAX))
        .handler(c -> Answers.later(vertx, c, pool, () -> work(c)));
  }

  private Figures list(Hosted.Suite suite) throws Answers.Wrong {
    LocalDate today = suite.mornings().today().date();
    return new Figures(
        suite.site().suite().value(),
        suite.site().settings().hospital(),
        today,
        figures.get(suite.site().suite()).now().list(today));
  }

  private CaseAnswer work(RoutingContext context) throws Answers.Wrong {
    Hosted.Suite suite = hosted.asked(context);
    Question asked = read(Answers.body(context, "application/json"));
    MorningId today = suite.mornings().today();
    CaseId of = caseId(asked.caseId());
    CaseId inRoom = caseIn(OwnerCalls.state(OwnerCalls.owner(owners, today)), asked.room(), of);
    CaseInputs patient = new CaseInputs(of, asked.revision(), entries(asked.patient()));
    return figures
        .get(suite.site().suite())
        .now()
        .work(asked.figure(), inRoom, patient, entries(asked.own()), today.date());
  }

  static Question read(byte[] body) throws Answers.Wrong {
    try {
      Question asked = Json.read(body, Question.class);
      if (asked != null && asked.figure() != null) {
        return asked;
      }
    } catch (BadJson e) {
      throw new Answers.Wrong("Not understood", 400, e.getMessage());
    }
    throw new Answers.Wrong("Not understood", 400, "Name a figure.");
  }

  static CaseId caseId(String text) throws Answers.Wrong {
    try {
      return new CaseId(text);
    } catch (IllegalArgumentException | NullPointerException e) {
      throw new Answers.Wrong("Not understood", 400, "caseId names no case.");
    }
  }

  static Map<String, Entry> entries(Map<String, Entry> given) throws Answers.Wrong {
    if (given == null) {
      return Map.of();
    }
    if (given.size() > ENTRIES_MAX) {
      throw new Answers.Wrong("Too much", 422, "No figure asks for so many things.");
    }
    for (Map.Entry<String, Entry> one : given.entrySet()) {
      if (one.getValue() == null || one.getValue().text() == null) {
        throw new Answers.Wrong(
            "Not understood", 400, "An entry has no text; leave out what is not known.");
      }
    }
    return given;
  }

  /**
   * The case that is in the room by the board, now: what was entered for another is refused. Once
   * next cases are set up in the room, it is the one of all these that is asked for.
   */
  private static CaseId caseIn(Morning morning, String name, CaseId asked) throws Answers.Wrong {
    Morning.RoomDay room =
        morning.rooms().values().stream()
            .filter(r -> r.id().value().equals(name))
            .findFirst()
            .orElse(null);
    NextCase next = morning.next().get(asked);
    if (room != null && next != null && next.room().equals(room.id())) {
      return asked;
    }
    Morning.CaseDay inRoom =
        room == null || room.caseId() == null ? null : morning.cases().get(room.caseId());
    if (inRoom == null || inRoom.cancelled()) {
      throw new Answers.Wrong(
          "No case", 422, "There is no case in this room, and figures are worked out for one.");
    }
    return room.caseId();
  }
}
