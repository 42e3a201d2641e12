package sunup.review.facts;

import java.util.HashMap;
import java.util.HashSet;
import java.util.Map;
import java.util.Set;
import sunup.board.Event;
import sunup.board.Morning;
import sunup.board.Morning.CaseDay;
import sunup.board.Morning.UnitDay;
import sunup.board.Recorded;
import sunup.board.RoomId;
import sunup.board.RoomUse;
import sunup.board.Step;
import sunup.board.UnitId;
import sunup.forecast.Past;

/** What a morning's journal tells of rooms that were used for something else, and of equipment. */
public final class ToldPast implements Past {
  private final Replayed played;
  private final Map<RoomId, Long> freed = new HashMap<>();

  public ToldPast(Replayed played) {
    this.played = played;
    Map<RoomId, Long> starts = new HashMap<>();
    Morning end = played.end();
    for (RoomId room : end.rooms().keySet()) {
      CaseDay day = end.caseIn(room);
      Step event = end.settings().startEvent();
      Long start = day == null ? null : Step.reachedBy(event, day.steps()::get);
      if (start != null) {
        starts.put(room, start);
      }
    }
    Set<RoomId> used = new HashSet<>();
    for (Recorded recorded : played.journal()) {
      if (recorded.event() instanceof Event.RoomUsed e
          && recorded.happenedAt() <= starts.getOrDefault(e.room(), Long.MAX_VALUE)) {
        if (e.use() != RoomUse.FREE) {
          used.add(e.room());
        } else if (used.remove(e.room())) {
          freed.put(e.room(), recorded.happenedAt());
        }
      }
    }
  }

  @Override
  public Long freed(String room) {
    return freed(new RoomId(room));
  }

  /** The same by the room itself. */
  public Long freed(RoomId room) {
    return freed.get(room);
  }

  @Override
  public Came came(String room, String kind, long by) {
    Map<UnitId, RoomId> where = new HashMap<>();
    Came came = null;
    for (Recorded recorded : played.journal()) {
      if (recorded.happenedAt() <= by && recorded.event() instanceof Event.UnitClaimed e) {
        UnitDay unit = played.end().units().get(e.unit());
        RoomId before = where.put(e.unit(), e.room());
        if (unit != null
            && unit.plan().kind().equals(kind)
            && e.room() != null
            && e.room().value().equals(room)
            && !e.room().equals(before)) {
          came = new Came(recorded.happenedAt(), before == null ? null : before.value());
        }
      }
    }
    return came;
  }
}
