package sunup.forecast.again;

import java.util.ArrayList;
import java.util.List;
import sunup.forecast.Draw;
import sunup.forecast.ForecastInput;
import sunup.forecast.ForecastInput.ItemIn;
import sunup.forecast.ForecastInput.PlaceIn;
import sunup.forecast.ForecastInput.Progress;
import sunup.forecast.ForecastInput.RoomIn;
import sunup.forecast.ForecastInput.State;
import sunup.forecast.ForecastInput.Stretch;
import umontreal.ssj.simevents.Event;
import umontreal.ssj.simevents.Simulator;

/** One trial on a library's event list. Its time 0 is now. */
final class Trial {
  private static final int HISTORIES_MAX = 100_000;
  private static final int REDONE_MAX = 2;

  final Suite suite;
  final Chance chance;
  final Simulator clock = new Simulator();
  private final HandOut handOut;
  private final ForecastInput in;
  private final long[] starts;
  private final long[] could;
  private int toStart;
  private boolean handing;

  Trial(ForecastInput in, Chance chance) {
    this.in = in;
    this.chance = chance;
    suite = new Suite(in);
    handOut = new HandOut(this);
    starts = new long[in.rooms().size()];
    could = new long[in.rooms().size()];
    toStart = starts.length;
    clock.init();
  }

  /** Start of each room, then for each room the moment at which it could have started. */
  long[][] run() {
    long last = Long.MIN_VALUE;
    for (int r = 0; r < starts.length; r++) {
      RoomIn room = in.rooms().get(r);
      starts[r] = room.target() + in.settings().capMs();
      could[r] = starts[r];
      last = Math.max(last, starts[r]);
      suite.occupiedUntil[r] =
          room.occupiedFor() == null ? Long.MIN_VALUE : in.now() + chance.plain(room.occupiedFor());
      at(suite.occupiedUntil[r], this::wake);
    }
    at(last, clock::stop);
    for (PlaceIn p : in.places()) {
      at(p.opensAt(), this::wake);
    }
    people();
    known();
    wake();
    clock.start();
    return new long[][] {starts, could};
  }

  long now() {
    return in.now() + Math.round(clock.time());
  }

  /** At that moment, or at once if it has passed. */
  private void at(long moment, Runnable what) {
    Event e =
        new Event(clock) {
          @Override
          public void actions() {
            what.run();
          }
        };
    e.setPriority(1);
    e.schedule((double) Math.max(0, moment - now()));
  }

  /** Work is given out when all else of this instant is done. */
  void wake() {
    if (!handing) {
      handing = true;
      Event e =
          new Event(clock) {
            @Override
            public void actions() {
              handing = false;
              handOut.run();
            }
          };
      e.setPriority(2);
      e.schedule(0);
    }
  }

  private void people() {
    for (Somebody p : suite.people.values()) {
      p.factor = chance.normal();
      p.comes = comes(p);
    }
    for (Somebody p : suite.people.values()) {
      if (History.concerns(suite, p)) {
        take(History.unheard(suite, p, chance, HISTORIES_MAX), p);
      }
    }
    for (Somebody p : suite.people.values()) {
      if (p.is.arrivedAt() == null) {
        p.idleSince = Math.max(p.idleSince, p.comes);
        at(p.comes, this::wake);
      }
      for (Stretch s : p.is.away()) {
        at(
            s.to(),
            () -> {
              p.idleSince = p.busy ? p.idleSince : Math.max(p.idleSince, now());
              wake();
            });
      }
    }
  }

  private long comes(Somebody p) {
    if (p.is.arrivedAt() != null) {
      return p.is.arrivedAt();
    }
    long e = in.now() - p.is.plannedAt();
    return e <= 0 || !p.is.arrivalReported()
        ? p.is.plannedAt() + chance.plain(p.is.late())
        : in.now() + chance.left(p.is.late(), e, chance.normal());
  }

  /** What a silent person did goes on in the trial. */
  private void take(History h, Somebody p) {
    p.factor = h.factor;
    p.comes = h.comes;
    p.where = h.where;
    p.calledAfter = h.calledAfter;
    p.usualDone = h.usualDone;
    p.backAt = h.backAt;
    at(h.backAt, this::wake);
    for (History.Done d : h.done) {
      d.task().state = Task.State.BEGUN;
      p.idleSince = Math.max(p.idleSince, Math.min(d.handsEnd(), in.now()));
      if (d.handsEnd() > in.now()) {
        p.busy = true;
        at(d.handsEnd(), () -> free(List.of(p), null));
      }
      if (d.good() <= in.now()) {
        good(d.task(), d.good());
      } else {
        at(d.good(), () -> good(d.task(), now()));
      }
    }
    if (h.backAt != Long.MIN_VALUE) {
      p.idleSince = Math.max(p.idleSince, h.backAt);
    }
  }

  /** What is reported: units in use, what is in hand, what is good and may lapse. */
  private void known() {
    for (Task t : suite.tasks) {
      Progress was = t.item.progress();
      boolean held = !t.mending && t.item.needs().stream().anyMatch(n -> n.held());
      if (held || (!t.mending && was.state() == State.IN_HAND)) {
        suite.claim(t);
        suite.claimed(t);
      }
      boolean begun = t.mending ? was.taken() != null : was.state() == State.IN_HAND;
      if (begun) {
        Somebody by = suite.people.get(t.mending ? was.taken() : was.by());
        t.state = Task.State.BEGUN;
        if (by != null) {
          by.busy = true;
        }
      }
      if (!t.mending && was.state() == State.GOOD) {
        lapse(t, was.since());
      }
      if (t.arrives() && t.state == Task.State.OPEN) {
        t.comesAt = arrival(t.item);
      }
      if (!t.mending && t.item.notBefore() != null) {
        at(t.item.notBefore(), this::wake);
      }
    }
    for (Task t : suite.tasks) {
      if (t.state == Task.State.BEGUN && inHandByReport(t)) {
        goOn(t);
      }
    }
  }

  private static boolean inHandByReport(Task t) {
    return t.mending
        ? t.item.progress().taken() != null
        : t.item.progress().state() == State.IN_HAND;
  }

  private long arrival(ItemIn item) {
    long e = in.now() - item.arrival().from();
    return e <= 0 || item.arrival().silent()
        ? item.arrival().from() + chance.plain(item.arrival().late())
        : in.now() + chance.left(item.arrival().late(), e, chance.normal());
  }

  private void goOn(Task t) {
    Progress was = t.item.progress();
    List<Somebody> with = new ArrayList<>();
    Somebody by = suite.people.get(t.mending ? was.taken() : was.by());
    if (by != null) {
      with.add(by);
      by.where = t.where();
    }
    long e = in.now() - was.since();
    double p = in.settings().forgottenTouch();
    double z = person(by);
    long hands;
    long good;
    if (t.waits() == null) {
      boolean over = chance.happens(Chance.forgotten(p, t.hands(), e));
      hands = in.now() + (over ? 0 : chance.left(t.hands(), e, z));
      good = hands + (over ? 0 : extra(t, chance));
    } else {
      long whole = chance.byNormal(t.hands(), z);
      if (whole > e) {
        boolean over = chance.happens(p);
        hands = in.now() + (over ? 0 : whole - e);
        good = hands + (over ? 0 : alone(t, chance));
      } else {
        hands = in.now();
        boolean over = chance.happens(Chance.forgotten(p, t.waits(), e - whole));
        long left = chance.left(t.waits(), e - whole, chance.normal());
        good = hands + (over ? 0 : left + extra(t, chance));
      }
    }
    if (hands > in.now()) {
      others(t, by, with);
    }
    with.forEach(w -> w.busy = true);
    finish(t, with, hands, good);
  }

  /** The likely ones in the slots that the one who is named does not fill. */
  private void others(Task t, Somebody by, List<Somebody> with) {
    int own = by == null ? -1 : 0;
    for (int s = t.slots.size() - 1; s >= 0; s--) {
      own = by != null && t.slots.get(s).contains(by) ? s : own;
    }
    for (int s = 0; s < t.slots.size(); s++) {
      if (s != own) {
        t.slots.get(s).stream()
            .filter(p -> p.free(in.now()) && !with.contains(p))
            .min(handOut.choice(t))
            .ifPresent(with::add);
      }
    }
  }

  private double person(Somebody first) {
    double rho = first == null ? 0 : in.settings().personShare();
    double w = first == null ? 0 : first.factor;
    return Math.sqrt(rho) * w + Math.sqrt(1 - rho) * chance.normal();
  }

  private static long extra(Task t, Chance chance) {
    return !t.mending && t.item.extra() != null && chance.happens(1.0 / t.item.extra().oneIn())
        ? t.item.extra().ms()
        : 0;
  }

  /** Waiting and the rare extra, without anybody. */
  static long alone(Task t, Chance chance) {
    return chance.plain(t.waits()) + extra(t, chance);
  }

  /** Minutes of walking from somewhere to a task, back from the one place and to the other. */
  static long way(Suite suite, String from, Task task, double u, Chance chance) {
    if (task.where().equals(from)) {
      return 0;
    }
    long walk = 0;
    for (PlaceIn place : suite.in.places()) {
      if (place.id().equals(from) || place.id().equals(task.place())) {
        walk += chance.drawn(place.walk(), u);
      }
    }
    return walk;
  }

  void begin(Task t, List<Somebody> with) {
    suite.claim(t);
    suite.claimed(t);
    t.state = Task.State.BEGUN;
    long walk = 0;
    double u = chance.u();
    for (Somebody p : with) {
      walk = Math.max(walk, way(suite, p.where, t, u, chance));
      p.where = t.where();
      p.busy = true;
    }
    Draw draw = t.hands();
    long hands = chance.byNormal(draw, person(with.isEmpty() ? null : with.get(0)));
    long end = now() + walk + hands;
    finish(t, with, end, end + alone(t, chance));
  }

  private void finish(Task t, List<Somebody> with, long handsEnd, long natural) {
    long good = natural;
    if (t.marks() != null && t.item.notBefore() != null) {
      good = Math.max(natural, t.item.notBefore());
    }
    if (t == suite.start(t.roomAt)) {
      could[t.roomAt] = Math.min(could[t.roomAt], natural);
    }
    if (!with.isEmpty()) {
      at(handsEnd, () -> free(with, t));
    }
    at(good, () -> good(t, now()));
  }

  private void free(List<Somebody> with, Task task) {
    for (Somebody p : with) {
      p.busy = false;
      p.idleSince = now();
      if (task != null) {
        p.usualDone += Task.usual(task.hands());
        if (p.usualDone >= p.calledAfter) {
          p.calledAfter = Double.POSITIVE_INFINITY;
          p.backAt = now() + chance.plain(in.settings().silence().awayFor());
          p.idleSince = p.backAt;
          at(p.backAt, this::wake);
        }
      }
    }
    wake();
  }

  /** An item that comes by itself, its prerequisites good. */
  void comes(Task t) {
    t.state = Task.State.BEGUN;
    finish(t, List.of(), t.comesAt, t.comesAt);
  }

  private void good(Task t, long at) {
    t.state = Task.State.GOOD;
    suite.release(t);
    if (t == suite.start(t.roomAt)) {
      starts[t.roomAt] = Math.min(starts[t.roomAt], at);
      toStart--;
      if (toStart == 0) {
        clock.stop();
      }
    }
    lapse(t, at);
    wake();
  }

  private void lapse(Task t, long goodAt) {
    if (t.mending || t.item.lifeMs() == null || t.item.gates() == null) {
      return;
    }
    Task step = suite.marking(t.roomAt, t.item.gates());
    if (step == null || t.redone >= REDONE_MAX) {
      return;
    }
    at(
        goodAt + t.item.lifeMs(),
        () -> {
          if (step.state == Task.State.OPEN) {
            t.state = Task.State.OPEN;
            t.redone++;
            t.readyAt = Long.MIN_VALUE;
            wake();
          }
        });
  }
}
