package sunup.http;

import io.netty.handler.codec.http.QueryStringDecoder;
import io.vertx.core.MultiMap;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.math.BigDecimal;
import java.nio.charset.StandardCharsets;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import sunup.bedside.BedsideFigures;
import sunup.bedside.BedsideSettings;
import sunup.bedside.CaseInputs;
import sunup.bedside.Release;
import sunup.board.CaseId;
import sunup.codec.Json;
import sunup.forecast.ForecastInput;
import sunup.fuzz.Decoder;
import sunup.fuzz.Must;
import sunup.fuzz.Project;
import sunup.fuzz.Sample;
import sunup.review.Cost;
import sunup.sheets.Edition;
import sunup.sheets.SheetDraft;
import sunup.wire.TryAsk;

/** What is read of requests. */
public final class HttpIn {
  private static final LocalDate DAY = LocalDate.of(2026, 11, 25);
  private static final int ANSWER_MOST = 10_000;
  private static final long TRIED_AT_MOST = 2_000;

  /** With every figure released, so that all are worked out. */
  private static final BedsideFigures FIGURES = figures();

  private HttpIn() {}

  public static List<Decoder> all() {
    List<byte[]> forecasts = new ArrayList<>(Sample.of(ForecastInput.class));
    for (String text : Project.texts("shared-model/src/test/resources/forecast", ".json")) {
      forecasts.add(input(text));
    }
    return List.of(
        new Decoder("forecast-input", forecasts, HttpIn::forecast),
        new Decoder("try-ask", Sample.of(TryAsk.class), HttpIn::tried),
        new Decoder("bedside", bedsides(), HttpIn::bedside),
        new Decoder("sheet-draft", drafts(), HttpIn::draft),
        Decoder.ofText(
            "review-query",
            List.of(
                "from=2026-01-01&to=2026-02-01&room=1&weekday=monday&period=week&split=room"
                    + "&by=section&grace=0&before=20&change=2026-01-05&service=bones",
                "price=12.50&currency=EUR&source=finance&technique=general&grace=5"),
            HttpIn::query));
  }

  /** The examples hold what comes out, too. */
  private static byte[] input(String example) {
    try {
      var tree = Json.mapper().readTree(example);
      return Json.bytes(tree.has("input") ? tree.get("input") : tree);
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  private static boolean forecast(byte[] bytes) {
    Must.json(bytes, ForecastInput.class);
    try {
      ForecastInput in = ForecastApi.read(bytes);
      Must.be(Json.bytes(ForecastApi.asRun(bytes)).length > 0, "no answer");
      long items = in.rooms().stream().mapToLong(room -> room.items().size()).sum();
      if (items * in.trials() <= TRIED_AT_MOST) {
        Must.be(Json.bytes(ForecastApi.run(bytes)).length > 0, "no answer");
      }
      return true;
    } catch (Answers.Wrong refused) {
      return false;
    }
  }

  private static boolean tried(byte[] bytes) {
    Must.json(bytes, TryAsk.class);
    try {
      return !TryApi.read(bytes).isEmpty();
    } catch (Answers.Wrong refused) {
      return false;
    }
  }

  private static BedsideFigures figures() {
    BedsideSettings first = BedsideSettings.first();
    List<Release> all =
        new BedsideFigures(first)
            .list(DAY).stream()
                .map(one -> new Release(one.card().name(), one.fingerprint(), "pharmacy", DAY))
                .toList();
    return new BedsideFigures(first.released(all));
  }

  private static List<byte[]> bedsides() {
    List<byte[]> seeds = new ArrayList<>();
    for (BedsideFigures.Listed one : FIGURES.list(DAY)) {
      var question = Json.mapper().createObjectNode();
      question.put("figure", one.card().name()).put("room", "7").put("caseId", "C7");
      question.put("revision", 1);
      for (var input : one.card().inputs()) {
        var entry =
            question
                .withObject(input.ofPatient() ? "patient" : "own")
                .withObject("/" + input.name());
        if (input.choices().isEmpty()) {
          double middle = (input.least() + input.most()) / 2;
          entry.put("text", String.valueOf(Math.round(middle)));
          entry.put("unit", input.units().get(0).word());
        } else {
          entry.put("text", input.choices().get(0));
        }
      }
      seeds.add(Json.bytes(question));
    }
    return seeds;
  }

  private static boolean bedside(byte[] bytes) {
    Must.json(bytes, BedsideApi.Question.class);
    try {
      BedsideApi.Question asked = BedsideApi.read(bytes);
      CaseId id = BedsideApi.caseId(asked.caseId());
      CaseInputs patient =
          new CaseInputs(id, asked.revision(), BedsideApi.entries(asked.patient()));
      var answer = FIGURES.work(asked.figure(), id, patient, BedsideApi.entries(asked.own()), DAY);
      String told = Json.write(answer);
      // What is refused is said again in the words that were sent.
      boolean worked = told.contains("\"answer\":\"worked\"");
      Must.be(
          !worked || (!told.contains("NaN") && !told.contains("Infinity")), "no number: " + told);
      return worked;
    } catch (Answers.Wrong refused) {
      return false;
    }
  }

  private static List<byte[]> drafts() {
    List<byte[]> seeds = new ArrayList<>();
    for (String edit :
        List.of(
            "\"does\":\"change\",\"sheet\":\"general\",\"key\":\"drugs.drawn\",\"fields\":"
                + "{\"name\":\"Drugs drawn\",\"minutes\":4}",
            "\"does\":\"add\",\"sheet\":\"lines\",\"key\":\"lines.flush\",\"behind\":null,"
                + "\"fields\":{\"name\":\"Flush\",\"section\":\"drugs\",\"role\":\"nurse\"}",
            "\"does\":\"leave-out\",\"sheet\":\"general\",\"key\":\"drugs.drawn\"",
            "\"does\":\"add-sheet\",\"sheet\":\"new-one\",\"fields\":{\"kind\":\"option\"}",
            "\"does\":\"head\",\"sheet\":\"general\",\"fields\":{\"title\":\"T\"}",
            "\"does\":\"as-in\",\"edition\":0",
            "\"does\":\"remove-sheet\",\"sheet\":\"mri\"",
            "\"does\":\"move\",\"sheet\":\"alone\",\"key\":\"machine.self-test\"",
            "\"does\":\"put-back\",\"sheet\":\"child\",\"key\":\"drugs.drawn\"")) {
      seeds.add(
          ("{\"on\":0,\"edits\":[{" + edit + "}],\"sheet\":\"general\"}")
              .getBytes(StandardCharsets.UTF_8));
    }
    return seeds;
  }

  private static boolean draft(byte[] bytes) {
    SheetsApi.Draft asked = Must.json(bytes, SheetsApi.Draft.class);
    if (asked == null) {
      return false;
    }
    try {
      SheetsApi.checkEdits(asked.edits());
    } catch (Answers.Wrong refused) {
      return false;
    }
    Edition on = Edition.standard();
    SheetDraft draft = SheetDraft.of(on, asked.edits(), number -> number == 0 ? on.files() : null);
    SheetDraft.Since.of(on, on, asked.edits());
    if (!draft.canBePublished()) {
      return false;
    }
    Edition next = Edition.of(1, draft.files());
    Must.be(next.sheets() != null, "published, it can't be used: " + next.problems());
    return true;
  }

  private static boolean query(String text) {
    MultiMap given = MultiMap.caseInsensitiveMultiMap();
    try {
      new QueryStringDecoder("?" + text).parameters().forEach(given::add);
    } catch (IllegalArgumentException badEscape) {
      return false; // Refused by the library before it comes to anybody: 400.
    }
    ReviewQuery query = new ReviewQuery("main", given);
    try {
      query.filter();
      query.period();
      query.split();
      query.grouping();
      query.grace();
      query.minutesBefore();
      query.changes();
      if (TwoPeriods.areGiven(query)) {
        apart(TwoPeriods.of(query));
      }
      var price = query.price();
      if (price == null) {
        return true;
      }
      return priced(price);
    } catch (Answers.Wrong refused) {
      return false;
    }
  }

  private static void apart(TwoPeriods two) {
    LocalDate begins = two.first().from();
    LocalDate ends = two.second().to();
    boolean after = begins != null && ends != null && begins.isAfter(ends);
    begins = two.second().from();
    ends = two.first().to();
    boolean before = begins != null && ends != null && begins.isAfter(ends);
    Must.be(after || before, "periods that share a morning: " + two);
  }

  private static boolean priced(BigDecimal price) {
    Cost.Price site;
    try {
      site = new Cost.Price(price, "EUR", "somebody");
    } catch (IllegalArgumentException refused) {
      return false;
    }
    Must.be(Json.bytes(Cost.of(100_000, site)).length < ANSWER_MOST, "an answer without end");
    return true;
  }
}
