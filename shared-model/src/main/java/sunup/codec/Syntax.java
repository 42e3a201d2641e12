package sunup.codec;

import com.fasterxml.jackson.core.JsonFactory;
import com.fasterxml.jackson.core.JsonLocation;
import com.fasterxml.jackson.core.JsonParser;
import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.core.JsonStreamContext;
import com.fasterxml.jackson.core.JsonToken;
import com.fasterxml.jackson.core.io.JsonEOFException;
import java.io.CharConversionException;
import java.io.IOException;
import java.util.ArrayDeque;
import java.util.Deque;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.Set;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/** Where and why a text is no JSON, in words of people who wrote it. */
final class Syntax {
  private static final Pattern TOKEN = Pattern.compile("token '([^']*)'");
  private static final Pattern CHARACTER = Pattern.compile("\\('(.)' \\(code", Pattern.DOTALL);

  /**
   * What the library says at the beginning, and what we say. {@code SyntaxTest} breaks each rule
   * once, so that another version of the library that speaks otherwise is seen.
   */
  private static final Map<String, String> WORDS = words();

  private Syntax() {}

  private static Map<String, String> words() {
    Map<String, String> words = new LinkedHashMap<>();
    words.put("Non-standard token", "%s is no number in JSON; give a number");
    words.put(
        "Unrecognized token",
        "%s is nothing that JSON knows; texts and names stand in double quotes, anything else is a"
            + " number, true, false or null");
    words.put("Unexpected close marker", "a bracket is closed by one of another kind");
    words.put(
        "Illegal unquoted character",
        "a line break or other control character stands in a text; write \\n or \\u000A");
    words.put(
        "Unrecognized character escape",
        "after a backslash in a text only \" \\ / b f n r t u may stand; write two for one");
    words.put("Invalid UTF-8", "this is not text in UTF-8; save it as UTF-8");
    words.put("Document nesting depth", "brackets stand in each other more than 64 deep");
    words.put("Number value length", "a number has too many digits");
    words.put("String value length", "a text is too long");
    words.put("Name length", "a field's name is too long");
    return words;
  }

  /** Reads all of it. Returns what is wrong, or null if it is JSON. */
  static String wrongWith(byte[] bytes) {
    try (JsonParser in = factory().createParser(bytes)) {
      return wrongWith(in);
    } catch (IOException e) {
      return "this is not text in UTF-8; save it as UTF-8";
    }
  }

  /** Reads all of it. Returns what is wrong, or null if it is JSON. */
  static String wrongWith(String text) {
    try (JsonParser in = factory().createParser(text)) {
      return wrongWith(in);
    } catch (IOException e) {
      return "it can't be read";
    }
  }

  private static JsonFactory factory() {
    return Json.mapper().getFactory();
  }

  private static String wrongWith(JsonParser in) throws IOException {
    Deque<Set<String>> names = new ArrayDeque<>();
    try {
      JsonToken token = in.nextToken();
      if (token == null) {
        return "is empty; give an object { }";
      }
      for (; token != null; token = in.nextToken()) {
        if (in.getParsingContext().inRoot() && in.getParsingContext().getCurrentIndex() > 0) {
          return at(in.currentTokenLocation(), "")
              + "something follows the end of it; take that away";
        }
        if (token == JsonToken.START_OBJECT) {
          names.push(new HashSet<>());
        } else if (token == JsonToken.END_OBJECT) {
          names.pop();
        } else if (token == JsonToken.FIELD_NAME && !names.peek().add(in.currentName())) {
          return at(in.currentTokenLocation(), path(in.getParsingContext()))
              + "stands here for the second time; keep one";
        }
      }
      return null;
    } catch (JsonProcessingException e) {
      return at(e.getLocation(), path(in.getParsingContext())) + words(e);
    } catch (CharConversionException e) {
      return at(in.currentLocation(), "") + "this is not text in UTF-8; save it as UTF-8";
    }
  }

  /** What is wrong, without where. */
  static String words(JsonProcessingException e) {
    if (e instanceof JsonEOFException) {
      return "the text ends here, and a bracket or a quote is still open; close it";
    }
    String message = e.getOriginalMessage() == null ? "" : e.getOriginalMessage();
    Matcher token = TOKEN.matcher(message);
    String which = token.find() ? Wording.cut(token.group(1)) : "this";
    for (Map.Entry<String, String> known : WORDS.entrySet()) {
      if (message.startsWith(known.getKey())) {
        return known.getValue().formatted(which);
      }
    }
    if (message.contains("numeric value") || message.contains("zeroes")) {
      return "a number is not written as JSON writes it: no + and no 0 in front, a digit before and"
          + " after the point";
    }
    Matcher character = CHARACTER.matcher(message);
    return (character.find() ? "'" + character.group(1) + "'" : "what stands here")
        + " can't stand here; look for a comma, quote or bracket that is missing or too many";
  }

  static String at(JsonLocation at, String path) {
    StringBuilder text = new StringBuilder();
    if (at != null && at.getLineNr() > 0) {
      text.append("line ").append(at.getLineNr()).append(", column ").append(at.getColumnNr());
      text.append(": ");
    }
    if (!path.isEmpty()) {
      text.append("field ").append(path).append(": ");
    }
    return text.toString();
  }

  private static String path(JsonStreamContext at) {
    StringBuilder path = new StringBuilder();
    for (JsonStreamContext c = at; c != null && !c.inRoot(); c = c.getParent()) {
      if (c.inObject() && c.getCurrentName() != null) {
        path.insert(0, "." + c.getCurrentName());
      } else if (c.inArray()) {
        path.insert(0, "[" + Math.max(0, c.getCurrentIndex()) + "]");
      }
    }
    return path.indexOf(".") == 0 ? path.substring(1) : path.toString();
  }
}
