package sunup.board;

import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import sunup.board.Morning.CaseDay;
import sunup.board.Morning.PlaceDay;
import sunup.board.Morning.RoomDay;
import sunup.board.Morning.UnitDay;
import sunup.board.Outcome.Refused;

/** Equipment, places and what rooms are used for. */
final class ThingRules {
  private ThingRules() {}

  static Outcome claim(Ask ask, Command.Claim c) {
    Refused refused =
        Ask.first(unknown(ask, c.unit()), ask.unknown(c.room()), Rights.checkRoom(ask, c.room()));
    return refused != null ? refused : ask.accept(taken(ask, c.unit(), c.room()));
  }

  /** What follows from a unit's being in a room now; nothing if it was there already. */
  static List<Event> taken(Ask ask, UnitId id, RoomId room) {
    UnitDay unit = ask.morning.units().get(id);
    if (unit == null || room == null || room.equals(unit.with())) {
      return List.of();
    }
    List<Event> events = new ArrayList<>();
    events.add(new Event.UnitClaimed(id, room));
    events.addAll(missed(ask, unit));
    return events;
  }

  static Outcome release(Ask ask, Command.Release c) {
    Refused refused = unknown(ask, c.unit());
    if (refused != null) {
      return refused;
    }
    UnitDay unit = ask.morning.units().get(c.unit());
    if (unit.with() == null) {
      return ask.accept();
    }
    Refused elsewhere = Rights.checkRoom(ask, unit.with());
    if (elsewhere != null) {
      return elsewhere;
    }
    List<Event> events = new ArrayList<>();
    events.add(new Event.UnitReleased(c.unit()));
    events.addAll(missed(ask, unit));
    return ask.accept(events);
  }

  /**
   * Items of the room that a unit leaves which were good by its being there and still need it: its
   * first case's, and those of the next case that is set up there.
   */
  private static List<Event> missed(Ask ask, UnitDay unit) {
    if (unit.with() == null) {
      return List.of();
    }
    CaseDay first = ask.morning.caseIn(unit.with());
    List<Event> events = new ArrayList<>();
    events.addAll(missed(unit, ask.morning.itemsOf(unit.with()), first));
    // The board knows no steps of a next case: none of them has happened.
    events.addAll(missed(unit, NextCase.newestItems(ask.morning, unit.with()), null));
    return events;
  }

  private static List<Event> missed(UnitDay unit, List<Placed> items, CaseDay day) {
    List<Event> events = new ArrayList<>();
    for (Placed placed : items) {
      boolean byThisUnit =
          placed.item().state() == ItemState.GOOD
              && placed.item().evidence() instanceof Evidence.Scan scan
              && scan.unit().equals(unit.plan().id());
      if (byThisUnit && isStillNeeded(placed, items, day)) {
        events.add(new Event.ItemReopened(placed.ref(), null));
      }
    }
    return events;
  }

  /** Needed until the work that comes after it is done, or the step that it gates has happened. */
  private static boolean isStillNeeded(Placed placed, List<Placed> items, CaseDay day) {
    Step gate = placed.sheet().gates();
    if (gate != null && day != null && day.hasPassed(gate)) {
      return false;
    }
    boolean hasFollowers = false;
    for (Placed other : items) {
      if (other.sheet().after().contains(placed.sheet().key())) {
        hasFollowers = true;
        ItemState state = other.item().state();
        if (state != ItemState.GOOD && state != ItemState.LEFT_OUT) {
          return true;
        }
      }
    }
    return !hasFollowers && gate != null;
  }

  static Outcome promise(Ask ask, Command.PromiseUnit c) {
    Refused refused = Ask.first(unknown(ask, c.unit()), ask.unknown(c.room()));
    if (refused != null) {
      return refused;
    }
    RoomId promised = ask.morning.units().get(c.unit()).promised();
    return Objects.equals(promised, c.room())
        ? ask.accept()
        : ask.accept(new Event.UnitPromised(c.unit(), c.room()));
  }

  static Outcome placeOpens(Ask ask, Command.PlaceOpens c) {
    PlaceDay place = ask.morning.places().get(c.place());
    Refused refused =
        Ask.first(Ask.unknownUnless(place != null, "place", c.place()), ask.implausible(c.at()));
    if (refused != null) {
      return refused;
    }
    return place.opensAt() == c.at()
        ? ask.accept()
        : ask.accept(new Event.PlaceOpening(c.place(), c.at()));
  }

  static Outcome sayRoom(Ask ask, Command.SayRoom c) {
    Refused refused =
        Ask.first(
            ask.unknown(c.room()), Rights.checkRoom(ask, c.room()), ask.implausible(c.until()));
    if (refused != null) {
      return refused;
    }
    RoomDay room = ask.morning.rooms().get(c.room());
    boolean same = room.use() == c.use() && Objects.equals(room.useUntil(), c.until());
    return same ? ask.accept() : ask.accept(new Event.RoomUsed(c.room(), c.use(), c.until()));
  }

  private static Refused unknown(Ask ask, UnitId unit) {
    return Ask.unknownUnless(ask.morning.units().containsKey(unit), "equipment", unit);
  }
}
