package sunup.live;

import java.lang.reflect.RecordComponent;
import java.util.Optional;
import sunup.codec.Maybe;
import sunup.wire.ClientMessage;

/** Finds what is missing in a message. What is missing inside a command is the board's to say. */
public final class Complete {
  private Complete() {}

  /** The first component that is null and not marked as optional. */
  public static Optional<String> missing(Object message) {
    Optional<String> of = missingOf(message);
    return of.isEmpty() && message instanceof ClientMessage.Manage manage
        ? missingOf(manage.ask())
        : of;
  }

  private static Optional<String> missingOf(Object message) {
    for (RecordComponent component : message.getClass().getRecordComponents()) {
      if (!component.isAnnotationPresent(Maybe.class) && read(component, message) == null) {
        return Optional.of(component.getName());
      }
    }
    return Optional.empty();
  }

  private static Object read(RecordComponent component, Object message) {
    try {
      return component.getAccessor().invoke(message);
    } catch (ReflectiveOperationException e) {
      throw new IllegalStateException(e);
    }
  }
}
