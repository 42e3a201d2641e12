package sunup.board;

import com.fasterxml.jackson.annotation.JsonIgnore;

/**
 * An event as the journal keeps it.
 *
 * @param event what happened
 * @param actor who said so
 * @param command the command that it came of
 * @param happenedAt when it happened, epoch milliseconds; durations, lapses and attribution use it
 * @param recordedAt when the owner recorded it, never before the event before it; order uses the
 *     journal's sequence
 */
public record Recorded(
    Event event, Actor actor, CommandId command, long happenedAt, long recordedAt) {
  /** Entered so long after it happened, it is a late entry. */
  static final long LATE_ENTRY_MS = 5 * 60_000L;

  /** True if it was entered much later than it happened. */
  @JsonIgnore
  public boolean isLateEntry() {
    return isLateEntry(happenedAt, recordedAt);
  }

  static boolean isLateEntry(long happenedAt, long recordedAt) {
    return recordedAt - happenedAt > LATE_ENTRY_MS;
  }
}
