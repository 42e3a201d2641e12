package sunup.cluster;

import io.vertx.core.buffer.Buffer;
import java.util.ArrayList;
import java.util.List;
import sunup.codec.BadJson;
import sunup.fuzz.Decoder;
import sunup.fuzz.Must;
import sunup.fuzz.Sample;

/** What nodes read of each other. */
public final class ClusterIn {
  private ClusterIn() {}

  public static List<Decoder> all() {
    List<byte[]> seeds = new ArrayList<>();
    for (byte[] head : Sample.of(BusMessage.class)) {
      seeds.add(framed(head, new byte[0]));
      seeds.add(framed(head, new byte[] {'{', '}'}));
    }
    return List.of(new Decoder("bus-message", seeds, ClusterIn::frame));
  }

  private static byte[] framed(byte[] head, byte[] payload) {
    return Buffer.buffer().appendInt(head.length).appendBytes(head).appendBytes(payload).getBytes();
  }

  private static boolean frame(byte[] bytes) {
    BusFrame frame;
    try {
      frame = BusFrame.read(Buffer.buffer(bytes));
    } catch (BadJson refused) {
      return false;
    }
    Buffer written = frame.bytes();
    try {
      Must.same(frame, BusFrame.read(written.getBuffer(BusFrame.LENGTH_BYTES, written.length())));
    } catch (BadJson e) {
      throw new AssertionError("what was written can't be read: " + frame, e);
    }
    return true;
  }
}
