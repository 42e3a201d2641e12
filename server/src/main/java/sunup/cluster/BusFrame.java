package sunup.cluster;

import com.fasterxml.jackson.databind.JsonNode;
import io.vertx.core.buffer.Buffer;
import java.io.IOException;
import sunup.codec.BadJson;
import sunup.codec.Json;

/**
 * One message as it goes over a line between nodes: a length, the length of its head, the head as
 * JSON, and the payload as it is.
 *
 * @param payload null for none
 */
record BusFrame(BusMessage message, Buffer payload) {
  static final int LENGTH_BYTES = 4;

  Buffer bytes() {
    byte[] head = Json.bytes(message);
    int size = LENGTH_BYTES + head.length + (payload == null ? 0 : payload.length());
    Buffer all =
        Buffer.buffer(LENGTH_BYTES + size).appendInt(size).appendInt(head.length).appendBytes(head);
    return payload == null ? all : all.appendBuffer(payload);
  }

  /**
   * Reads what follows the first length.
   *
   * @throws BadJson if it is none
   */
  static BusFrame read(Buffer bytes) throws BadJson {
    byte[] head = head(bytes);
    BusMessage message = Json.read(head, BusMessage.class);
    if (message == null) {
      throw new BadJson("no message");
    }
    int end = LENGTH_BYTES + head.length;
    return new BusFrame(
        message, end < bytes.length() ? bytes.getBuffer(end, bytes.length()) : null);
  }

  /** The id of a command in what could not be read, since it is of a later version; or null. */
  static Long idOfAsk(Buffer bytes) {
    try {
      JsonNode tree = Json.mapper().readTree(head(bytes));
      boolean ask = BusMessage.ASK.equals(tree.path("b").textValue());
      return ask && tree.path("id").canConvertToLong() ? tree.path("id").longValue() : null;
    } catch (BadJson | IOException none) {
      return null;
    }
  }

  private static byte[] head(Buffer bytes) throws BadJson {
    int head = bytes.length() < LENGTH_BYTES ? -1 : bytes.getInt(0);
    if (head < 0 || head > bytes.length() - LENGTH_BYTES) {
      throw new BadJson("a head of " + head + " bytes in " + bytes.length());
    }
    return bytes.getBytes(LENGTH_BYTES, LENGTH_BYTES + head);
  }
}
