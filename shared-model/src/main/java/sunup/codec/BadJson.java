package sunup.codec;

import com.fasterxml.jackson.core.JsonLocation;
import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.databind.JsonMappingException;

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
    return text.append(e.getOriginalMessage()).toString();
  }
}
