package sunup.live.fake;

import java.lang.reflect.Constructor;
import java.lang.reflect.InvocationTargetException;
import java.lang.reflect.RecordComponent;
import java.util.ArrayList;
import java.util.List;
import sunup.board.Evidence;
import sunup.board.ItemRef;
import sunup.board.Morning;
import sunup.board.MorningId;
import sunup.live.Sight;
import sunup.outlook.Foretold;
import sunup.wire.Part;

/**
 * Shows one part of every kind that there is, with every field filled; texts name the audience.
 * Every second state they are gone.
 */
public final class EveryPartSight implements Sight {
  @Override
  public Figuring figuring(Morning state, long now, int trialsMost) {
    return null;
  }

  @Override
  public Seen see(MorningId id, Object before, Morning state, Foretold figures, long now) {
    List<Part> parts = new ArrayList<>();
    if (state.seq() % 2 == 0) {
      for (Class<?> kind : Part.class.getPermittedSubclasses()) {
        parts.add(filled(kind.asSubclass(Part.class), state.seq()));
      }
    }
    return new Seen(null, parts);
  }

  private static <P extends Part> P filled(Class<P> kind, long seq) {
    // The audience does not depend on the fields: ask an empty one first.
    String word = make(kind, seq, "").audience().name();
    return make(kind, seq, "FOR-" + word);
  }

  private static <R> R make(Class<R> kind, long seq, String text) {
    RecordComponent[] components = kind.getRecordComponents();
    Class<?>[] types = new Class<?>[components.length];
    Object[] values = new Object[components.length];
    for (int i = 0; i < components.length; i++) {
      types[i] = components[i].getType();
      boolean key = components[i].getName().equals("key");
      values[i] = key ? kind.getSimpleName() : value(types[i], seq, text);
    }
    try {
      Constructor<R> constructor = kind.getDeclaredConstructor(types);
      return constructor.newInstance(values);
    } catch (NoSuchMethodException
        | InstantiationException
        | IllegalAccessException
        | InvocationTargetException e) {
      throw new IllegalStateException(e);
    }
  }

  private static Object value(Class<?> type, long seq, String text) {
    if (type == String.class) {
      return text;
    }
    if (type == int.class || type == Integer.class) {
      return (int) seq;
    }
    if (type == long.class || type == Long.class) {
      return seq;
    }
    if (type == double.class || type == Double.class) {
      return (double) seq;
    }
    if (type == boolean.class) {
      return true;
    }
    if (type.isEnum()) {
      return type.getEnumConstants()[0];
    }
    if (type == List.class || type == ItemRef.class || type == Evidence.class) {
      return type == List.class ? List.of() : null;
    }
    return null;
  }
}
