package sunup.live;

import java.util.List;
import java.util.function.Consumer;
import sunup.review.facts.ForecastNote;

/** Where what the board said is kept, for the day when it is judged. */
public interface SaidLog {
  /**
   * Keeps notes. Returns at once.
   *
   * @param epoch of the owner that said so
   * @param then told on any thread, once: true when they are durable
   */
  void keep(List<ForecastNote> notes, long epoch, Consumer<Boolean> then);
}
