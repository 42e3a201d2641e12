package sunup.journal;

import java.util.List;
import java.util.Map;

/**
 * All that the journal keeps of one morning.
 *
 * @param head where it ends
 * @param events in order of sequence
 * @param receipts of all commands, in no order
 * @param privates what is not erased, by ref
 */
public record Stored(
    Head head, List<Event> events, List<Receipt> receipts, Map<String, PrivateValue> privates) {
  public Stored {
    events = List.copyOf(events);
    receipts = List.copyOf(receipts);
    privates = Map.copyOf(privates);
  }

  /** An event as stored, and the epoch of the one who wrote it. */
  public record Event(long seq, long epoch, Bytes bytes) {}
}
