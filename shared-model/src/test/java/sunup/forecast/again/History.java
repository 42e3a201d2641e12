package sunup.forecast.again;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.function.ToDoubleFunction;
import java.util.stream.Collectors;
import sunup.forecast.ForecastInput.PlaceIn;
import sunup.forecast.ForecastInput.Settings;

/**
 * What somebody who said nothing may have done until now: the model page's section 6. One history
 * is played; whether a word of it would have been heard is asked afterwards.
 */
final class History {
  /** An own item done or in hand. */
  record Done(Task task, long handsEnd, long good) {}

  private final Suite suite;
  private final Chance chance;
  private final Somebody p;
  private final List<Task> own;
  private final String style;
  private final Set<Task> goodBefore = new HashSet<>();
  private final Map<Task, Long> goodAt = new HashMap<>();

  final List<Done> done = new ArrayList<>();
  final long comes;
  final double factor;
  String where;
  long backAt = Long.MIN_VALUE;
  double calledAfter = Double.POSITIVE_INFINITY;
  double usualDone;
  private final long now;

  private History(Suite suite, Somebody p, Chance chance) {
    this.suite = suite;
    this.chance = chance;
    this.p = p;
    now = suite.in.now();
    own = suite.tasks.stream().filter(t -> mayBeHidden(t, p)).toList();
    suite.tasks.stream().filter(t -> t.state == Task.State.GOOD).forEach(goodBefore::add);
    factor = chance.normal();
    comes =
        p.is.arrivedAt() != null ? p.is.arrivedAt() : p.is.plannedAt() + chance.plain(p.is.late());
    where = p.is.room();
    style = style();
    ToDoubleFunction<Task> usual = t -> Task.usual(t.hands());
    List<Task> all = suite.tasks.stream().filter(t -> ownWork(t, p)).toList();
    usualDone = all.stream().filter(t -> t.state == Task.State.GOOD).mapToDouble(usual).sum();
    if (chance.happens(settings().silence().away())) {
      calledAfter = chance.u() * all.stream().mapToDouble(usual).sum();
      if (calledAfter <= usualDone) {
        calledAfter = Double.POSITIVE_INFINITY;
      }
    }
    play(Math.max(comes, lastWord(p)));
  }

  private Settings settings() {
    return suite.in.settings();
  }

  /** True if this person's silence is taken for work that may be going on. */
  static boolean concerns(Suite suite, Somebody p) {
    if (p.is.room() == null) {
      return false;
    }
    for (Task t : suite.tasks) {
      boolean inHand =
          p.is.id().equals(t.item.progress().taken())
              || (t.item.progress().state() == sunup.forecast.ForecastInput.State.IN_HAND
                  && p.is.id().equals(t.item.progress().by()));
      if (inHand) {
        return false;
      }
    }
    return p.is.arrivedAt() == null
        ? !p.is.arrivalReported()
        : Math.max(p.is.arrivedAt(), lastWord(p)) < suite.in.now();
  }

  private static long lastWord(Somebody p) {
    return p.is.lastWordAt() == null ? Long.MIN_VALUE : p.is.lastWordAt();
  }

  /** One that nobody would have heard of by now. */
  static History unheard(Suite suite, Somebody p, Chance chance, int mostTries) {
    for (int n = 0; n < mostTries; n++) {
      History h = new History(suite, p, chance);
      if (!h.heard()) {
        return h;
      }
    }
    throw new IllegalStateException("no history of " + p.is.id() + " without a word");
  }

  /** Set-up work of one person, of whom this is the first of the room. */
  private static boolean ownWork(Task t, Somebody p) {
    return !t.mending
        && t.slots.size() == 1
        && t.marks() == null
        && !t.arrives()
        && !t.followsAStep()
        && t.slots.get(0).stream()
                .filter(c -> c.own(t))
                .min((a, b) -> a.is.id().compareTo(b.is.id()))
                .orElse(null)
            == p;
  }

  private static boolean mayBeHidden(Task t, Somebody p) {
    return t.state == Task.State.OPEN
        && ownWork(t, p)
        && t.needs().stream().allMatch(n -> n.held())
        && !(t.item.inRoom() && t.room.occupiedFor() != null);
  }

  private String style() {
    var s = settings().silence();
    Map<String, Double> shares =
        Map.of(
            "each-item", s.eachItem(),
            "each-section", s.eachSection(),
            "at-end", s.atEnd(),
            "never", s.never());
    List<String> names =
        p.is.styles() == null
            ? List.of("each-item", "each-section", "at-end", "never")
            : p.is.styles();
    double u = chance.u() * names.stream().mapToDouble(shares::get).sum();
    for (String name : names) {
      u -= shares.get(name);
      if (u < 0) {
        return name;
      }
    }
    return names.get(names.size() - 1);
  }

  private void play(long from) {
    long t = from;
    while (t < now && !p.left(t)) {
      if (p.away(t)) {
        t = p.awayUntil(t);
        continue;
      }
      Task next = next(t);
      if (next == null) {
        long later = laterMoment(t);
        if (later >= now) {
          return;
        }
        t = later;
        continue;
      }
      t = work(next, t);
    }
  }

  private long work(Task task, long t) {
    long walk = Trial.way(suite, where, task, chance.u(), chance);
    double rho = settings().personShare();
    double z = Math.sqrt(rho) * factor + Math.sqrt(1 - rho) * chance.normal();
    long end = t + walk + chance.byNormal(task.hands(), z);
    long good = end + Trial.alone(task, chance);
    done.add(new Done(task, end, good));
    goodAt.put(task, good);
    where = task.where();
    usualDone += Task.usual(task.hands());
    if (usualDone >= calledAfter) {
      calledAfter = Double.POSITIVE_INFINITY;
      backAt = end + chance.plain(settings().silence().awayFor());
      return backAt;
    }
    return end;
  }

  private Task next(long t) {
    Task first = null;
    for (Task task : own) {
      if (!goodAt.containsKey(task) && opensAt(task) <= t) {
        if (task.place() != null && task.place().equals(where)) {
          return task;
        }
        first = first == null ? task : first;
      }
    }
    return first;
  }

  private long laterMoment(long t) {
    long least = Long.MAX_VALUE;
    for (Task task : own) {
      if (!goodAt.containsKey(task) && opensAt(task) > t) {
        least = Math.min(least, opensAt(task));
      }
    }
    return least;
  }

  /** When it can begin as far as this history tells. */
  private long opensAt(Task task) {
    long at = task.item.notBefore() == null ? Long.MIN_VALUE : task.item.notBefore();
    PlaceIn place = suite.places.get(task.place());
    at = place == null ? at : Math.max(at, place.opensAt());
    for (Task b : task.before) {
      if (!goodBefore.contains(b)) {
        at = Math.max(at, goodAt.getOrDefault(b, Long.MAX_VALUE));
      }
    }
    return at;
  }

  /** True if a word came by now: some time after the item that completes what is told. */
  private boolean heard() {
    return switch (style) {
      case "each-item" -> own.stream().anyMatch(t -> toldByNow(List.of(t)));
      case "each-section" ->
          own.stream()
              .collect(Collectors.groupingBy(t -> String.valueOf(t.item.section())))
              .values()
              .stream()
              .anyMatch(this::toldByNow);
      case "at-end" -> toldByNow(own);
      default -> false;
    };
  }

  private boolean toldByNow(List<Task> together) {
    long last = Long.MIN_VALUE;
    for (Task t : together) {
      last = Math.max(last, goodAt.getOrDefault(t, Long.MAX_VALUE));
    }
    return !together.isEmpty()
        && last <= now
        && last + chance.plain(settings().silence().delay()) <= now;
  }
}
