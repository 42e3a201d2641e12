package sunup.live;

import com.fasterxml.jackson.core.JsonParser;
import com.fasterxml.jackson.core.JsonToken;
import io.vertx.core.buffer.Buffer;
import java.io.IOException;
import java.util.ArrayList;
import java.util.List;
import sunup.codec.Json;

/**
 * What an audience of this node was told by the owner on another one: a view, and the frames after
 * it, as bytes. Nothing is encoded here. Kept in the lane.
 */
final class RelayStream {
  /** Frames of so many bytes may always follow a view. */
  private static final long FRAMES_BYTES_LEAST = 16 * 1024;

  private final Ring ring;
  private Buffer view;
  private long viewN;
  private long epoch = -1;
  private long n;

  RelayStream(Pace pace) {
    this.ring = new Ring(pace);
  }

  /** What stands at the head of each message of a morning. */
  record Head(long epoch, long n, boolean readOnly) {}

  /** Reads only as far as it must. */
  static Head head(Buffer message) {
    long epoch = -1;
    long n = -1;
    boolean readOnly = false;
    try (JsonParser in = Json.mapper().getFactory().createParser(message.getBytes())) {
      in.nextToken();
      while (in.nextToken() == JsonToken.FIELD_NAME) {
        String field = in.currentName();
        JsonToken value = in.nextToken();
        switch (field) {
          case "epoch" -> epoch = in.getLongValue();
          case "n" -> n = in.getLongValue();
          case "readOnly" -> readOnly = in.getBooleanValue();
          default -> {
            if (value.isStructStart()) {
              return new Head(epoch, n, readOnly);
            }
          }
        }
      }
    } catch (IOException e) {
      throw new IllegalArgumentException("another node sent what can't be read", e);
    }
    return new Head(epoch, n, readOnly);
  }

  boolean empty() {
    return view == null;
  }

  long epoch() {
    return epoch;
  }

  long n() {
    return n;
  }

  /** True if it was news: screens get it. */
  boolean takeView(Head head, Buffer message) {
    if (head.epoch() < epoch || (head.epoch() == epoch && head.n() < n)) {
      return false;
    }
    boolean goesOn = head.epoch() == epoch && head.n() == n && view != null;
    if (!goesOn) {
      ring.clear();
    }
    epoch = head.epoch();
    n = head.n();
    view = message;
    viewN = n;
    return !goesOn;
  }

  /** True if it followed; else everything is needed anew. */
  boolean takeFrame(Head head, Buffer message, long nowMs) {
    if (view == null || head.epoch() != epoch || head.n() != n + 1) {
      return false;
    }
    n++;
    ring.add(n, nowMs, message);
    return true;
  }

  /** What a screen needs that saw frame {@code itsN}: frames, or null if it needs all. */
  List<Buffer> since(long itsEpoch, long itsN) {
    return itsEpoch == epoch ? ring.after(itsN, n) : null;
  }

  /** What a new screen needs: the view and the frames after it; null if some are lost. */
  List<Buffer> all() {
    List<Buffer> after = view == null ? null : ring.after(viewN, n);
    if (after == null) {
      return null;
    }
    List<Buffer> all = new ArrayList<>(after.size() + 1);
    all.add(view);
    all.addAll(after);
    return all;
  }

  /** True once the frames after the view are more than a new screen should be sent. */
  boolean grown() {
    List<Buffer> after = view == null ? null : ring.after(viewN, n);
    return after == null
        || after.stream().mapToLong(Buffer::length).sum()
            > Math.max(FRAMES_BYTES_LEAST, view.length());
  }
}
