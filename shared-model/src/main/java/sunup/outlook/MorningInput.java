package sunup.outlook;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import sunup.board.LearnedTimes.Reporting;
import sunup.board.Morning;
import sunup.board.Morning.PlaceDay;
import sunup.board.Morning.UnitDay;
import sunup.board.RoomId;
import sunup.board.RoomUse;
import sunup.forecast.Draw;
import sunup.forecast.ForecastInput;
import sunup.forecast.ForecastInput.KindIn;
import sunup.forecast.ForecastInput.PlaceIn;
import sunup.forecast.ForecastInput.RoomIn;
import sunup.forecast.ForecastInput.Silence;

/**
 * Writes a morning down as the forecast's input. Pure; equal mornings and times give equal input.
 */
final class MorningInput {
  private final Snapshot snapshot;
  private final Morning morning;
  private final long now;

  MorningInput(Snapshot snapshot) {
    this.snapshot = snapshot;
    this.morning = snapshot.morning();
    this.now = snapshot.now();
  }

  ForecastInput build(int trials) {
    List<RoomIn> rooms = new ArrayList<>();
    for (RoomSheet sheet : snapshot.sheets().values()) {
      rooms.add(room(sheet));
    }
    return new ForecastInput(
        1,
        now,
        seedOf(morning),
        trials,
        settings(),
        new PeopleInput(snapshot).build(),
        kinds(),
        places(),
        rooms);
  }

  private ForecastInput.Settings settings() {
    ForecastInput.Settings first = ForecastInput.Settings.DEFAULT;
    Reporting told = morning.learned() == null ? null : morning.learned().reporting();
    return new ForecastInput.Settings(
        morning.settings().personShare(),
        morning.settings().graceMinutes() * FirstSettings.MINUTE,
        first.capMs(),
        told == null ? first.forgottenTouch() : told.forgotten(),
        told == null ? first.silence() : silence(told));
  }

  /**
   * What closed mornings taught of how people report here; of being called away they teach nothing.
   * A delay is an exponential one by its 90 % point: most words come at once, and a log-normal
   * through a median of a second and such a point would have some come hours later. Shares that an
   * earlier program froze may add to a little more than one, by how they were rounded.
   */
  private static Silence silence(Reporting told) {
    Silence first = Silence.DEFAULT;
    Draw delay =
        told.delayOneInTenMs() == null
            ? first.delay()
            : new Draw.Exponential(Math.round(told.delayOneInTenMs() / Math.log(10)));
    double sum = told.eachItem() + told.eachSection() + told.atEnd() + told.never();
    return new Silence(
        told.eachItem() / sum,
        told.eachSection() / sum,
        told.atEnd() / sum,
        told.never() / sum,
        first.away(),
        first.awayFor(),
        delay);
  }

  /** The morning's seed: the same on every node and at every recompute (FNV-1a, 64 bits). */
  static long seedOf(Morning morning) {
    long hash = 0xcbf29ce484222325L;
    for (char c : morning.id().toString().toCharArray()) {
      hash = (hash ^ c) * 0x100000001b3L;
    }
    return hash;
  }

  private List<KindIn> kinds() {
    Map<String, Integer> capacity = new LinkedHashMap<>();
    Map<String, List<String>> promised = new LinkedHashMap<>();
    for (UnitDay unit : morning.units().values()) {
      capacity.merge(unit.plan().kind(), 1, Integer::sum);
      if (unit.promised() != null && snapshot.sheets().containsKey(unit.promised())) {
        promised
            .computeIfAbsent(unit.plan().kind(), k -> new ArrayList<>())
            .add(unit.promised().value());
      }
    }
    List<KindIn> kinds = new ArrayList<>();
    capacity.forEach(
        (kind, n) -> kinds.add(new KindIn(kind, n, promised.getOrDefault(kind, List.of()))));
    return kinds;
  }

  private List<PlaceIn> places() {
    List<PlaceIn> places = new ArrayList<>();
    for (PlaceDay place : morning.places().values()) {
      places.add(
          new PlaceIn(
              place.plan().id().value(),
              place.opensAt(),
              new Draw.Constant(Math.round(place.plan().walkMinutes() * FirstSettings.MINUTE))));
    }
    return places;
  }

  private RoomIn room(RoomSheet sheet) {
    RoomId room = sheet.room().id();
    ItemsInput items =
        new ItemsInput(
            morning,
            sheet,
            now,
            // A role that nobody here serves this room in is not modelled: no trial waits for it.
            snapshot.rolesFor(room)::contains,
            section -> snapshot.isHeard(room, section));
    return new RoomIn(
        room.value(),
        sheet.caseDay().plan().id().value(),
        sheet.target(),
        sheet.startStep().code(),
        morning.beginsAt(),
        occupied(sheet, now),
        sheet.startedAt(),
        items.build());
  }

  /** What is left of a room's use, its cleaning included; null if it is free. */
  static Draw occupied(RoomSheet sheet, long now) {
    RoomUse use = sheet.room().use();
    if (use == RoomUse.FREE) {
      return null;
    }
    Draw used = used(sheet, use, now);
    return use == RoomUse.CLEANING ? used : cleaned(used);
  }

  /** Nobody works in a used room before it is cleaned; the median and the tail as of a sum. */
  private static Draw cleaned(Draw used) {
    Draw.LogNormal cleaning = FirstSettings.CLEANING;
    long usual = used.usual() + cleaning.usualMs();
    double late = used instanceof Draw.LogNormal u ? u.oneInTenMs() - u.usualMs() : 0;
    double dirty = cleaning.oneInTenMs() - cleaning.usualMs();
    return new Draw.LogNormal(usual, usual + Math.round(Math.hypot(late, dirty)));
  }

  private static Draw used(RoomSheet sheet, RoomUse use, long now) {
    Long until = sheet.room().useUntil();
    if (until != null && until > now) {
      return new Draw.Constant(until - now);
    }
    if (until != null) {
      return Left.of(FirstSettings.OVERRUN, now - until);
    }
    Long since = sheet.room().useSince();
    return Left.of(
        use == RoomUse.CLEANING ? FirstSettings.CLEANING : FirstSettings.IN_USE,
        since == null ? 0 : now - since);
  }
}
