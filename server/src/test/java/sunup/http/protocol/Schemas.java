package sunup.http.protocol;

import com.fasterxml.jackson.annotation.JsonProperty;
import com.fasterxml.jackson.annotation.JsonSubTypes;
import com.fasterxml.jackson.annotation.JsonTypeInfo;
import com.fasterxml.jackson.annotation.JsonValue;
import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.lang.reflect.Method;
import java.lang.reflect.ParameterizedType;
import java.lang.reflect.RecordComponent;
import java.lang.reflect.Type;
import java.math.BigDecimal;
import java.time.LocalDate;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import sunup.board.Private;
import sunup.codec.Json;
import sunup.codec.Maybe;

/** JSON schemas of records, as the project's codec writes them. */
final class Schemas {
  private final Map<String, ObjectNode> made = new TreeMap<>();
  private final Map<String, Class<?>> names = new LinkedHashMap<>();

  private static ObjectNode node() {
    return Json.mapper().createObjectNode();
  }

  /** All schemas asked for and those that they need, by name. */
  ObjectNode all() {
    ObjectNode all = node();
    made.forEach(all::set);
    return all;
  }

  /** A reference to the schema of the type, which is made if it is not there. */
  ObjectNode of(Type type) {
    if (type instanceof ParameterizedType generic) {
      Type[] arguments = generic.getActualTypeArguments();
      if (generic.getRawType() == Map.class) {
        ObjectNode map = node().put("type", "object");
        map.set("additionalProperties", of(arguments[1]));
        return map;
      }
      ObjectNode list = node().put("type", "array");
      list.set("items", of(arguments[0]));
      return list;
    }
    Class<?> kind = (Class<?>) type;
    ObjectNode plain = plain(kind);
    return plain != null ? plain : reference(kind);
  }

  private static ObjectNode plain(Class<?> kind) {
    if (kind == int.class || kind == long.class || kind == Integer.class || kind == Long.class) {
      return node().put("type", "integer");
    }
    if (kind == double.class || kind == Double.class || kind == BigDecimal.class) {
      return node().put("type", "number");
    }
    if (kind == boolean.class || kind == Boolean.class) {
      return node().put("type", "boolean");
    }
    if (kind == Object.class) {
      // Whatever JSON may be.
      return node();
    }
    if (kind == LocalDate.class) {
      return node().put("type", "string").put("format", "date");
    }
    if (kind == String.class || kind == Private.class || writtenAsText(kind)) {
      return node().put("type", "string");
    }
    return null;
  }

  private static boolean writtenAsText(Class<?> kind) {
    if (kind.isEnum()) {
      return false;
    }
    for (Method method : kind.getMethods()) {
      if (method.isAnnotationPresent(JsonValue.class)) {
        return true;
      }
    }
    return false;
  }

  static String nameOf(Class<?> kind) {
    String name = kind.getSimpleName();
    for (Class<?> outer = kind.getEnclosingClass(); outer != null; ) {
      name = outer.getSimpleName() + "." + name;
      outer = outer.getEnclosingClass();
    }
    return kind == sunup.codec.Problem.class ? "Mistake" : name;
  }

  private ObjectNode reference(Class<?> kind) {
    String name = nameOf(kind);
    Class<?> other = names.putIfAbsent(name, kind);
    if (other == null) {
      ObjectNode schema = node();
      made.put(name, schema);
      fill(kind, schema);
    } else if (other != kind) {
      throw new IllegalStateException("two types are called " + name);
    }
    return node().put("$ref", "#/components/schemas/" + name);
  }

  private void fill(Class<?> kind, ObjectNode schema) {
    if (kind.isEnum()) {
      schema.put("type", "string");
      ArrayNode values = schema.putArray("enum");
      for (Object constant : kind.getEnumConstants()) {
        values.add(word(kind, (Enum<?>) constant));
      }
    } else if (kind.isRecord()) {
      fields(kind, schema);
    } else {
      oneOf(kind, schema);
    }
  }

  private static String word(Class<?> kind, Enum<?> constant) {
    try {
      JsonProperty given = kind.getField(constant.name()).getAnnotation(JsonProperty.class);
      return given == null ? constant.name() : given.value();
    } catch (NoSuchFieldException e) {
      throw new IllegalStateException(e);
    }
  }

  private void oneOf(Class<?> kind, ObjectNode schema) {
    JsonSubTypes types = kind.getAnnotation(JsonSubTypes.class);
    JsonTypeInfo info = kind.getAnnotation(JsonTypeInfo.class);
    if (types == null || info == null) {
      throw new IllegalStateException("no schema can be made of " + kind);
    }
    ArrayNode list = schema.putArray("oneOf");
    for (JsonSubTypes.Type type : types.value()) {
      list.add(of(type.value()));
      ObjectNode sub = made.get(nameOf(type.value()));
      ((ObjectNode) sub.get("properties")).putObject(info.property()).put("const", type.name());
      ((ArrayNode) sub.get("required")).add(info.property());
    }
    schema.putObject("discriminator").put("propertyName", info.property());
  }

  private void fields(Class<?> kind, ObjectNode schema) {
    schema.put("type", "object").put("additionalProperties", false);
    ObjectNode properties = schema.putObject("properties");
    ArrayNode required = schema.putArray("required");
    for (RecordComponent component : kind.getRecordComponents()) {
      properties.set(component.getName(), of(component.getGenericType()));
      if (!optional(kind, component)) {
        required.add(component.getName());
      }
    }
  }

  /** The forecast's records have a default for all that is absent; others mark what may be. */
  private static boolean optional(Class<?> kind, RecordComponent component) {
    return component.isAnnotationPresent(Maybe.class)
        || kind.getPackageName().equals("sunup.forecast");
  }

  /** The kinds of a sealed type with their names on the wire, in order. */
  static Map<String, Class<?>> kinds(Class<?> type) {
    Map<String, Class<?>> kinds = new LinkedHashMap<>();
    for (JsonSubTypes.Type kind : List.of(type.getAnnotation(JsonSubTypes.class).value())) {
      kinds.put(kind.name(), kind.value());
    }
    return kinds;
  }
}
