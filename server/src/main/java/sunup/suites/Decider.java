package sunup.suites;

import sunup.board.Board;
import sunup.board.Morning;
import sunup.board.Order;
import sunup.board.Outcome;
import sunup.board.Recorded;

/** The state machine of a morning as its owner uses it; both functions pure and total. */
public interface Decider {
  /** The board's own. */
  static Decider board() {
    return new Decider() {
      @Override
      public Outcome decide(Morning state, Order order) {
        return Board.decide(state, order);
      }

      @Override
      public Morning apply(Morning state, long seq, Recorded recorded) {
        return Board.apply(state, seq, recorded);
      }
    };
  }

  Outcome decide(Morning state, Order order);

  Morning apply(Morning state, long seq, Recorded recorded);
}
