package sunup.review.facts;

import java.util.HashMap;
import java.util.Map;
import sunup.board.Event;
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

  public ToldPast(Replayed played) {
    this.played = played;
  }

  @Override
  public Long freed(String room) {
    return freed(new RoomId(room));
  }

  /** The same by the room itself. */
  public Long freed(RoomId room) {
    CaseDay day = played.end().caseIn(room);
    Long start =
        day == null ? null : Step.reachedBy(played.end().settings().startEvent(), day.steps()::get);
    boolean used = false;
    Long freed = null;
    for (Recorded recorded : played.journal()) {
      boolean before = start == null || recorded.happenedAt() <= start;
      if (before && recorded.event() instanceof Event.RoomUsed e && e.room().equals(room)) {
        boolean free = e.use() == RoomUse.FREE;
        freed = free && used ? (Long) recorded.happenedAt() : freed;
        used = !free;
      }
    }
    return freed;
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
