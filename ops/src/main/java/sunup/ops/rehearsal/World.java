package sunup.ops.rehearsal;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import sunup.board.CasePlan;
import sunup.board.MorningPlan;
import sunup.board.PersonPlan;
import sunup.board.PlacePlan;
import sunup.board.Role;
import sunup.board.RoomId;
import sunup.board.UnitPlan;
import sunup.sheets.ComposedSheet;

/** Everything there is in the simulated hospital. */
final class World {
  private static final long MINUTE = 60_000;

  /** Lateness of a person: a few minutes around the planned time. From memory, a guess. */
  private static final double USUALLY_LATE = -2;

  private static final double LATE_SPREAD = 3.5;

  /** A piece of equipment and the room that has it. */
  static final class Unit {
    final UnitPlan plan;
    RoomId with;

    Unit(UnitPlan plan) {
      this.plan = plan;
    }
  }

  /** A place as it truly opens. */
  record Place(PlacePlan plan, long opensAt) {}

  final MorningPlan plan;
  final Map<RoomId, Theatre> rooms = new LinkedHashMap<>();
  final List<Worker> workers = new ArrayList<>();
  final List<Unit> units = new ArrayList<>();
  final Map<String, Place> places = new LinkedHashMap<>();

  World(MorningPlan plan, Story story, Dice dice) {
    this.plan = plan;
    Map<String, ComposedSheet> sheets = new LinkedHashMap<>();
    plan.sheets().forEach(s -> sheets.put(s.hash(), s));
    for (RoomId id : plan.rooms()) {
      for (CasePlan c : plan.cases()) {
        if (c.room().equals(id) && sheets.containsKey(c.sheet())) {
          rooms.put(id, new Theatre(c, sheets.get(c.sheet()), plan.settings().startEvent()));
        }
      }
    }
    for (PersonPlan p : plan.people()) {
      addWorker(p, story, dice);
    }
    rooms.values().forEach(room -> addStandIns(room, dice));
    plan.units().forEach(u -> units.add(new Unit(u)));
    for (PlacePlan p : plan.places()) {
      long opens = p.opensAt();
      for (Story.Opens o : story.places()) {
        opens = o.place().equals(p.id().value()) ? Story.at(plan, o.at()) : opens;
      }
      places.put(p.id().value(), new Place(p, opens));
    }
    for (Story.Broken b : story.faults()) {
      rooms.get(b.room()).byKey.get(b.item()).broken = b;
    }
  }

  private void addWorker(PersonPlan p, Story story, Dice dice) {
    String name = p.id().value();
    double late = USUALLY_LATE + LATE_SPREAD * dice.normal("late " + name);
    for (Story.Comes c : story.people()) {
      late = c.person().equals(p.id()) ? c.minutesLate() : late;
    }
    long at = p.plannedAt() + Math.round(late * MINUTE);
    Worker worker =
        new Worker(
            name,
            p.id(),
            p.role(),
            p.room(),
            p.covers(),
            dice.normal("pace " + name),
            p.role() == Role.SURGEON ? Long.MAX_VALUE : at);
    workers.add(worker);
    if (worker.own != null && rooms.containsKey(worker.own)) {
      rooms.get(worker.own).own.add(worker);
    }
  }

  /** Whoever an item needs and the plan does not name is somebody all the same. */
  private void addStandIns(Theatre room, Dice dice) {
    for (Job job : room.jobs) {
      for (List<Role> slot : job.item.who()) {
        if (workers.stream().anyMatch(w -> w.serves(room.id) && slot.contains(w.role))) {
          continue;
        }
        Role role = slot.get(0);
        String name = "stand-in " + role.word() + " " + room.id;
        Worker worker =
            new Worker(
                name,
                null,
                role,
                room.id,
                List.of(),
                dice.normal("pace " + name),
                role == Role.SURGEON ? Long.MAX_VALUE : plan.beginsAt());
        workers.add(worker);
        room.own.add(worker);
      }
    }
  }

  List<Worker> roaming() {
    return workers.stream().filter(w -> w.own == null || !rooms.containsKey(w.own)).toList();
  }

  /** A unit of this kind that the room has or can have now; null if there is none. */
  Unit unitFor(String kind, Theatre room) {
    Unit free = null;
    for (Unit u : units) {
      if (u.plan.kind().equals(kind)) {
        if (room.id.equals(u.with)) {
          return u;
        }
        free = free == null && u.with == null ? u : free;
      }
    }
    return free;
  }

  boolean hasKind(String kind) {
    return units.stream().anyMatch(u -> u.plan.kind().equals(kind));
  }
}
