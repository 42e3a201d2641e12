package sunup.sheets;

import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.databind.node.ObjectNode;
import sunup.codec.Json;

/**
 * Files of sheets that somebody published: their names, and what stands in them as it is written.
 * Whether it can be used is for {@link Sheets} to say.
 */
public final class SheetFiles {
  private static final String ENDING = ".json";

  private SheetFiles() {}

  /** The name of a sheet's file. */
  public static String file(String sheet) {
    return sheet + ENDING;
  }

  /** The name of the sheet that a file holds. */
  public static String sheet(String file) {
    return file.endsWith(ENDING) ? file.substring(0, file.length() - ENDING.length()) : file;
  }

  /** A sheet as it is written. */
  public static ObjectNode read(String text) {
    try {
      return (ObjectNode) Json.mapper().readTree(text);
    } catch (JsonProcessingException e) {
      throw new IllegalArgumentException("a sheet that was published is not JSON", e);
    }
  }
}
