package sunup.codec;

import com.fasterxml.jackson.annotation.JsonCreator;
import com.fasterxml.jackson.annotation.JsonSubTypes;
import com.fasterxml.jackson.annotation.JsonTypeInfo;
import com.fasterxml.jackson.annotation.JsonValue;
import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.core.JsonToken;
import com.fasterxml.jackson.databind.JsonMappingException;
import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.exc.InvalidTypeIdException;
import com.fasterxml.jackson.databind.exc.MismatchedInputException;
import com.fasterxml.jackson.databind.exc.UnrecognizedPropertyException;
import java.lang.reflect.Executable;
import java.lang.reflect.Method;
import java.math.BigDecimal;
import java.math.BigInteger;
import java.time.LocalDate;
import java.util.Arrays;
import java.util.Collection;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeSet;
import java.util.stream.Stream;

/** What doesn't fit in JSON that is well written: what was found, what to give instead. */
final class Wording {
  private static final int SHOWN = 40;

  private Wording() {}

  /**
   * @param all what was read, or null if it can't be read as a whole
   */
  static String of(JsonProcessingException e, JsonNode all) {
    if (!(e instanceof JsonMappingException mapping)) {
      return Syntax.at(e.getLocation(), "") + Syntax.words(e);
    }
    StringBuilder path = new StringBuilder();
    JsonNode found = all;
    for (JsonMappingException.Reference r : mapping.getPath()) {
      if (r.getFieldName() != null) {
        path.append(path.isEmpty() ? "" : ".").append(r.getFieldName());
        found = found == null ? null : found.get(r.getFieldName());
      } else {
        path.append('[').append(r.getIndex()).append(']');
        found = found == null ? null : found.get(r.getIndex());
      }
    }
    return Syntax.at(e.getLocation(), path.toString()) + words(mapping, found);
  }

  private static String words(JsonMappingException e, JsonNode found) {
    if (e instanceof Strict.Told) {
      return e.getOriginalMessage();
    }
    Throwable cause = e.getCause();
    if (cause instanceof Strict.Told told) {
      return told.getOriginalMessage();
    }
    if (cause instanceof IllegalArgumentException
        && !(cause instanceof NumberFormatException)
        && cause.getMessage() != null) {
      return cause.getMessage();
    }
    if (cause instanceof NullPointerException) {
      return nothingWhereSomethingMustBe(found);
    }
    if (cause instanceof JsonProcessingException below) {
      return Syntax.words(below);
    }
    if (e instanceof UnrecognizedPropertyException u) {
      return "is not known here; known are "
          + new TreeSet<>(u.getKnownPropertyIds().stream().map(String::valueOf).toList());
    }
    if (e instanceof InvalidTypeIdException t) {
      return kind(t, found);
    }
    Class<?> wanted = e instanceof MismatchedInputException m ? m.getTargetType() : null;
    if (wanted != null && wanted.isEnum() && found != null && found.isTextual()) {
      return found(found) + " is none of " + constants(wanted);
    }
    String is = found == null || found.isMissingNode() ? "is missing" : "is " + found(found);
    return is + "; give " + (wanted == null ? "something else" : wanted(wanted));
  }

  /** Records copy their lists, and lists hold no null. */
  private static String nothingWhereSomethingMustBe(JsonNode found) {
    String at = found == null ? null : nullIn(found, "");
    return at == null
        ? "lacks something that it must have"
        : at + " is null; take it out of the list";
  }

  /** The way to the first entry of a list that is null, or null if there is none. */
  private static String nullIn(JsonNode value, String at) {
    if (value.isArray()) {
      for (int i = 0; i < value.size(); i++) {
        String entry = at + "[" + i + "]";
        String below = value.get(i).isNull() ? entry : nullIn(value.get(i), entry);
        if (below != null) {
          return below;
        }
      }
    }
    for (Map.Entry<String, JsonNode> field : value.properties()) {
      String name = at.isEmpty() ? field.getKey() : at + "." + field.getKey();
      String below = nullIn(field.getValue(), name);
      if (below != null) {
        return below;
      }
    }
    return null;
  }

  private static String kind(InvalidTypeIdException e, JsonNode found) {
    Class<?> base = e.getBaseType().getRawClass();
    JsonTypeInfo info = base.getAnnotation(JsonTypeInfo.class);
    if (info == null || (found != null && !found.isObject())) {
      return "is " + found(found) + "; give " + wanted(base);
    }
    if (e.getTypeId() != null) {
      return "\"" + cut(e.getTypeId()) + "\" is none of " + kinds(base);
    }
    return "lacks \"" + info.property() + "\"; give it as one of " + kinds(base);
  }

  private static Set<String> kinds(Class<?> base) {
    Set<String> names = new TreeSet<>();
    JsonSubTypes types = base.getAnnotation(JsonSubTypes.class);
    if (types != null) {
      Arrays.stream(types.value()).forEach(type -> names.add(type.name()));
    }
    return names;
  }

  private static List<String> constants(Class<?> wanted) {
    return Arrays.stream(wanted.getEnumConstants())
        .map(one -> Json.mapper().valueToTree(one).asText())
        .toList();
  }

  /** What may stand there. */
  private static String wanted(Class<?> type) {
    if (type == long.class || type == int.class || type == Long.class || type == Integer.class) {
      return "a whole number";
    }
    if (type == double.class
        || type == Double.class
        || type == BigDecimal.class
        || type == BigInteger.class) {
      return "a number";
    }
    if (type == boolean.class || type == Boolean.class) {
      return "true or false";
    }
    if (type.isEnum()) {
      return "one of " + constants(type);
    }
    if (type == LocalDate.class) {
      return DATE;
    }
    if (type.isArray() || Collection.class.isAssignableFrom(type)) {
      return "a list [ ]";
    }
    if (type == String.class || isWrittenAsText(type)) {
      return "a text in quotes";
    }
    JsonTypeInfo info = type.getAnnotation(JsonTypeInfo.class);
    return info == null
        ? "an object { }"
        : "an object { } with \"" + info.property() + "\" as one of " + kinds(type);
  }

  static final String DATE = "a date in quotes, such as \"2026-11-25\"";

  /** True of ids and the like: records whose JSON is a text. */
  private static boolean isWrittenAsText(Class<?> type) {
    Stream<Executable> made =
        Stream.concat(Arrays.stream(type.getMethods()), Arrays.stream(type.getConstructors()));
    return made.anyMatch(one -> isOfText(one) || givesText(one));
  }

  private static boolean isOfText(Executable made) {
    return made.isAnnotationPresent(JsonCreator.class)
        && made.getParameterCount() == 1
        && made.getParameterTypes()[0] == String.class;
  }

  private static boolean givesText(Executable one) {
    return one instanceof Method method
        && method.isAnnotationPresent(JsonValue.class)
        && method.getReturnType() == String.class;
  }

  private static String found(JsonNode value) {
    if (value == null || value.isMissingNode()) {
      return "missing";
    }
    if (value.isObject() || value.isArray()) {
      return (value.isObject() ? Lined.Kind.OBJECT : Lined.Kind.LIST).words();
    }
    return value.isTextual() ? "\"" + cut(value.asText()) + "\"" : cut(value.asText());
  }

  /** What was found, as a parser sees it. */
  static String found(JsonToken token, String text) {
    return switch (token) {
      case START_OBJECT -> Lined.Kind.OBJECT.words();
      case START_ARRAY -> Lined.Kind.LIST.words();
      case VALUE_STRING -> "\"" + cut(text) + "\"";
      default -> cut(text);
    };
  }

  static String cut(String text) {
    return text.length() > SHOWN ? text.substring(0, SHOWN) + "..." : text;
  }
}
