package sunup.fuzz;

import com.fasterxml.jackson.annotation.JsonProperty;
import com.fasterxml.jackson.annotation.JsonSubTypes;
import com.fasterxml.jackson.annotation.JsonTypeInfo;
import com.fasterxml.jackson.annotation.JsonValue;
import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.JsonNodeFactory;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.lang.reflect.ParameterizedType;
import java.lang.reflect.RecordComponent;
import java.lang.reflect.Type;
import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.Collection;
import java.util.List;
import java.util.Map;
import java.util.Set;
import sunup.codec.Json;

/** JSON of any record: one value for each of its kinds, so that a new one is tried by itself. */
public final class Sample {
  private static final JsonNodeFactory NODES = JsonNodeFactory.instance;
  private static final int DEEPEST = 8;
  private static final Map<Class<?>, Object> PLAIN =
      Map.of(
          int.class,
          7,
          Integer.class,
          7,
          long.class,
          1_795_000_000_000L,
          Long.class,
          41L,
          double.class,
          2.5,
          Double.class,
          0.25,
          boolean.class,
          true,
          Boolean.class,
          true,
          BigDecimal.class,
          new BigDecimal("62.5"));
  private static final Map<String, String> WORDS =
      Map.of(
          "MorningId",
          "main/2026-11-25",
          "ItemRef",
          "room:7/machine.self-test",
          "LocalDate",
          "2026-11-25",
          "LocalTime",
          "07:30",
          "Private",
          "tube 4.5");

  private Sample() {}

  /** A seed for each kind of this type. */
  public static List<byte[]> of(Class<?> type) {
    List<byte[]> seeds = new ArrayList<>();
    for (Class<?> kind : kinds(type)) {
      seeds.add(Json.bytes(value(kind, type, 0)));
    }
    return seeds;
  }

  private static List<Class<?>> kinds(Class<?> type) {
    JsonSubTypes named = type.getAnnotation(JsonSubTypes.class);
    List<Class<?>> kinds = new ArrayList<>();
    if (named == null) {
      kinds.add(type);
    } else {
      for (JsonSubTypes.Type one : named.value()) {
        kinds.add(one.value());
      }
    }
    return kinds;
  }

  private static Object value(Type type, Class<?> declared, int deep) {
    if (type instanceof ParameterizedType p) {
      Type[] of = p.getActualTypeArguments();
      if (Collection.class.isAssignableFrom((Class<?>) p.getRawType())) {
        ArrayNode list = NODES.arrayNode();
        if (deep < DEEPEST) {
          for (Class<?> kind : kinds(raw(of[0]))) {
            list.addPOJO(value(of[0] instanceof Class<?> ? kind : of[0], raw(of[0]), deep + 1));
          }
        }
        return list;
      }
      ObjectNode map = NODES.objectNode();
      map.putPOJO("weight", value(of[1], raw(of[1]), deep + 1));
      return map;
    }
    Class<?> c = (Class<?>) type;
    if (PLAIN.containsKey(c)) {
      return PLAIN.get(c);
    }
    if (c.isEnum()) {
      return word(c);
    }
    if (c.isRecord() && !WORDS.containsKey(c.getSimpleName()) && !isOneWord(c)) {
      return object(c, declared, deep);
    }
    List<Class<?>> kinds = kinds(c);
    if (kinds.get(0) != c && deep < DEEPEST) {
      return value(kinds.get(deep % kinds.size()), c, deep);
    }
    return WORDS.getOrDefault(c.getSimpleName(), "a7");
  }

  private static Class<?> raw(Type type) {
    return type instanceof ParameterizedType p ? (Class<?>) p.getRawType() : (Class<?>) type;
  }

  private static Object word(Class<?> type) {
    return Json.mapper().valueToTree(type.getEnumConstants()[0]);
  }

  private static boolean isOneWord(Class<?> type) {
    for (RecordComponent part : type.getRecordComponents()) {
      if (part.isAnnotationPresent(JsonValue.class)
          || part.getAccessor().isAnnotationPresent(JsonValue.class)) {
        return true;
      }
    }
    return false;
  }

  private static ObjectNode object(Class<?> type, Class<?> declared, int deep) {
    ObjectNode object = NODES.objectNode();
    JsonSubTypes named = declared.getAnnotation(JsonSubTypes.class);
    if (named != null) {
      for (JsonSubTypes.Type one : named.value()) {
        if (one.value() == type) {
          object.put(declared.getAnnotation(JsonTypeInfo.class).property(), one.name());
        }
      }
    }
    for (RecordComponent part : type.getRecordComponents()) {
      JsonProperty other = part.getAccessor().getAnnotation(JsonProperty.class);
      String name = other == null || other.value().isEmpty() ? part.getName() : other.value();
      if (deep < DEEPEST || Set.of(String.class, long.class).contains(part.getType())) {
        object.putPOJO(name, value(part.getGenericType(), raw(part.getGenericType()), deep + 1));
      }
    }
    return object;
  }
}
