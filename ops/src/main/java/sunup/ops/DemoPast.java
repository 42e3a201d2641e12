package sunup.ops;

import java.time.LocalDate;
import java.util.List;
import java.util.Set;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;
import sunup.board.MorningId;
import sunup.board.MorningPlan;
import sunup.journal.Journal;
import sunup.ops.madeup.MadeMornings;
import sunup.ops.madeup.Scenario;
import sunup.ops.madeup.Weekdays;

/**
 * Gives a new demo its past: closed mornings of the same invented hospital, laid into its journal
 * on a thread of its own while the board serves already. One that was killed in between goes on;
 * mornings that are there stay as they are.
 */
final class DemoPast implements AutoCloseable {
  private static final Logger LOG = LoggerFactory.getLogger(DemoPast.class);

  private final Journal journal;
  private final Runnable then;
  private final Demo demo;
  private final long seed;
  private final Thread thread = new Thread(this::run, "sunup-past");

  /** Null once it is whole. */
  private volatile DemoFolder.Past left;

  private volatile boolean closed;

  /**
   * @param journal the board's, which it has open already
   * @param then run once the past is whole
   * @param wanted null if there is nothing to do
   * @param seed the same seed gives the same past
   */
  DemoPast(Journal journal, Runnable then, Demo demo, DemoFolder.Past wanted, long seed) {
    this.journal = journal;
    this.then = then;
    this.demo = demo;
    this.left = wanted;
    this.seed = seed;
    thread.setDaemon(true);
  }

  void begin() {
    if (left != null) {
      thread.start();
    }
  }

  /** What is still to be laid down, or null. */
  DemoFolder.Past left() {
    return left;
  }

  private void run() {
    DemoFolder.Past wanted = left;
    try {
      lay(wanted);
      if (!closed) {
        left = null;
        LOG.info("the demo's past is there: {} mornings", wanted.mornings());
        then.run();
      }
    } catch (InterruptedException e) {
      Thread.currentThread().interrupt();
    } catch (Wrong | RuntimeException e) {
      LOG.warn("the demo's past can't be laid down: {}", e.getMessage());
    }
  }

  private void lay(DemoFolder.Past wanted) throws InterruptedException, Wrong {
    LaidMornings laid = new LaidMornings(journal);
    Set<MorningId> there = laid.there();
    Scenario scenario = demo.past().before(wanted.before(), wanted.mornings(), seed);
    // A demo whose site was changed may have no such rooms any more: it goes on without a past.
    List<String> wrong = scenario.mistakes(demo.plan(wanted.before()));
    if (!wrong.isEmpty()) {
      throw Wrong.input("past.json does not fit the site:\n  " + String.join("\n  ", wrong));
    }
    MadeMornings mornings = new MadeMornings(scenario);
    // The newest first: the stations' readings need no more than the last ones.
    LocalDate date = scenario.to();
    for (; !date.isBefore(scenario.from()) && !closed; date = date.minusDays(1)) {
      MorningId morning = new MorningId(demo.site().suite(), date);
      if (Weekdays.isOne(date) && !there.contains(morning)) {
        MorningPlan plan = demo.plan(date);
        laid.lay(plan.id(), mornings.play(plan));
      }
    }
  }

  /** Ends after the morning under way. */
  @Override
  public void close() {
    closed = true;
    try {
      thread.join();
    } catch (InterruptedException e) {
      Thread.currentThread().interrupt();
    }
  }
}
