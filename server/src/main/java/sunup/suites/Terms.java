package sunup.suites;

import java.time.Duration;
import java.time.ZoneOffset;
import sunup.board.Morning;
import sunup.board.MorningId;

/** How long a morning lives, epoch milliseconds of morning time. */
final class Terms {
  /** From 00:00 UTC of its date: by then the date is over in every time zone. */
  static final Duration DAY = Duration.ofDays(2);

  /** How long after its closing a morning still takes commands, and so keeps receipts. */
  static final Duration LATE_COMMANDS = Duration.ofDays(7);

  private final long dayEnd;

  Terms(MorningId morning) {
    this.dayEnd = morning.date().atStartOfDay(ZoneOffset.UTC).plus(DAY).toInstant().toEpochMilli();
  }

  /** When private values are due for erasing. */
  long eraseAfter() {
    return dayEnd;
  }

  /** When the key of the receipts is due for erasing: nothing is asked of them any more. */
  long eraseReceiptKeyAfter() {
    return dayEnd + LATE_COMMANDS.toMillis();
  }

  /** From when on no command is taken. */
  long takesUntil(Morning state) {
    long closed = state.closedAt() == null ? dayEnd : Math.min(state.closedAt(), dayEnd);
    return closed + LATE_COMMANDS.toMillis();
  }
}
