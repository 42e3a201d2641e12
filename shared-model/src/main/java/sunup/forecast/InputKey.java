package sunup.forecast;

import java.lang.reflect.Method;
import java.lang.reflect.RecordComponent;
import java.util.List;

/**
 * Names an input: with the model's version, the seed and the trials it says which figures these
 * are, on whatever node they were computed (rule 4).
 */
final class InputKey {
  /** A record's name, hashed, and its values. */
  private record Kind(long name, List<Method> values) {}

  private static final ClassValue<Kind> KINDS =
      new ClassValue<>() {
        @Override
        protected Kind computeValue(Class<?> type) {
          RecordComponent[] components = type.getRecordComponents();
          Method[] values = new Method[components.length];
          for (int k = 0; k < values.length; k++) {
            values[k] = components[k].getAccessor();
            values[k].setAccessible(true);
          }
          return new Kind(Hash.text(type.getSimpleName()), List.of(values));
        }
      };

  private static final Object[] NONE = {};

  private long first = 1;
  private long second = 2;

  private InputKey() {}

  /**
   * A hash of 128 bits over all values of the input in the order of its records, but for {@code
   * seed} and {@code trials}: 32 hexadecimal digits.
   */
  static String of(ForecastInput in) {
    InputKey key = new InputKey();
    key.add(in.version());
    key.add(in.now());
    key.add(in.settings());
    key.add(in.people());
    key.add(in.kinds());
    key.add(in.places());
    key.add(in.rooms());
    return String.format("%016x%016x", key.first, key.second);
  }

  private void add(Object value) {
    if (value == null) {
      number(0);
    } else if (value instanceof String text) {
      number(Hash.text(text));
    } else if (value instanceof Record record) {
      Kind kind = KINDS.get(record.getClass());
      number(kind.name());
      for (Method of : kind.values()) {
        add(read(record, of));
      }
    } else if (value instanceof List<?> list) {
      number(list.size());
      for (Object each : list) {
        add(each);
      }
    } else if (value instanceof Double real) {
      number(Double.doubleToLongBits(real));
    } else if (value instanceof Number whole) {
      number(whole.longValue());
    } else {
      number(Hash.text(value instanceof Enum<?> one ? one.name() : value.toString()));
    }
  }

  private static Object read(Record record, Method of) {
    try {
      return of.invoke(record, NONE);
    } catch (ReflectiveOperationException e) {
      throw new IllegalStateException(e);
    }
  }

  private void number(long value) {
    first = Hash.mix(first ^ value);
    second = Hash.mix(second + value);
  }
}
