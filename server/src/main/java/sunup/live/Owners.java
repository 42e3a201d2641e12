package sunup.live;

import java.util.function.Consumer;
import sunup.board.MorningId;
import sunup.suites.Owner;

/** Finds the owner of a morning. */
public interface Owners {
  /**
   * Whom commands of the morning are given to; always the same while it lives. May block, so never
   * call it on an event loop.
   *
   * @throws RuntimeException if there is none now; ask again later
   */
  Owner owner(MorningId morning);

  /**
   * Tells where the owner is, now and whenever that changes, on any thread. On one node it is here.
   * May block as {@link #owner} does.
   *
   * @return ends it
   */
  default Runnable follow(MorningId morning, Consumer<Place> told) {
    told.accept(new Place.Here(owner(morning)));
    return () -> {};
  }
}
