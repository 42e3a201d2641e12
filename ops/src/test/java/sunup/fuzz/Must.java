package sunup.fuzz;

import com.fasterxml.jackson.databind.JsonNode;
import java.util.Objects;
import sunup.codec.BadJson;
import sunup.codec.Json;

/** What a decoder must never do. */
public final class Must {
  private Must() {}

  /** Fails unless it is so. */
  public static void be(boolean so, String what) {
    if (!so) {
      throw new AssertionError(what);
    }
  }

  /** Fails unless what was written of a value reads as that value again. */
  public static void same(Object value, Object again) {
    be(Objects.equals(value, again), "read again it is another: " + value + " | " + again);
  }

  /**
   * A value of this type out of JSON: no number that is none, and the same when it is written and
   * read again.
   *
   * @return null if the text is refused, or the value
   */
  public static <T> T json(byte[] bytes, Class<T> type) {
    T value;
    try {
      value = Json.read(bytes, type);
    } catch (BadJson refused) {
      be(refused.getMessage() != null, "refused without a word");
      return null;
    }
    if (value == null) {
      return null;
    }
    finite(Json.mapper().valueToTree(value));
    try {
      same(value, Json.read(Json.bytes(value), type));
    } catch (BadJson e) {
      throw new AssertionError("what was written can't be read: " + value, e);
    }
    return value;
  }

  private static void finite(JsonNode tree) {
    be(!tree.isDouble() || Double.isFinite(tree.doubleValue()), "a number that is none was read");
    tree.forEach(Must::finite);
  }
}
