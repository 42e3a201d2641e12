package sunup.review.facts;

import java.util.ArrayList;
import java.util.List;
import sunup.board.Board;
import sunup.board.CaseId;
import sunup.board.ItemState;
import sunup.board.Morning;
import sunup.board.Placed;
import sunup.board.Recorded;
import sunup.board.Step;

/**
 * How much of what gates a start was done at a moment, as reported by then: the plain number that a
 * checklist would show, for the forecast to be compared with.
 */
final class PercentDone {
  /** The morning after each event; states share what did not change. */
  private final List<Morning> states = new ArrayList<>();

  private final List<Recorded> journal;

  PercentDone(Replayed played) {
    journal = played.journal();
    Morning morning = Morning.NONE;
    for (Recorded recorded : journal) {
      morning = Board.apply(morning, morning.seq() + 1, recorded);
      states.add(morning);
    }
  }

  /** The last state recorded by then. */
  private Morning state(long at) {
    int low = 0;
    int high = journal.size();
    while (low < high) {
      int middle = (low + high) >>> 1;
      if (journal.get(middle).recordedAt() <= at) {
        low = middle + 1;
      } else {
        high = middle;
      }
    }
    return low == 0 ? Morning.NONE : states.get(low - 1);
  }

  double at(CaseId id, long at) {
    Morning morning = state(at);
    Morning.CaseDay day = morning.cases().get(id);
    if (day == null) {
      return 0;
    }
    Step start = morning.settings().startEvent();
    int all = 0;
    int good = 0;
    for (Placed placed : morning.itemsOf(day.plan().room())) {
      Step gates = placed.sheet().gates();
      if (gates != null && gates.compareTo(start) <= 0) {
        ItemState state = morning.stateOf(placed, at);
        all++;
        good += state == ItemState.GOOD || state == ItemState.LEFT_OUT ? 1 : 0;
      }
    }
    return all == 0 ? 0 : (double) good / all;
  }
}
