package sunup.live;

import java.lang.reflect.InvocationTargetException;
import java.lang.reflect.Method;
import java.lang.reflect.RecordComponent;
import java.util.List;
import java.util.Optional;
import sunup.codec.Maybe;
import sunup.wire.ClientMessage;

/**
 * Finds what is missing in a message that came over the wire: what is not marked as optional. What
 * a command itself needs is the board's to say, which refuses it under its own id.
 */
final class Complete {
  private Complete() {}

  /** The path of the first component that is null and may not be. */
  static Optional<String> missing(Object value) {
    if (value instanceof List<?> list) {
      for (int i = 0; i < list.size(); i++) {
        Optional<String> found = missing(list.get(i));
        if (found.isPresent()) {
          int at = i;
          return found.map(path -> "[" + at + "]." + path);
        }
      }
      return Optional.empty();
    }
    if (value == null || !value.getClass().isRecord() || !ours(value.getClass())) {
      return Optional.empty();
    }
    for (RecordComponent component : value.getClass().getRecordComponents()) {
      Object inner = read(component.getAccessor(), value);
      if (inner == null && component.getAnnotation(Maybe.class) == null) {
        return Optional.of(component.getName());
      }
      Optional<String> found = missing(inner);
      if (found.isPresent()) {
        return found.map(path -> component.getName() + "." + path);
      }
    }
    return Optional.empty();
  }

  private static boolean ours(Class<?> type) {
    return type.getPackage().equals(ClientMessage.class.getPackage());
  }

  private static Object read(Method accessor, Object record) {
    try {
      return accessor.invoke(record);
    } catch (IllegalAccessException | InvocationTargetException e) {
      throw new IllegalStateException(e);
    }
  }
}
