package sunup.moves;

import java.util.ArrayList;
import java.util.List;
import java.util.function.UnaryOperator;
import sunup.forecast.ForecastInput;
import sunup.forecast.ForecastInput.ItemIn;
import sunup.forecast.ForecastInput.KindIn;
import sunup.forecast.ForecastInput.PersonIn;
import sunup.forecast.ForecastInput.PlaceIn;
import sunup.forecast.ForecastInput.Progress;
import sunup.forecast.ForecastInput.RoomIn;

/** Inputs with one thing changed. */
final class Copies {
  private Copies() {}

  static ForecastInput people(ForecastInput in, UnaryOperator<PersonIn> change) {
    return with(in, each(in.people(), change), in.kinds(), in.places(), in.rooms());
  }

  /** One person more, who serves this room. */
  static ForecastInput joined(ForecastInput in, PersonIn person, String room) {
    List<PersonIn> people = new ArrayList<>(in.people());
    people.add(person(person, null, List.of(room), person.lastWordAt()));
    return with(in, people, in.kinds(), in.places(), in.rooms());
  }

  static ForecastInput kinds(ForecastInput in, UnaryOperator<KindIn> change) {
    return with(in, in.people(), each(in.kinds(), change), in.places(), in.rooms());
  }

  static ForecastInput places(ForecastInput in, UnaryOperator<PlaceIn> change) {
    return with(in, in.people(), in.kinds(), each(in.places(), change), in.rooms());
  }

  static ForecastInput room(ForecastInput in, String room, UnaryOperator<RoomIn> change) {
    UnaryOperator<RoomIn> one = r -> r.id().equals(room) ? change.apply(r) : r;
    return with(in, in.people(), in.kinds(), in.places(), each(in.rooms(), one));
  }

  static ForecastInput items(ForecastInput in, String room, UnaryOperator<ItemIn> change) {
    return room(in, room, r -> at(r, r.target(), each(r.items(), change)));
  }

  private static ForecastInput with(
      ForecastInput in,
      List<PersonIn> people,
      List<KindIn> kinds,
      List<PlaceIn> places,
      List<RoomIn> rooms) {
    return new ForecastInput(
        in.version(),
        in.now(),
        in.seed(),
        in.trials(),
        in.settings(),
        people,
        kinds,
        places,
        rooms);
  }

  private static <T> List<T> each(List<T> list, UnaryOperator<T> change) {
    List<T> next = new ArrayList<>(list.size());
    list.forEach(one -> next.add(change.apply(one)));
    return next;
  }

  /** The room with another target and other items. */
  static RoomIn at(RoomIn r, long target, List<ItemIn> items) {
    return new RoomIn(
        r.id(),
        r.caseId(),
        target,
        r.startStep(),
        r.begins(),
        r.occupiedFor(),
        r.startedAt(),
        items);
  }

  /** The room agreed later by so much; its booked steps move with it. */
  static RoomIn later(RoomIn r, long by) {
    UnaryOperator<ItemIn> step =
        i -> i.marks() == null || i.notBefore() == null ? i : notBefore(i, i.notBefore() + by);
    return at(r, r.target() + by, each(r.items(), step));
  }

  static ItemIn asked(ItemIn i) {
    return item(i, i.notBefore(), i.progress(), true);
  }

  private static ItemIn notBefore(ItemIn i, long at) {
    return item(i, at, i.progress(), i.asked());
  }

  /** The fault is being mended by this person from now on. */
  static ItemIn taken(ItemIn i, long since, String by) {
    Progress was = i.progress();
    Progress taken =
        new Progress(was.state(), since, was.began(), was.by(), was.mend(), was.mender(), by);
    return item(i, i.notBefore(), taken, i.asked());
  }

  private static ItemIn item(ItemIn i, Long notBefore, Progress progress, boolean asked) {
    return new ItemIn(
        i.key(),
        i.section(),
        i.ofCase(),
        i.who(),
        i.hands(),
        i.waits(),
        i.extra(),
        i.after(),
        i.gates(),
        i.marks(),
        notBefore,
        i.place(),
        i.inRoom(),
        i.needs(),
        i.arrival(),
        i.lifeMs(),
        progress,
        asked);
  }

  /** The person serves this room too. */
  static PersonIn covering(PersonIn p, String room) {
    List<String> covers = new ArrayList<>(p.covers());
    covers.add(room);
    return person(p, p.room(), covers, p.lastWordAt());
  }

  /** The person belongs to this room from then on; what was silent before says nothing of it. */
  static PersonIn moved(PersonIn p, String room, long since) {
    Long word = p.lastWordAt() == null ? (Long) since : Math.max(since, p.lastWordAt());
    return person(p, room, p.covers(), word);
  }

  private static PersonIn person(PersonIn p, String room, List<String> covers, Long lastWordAt) {
    return new PersonIn(
        p.id(),
        p.roles(),
        room,
        covers,
        p.arrivedAt(),
        p.plannedAt(),
        p.late(),
        p.arrivalReported(),
        p.leavesAt(),
        p.away(),
        lastWordAt,
        p.styles());
  }
}
