package sunup.forecast;

import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import sunup.forecast.ForecastInput.Arrival;
import sunup.forecast.ForecastInput.ItemIn;
import sunup.forecast.ForecastInput.KindIn;
import sunup.forecast.ForecastInput.Need;
import sunup.forecast.ForecastInput.PersonIn;
import sunup.forecast.ForecastInput.PlaceIn;
import sunup.forecast.ForecastInput.Progress;
import sunup.forecast.ForecastInput.RoomIn;
import sunup.forecast.ForecastInput.State;

/** Says what is wrong with an input, by field, and what to do. */
final class Checks {
  static final List<String> STYLES = List.of("each-item", "each-section", "at-end", "never");

  private final ForecastInput in;
  private final Set<String> rooms = new HashSet<>();
  private final Set<String> people = new HashSet<>();
  private final Set<String> kinds = new HashSet<>();
  private final Set<String> places = new HashSet<>();

  private Checks(ForecastInput in) {
    this.in = in;
  }

  static void check(ForecastInput in) {
    if (in == null) {
      throw new BadInput("input: is missing; give a morning");
    }
    new Checks(in).all();
  }

  private void all() {
    need(in.version() == 1, "version", "must be 1; this program knows no other form");
    need(
        in.trials() >= 1 && in.trials() <= Limits.TRIALS,
        "trials",
        "must be 1 to " + Limits.TRIALS);
    size("rooms", in.rooms().size(), Limits.ROOMS);
    size("people", in.people().size(), Limits.PEOPLE);
    size("kinds", in.kinds().size(), Limits.KINDS);
    size("places", in.places().size(), Limits.PLACES);
    settings();
    for (int i = 0; i < in.rooms().size(); i++) {
      name("rooms[" + i + "].id", in.rooms().get(i).id(), rooms);
    }
    for (int i = 0; i < in.people().size(); i++) {
      name("people[" + i + "].id", in.people().get(i).id(), people);
    }
    for (int i = 0; i < in.kinds().size(); i++) {
      kind("kinds[" + i + "]", in.kinds().get(i));
    }
    for (int i = 0; i < in.places().size(); i++) {
      place("places[" + i + "]", in.places().get(i));
    }
    for (int i = 0; i < in.people().size(); i++) {
      person("people[" + i + "]", in.people().get(i));
    }
    for (int i = 0; i < in.rooms().size(); i++) {
      room("rooms[" + i + "]", in.rooms().get(i));
    }
  }

  private void settings() {
    ForecastInput.Settings s = in.settings();
    need(
        s.personShare() >= 0 && s.personShare() <= 0.95,
        "settings.personShare",
        "must be 0 to 0.95");
    duration("settings.graceMs", s.graceMs());
    duration("settings.capMs", s.capMs());
    need(
        s.forgottenTouch() >= 0 && s.forgottenTouch() < 1,
        "settings.forgottenTouch",
        "must be 0 or more and less than 1");
    ForecastInput.Silence q = s.silence();
    double sum = q.eachItem() + q.eachSection() + q.atEnd() + q.never();
    need(
        q.eachItem() >= 0
            && q.eachSection() >= 0
            && q.atEnd() >= 0
            && q.never() >= 0
            && Math.abs(sum - 1) < 1e-6,
        "settings.silence",
        "its four shares must be 0 or more and add to 1");
    need(q.away() >= 0 && q.away() <= 1, "settings.silence.away", "must be 0 to 1");
    draw("settings.silence.awayFor", q.awayFor());
    draw("settings.silence.delay", q.delay());
  }

  private void kind(String at, KindIn k) {
    name(at + ".id", k.id(), kinds);
    need(
        k.capacity() >= 0 && k.capacity() <= Limits.CAPACITY,
        at + ".capacity",
        "must be 0 to " + Limits.CAPACITY);
    for (String r : k.promised()) {
      known(at + ".promised", r, rooms, "room");
    }
  }

  private void place(String at, PlaceIn p) {
    name(at + ".id", p.id(), places);
    moment(at + ".opensAt", p.opensAt());
    draw(at + ".walk", p.walk());
  }

  private void person(String at, PersonIn p) {
    if (p.room() != null) {
      known(at + ".room", p.room(), rooms, "room");
    }
    for (String r : p.covers()) {
      known(at + ".covers", r, rooms, "room");
    }
    if (p.arrivedAt() != null) {
      moment(at + ".arrivedAt", p.arrivedAt());
      need(p.arrivedAt() <= in.now(), at + ".arrivedAt", "must not be after now; leave it out");
    } else {
      moment(at + ".plannedAt", p.plannedAt());
    }
    draw(at + ".late", p.late());
    if (p.leavesAt() != null) {
      moment(at + ".leavesAt", p.leavesAt());
    }
    if (p.lastWordAt() != null) {
      moment(at + ".lastWordAt", p.lastWordAt());
      need(p.lastWordAt() <= in.now(), at + ".lastWordAt", "must not be after now");
    }
    for (ForecastInput.Stretch s : p.away()) {
      moment(at + ".away.from", s.from());
      moment(at + ".away.to", s.to());
      need(s.to() >= s.from(), at + ".away", "must not end before it begins");
    }
    if (p.styles() != null) {
      need(!p.styles().isEmpty(), at + ".styles", "must name one style, or be left out for all");
      for (String s : p.styles()) {
        need(STYLES.contains(s), at + ".styles", "knows " + STYLES + ", not \"" + s + "\"");
      }
    }
  }

  private void room(String at, RoomIn r) {
    text(at + ".caseId", r.caseId());
    moment(at + ".target", r.target());
    moment(at + ".begins", r.begins());
    text(at + ".startStep", r.startStep());
    if (r.occupiedFor() != null) {
      draw(at + ".occupiedFor", r.occupiedFor());
    }
    if (r.startedAt() != null) {
      moment(at + ".startedAt", r.startedAt());
      need(r.startedAt() <= in.now(), at + ".startedAt", "must not be after now");
    }
    size(at + ".items", 2 * r.items().size(), Limits.ITEMS);
    Map<String, ItemIn> byKey = new HashMap<>();
    Set<String> steps = new HashSet<>();
    for (int i = 0; i < r.items().size(); i++) {
      ItemIn item = r.items().get(i);
      text(at + ".items[" + i + "].key", item.key());
      need(
          byKey.put(item.key(), item) == null,
          at + ".items[" + i + "].key",
          "\"" + item.key() + "\" stands twice in this room; give each item its own key");
      if (item.marks() != null) {
        need(
            steps.add(item.marks()),
            at + ".items[" + i + "].marks",
            "\"" + item.marks() + "\" is marked by another item already; one item marks a step");
      }
    }
    need(
        steps.contains(r.startStep()),
        at + ".startStep",
        "no item marks \"" + r.startStep() + "\"; let one item of the room mark the start");
    for (int i = 0; i < r.items().size(); i++) {
      item(at + ".items[" + i + "]", r.items().get(i), byKey);
    }
  }

  private void item(String at, ItemIn item, Map<String, ItemIn> byKey) {
    size(at + ".who", item.who().size(), Limits.SLOTS);
    for (List<String> any : item.who()) {
      need(!any.isEmpty(), at + ".who", "each entry must name at least one role");
    }
    draw(at + ".hands", item.hands());
    if (item.waits() != null) {
      draw(at + ".waits", item.waits());
    }
    if (item.extra() != null) {
      need(item.extra().oneIn() >= 1, at + ".extra.oneIn", "must be 1 or more");
      duration(at + ".extra.ms", item.extra().ms());
    }
    for (String key : item.after()) {
      need(
          byKey.containsKey(key) && !key.equals(item.key()),
          at + ".after",
          "\"" + key + "\" is no other item of this room");
    }
    if (item.notBefore() != null) {
      moment(at + ".notBefore", item.notBefore());
    }
    if (item.place() != null) {
      known(at + ".place", item.place(), places, "place");
    }
    if (item.lifeMs() != null) {
      need(item.lifeMs() > 0, at + ".lifeMs", "must be more than 0, or left out");
      duration(at + ".lifeMs", item.lifeMs());
    }
    needs(at + ".needs", item, byKey);
    arrival(at + ".arrival", item);
    progress(at + ".progress", item.progress());
  }

  private void needs(String at, ItemIn item, Map<String, ItemIn> byKey) {
    size(at, item.needs().size(), Limits.SLOTS);
    Set<String> seen = new HashSet<>();
    for (Need n : item.needs()) {
      known(at + ".kind", n.kind(), kinds, "kind");
      need(seen.add(n.kind()), at + ".kind", "\"" + n.kind() + "\" stands twice; add the units");
      need(n.units() >= 1 && n.units() <= Limits.CAPACITY, at + ".units", "must be 1 or more");
      need(
          n.until() == null || byKey.containsKey(n.until()),
          at + ".until",
          "\"" + n.until() + "\" is no item of this room");
    }
  }

  private void arrival(String at, ItemIn item) {
    Arrival a = item.arrival();
    if (a != null) {
      moment(at + ".from", a.from());
      draw(at + ".late", a.late());
      need(item.who().isEmpty(), at, "comes by itself; leave \"who\" empty");
    }
  }

  private void progress(String at, Progress p) {
    need(p.state() != null, at + ".state", "is missing; give open, in-hand, good, fault, left-out");
    if (p.state() == State.GOOD || p.state() == State.IN_HAND || p.state() == State.FAULT) {
      need(p.since() != null, at + ".since", "is missing; give the time since which it is so");
      moment(at + ".since", p.since());
      need(p.since() <= in.now(), at + ".since", "must not be after now");
    }
    if (p.began() != null) {
      moment(at + ".began", p.began());
      need(p.since() != null, at + ".began", "is of an item that is good; leave it out");
      need(p.began() <= p.since(), at + ".began", "must not be after since");
    }
    if (p.state() == State.FAULT) {
      draw(at + ".mend", p.mend());
    }
    if (p.by() != null) {
      text(at + ".by", p.by());
    }
    if (p.taken() != null) {
      known(at + ".taken", p.taken(), people, "person");
    }
  }

  private void draw(String at, Draw d) {
    need(d != null, at, "is missing; give a duration");
    if (d instanceof Draw.Constant c) {
      duration(at + ".ms", c.ms());
    } else if (d instanceof Draw.LogNormal l) {
      duration(at + ".usualMs", l.usualMs());
      duration(at + ".oneInTenMs", l.oneInTenMs());
      need(l.oneInTenMs() >= l.usualMs(), at + ".oneInTenMs", "must not be less than usualMs");
      need(
          l.usualMs() > 0 || l.oneInTenMs() == 0,
          at + ".usualMs",
          "must be more than 0 unless both are 0");
    } else if (d instanceof Draw.Exponential e) {
      duration(at + ".meanMs", e.meanMs());
    } else if (d instanceof Draw.ThreePoint p) {
      duration(at + ".lowMs", p.lowMs());
      duration(at + ".highMs", p.highMs());
      need(
          p.lowMs() <= p.likelyMs() && p.likelyMs() <= p.highMs(),
          at,
          "needs lowMs <= likelyMs <= highMs");
    }
  }

  private void moment(String at, long ms) {
    long off = ms - in.now();
    need(off >= -Limits.FAR && off <= Limits.FAR, at, "must lie within seven days of now");
  }

  private static void duration(String at, long ms) {
    need(ms >= 0 && ms <= Limits.FAR, at, "must be 0 to seven days in milliseconds");
  }

  private static void size(String at, int n, int limit) {
    need(n <= limit, at, "has " + n + " entries; at most " + limit + " are taken");
  }

  private static void name(String at, String id, Set<String> seen) {
    text(at, id);
    need(seen.add(id), at, "\"" + id + "\" stands twice; give each its own id");
  }

  private static void text(String at, String s) {
    need(s != null && !s.isEmpty(), at, "is missing; give a text");
    need(s.length() <= Limits.TEXT, at, "is longer than " + Limits.TEXT + " letters");
  }

  private static void known(String at, String id, Set<String> ids, String what) {
    need(ids.contains(id), at, "\"" + id + "\" is no " + what + " of this input");
  }

  private static void need(boolean holds, String at, String what) {
    if (!holds) {
      throw new BadInput(at + ": " + what);
    }
  }
}
