package sunup.live;

import io.vertx.core.buffer.Buffer;
import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.List;

/** The last frames of an audience, for screens that come back. Bounded in age, count and bytes. */
final class Ring {
  private record Kept(long n, long at, Buffer message) {}

  private final Pace pace;
  private final ArrayDeque<Kept> frames = new ArrayDeque<>();
  private long bytes;

  Ring(Pace pace) {
    this.pace = pace;
  }

  void clear() {
    frames.clear();
    bytes = 0;
  }

  /** Keeps frame {@code n}, which follows the last one kept. */
  void add(long n, long nowMs, Buffer message) {
    frames.addLast(new Kept(n, nowMs, message));
    bytes += message.length();
    while (frames.size() > pace.ringFramesMax()
        || bytes > pace.ringBytesMax()
        || (!frames.isEmpty() && nowMs - frames.getFirst().at() > pace.ringMs())) {
      bytes -= frames.removeFirst().message().length();
    }
  }

  /** All frames after {@code n}, or null if some of them are not kept any more. */
  List<Buffer> after(long n, long last) {
    if (n > last || n < 0) {
      return null;
    }
    if (n == last) {
      return List.of();
    }
    if (frames.isEmpty() || frames.getFirst().n() > n + 1) {
      return null;
    }
    List<Buffer> result = new ArrayList<>();
    for (Kept frame : frames) {
      if (frame.n() > n) {
        result.add(frame.message());
      }
    }
    return result;
  }
}
