package sunup.outlook;

import java.util.EnumSet;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.Set;
import sunup.board.ItemState;
import sunup.board.Morning;
import sunup.board.RoomId;
import sunup.board.Section;

/**
 * A morning at one moment with every room's lines worked out once.
 *
 * @param morning the state
 * @param now the moment
 * @param sheets by room, only rooms with a case that will happen
 * @param heard the tracks that somebody has reported anything of this morning
 */
record Snapshot(Morning morning, long now, Map<RoomId, RoomSheet> sheets, Set<Section> heard) {
  static Snapshot of(Morning morning, long now) {
    Map<RoomId, RoomSheet> sheets = new LinkedHashMap<>();
    Set<Section> heard = EnumSet.noneOf(Section.class);
    for (RoomId id : morning.rooms().keySet()) {
      RoomSheet sheet = RoomSheet.of(morning, id, now);
      if (sheet == null) {
        continue;
      }
      sheets.put(id, sheet);
      for (RoomSheet.Line line : sheet.lines()) {
        if (wasTouched(line)) {
          heard.add(line.asks().section());
        }
      }
    }
    return new Snapshot(morning, now, sheets, heard);
  }

  private static boolean wasTouched(RoomSheet.Line line) {
    return line.item().command() != null
        || line.item().evidence() != null
        || line.item().state() != ItemState.OPEN;
  }

  RoomSheet sheet(String room) {
    return sheets.get(new RoomId(room));
  }

  /**
   * Whether silence about an item of this track means anything: somebody reports that track this
   * morning. A suite whose holding area never touches a screen must not look late for it.
   */
  boolean isHeard(Section section) {
    return section == Section.START || heard.contains(section);
  }
}
