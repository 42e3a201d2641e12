package sunup.forecast.again;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import sunup.forecast.ForecastInput.PlaceIn;

/** Who begins what at one instant: the model page's section 4. */
final class HandOut {
  private static final long PATIENCE = 5 * 60_000L;

  private final Trial trial;
  private final Suite suite;

  HandOut(Trial trial) {
    this.trial = trial;
    suite = trial.suite;
  }

  void run() {
    long t = trial.now();
    boolean atOnce = false;
    for (Task task : suite.tasks) {
      if (task.state == Task.State.OPEN && ready(task, t)) {
        task.readyAt = task.readyAt == Long.MIN_VALUE ? t : task.readyAt;
        if (task.arrives()) {
          trial.comes(task);
          atOnce |= task.comesAt <= t;
        } else if (task.byItself()) {
          trial.begin(task, List.of());
          atOnce |= Task.usual(task.hands()) == 0;
        }
      } else {
        task.readyAt = Long.MIN_VALUE;
      }
    }
    if (atOnce) {
      trial.wake();
      return;
    }
    suite.people.values().forEach(p -> p.kept = false);
    goOnWithTheStart(t);
    keepForStepsOfTwo(t);
    for (int r = 0; r < suite.in.rooms().size(); r++) {
      ownWork(r, t);
    }
    roamingWork(t);
  }

  private boolean ready(Task task, long t) {
    PlaceIn place = suite.places.get(task.place());
    if (!task.prerequisitesGood() || (place != null && place.opensAt() > t)) {
      return false;
    }
    if (task.mending) {
      return true;
    }
    boolean early =
        task.marks() == null && task.item.notBefore() != null && task.item.notBefore() > t;
    return !early && !(task.item.inRoom() && suite.occupiedUntil[task.roomAt] > t);
  }

  private List<Task> waiting() {
    List<Task> list = new ArrayList<>();
    for (Task task : suite.tasks) {
      if (task.state == Task.State.OPEN && task.readyAt != Long.MIN_VALUE) {
        list.add(task);
      }
    }
    return list;
  }

  private void goOnWithTheStart(long t) {
    for (Task task : waiting()) {
      if (task.marks() != null
          && task.readyAt == t
          && task.before.stream().anyMatch(b -> b.marks() != null)) {
        tryToBegin(task, t);
      }
    }
  }

  private void keepForStepsOfTwo(long t) {
    List<Task> steps = waiting();
    steps.removeIf(s -> s.slots.size() < 2 || t - s.readyAt < PATIENCE);
    steps.sort(Comparator.comparingLong(s -> s.readyAt));
    for (Task step : steps) {
      if (tryToBegin(step, t) || !suite.unitsFor(step)) {
        continue;
      }
      boolean allCame =
          step.slots.stream()
              .allMatch(slot -> slot.stream().anyMatch(p -> p.comes <= t && !p.left(t)));
      if (allCame) {
        for (List<Somebody> slot : step.slots) {
          slot.stream().filter(p -> p.free(t)).min(choice(step)).ifPresent(p -> p.kept = true);
        }
      }
    }
  }

  private void ownWork(int room, long t) {
    boolean again = true;
    while (again) {
      again = false;
      Task best = null;
      int bestClass = 3;
      List<Somebody> bestWith = List.of();
      for (Task task : waiting()) {
        if (task.roomAt != room || !suite.unitsFor(task)) {
          continue;
        }
        List<Somebody> with = choose(task, t);
        if (with == null || with.stream().noneMatch(p -> p.own(task))) {
          continue;
        }
        int c =
            task.item.asked()
                ? 0
                : task.place() != null
                        && with.stream().anyMatch(p -> p.own(task) && task.place().equals(p.where))
                    ? 1
                    : 2;
        if (c < bestClass) {
          best = task;
          bestClass = c;
          bestWith = with;
        }
      }
      if (best != null) {
        trial.begin(best, bestWith);
        again = true;
      }
    }
  }

  private void roamingWork(long t) {
    List<Task> list = waiting();
    list.removeIf(
        task ->
            task.slots.isEmpty()
                ? task.needs().isEmpty()
                : task.slots.stream().flatMap(List::stream).allMatch(p -> p.own(task)));
    list.sort(
        Comparator.comparing((Task task) -> !task.item.asked())
            .thenComparing(task -> !task.gating())
            .thenComparing(task -> task.room.target() - task.tail()));
    list.forEach(task -> tryToBegin(task, t));
  }

  private boolean tryToBegin(Task task, long t) {
    if (!suite.unitsFor(task)) {
      return false;
    }
    List<Somebody> with = choose(task, t);
    if (with == null) {
      return false;
    }
    trial.begin(task, with);
    return true;
  }

  /** Own room, already there, longest idle, id. */
  Comparator<Somebody> choice(Task task) {
    return Comparator.comparing((Somebody p) -> !p.own(task))
        .thenComparing(p -> !task.where().equals(p.where))
        .thenComparing(p -> p.idleSince)
        .thenComparing(p -> p.is.id());
  }

  /** One free candidate for each slot, or null. */
  private List<Somebody> choose(Task task, long t) {
    List<Somebody> with = new ArrayList<>();
    return choose(task, 0, with, t) ? with : null;
  }

  private boolean choose(Task task, int slot, List<Somebody> with, long t) {
    if (slot == task.slots.size()) {
      return true;
    }
    List<Somebody> candidates = new ArrayList<>(task.slots.get(slot));
    candidates.removeIf(p -> !p.free(t) || with.contains(p));
    candidates.sort(choice(task));
    for (Somebody p : candidates) {
      with.add(p);
      if (choose(task, slot + 1, with, t)) {
        return true;
      }
      with.remove(with.size() - 1);
    }
    return false;
  }
}
