package sunup.ops;

import com.fasterxml.jackson.databind.JsonNode;
import java.io.IOException;
import java.time.LocalDate;
import java.time.LocalTime;
import java.util.ArrayList;
import java.util.List;
import java.util.regex.Pattern;
import sunup.board.MorningPlan;
import sunup.board.RoomId;
import sunup.codec.BadJson;
import sunup.codec.Json;
import sunup.ops.rehearsal.Fact;
import sunup.ops.rehearsal.Script;
import sunup.ops.rehearsal.Story;

/**
 * The morning with all causes of late first starts: a hospital, its story, and what must show by
 * when.
 *
 * @param demo the hospital, its case list and its story
 * @param list the causes
 */
record Causes(Demo demo, List<Cause> list) {
  private static final long MINUTE = 60_000;

  /**
   * One cause. It is to show by a local time, or so many minutes after something of the room.
   *
   * @param rooms of which one must show it; two if they want the same
   * @param actBy local time, or null
   * @param after the item whose end or fault begins the minutes, or null
   * @param words that the holdup must have, as desk and station say it
   */
  record Cause(
      String name, List<RoomId> rooms, LocalTime actBy, String after, long minutes, Pattern words) {
    /** The moment by which it is to show, or null if what it hangs on never happened. */
    Long by(MorningPlan plan, Script script) {
      if (actBy != null) {
        return plan.id()
            .date()
            .atTime(actBy)
            .atZone(plan.settings().zoneId())
            .toInstant()
            .toEpochMilli();
      }
      for (Fact fact : script.facts()) {
        boolean begins =
            (fact instanceof Fact.Done d && isOurs(d.room(), d.item().key()))
                || (fact instanceof Fact.Broke b && isOurs(b.room(), b.item().key()));
        if (begins) {
          return fact.at() + minutes * MINUTE;
        }
      }
      return null;
    }

    private boolean isOurs(RoomId room, String key) {
      return rooms.contains(room) && key.equals(after);
    }
  }

  /** The morning that comes with the program. */
  static Causes own() throws IOException, Wrong {
    try {
      Story story = Story.read(DemoFolder.resource("causes/story.json"));
      Demo demo =
          Demo.of(
              "causes/site.json",
              DemoFolder.resource("causes/site.json"),
              DemoFolder.resource("causes/cases.csv"),
              story);
      List<Cause> list = new ArrayList<>();
      for (JsonNode c : Json.mapper().readTree(DemoFolder.resource("causes/causes.json"))) {
        list.add(cause(c));
      }
      return new Causes(demo, List.copyOf(list));
    } catch (BadJson e) {
      throw Wrong.input("causes/story.json: " + e.getMessage());
    }
  }

  private static Cause cause(JsonNode c) {
    List<RoomId> rooms = new ArrayList<>();
    c.path("rooms").forEach(r -> rooms.add(new RoomId(r.asText())));
    return new Cause(
        c.path("cause").asText(),
        List.copyOf(rooms),
        c.has("actBy") ? LocalTime.parse(c.path("actBy").asText()) : null,
        c.has("after") ? c.path("after").asText() : null,
        c.path("minutes").asLong(),
        Pattern.compile(c.path("words").asText()));
  }

  /** What the board shows of each cause while the morning is played from the seed. */
  List<CauseWatch.Shown> watch(LocalDate date, long seed, int trials, int everyMinutes)
      throws Wrong {
    MorningPlan plan = demo.plan(date);
    Script script = demo.script(date, seed);
    return new CauseWatch(plan, script, trials).watch(list, everyMinutes * MINUTE);
  }
}
