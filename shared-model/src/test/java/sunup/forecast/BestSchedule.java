package sunup.forecast;

import static sunup.forecast.Mornings.MINUTE;

import com.google.ortools.Loader;
import com.google.ortools.sat.BoolVar;
import com.google.ortools.sat.CpModel;
import com.google.ortools.sat.CpSolver;
import com.google.ortools.sat.CpSolverStatus;
import com.google.ortools.sat.CumulativeConstraint;
import com.google.ortools.sat.IntVar;
import com.google.ortools.sat.IntervalVar;
import com.google.ortools.sat.LinearExpr;
import com.google.ortools.sat.LinearExprBuilder;
import com.google.ortools.sat.Literal;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import sunup.forecast.ForecastInput.ItemIn;
import sunup.forecast.ForecastInput.KindIn;
import sunup.forecast.ForecastInput.Need;
import sunup.forecast.ForecastInput.PersonIn;
import sunup.forecast.ForecastInput.PlaceIn;
import sunup.forecast.ForecastInput.RoomIn;

/**
 * A morning of constant durations in whole minutes as a resource-constrained schedule for a
 * constraint solver, which sees all of it at once: people, units, places, booked times. It need do
 * only what a start waits for. Left out: walking, lapses, faults, what is in hand.
 */
final class BestSchedule {
  /** What is made as small as can be. */
  enum Aim {
    LATEST_ROOM,
    SUM_OF_ROOMS
  }

  /**
   * @param late the best late minutes found
   * @param bound no schedule has less
   */
  record Answer(CpSolverStatus status, long late, long bound) {
    boolean proved() {
      return status == CpSolverStatus.OPTIMAL;
    }
  }

  private static final int HORIZON = 400;

  private static final double FITTING = 10;

  static {
    Loader.loadNativeLibraries();
  }

  private final ForecastInput in;
  private final CpModel model = new CpModel();
  private final Map<String, IntVar> good = new HashMap<>();
  private final Map<String, IntVar> begin = new HashMap<>();
  private final Map<String, List<IntervalVar>> work = new HashMap<>();
  private final Map<String, List<IntervalVar>> uses = new HashMap<>();
  private final Map<String, List<Integer>> units = new HashMap<>();
  private final List<IntVar> late = new ArrayList<>();

  private BestSchedule(ForecastInput in) {
    this.in = in;
    for (RoomIn room : in.rooms()) {
      room(room);
    }
    work.values().forEach(model::addNoOverlap);
    for (KindIn kind : in.kinds()) {
      CumulativeConstraint within = model.addCumulative(kind.capacity());
      List<IntervalVar> all = uses.getOrDefault(kind.id(), List.of());
      for (int i = 0; i < all.size(); i++) {
        within.addDemand(all.get(i), units.get(kind.id()).get(i));
      }
    }
  }

  /** Searches with so much work, the solver's own measure, so that load changes no result. */
  static Answer find(ForecastInput in, Aim aim, double work) {
    return new BestSchedule(in).solve(aim, work);
  }

  /** True if the moments at which items became good are those of a schedule that breaks nothing. */
  static boolean allows(ForecastInput in, Forecast f) {
    BestSchedule s = new BestSchedule(in);
    for (Forecast.RoomOut room : f.rooms()) {
      for (Forecast.ItemOut item : room.items()) {
        IntVar v = s.good.get(room.id() + "/" + item.key());
        if (v != null && item.done50() != null) {
          s.model.addEquality(v, (item.done50() - in.now()) / MINUTE);
        }
      }
    }
    CpSolverStatus status = s.solve(Aim.SUM_OF_ROOMS, FITTING).status();
    return status == CpSolverStatus.OPTIMAL || status == CpSolverStatus.FEASIBLE;
  }

  private static long minutes(Draw d) {
    return d == null ? 0 : ((Draw.Constant) d).ms() / MINUTE;
  }

  private long fromNow(long t) {
    return Math.max(0, (t - in.now()) / MINUTE);
  }

  private void room(RoomIn room) {
    ItemIn start =
        room.items().stream().filter(i -> room.startStep().equals(i.marks())).findFirst().get();
    Set<String> needed = new HashSet<>();
    before(room, start, needed);
    for (ItemIn i : room.items()) {
      if (needed.contains(i.key())) {
        String name = room.id() + "/" + i.key();
        begin.put(name, model.newIntVar(0, HORIZON, "begin " + name));
        good.put(name, model.newIntVar(0, HORIZON, "good " + name));
      }
    }
    for (ItemIn i : room.items()) {
      if (needed.contains(i.key())) {
        item(room, i);
      }
    }
    IntVar minutes = model.newIntVar(0, HORIZON, "late " + room.id());
    long target = (room.target() - in.now()) / MINUTE;
    model.addGreaterOrEqual(
        LinearExpr.affine(minutes, 1, target), good.get(room.id() + "/" + start.key()));
    late.add(minutes);
  }

  private static void before(RoomIn room, ItemIn item, Set<String> all) {
    if (all.add(item.key())) {
      for (ItemIn i : room.items()) {
        if (precedes(i, item)) {
          before(room, i, all);
        }
      }
    }
  }

  private static boolean precedes(ItemIn a, ItemIn b) {
    return b.after().contains(a.key()) || (a.gates() != null && a.gates().equals(b.marks()));
  }

  private void item(RoomIn room, ItemIn item) {
    String name = room.id() + "/" + item.key();
    IntVar from = begin.get(name);
    IntVar to = good.get(name);
    long hands = minutes(item.hands());
    long length = hands + minutes(item.waits());
    if (item.marks() != null) {
      model.addGreaterOrEqual(to, LinearExpr.affine(from, 1, length));
      model.addGreaterOrEqual(to, fromNow(item.notBefore() == null ? 0 : item.notBefore()));
    } else {
      model.addEquality(to, LinearExpr.affine(from, 1, length));
      model.addGreaterOrEqual(from, fromNow(item.notBefore() == null ? 0 : item.notBefore()));
    }
    for (PlaceIn place : in.places()) {
      if (place.id().equals(item.place())) {
        model.addGreaterOrEqual(from, fromNow(place.opensAt()));
      }
    }
    for (ItemIn i : room.items()) {
      if (precedes(i, item)) {
        model.addGreaterOrEqual(from, good.get(room.id() + "/" + i.key()));
      }
    }
    for (List<String> roles : item.who()) {
      slot(room, roles, from, hands);
    }
    for (Need need : item.needs()) {
      IntVar until = need.until() == null ? to : good.get(room.id() + "/" + need.until());
      IntVar size = model.newIntVar(0, HORIZON, "");
      uses.computeIfAbsent(need.kind(), k -> new ArrayList<>())
          .add(model.newIntervalVar(from, size, until, "use " + name));
      units.computeIfAbsent(need.kind(), k -> new ArrayList<>()).add(need.units());
    }
  }

  private void slot(RoomIn room, List<String> roles, IntVar from, long hands) {
    List<Literal> one = new ArrayList<>();
    for (PersonIn p : in.people()) {
      boolean serves =
          p.room() == null
              ? p.covers().isEmpty() || p.covers().contains(room.id())
              : p.room().equals(room.id());
      if (serves && p.roles().stream().anyMatch(roles::contains)) {
        BoolVar takes = model.newBoolVar("");
        one.add(takes);
        work.computeIfAbsent(p.id(), k -> new ArrayList<>())
            .add(model.newOptionalFixedSizeIntervalVar(from, hands, takes, p.id()));
        if (p.arrivedAt() == null) {
          model.addGreaterOrEqual(from, fromNow(p.plannedAt())).onlyEnforceIf(takes);
        }
      }
    }
    model.addExactlyOne(one.toArray(new Literal[0]));
  }

  private Answer solve(Aim aim, double work) {
    if (aim == Aim.LATEST_ROOM) {
      IntVar most = model.newIntVar(0, HORIZON, "most");
      model.addMaxEquality(most, late.toArray(new IntVar[0]));
      model.minimize(most);
    } else {
      LinearExprBuilder sum = LinearExpr.newBuilder();
      late.forEach(sum::add);
      model.minimize(sum);
    }
    CpSolver solver = new CpSolver();
    solver.getParameters().setNumWorkers(1);
    solver.getParameters().setRandomSeed(1);
    solver.getParameters().setMaxDeterministicTime(work);
    CpSolverStatus status = solver.solve(model);
    boolean found = status == CpSolverStatus.OPTIMAL || status == CpSolverStatus.FEASIBLE;
    return new Answer(
        status,
        found ? Math.round(solver.objectiveValue()) : -1,
        (long) Math.ceil(solver.bestObjectiveBound() - 1e-6));
  }
}
