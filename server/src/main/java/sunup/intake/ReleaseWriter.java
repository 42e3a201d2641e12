package sunup.intake;

import com.fasterxml.jackson.core.JsonParser;
import com.fasterxml.jackson.core.JsonToken;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.util.List;
import java.util.stream.Collectors;
import sunup.bedside.Release;
import sunup.codec.Json;

/**
 * Puts releases into the text of a site's file and leaves every other letter of it as it is: the
 * file is written by people, with notes and an order of their own.
 */
public final class ReleaseWriter {
  private static final String RELEASES = "releases";

  /** The span of a value in a text. */
  private record Span(int from, int to) {}

  private ReleaseWriter() {}

  /**
   * The text with these releases in place of those that it has.
   *
   * @param text of a site's file that can be read
   */
  public static String write(String text, List<Release> releases) {
    Span there = find(text, BedsideReader.FIELD, RELEASES);
    if (there != null) {
      return text.substring(0, there.from()) + list(releases) + text.substring(there.to());
    }
    Span bedside = find(text, BedsideReader.FIELD);
    if (bedside != null) {
      String field = "\n    \"" + RELEASES + "\": " + list(releases);
      boolean empty = text.substring(bedside.from() + 1, bedside.to() - 1).isBlank();
      return text.substring(0, bedside.from() + 1)
          + field
          + (empty ? "\n  " : ",")
          + text.substring(bedside.from() + 1);
    }
    int end = text.lastIndexOf('}');
    return text.substring(0, end).stripTrailing()
        + ",\n  \""
        + BedsideReader.FIELD
        + "\": {\n    \""
        + RELEASES
        + "\": "
        + list(releases)
        + "\n  }\n"
        + text.substring(end);
  }

  private static String list(List<Release> releases) {
    return releases.stream()
        .map(
            r ->
                "\n      {\"figure\": "
                    + Json.write(r.figure())
                    + ", \"fingerprint\": "
                    + Json.write(r.fingerprint())
                    + ", \"by\": "
                    + Json.write(r.by())
                    + ", \"on\": "
                    + Json.write(r.on())
                    + "}")
        .collect(Collectors.joining(",", "[", releases.isEmpty() ? "]" : "\n    ]"));
  }

  /** Where the value of the field stands that this way of names leads to, or null. */
  private static Span find(String text, String... way) {
    try (JsonParser parser = Json.mapper().getFactory().createParser(text)) {
      int depth = 0;
      int found = 0;
      for (JsonToken token = parser.nextToken(); token != null; token = parser.nextToken()) {
        if (token.isStructEnd()) {
          depth--;
          found = Math.min(found, depth);
        } else if (token.isStructStart()) {
          depth++;
        } else if (token == JsonToken.FIELD_NAME
            && depth == found + 1
            && parser.currentName().equals(way[found])) {
          parser.nextToken();
          if (++found == way.length) {
            int from = (int) parser.currentTokenLocation().getCharOffset();
            parser.skipChildren();
            return new Span(from, (int) parser.currentLocation().getCharOffset());
          }
          depth += parser.currentToken().isStructStart() ? 1 : 0;
        }
      }
      return null;
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }
}
