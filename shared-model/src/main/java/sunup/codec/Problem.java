package sunup.codec;

/**
 * What is wrong in a file that people write, where, and how to mend it.
 *
 * @param file the file's name as people know it
 * @param line counted from 1, or 0 if it is about the whole file
 * @param field the field, with the way to it, or empty
 * @param message what is wrong and how to mend it, as half a sentence
 */
public record Problem(String file, int line, String field, String message) {
  @Override
  public String toString() {
    return file
        + (line > 0 ? ", line " + line : "")
        + (field.isEmpty() ? "" : ", " + field)
        + ": "
        + message;
  }
}
