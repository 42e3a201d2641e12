package sunup.simulated;

import sunup.journal.Journal;
import sunup.journal.JournalContract;
import sunup.suites.Timers;

/** The simulated journal promises what the real one does. */
class SimulatedJournalTest extends JournalContract {
  private final Disk disk = new Disk(Bug.NONE);

  @Override
  protected Journal open() {
    Timers now =
        (ms, task) -> {
          task.run();
          return () -> {};
        };
    return new SimulatedJournal(disk, now, now, Faults.none(), Bug.NONE, new Coverage());
  }
}
