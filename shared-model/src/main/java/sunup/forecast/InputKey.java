package sunup.forecast;

import java.lang.reflect.RecordComponent;
import java.nio.ByteBuffer;
import java.nio.charset.StandardCharsets;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.util.HexFormat;
import java.util.List;

/**
 * Names an input: with the model's version, the seed and the trials it says which figures these
 * are, on whatever node they were computed (rule 4).
 */
final class InputKey {
  private static final int BYTES = 16;

  private final MessageDigest digest;
  private final ByteBuffer eight = ByteBuffer.allocate(Long.BYTES);

  private InputKey() {
    try {
      digest = MessageDigest.getInstance("SHA-256");
    } catch (NoSuchAlgorithmException e) {
      throw new IllegalStateException(e);
    }
  }

  /**
   * The first 128 bits of a SHA-256 over all values of the input in the order of its records, but
   * for {@code seed} and {@code trials}: 32 hexadecimal digits.
   */
  static String of(ForecastInput in) {
    InputKey key = new InputKey();
    key.add(
        List.of(
            in.version(),
            in.now(),
            in.settings(),
            in.people(),
            in.kinds(),
            in.places(),
            in.rooms()));
    return HexFormat.of().formatHex(key.digest.digest(), 0, BYTES);
  }

  private void add(Object value) {
    if (value == null) {
      number(0);
    } else if (value instanceof Record record) {
      text(record.getClass().getSimpleName());
      for (RecordComponent component : record.getClass().getRecordComponents()) {
        add(read(record, component));
      }
    } else if (value instanceof List<?> list) {
      number(list.size());
      list.forEach(this::add);
    } else if (value instanceof Double real) {
      number(Double.doubleToLongBits(real));
    } else if (value instanceof Number whole) {
      number(whole.longValue());
    } else {
      text(value instanceof Enum<?> one ? one.name() : value.toString());
    }
  }

  private static Object read(Record record, RecordComponent component) {
    try {
      return component.getAccessor().invoke(record);
    } catch (ReflectiveOperationException e) {
      throw new IllegalStateException(e);
    }
  }

  private void text(String text) {
    byte[] bytes = text.getBytes(StandardCharsets.UTF_8);
    number(bytes.length);
    digest.update(bytes);
  }

  private void number(long value) {
    digest.update(eight.clear().putLong(value).array());
  }
}
