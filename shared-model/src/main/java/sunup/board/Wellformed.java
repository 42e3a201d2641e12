package sunup.board;

import java.lang.reflect.RecordComponent;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import sunup.codec.Maybe;

/**
 * Whether an order has all that its command needs. What a record does not mark with {@link Maybe}
 * must be there: JSON that lacks it reads as null.
 */
final class Wellformed {
  /** Longest free text that a command may bring. */
  static final int MAX_TEXT = 2_000;

  private static final Map<Class<?>, List<RecordComponent>> PARTS = new LinkedHashMap<>();

  static {
    for (CommandKind kind : CommandKind.values()) {
      PARTS.put(kind.type(), partsOf(kind.type()));
    }
    for (Class<?> evidence : Evidence.class.getPermittedSubclasses()) {
      PARTS.put(evidence, partsOf(evidence));
    }
    for (Class<?> move : Move.class.getPermittedSubclasses()) {
      PARTS.put(move, partsOf(move));
    }
    PARTS.put(CasePlan.class, partsOf(CasePlan.class));
    PARTS.put(PersonPlan.class, partsOf(PersonPlan.class));
  }

  private Wellformed() {}

  /** What is wrong with the order, in words, or null. */
  static String problem(Order order) {
    if (order.id() == null) {
      return "it has no id";
    }
    if (order.command() == null) {
      return "it asks for nothing";
    }
    return problem(order.command());
  }

  private static String problem(Object record) {
    for (RecordComponent part : PARTS.get(record.getClass())) {
      Object value = valueOf(part, record);
      if (value == null) {
        if (!part.isAnnotationPresent(Maybe.class)) {
          return "'" + part.getName() + "' is missing";
        }
      } else if (value instanceof Private text) {
        if (text.text() != null && text.text().length() > MAX_TEXT) {
          return "'" + part.getName() + "' is longer than " + MAX_TEXT + " letters";
        }
      } else if (PARTS.containsKey(value.getClass())) {
        String inner = problem(value);
        if (inner != null) {
          return inner;
        }
      }
    }
    return null;
  }

  private static List<RecordComponent> partsOf(Class<?> type) {
    List<RecordComponent> parts = new ArrayList<>();
    for (RecordComponent part : type.getRecordComponents()) {
      if (!part.getType().isPrimitive()) {
        parts.add(part);
      }
    }
    return List.copyOf(parts);
  }

  private static Object valueOf(RecordComponent part, Object record) {
    try {
      return part.getAccessor().invoke(record);
    } catch (ReflectiveOperationException e) {
      throw new IllegalStateException("a record's own accessor failed: " + part, e);
    }
  }
}
