package sunup.review.facts;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import sunup.board.Board;
import sunup.board.CaseId;
import sunup.board.Event;
import sunup.board.Item;
import sunup.board.ItemRef;
import sunup.board.ItemState;
import sunup.board.Morning;
import sunup.board.PersonId;
import sunup.board.Recorded;
import sunup.board.Step;

/**
 * A morning's journal played to its end, with what the state alone does not tell: which touches
 * were entered late.
 *
 * @param journal the events in order of their sequence, from 1
 * @param end the morning after the last
 * @param goods for each item when it was called good, and when that was recorded
 * @param steps for each case and step the same
 * @param came for each person the same of the arrival
 * @param faults how often each item was found at fault
 */
public record Replayed(
    List<Recorded> journal,
    Morning end,
    Map<ItemRef, List<Told>> goods,
    Map<CaseStep, List<Told>> steps,
    Map<PersonId, List<Told>> came,
    Map<ItemRef, Integer> faults) {
  /** When something happened and when the board came to know of it. */
  public record Told(long happenedAt, long recordedAt, boolean late) {
    static Told of(Recorded recorded) {
      return new Told(recorded.happenedAt(), recorded.recordedAt(), recorded.isLateEntry());
    }
  }

  /** A step of a case. */
  record CaseStep(CaseId caseId, Step step) {}

  /** Plays the events. */
  public static Replayed of(List<Recorded> journal) {
    Replayed played =
        new Replayed(
            List.copyOf(journal),
            end(journal),
            new HashMap<>(),
            new HashMap<>(),
            new HashMap<>(),
            new HashMap<>());
    journal.forEach(played::note);
    return played;
  }

  static Morning end(List<Recorded> journal) {
    Morning morning = Morning.NONE;
    for (Recorded recorded : journal) {
      morning = Board.apply(morning, morning.seq() + 1, recorded);
    }
    return morning;
  }

  private void note(Recorded recorded) {
    Told told = Told.of(recorded);
    if (recorded.event() instanceof Event.ItemGood e) {
      goods.computeIfAbsent(e.item(), k -> new ArrayList<>()).add(told);
    } else if (recorded.event() instanceof Event.SectionSwept e) {
      e.items().forEach(i -> goods.computeIfAbsent(i, k -> new ArrayList<>()).add(told));
    } else if (recorded.event() instanceof Event.StepReached e) {
      CaseStep key = new CaseStep(e.caseId(), e.step());
      steps.computeIfAbsent(key, k -> new ArrayList<>()).add(told);
    } else if (recorded.event() instanceof Event.PersonArrived e) {
      came.computeIfAbsent(e.person(), k -> new ArrayList<>()).add(told);
    } else if (recorded.event() instanceof Event.ItemFaulted e) {
      faults.merge(e.item(), 1, Integer::sum);
    }
  }

  /** How the touch came in that made an item good, or null if it is not good by a touch. */
  public Told toldGood(Item item) {
    return item == null || item.state() != ItemState.GOOD
        ? null
        : at(goods.get(item.ref()), item.since());
  }

  /** The same of a step that was reached. */
  Told toldStep(CaseId caseId, Step step) {
    Long at = end.cases().get(caseId).steps().get(step);
    return at == null ? null : at(steps.get(new CaseStep(caseId, step)), at);
  }

  /** The same of a person's coming. */
  Told toldCame(PersonId person) {
    Morning.PersonDay day = end.people().get(person);
    return day == null || day.arrivedAt() == null ? null : at(came.get(person), day.arrivedAt());
  }

  private static Told at(List<Told> list, long happenedAt) {
    return list == null
        ? null
        : list.stream().filter(t -> t.happenedAt() == happenedAt).findFirst().orElse(null);
  }
}
