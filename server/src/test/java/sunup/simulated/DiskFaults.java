package sunup.simulated;

/** What goes wrong on a process's way to the disk. */
public interface DiskFaults {
  /** Where time passes. */
  enum Step {
    BEGIN,
    COMMIT,
    ANSWER,
    READ,
    READ_ANSWER
  }

  /** What became of a commit whose outcome is unknown. */
  enum Doubt {
    WRITTEN,
    LOST,
    WRITTEN_LATER
  }

  boolean takeOverFails();

  boolean takeOverInDoubt();

  /** A group that is not written, for sure. */
  boolean writeFails();

  /** Null for a commit that goes as it should. */
  Doubt commit();

  /** How much later than its answer a commit of {@link Doubt#WRITTEN_LATER} is written. */
  long laterMs();

  /** Whether a group that is in commit when its process dies reaches the disk, whole. */
  boolean commitOutlivesDeath();

  boolean readFails();

  /** Milliseconds, usually up to {@code usual}. */
  long delay(Step step, long usual, long longest);
}
