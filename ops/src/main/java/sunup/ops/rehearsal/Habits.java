package sunup.ops.rehearsal;

import java.util.LinkedHashMap;
import java.util.Map;
import sunup.board.CasePlan;
import sunup.board.MorningPlan;
import sunup.board.RoomId;

/** Who reports how on this morning. */
final class Habits {
  private Habits() {}

  static Map<RoomId, Style> of(MorningPlan plan, Story story, Dice dice) {
    Map<RoomId, Style> styles = new LinkedHashMap<>();
    for (CasePlan c : plan.cases()) {
      Style drawn = Style.drawn(dice.uniform("style " + c.room()));
      styles.put(c.room(), story.once().contains(c.room()) ? Style.ONCE : drawn);
    }
    return styles;
  }
}
