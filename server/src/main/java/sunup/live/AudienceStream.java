package sunup.live;

import io.vertx.core.buffer.Buffer;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import sunup.board.MorningId;
import sunup.codec.Json;
import sunup.wire.Audience;
import sunup.wire.Part;
import sunup.wire.ServerMessage;

/**
 * What one audience of a morning has been told: its parts, the number of the last frame, the frames
 * of the last minute. A part for another audience never gets in. Not thread-safe: kept in the lane.
 */
final class AudienceStream {
  private final MorningId morning;
  private final Audience audience;
  private final Ring ring;
  private Map<String, Part> parts = Map.of();
  private long epoch = -1;
  private long n;
  private long upTo;
  private long forecastOf;
  private Buffer view;

  /**
   * @param firstN number to begin at: past all that was sent before under the same epoch
   */
  AudienceStream(MorningId morning, Audience audience, Pace pace, long firstN) {
    this.morning = morning;
    this.audience = audience;
    this.ring = new Ring(pace);
    this.n = firstN;
  }

  long n() {
    return n;
  }

  long upTo() {
    return upTo;
  }

  /**
   * Begins a new epoch: every screen needs a view. May be begun again as long as no screen got
   * anything of it. Changes nothing if it fails.
   */
  void begin(long newEpoch, List<Part> all, long seq, long figuresOf) {
    if (newEpoch < epoch) {
      throw new IllegalArgumentException("epoch " + newEpoch + " does not follow " + epoch);
    }
    Map<String, Part> next = mine(all);
    long first = epoch < 0 || epoch == newEpoch ? n : 0;
    Buffer made = viewOf(newEpoch, first, seq, figuresOf, next);
    n = first;
    epoch = newEpoch;
    parts = next;
    upTo = seq;
    forecastOf = figuresOf;
    ring.clear();
    view = made;
  }

  /**
   * Takes what is to be seen now. Changes nothing if it fails.
   *
   * @return the next frame, or null if there is nothing to tell this audience
   */
  Buffer advance(List<Part> all, long seq, long figuresOf, long monotonicMs) {
    Map<String, Part> next = mine(all);
    List<Part> set = new ArrayList<>();
    for (Map.Entry<String, Part> entry : next.entrySet()) {
      if (!entry.getValue().equals(parts.get(entry.getKey()))) {
        set.add(entry.getValue());
      }
    }
    List<String> gone = new ArrayList<>();
    for (String key : parts.keySet()) {
      if (!next.containsKey(key)) {
        gone.add(key);
      }
    }
    if (set.isEmpty() && gone.isEmpty() && seq == upTo && figuresOf == forecastOf) {
      return null;
    }
    Buffer frame =
        encode(new ServerMessage.Frame(morning, epoch, n + 1, seq, figuresOf, audience, set, gone));
    parts = next;
    upTo = seq;
    forecastOf = figuresOf;
    n++;
    view = null;
    ring.add(n, monotonicMs, frame);
    return frame;
  }

  /** Everything, as of frame {@link #n}. Encoded once for all who ask before the next frame. */
  Buffer view() {
    if (view == null) {
      view = viewOf(epoch, n, upTo, forecastOf, parts);
    }
    return view;
  }

  private Buffer viewOf(
      long ofEpoch, long ofN, long seq, long figuresOf, Map<String, Part> ofParts) {
    return encode(
        new ServerMessage.View(
            morning, ofEpoch, ofN, seq, figuresOf, audience, List.copyOf(ofParts.values())));
  }

  /** What a screen missed that saw frame {@code lastN} of {@code itsEpoch}; null: send a view. */
  List<Buffer> since(long itsEpoch, long lastN) {
    if (itsEpoch != epoch) {
      return null;
    }
    List<Buffer> missed = ring.after(lastN, n);
    if (missed == null || missed.isEmpty()) {
      return missed;
    }
    long bytes = missed.stream().mapToLong(Buffer::length).sum();
    return bytes > view().length() ? null : missed;
  }

  Buffer beat(long morningClock, double rate, long confirmedAt, boolean readOnly) {
    return encode(
        new ServerMessage.Beat(morning, epoch, n, upTo, morningClock, rate, confirmedAt, readOnly));
  }

  private Map<String, Part> mine(List<Part> all) {
    Map<String, Part> result = new LinkedHashMap<>();
    for (Part part : all) {
      if (part.audience().compareTo(audience) <= 0
          && result.putIfAbsent(part.key(), part) != null) {
        throw new IllegalStateException("two parts under the key " + part.key());
      }
    }
    return result;
  }

  static Buffer encode(ServerMessage message) {
    return Buffer.buffer(Json.bytes(message));
  }
}
