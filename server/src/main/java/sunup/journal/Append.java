package sunup.journal;

import java.util.List;
import sunup.board.MorningId;

/**
 * What one command adds to a morning, all of it or nothing.
 *
 * @param morning which morning
 * @param epoch the owner's epoch
 * @param from the sequence that the journal must stand at
 * @param chain the chain after the last event
 * @param events the events' bytes in order, possibly none; the first gets sequence {@code from + 1}
 * @param receipt the command's receipt
 * @param privates private values that the events refer to; one that is stored already stays as it
 *     is
 */
public record Append(
    MorningId morning,
    long epoch,
    long from,
    Bytes chain,
    List<Bytes> events,
    Receipt receipt,
    List<PrivateValue> privates) {
  public Append {
    events = List.copyOf(events);
    privates = List.copyOf(privates);
  }

  /** The sequence after it. */
  public long to() {
    return from + events.size();
  }
}
