package sunup.live;

import sunup.board.MorningId;
import sunup.board.OpenAsk;

/** Where people who look at no screen are told that something is asked of them. */
public interface Nudges {
  /** Nobody is. */
  Nudges NONE =
      new Nudges() {
        @Override
        public long afterMs() {
          return -1;
        }

        @Override
        public void tell(MorningId morning, OpenAsk ask) {}
      };

  /** Real time that an ask has to be answered before anybody is told; negative for never. */
  long afterMs();

  /** Tells those whom it is asked of. Returns at once, and whatever comes of it. */
  void tell(MorningId morning, OpenAsk ask);
}
