package sunup.outlook;

import java.util.EnumSet;
import java.util.HashMap;
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
 * @param heard by room, the tracks that somebody has reported anything of
 * @param reported the same for all rooms together
 */
record Snapshot(
    Morning morning,
    long now,
    Map<RoomId, RoomSheet> sheets,
    Map<RoomId, Set<Section>> heard,
    Set<Section> reported) {
  static Snapshot of(Morning morning, long now) {
    Map<RoomId, RoomSheet> sheets = new LinkedHashMap<>();
    Map<RoomId, Set<Section>> heard = new HashMap<>();
    Set<Section> reported = EnumSet.noneOf(Section.class);
    for (RoomId id : morning.rooms().keySet()) {
      RoomSheet sheet = RoomSheet.of(morning, id, now);
      if (sheet == null) {
        continue;
      }
      sheets.put(id, sheet);
      Set<Section> ofRoom = EnumSet.noneOf(Section.class);
      for (RoomSheet.Line line : sheet.lines()) {
        if (wasTouched(line)) {
          ofRoom.add(line.asks().section());
        }
      }
      heard.put(id, ofRoom);
      reported.addAll(ofRoom);
    }
    return new Snapshot(morning, now, sheets, heard, reported);
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
   * Whether silence about an item of this track of this room means anything: somebody reports the
   * track of this room; or reports it of other rooms, and what should have come here is overdue. A
   * suite whose holding area never touches a screen must not look late for it.
   */
  boolean isHeard(RoomId room, Section section) {
    if (section == Section.START || heard.getOrDefault(room, Set.of()).contains(section)) {
      return true;
    }
    return reported.contains(section)
        && sheets.get(room).lines().stream()
            .anyMatch(line -> line.asks().section() == section && isOverdue(room, line));
  }

  /** True for what comes by itself once nine in ten would have come. */
  boolean isOverdue(RoomId room, RoomSheet.Line line) {
    return line.asks().isArrival()
        && now >= sheets.get(room).target() - line.asks().plannedLate() * FirstSettings.MINUTE;
  }
}
