package sunup.codec;

import com.fasterxml.jackson.core.JsonLocation;
import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.databind.JsonMappingException;
import com.fasterxml.jackson.databind.exc.InvalidFormatException;
import com.fasterxml.jackson.databind.exc.InvalidTypeIdException;
import com.fasterxml.jackson.databind.exc.MismatchedInputException;
import com.fasterxml.jackson.databind.exc.UnrecognizedPropertyException;
import java.util.TreeSet;

/** Text that is not the JSON asked for. */
public final class BadJson extends Exception {
  private static final long serialVersionUID = 1L;

  public BadJson(String message) {
    super(message);
  }

  static String explain(JsonProcessingException e) {
    StringBuilder text = new StringBuilder();
    JsonLocation at = e.getLocation();
    if (at != null && at.getLineNr() > 0) {
      text.append("line ").append(at.getLineNr()).append(", column ").append(at.getColumnNr());
      text.append(": ");
    }
    if (e instanceof JsonMappingException m && !m.getPath().isEmpty()) {
      StringBuilder path = new StringBuilder();
      for (JsonMappingException.Reference r : m.getPath()) {
        if (r.getFieldName() != null) {
          path.append(path.isEmpty() ? "" : ".").append(r.getFieldName());
        } else {
          path.append('[').append(r.getIndex()).append(']');
        }
      }
      text.append("field ").append(path).append(": ");
    }
    Throwable cause = e.getCause();
    if (cause instanceof IllegalArgumentException && cause.getMessage() != null) {
      return text.append(cause.getMessage()).toString();
    }
    return text.append(inPlainWords(e)).toString();
  }

  /** What is wrong and what may stand there, without the names of classes. */
  private static String inPlainWords(JsonProcessingException e) {
    if (e instanceof UnrecognizedPropertyException u) {
      return "is not known here; known are "
          + new TreeSet<>(u.getKnownPropertyIds().stream().map(String::valueOf).toList());
    }
    String message = e.getOriginalMessage();
    int choices = message.lastIndexOf('[');
    if (e instanceof InvalidFormatException f && f.getTargetType().isEnum() && choices >= 0) {
      return "\"" + f.getValue() + "\" is none of " + message.substring(choices);
    }
    if (e instanceof InvalidTypeIdException t && t.getTypeId() != null && choices >= 0) {
      int end = message.indexOf(']', choices) + 1;
      return "\"" + t.getTypeId() + "\" is none of " + message.substring(choices, end);
    }
    if (e instanceof MismatchedInputException && message.startsWith("Cannot map `null`")) {
      return "is missing; give a number, or true or false";
    }
    return message;
  }
}
