package sunup.codec;

import com.fasterxml.jackson.core.JsonParser;
import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.core.JsonToken;
import java.io.IOException;
import java.util.ArrayList;
import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

/**
 * A JSON value that knows where it was written, for files that people edit by hand: whoever made a
 * mistake is told its line.
 *
 * @param file the file's name
 * @param line counted from 1; of a field, the line of its name
 * @param kind what it is
 * @param text a text's or number's characters, else null
 * @param fields an object's fields in order, else empty
 * @param items a list's values in order, else empty
 */
public record Lined(
    String file, int line, Kind kind, String text, Map<String, Lined> fields, List<Lined> items) {

  /** Kinds of JSON values. */
  public enum Kind {
    OBJECT("an object { }"),
    LIST("a list [ ]"),
    TEXT("a text"),
    NUMBER("a number"),
    YES_OR_NO("true or false"),
    NULL("null");

    private final String words;

    Kind(String words) {
      this.words = words;
    }

    public String words() {
      return words;
    }
  }

  /** Characters that a file may have; a sheet of 200 items has about 80,000. */
  public static final int MAX_CHARS = 1_000_000;

  public Lined {
    fields = Collections.unmodifiableMap(new LinkedHashMap<>(fields));
    items = List.copyOf(items);
  }

  /**
   * Reads one JSON value.
   *
   * @param problems gets what is wrong with the text as JSON
   * @return the value, or null if it can't be read at all
   */
  public static Lined parse(String file, String text, List<Problem> problems) {
    if (text.length() > MAX_CHARS) {
      problems.add(
          new Problem(
              file, 0, "", "is longer than " + MAX_CHARS + " characters; is it the right file?"));
      return null;
    }
    try (JsonParser in = Json.mapper().getFactory().createParser(withoutMark(text))) {
      if (in.nextToken() == null) {
        problems.add(new Problem(file, 1, "", "is empty"));
        return null;
      }
      Lined value = value(file, in, in.currentTokenLocation().getLineNr(), "", problems);
      if (in.nextToken() != null) {
        problems.add(
            new Problem(
                file,
                in.currentTokenLocation().getLineNr(),
                "",
                "something follows the end of the file's object; take it away"));
      }
      return value;
    } catch (JsonProcessingException e) {
      int line = e.getLocation() == null ? 0 : e.getLocation().getLineNr();
      problems.add(new Problem(file, line, "", "is not JSON: " + Syntax.words(e)));
      return null;
    } catch (IOException e) {
      problems.add(new Problem(file, 0, "", "can't be read: " + e.getMessage()));
      return null;
    }
  }

  /** The text without the byte order mark that some editors put in front. */
  private static String withoutMark(String text) {
    return text.startsWith("\uFEFF") ? text.substring(1) : text;
  }

  private static Lined value(
      String file, JsonParser in, int line, String at, List<Problem> problems) throws IOException {
    JsonToken token = in.currentToken();
    if (token == JsonToken.START_OBJECT) {
      return object(file, in, line, at, problems);
    }
    if (token == JsonToken.START_ARRAY) {
      List<Lined> items = new ArrayList<>();
      while (in.nextToken() != JsonToken.END_ARRAY) {
        items.add(value(file, in, in.currentTokenLocation().getLineNr(), at, problems));
      }
      return new Lined(file, line, Kind.LIST, null, Map.of(), items);
    }
    Kind kind = Kind.TEXT;
    if (token == JsonToken.VALUE_NULL) {
      kind = Kind.NULL;
    } else if (token.isBoolean()) {
      kind = Kind.YES_OR_NO;
    } else if (token.isNumeric()) {
      kind = Kind.NUMBER;
    }
    return new Lined(file, line, kind, in.getText(), Map.of(), List.of());
  }

  private static Lined object(
      String file, JsonParser in, int line, String at, List<Problem> problems) throws IOException {
    Map<String, Lined> fields = new LinkedHashMap<>();
    while (in.nextToken() != JsonToken.END_OBJECT) {
      String name = in.currentName();
      int nameLine = in.currentTokenLocation().getLineNr();
      in.nextToken();
      String path = at.isEmpty() ? name : at + "." + name;
      Lined field = value(file, in, nameLine, path, problems);
      if (fields.putIfAbsent(name, field) != null) {
        problems.add(
            new Problem(
                file,
                nameLine,
                path,
                "stands here for the second time (first in line "
                    + fields.get(name).line()
                    + "); keep one"));
      }
    }
    return new Lined(file, line, Kind.OBJECT, null, fields, List.of());
  }

  /** True if the same is written, wherever it stands. */
  public boolean same(Lined other) {
    if (kind != other.kind || !java.util.Objects.equals(text, other.text)) {
      return false;
    }
    if (!fields.keySet().equals(other.fields.keySet()) || items.size() != other.items.size()) {
      return false;
    }
    for (Map.Entry<String, Lined> field : fields.entrySet()) {
      if (!field.getValue().same(other.fields.get(field.getKey()))) {
        return false;
      }
    }
    for (int i = 0; i < items.size(); i++) {
      if (!items.get(i).same(other.items.get(i))) {
        return false;
      }
    }
    return true;
  }

  /** The place as people say it. */
  public String where() {
    return file + ", line " + line;
  }
}
