package sunup.suites;

import sunup.board.Board;
import sunup.board.Morning;
import sunup.board.Order;
import sunup.board.Outcome;
import sunup.board.Recorded;

/** The state machine of a morning as its owner uses it; both functions pure and total. */
public interface Decider {
  /** The board's own, where people are taken as they are named. */
  static Decider board() {
    return board(false);
  }

  /**
   * The board's own.
   *
   * @param signing true where people sign on, so that a second person has to sign too
   */
  static Decider board(boolean signing) {
    return new Decider() {
      @Override
      public Outcome decide(Morning state, Order order) {
        return Board.decide(state, signing ? order.whereSigned() : order);
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
