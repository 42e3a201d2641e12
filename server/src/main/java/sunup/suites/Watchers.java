package sunup.suites;

import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.atomic.AtomicInteger;
import java.util.function.Consumer;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;
import sunup.board.MorningId;

/** Those who watch a morning. All but {@link #admit} runs on the actor's executor. */
final class Watchers {
  /** Those who watch one morning; beyond it {@link #admit} fails. */
  static final int LIMIT = 64;

  private static final Logger LOG = LoggerFactory.getLogger(Watchers.class);

  private final MorningId morning;
  private final AtomicInteger admitted = new AtomicInteger();
  private final List<Consumer<Standpoint>> watchers = new ArrayList<>();

  Watchers(MorningId morning) {
    this.morning = morning;
  }

  /**
   * From any thread: makes room for one more.
   *
   * @throws IllegalStateException if {@link #LIMIT} watch already
   */
  void admit() {
    if (admitted.incrementAndGet() > LIMIT) {
      admitted.decrementAndGet();
      throw new IllegalStateException("no more than " + LIMIT + " may watch " + morning);
    }
  }

  /**
   * @param now is told at once, unless it is null
   */
  void add(Consumer<Standpoint> watcher, Standpoint now) {
    watchers.add(watcher);
    if (now != null) {
      tell(watcher, now);
    }
  }

  void remove(Consumer<Standpoint> watcher) {
    if (watchers.remove(watcher)) {
      admitted.decrementAndGet();
    }
  }

  void tell(Standpoint now) {
    List.copyOf(watchers).forEach(watcher -> tell(watcher, now));
  }

  private void tell(Consumer<Standpoint> watcher, Standpoint now) {
    try {
      watcher.accept(now);
    } catch (RuntimeException e) {
      LOG.error("{}: one who watches failed", morning, e);
    }
  }
}
