package sunup.suites;

import sunup.board.Morning;
import sunup.board.Order;
import sunup.board.Outcome;
import sunup.board.Recorded;

/** The state machine of a morning as its owner uses it; both functions pure and total. */
public interface Decider {
  Outcome decide(Morning state, Order order);

  Morning apply(Morning state, long seq, Recorded recorded);
}
