package sunup.ops.rehearsal;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashSet;
import java.util.List;
import java.util.PriorityQueue;
import java.util.Set;
import sunup.board.Role;
import sunup.board.RoomUse;
import sunup.board.Section;
import sunup.sheets.Hands;
import sunup.sheets.SheetItem;
import sunup.sheets.Uses;

/** Plays the true morning: one thing after the other from a queue of what is due. */
final class Play {
  private static final long MINUTE = 60_000;

  /** How much one person's items go together: rule 4's first setting. */
  private static final double PERSON_SHARE = 0.2;

  /** Chance of being pulled away during the set-up and how long then: rule 3's first setting. */
  private static final double AWAY = 0.07;

  private static final Hands AWAY_FOR = new Hands(12, 30);

  /** Patients are sent for so long before the chain's usual minutes ask for it. */
  private static final long SEND_EARLY = 8 * MINUTE;

  /** After this a fault is with a technician who has time. */
  private static final long FAULT_HEARD = 2 * MINUTE;

  /** A step for several that has waited so long goes before what comes first on the sheet. */
  private static final long LONG_WAITED = 5 * MINUTE;

  /** No morning needs more; it stops a story that goes round in circles. */
  private static final int MOST_STEPS = 500_000;

  private static final long MORNING = 5 * 60 * MINUTE;

  private record Due(long at, long order, Runnable what) {}

  private final World world;
  private final Story story;
  private final Dice dice;
  private final PriorityQueue<Due> due =
      new PriorityQueue<>(Comparator.comparingLong(Due::at).thenComparingLong(Due::order));
  private final Set<Long> woken = new HashSet<>();
  private final List<Worker> roaming;
  private final Role mendingRole;
  private final List<Fact> facts = new ArrayList<>();
  private long order;
  private long now;

  Play(World world, Story story, Dice dice) {
    this.world = world;
    this.story = story;
    this.dice = dice;
    this.roaming = world.roaming();
    this.mendingRole =
        roaming.stream().anyMatch(w -> w.role == Role.TECHNICIAN)
            ? Role.TECHNICIAN
            : Role.ANAESTHETIST;
  }

  /** All that happens, in order of time. */
  List<Fact> run() {
    now = Long.MIN_VALUE;
    setTheScene();
    long end = world.plan.beginsAt() + MORNING;
    for (int step = 0; step < MOST_STEPS && !due.isEmpty() && due.peek().at() <= end; step++) {
      Due next = due.poll();
      now = next.at();
      next.what().run();
      if (due.isEmpty() || due.peek().at() > now) {
        dispatch();
      }
    }
    return facts;
  }

  private void setTheScene() {
    for (Worker w : world.workers) {
      if (w.comesAt != Long.MAX_VALUE) {
        at(w.comesAt, () -> came(w));
      }
    }
    for (Story.Night n : story.nights()) {
      Theatre room = world.rooms.get(n.room());
      long said = Story.at(world.plan, n.said());
      long until = Story.at(world.plan, n.until());
      long clean = until + Math.round(n.cleaningMinutes() * MINUTE);
      room.usableFrom = clean;
      at(
          world.plan.beginsAt(),
          () -> facts.add(new Fact.Used(now, room.id, RoomUse.OCCUPIED, said)));
      at(until, () -> facts.add(new Fact.Used(now, room.id, RoomUse.CLEANING, clean)));
      at(clean, () -> facts.add(new Fact.Used(now, room.id, RoomUse.FREE, null)));
    }
    for (Story.Agreed a : story.agreed()) {
      long to = Story.at(world.plan, a.to());
      at(Story.at(world.plan, a.when()), () -> world.rooms.get(a.room()).target = to);
    }
    story.missing().forEach(this::missing);
    world.places.values().forEach(p -> wake(p.opensAt()));
    for (Theatre room : world.rooms.values()) {
      for (Job job : room.jobs) {
        if (job.item.isArrival()) {
          at(arrivalOf(job), () -> good(job));
        }
      }
    }
  }

  private void missing(Story.Missing m) {
    Job job = world.rooms.get(m.room()).byKey.get(m.item());
    at(Story.at(world.plan, m.found()), () -> foundMissing(job, m.what()));
    at(
        Story.at(world.plan, m.taken()),
        () -> facts.add(new Fact.Taken(now, job.room.id, job.ref, m.by())));
    at(Story.at(world.plan, m.until()), () -> mended(job));
  }

  /** Whatever was done of it is to be done again, and those who were at it are free. */
  private void foundMissing(Job job, String what) {
    job.hands.forEach(w -> w.doing = w.doing == job ? null : w.doing);
    broke(job, what);
  }

  private void broke(Job job, String what) {
    job.state = Job.State.BROKEN;
    job.brokeAt = now;
    facts.add(new Fact.Broke(now, job.room.id, job.ref, what));
  }

  private void mended(Job job) {
    job.state = Job.State.OPEN;
    facts.add(new Fact.Mended(now, job.room.id, job.ref));
  }

  private long arrivalOf(Job job) {
    for (Story.Arrives a : story.arrivals()) {
      if (a.room().equals(job.room.id) && a.item().equals(job.item.key())) {
        return Story.at(world.plan, a.at());
      }
    }
    int usual = job.item.plannedBefore();
    int late = job.item.plannedLate() == null ? usual : job.item.plannedLate();
    double z = Math.max(-1.6, dice.normal("arrival " + job.ref));
    long before = Math.round((usual - (usual - late) / 1.2816 * z) * MINUTE);
    return job.room.plan.bookedAt() - before - story.soonerMs(job.room.id, job.item.key());
  }

  private void came(Worker w) {
    if (w.id != null) {
      facts.add(new Fact.Came(now, w.id, w.own));
    }
    if (w.role == Role.ANAESTHETIST && w.own != null && dice.oneIn(AWAY, "away " + w.name)) {
      long begin = now + Math.round(30 * MINUTE * dice.uniform("away at " + w.name));
      at(begin, () -> pulledAway(w));
    }
  }

  private void pulledAway(Worker w) {
    long length = Dice.logNormal(AWAY_FOR, dice.normal("away for " + w.name));
    w.awayUntil = now + length;
    wake(w.awayUntil);
    Job job = w.doing;
    if (job != null && !w.mending) {
      job.endsAt += length;
      at(job.endsAt, () -> handsDone(job));
    }
  }

  private void dispatch() {
    boolean again = true;
    while (again) {
      again = false;
      for (Theatre room : world.rooms.values()) {
        for (Job job : room.jobs) {
          if (job.state == Job.State.OPEN && job.item.isMilestone() && startable(job)) {
            good(job);
            again = true;
          }
        }
        for (Worker w : room.own) {
          again |= w.freeAt(now) && beginOwn(w, room);
        }
      }
      for (Worker w : roaming) {
        again |= w.freeAt(now) && beginRoaming(w);
      }
    }
  }

  private boolean beginOwn(Worker w, Theatre room) {
    for (Job job : room.jobs) {
      if (mends(w, job)) {
        mend(w, job);
        return true;
      }
    }
    Job best = null;
    List<Worker> crew = null;
    for (Job job : room.jobs) {
      if (job.state != Job.State.OPEN || !job.wanted.contains(w.role) || !startable(job)) {
        continue;
      }
      job.wantedSince = job.wantedSince == null ? (Long) now : job.wantedSince;
      if (best != null && !before(job, best, w)) {
        continue;
      }
      List<Worker> found = Crew.find(job, w, world.workers, now);
      if (found != null) {
        best = job;
        crew = found;
      }
    }
    if (best == null) {
      return false;
    }
    begin(best, crew);
    return true;
  }

  /** Errands at one place are bundled, and what several have waited for goes first. */
  private boolean before(Job job, Job other, Worker w) {
    return urgency(job, w) > urgency(other, w);
  }

  private int urgency(Job job, Worker w) {
    if (job.item.who().size() > 1 && now - job.wantedSince >= LONG_WAITED) {
      return 2;
    }
    return job.item.place() != null && job.item.place().equals(w.place) ? 1 : 0;
  }

  private boolean beginRoaming(Worker w) {
    List<Theatre> served =
        world.rooms.values().stream()
            .filter(r -> w.serves(r.id))
            .sorted(Comparator.comparingLong(r -> r.target))
            .toList();
    for (Theatre room : served) {
      if (beginOwn(w, room)) {
        return true;
      }
    }
    return false;
  }

  private boolean mends(Worker w, Job job) {
    if (job.state != Job.State.BROKEN
        || job.broken == null
        || job.mender != null
        || w.role != mendingRole) {
      return false;
    }
    wake(job.brokeAt + FAULT_HEARD);
    return now >= job.brokeAt + FAULT_HEARD;
  }

  private void mend(Worker w, Job job) {
    job.mender = w;
    w.doing = job;
    w.mending = true;
    facts.add(new Fact.Taken(now, job.room.id, job.ref, w.id));
    double minutes = job.broken.mendMinutes();
    long length = Dice.logNormal(new Hands(minutes, minutes * 1.5), dice.normal("mend " + job.ref));
    at(
        now + length,
        () -> {
          w.doing = null;
          w.mending = false;
          job.broken = null;
          job.mender = null;
          mended(job);
        });
  }

  private boolean startable(Job job) {
    SheetItem item = job.item;
    if (job.state != Job.State.OPEN || item.isArrival()) {
      return false;
    }
    for (String key : item.after()) {
      if (!job.room.good(key)) {
        return false;
      }
    }
    if (Theatre.inRoom(item) && now < job.room.usableFrom) {
      return false;
    }
    if (item.marks() != null && !job.room.allGating(item.marks())) {
      return false;
    }
    long notBefore = notBefore(job);
    if (now < notBefore) {
      wake(notBefore);
      return false;
    }
    World.Place place = item.place() == null ? null : world.places.get(item.place());
    if (place != null && now < place.opensAt()) {
      return false;
    }
    for (Uses use : item.uses()) {
      if (world.hasKind(use.kind()) && world.unitFor(use.kind(), job.room) == null) {
        return false;
      }
    }
    return true;
  }

  private long notBefore(Job job) {
    if (job.item.section() != Section.START || job.room.reached(job.room.startEvent)) {
      return Long.MIN_VALUE;
    }
    if (job.item.marks() == job.room.startEvent) {
      return job.item.isMilestone()
          ? job.room.target
          : job.room.target - Math.round(job.item.hands().usual() * MINUTE);
    }
    return job.room.target - job.room.usualToStart(job) - SEND_EARLY;
  }

  private void begin(Job job, List<Worker> crew) {
    Worker lead = crew.get(0);
    double own = Math.sqrt(PERSON_SHARE) * lead.pace;
    double z = own + Math.sqrt(1 - PERSON_SHARE) * dice.normal("hands " + job.name());
    long length = Dice.logNormal(job.item.hands(), z) + walk(lead, job.item.place());
    if (job.item.extra() != null && dice.oneIn(1.0 / job.item.extra().oneIn(), "x " + job.name())) {
      double minutes = job.item.extra().minutes();
      length += Dice.logNormal(new Hands(minutes, minutes * 1.6), dice.normal("xm " + job.name()));
    }
    for (Story.Slow x : story.slow()) {
      boolean same = x.room().equals(job.room.id) && x.item().equals(job.item.key());
      length = same ? Math.round(x.minutes() * MINUTE) : length;
    }
    job.state = Job.State.IN_HAND;
    job.hands = crew;
    job.endsAt = now + length;
    if (job.item.marks() == job.room.startEvent) {
      job.endsAt = Math.max(job.endsAt, job.room.target);
    }
    for (Worker w : crew) {
      w.doing = job;
      w.place = job.item.place();
    }
    fetch(job);
    facts.add(new Fact.Began(now, job.room.id, job.ref, job.named()));
    at(job.endsAt, () -> handsDone(job));
  }

  private long walk(Worker w, String to) {
    String away = to != null ? to : w.place;
    boolean moves = to == null ? w.place != null : !to.equals(w.place);
    World.Place place = moves && away != null ? world.places.get(away) : null;
    return place == null ? 0 : Math.round(place.plan().walkMinutes() * MINUTE);
  }

  private void fetch(Job job) {
    for (Uses use : job.item.uses()) {
      World.Unit unit = world.unitFor(use.kind(), job.room);
      if (unit != null && unit.with == null) {
        unit.with = job.room.id;
        facts.add(new Fact.Fetched(now, job.room.id, unit.plan.id()));
      }
    }
  }

  private void handsDone(Job job) {
    if (job.state != Job.State.IN_HAND || job.endsAt != now) {
      return;
    }
    for (Worker w : job.hands) {
      w.doing = null;
    }
    if (job.item.waits() == null) {
      tried(job);
      return;
    }
    job.state = Job.State.WAITING;
    long wait = Dice.logNormal(job.item.waits(), dice.normal("waits " + job.name()));
    job.endsAt = now + wait;
    at(job.endsAt, () -> waited(job));
  }

  /** Unless something was found wrong meanwhile. */
  private void waited(Job job) {
    if (job.state == Job.State.WAITING && job.endsAt == now) {
      tried(job);
    }
  }

  private void tried(Job job) {
    job.occurrence++;
    job.wantedSince = null;
    if (job.broken == null) {
      good(job);
      return;
    }
    broke(job, job.broken.what());
  }

  private void good(Job job) {
    job.state = Job.State.GOOD;
    facts.add(new Fact.Done(now, job.room.id, job.ref, job.named()));
    free(job);
    if (job.item.isArrival() && job.item.section() == Section.SURGEON) {
      for (Worker w : world.workers) {
        boolean his = w.id != null && w.id.equals(job.room.plan.surgeon());
        if (w.role == Role.SURGEON && (his || job.room.id.equals(w.own)) && w.comesAt > now) {
          w.comesAt = now;
          came(w);
        }
      }
    }
  }

  /** Equipment goes back at its item's end, or at the end of the item that its use names. */
  private void free(Job job) {
    for (Job user : job.room.jobs) {
      for (Uses use : user.item.uses()) {
        String until = use.until() == null ? user.item.key() : use.until();
        if (!until.equals(job.item.key())) {
          continue;
        }
        for (World.Unit u : world.units) {
          if (u.plan.kind().equals(use.kind()) && job.room.id.equals(u.with)) {
            u.with = null;
            facts.add(new Fact.Freed(now, job.room.id, u.plan.id()));
          }
        }
      }
    }
  }

  private void at(long time, Runnable what) {
    due.add(new Due(time, order++, what));
  }

  private void wake(long time) {
    if (time > now && woken.add(time)) {
      at(time, () -> {});
    }
  }
}
