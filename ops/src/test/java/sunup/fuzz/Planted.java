package sunup.fuzz;

import com.fasterxml.jackson.databind.JsonNode;
import java.io.IOException;
import java.nio.ByteBuffer;
import java.util.ArrayList;
import java.util.List;
import sunup.codec.Json;

/**
 * Decoders with a mistake planted in each, of a kind that has been made in real ones: what the
 * fuzzer must find before its silence about ours says anything.
 */
final class Planted {
  private static final int MOST = 1 << 20;

  private Planted() {}

  static List<Decoder> all() {
    return List.of(
        Decoder.ofText(
            "planted-fixed-length", List.of("1712345610lot", "0112345678901231"), Planted::fixed),
        Decoder.ofText(
            "planted-no-number",
            List.of("{\"minutes\":4.5}", "{\"minutes\":\"120\"}"),
            Planted::minutes),
        Decoder.ofText("planted-nesting", List.of("[1,[2,[3]]]", "[[],[4]]"), Planted::nested),
        Decoder.ofText(
            "planted-lost-escape", List.of("a,b,c", "a,\"b\"\"c\",d"), Planted::cellsAgain),
        Decoder.ofText("planted-blank-end", List.of("7:30,07:45", "8:00"), Planted::times),
        new Decoder(
            "planted-believed-length",
            List.of(new byte[] {0, 0, 0, 2, 'o', 'k'}, new byte[] {0, 0, 0, 0}),
            Planted::framed),
        Decoder.ofText("planted-sign", List.of("room:7", "room:12"), Planted::room),
        Decoder.ofText(
            "planted-endless", List.of("(01)7(10)lot", "(17)271231"), Planted::brackets));
  }

  /** Off by one: an element that ends where the text ends is taken for one that was cut off. */
  private static boolean fixed(String text) {
    int at = 0;
    while (at < text.length()) {
      String id = text.substring(at, Math.min(text.length(), at + 2));
      int length = id.equals("01") ? 14 : id.equals("17") ? 6 : text.length() - at - 2;
      if (at + 2 + length > text.length() + 1 || length < 0) {
        return false; // One letter too many is let through.
      }
      at = at + 2 + text.substring(at + 2, at + 2 + length).length();
    }
    return true;
  }

  /** A number in quotes is read as one, and so is what is none. */
  private static boolean minutes(String text) throws IOException {
    JsonNode tree;
    try {
      tree = Json.mapper().readTree(text);
    } catch (IOException refused) {
      return false;
    }
    JsonNode given = tree.path("minutes");
    double minutes;
    try {
      minutes = given.isTextual() ? Double.parseDouble(given.asText()) : given.asDouble(-1);
    } catch (NumberFormatException refused) {
      return false;
    }
    if (minutes < 0 || minutes > 240) {
      return false;
    }
    Must.be(Double.isFinite(minutes), "a number that is none was taken");
    return true;
  }

  /** As deep as the text says. */
  private static boolean nested(String text) {
    return list(text, 0, 0) == text.length();
  }

  private static int list(String text, int from, int deep) {
    Must.be(deep < 200, "it would go as deep as the stack");
    int at = from;
    while (at < text.length() && text.charAt(at) != ']') {
      at = text.charAt(at) == '[' ? list(text, at + 1, deep + 1) : at + 1;
    }
    return Math.min(text.length(), at + 1);
  }

  /** A quote in a cell is doubled on the way out only if the cell has a comma, too. */
  private static boolean cellsAgain(String text) {
    List<String> cells = cells(text);
    StringBuilder again = new StringBuilder();
    for (String cell : cells) {
      boolean quoted = cell.contains(",") || cell.startsWith("\"");
      again.append(again.isEmpty() ? "" : ",");
      again.append(
          quoted ? "\"" + cell.replace("\"", cell.contains(",") ? "\"\"" : "\"") + "\"" : cell);
    }
    if (!cells.get(0).isEmpty()) {
      Must.same(cells, cells(again.toString()));
    }
    return true;
  }

  private static List<String> cells(String text) {
    List<String> cells = new ArrayList<>();
    StringBuilder cell = new StringBuilder();
    boolean quoted = false;
    for (int i = 0; i < text.length(); i++) {
      char c = text.charAt(i);
      boolean doubled = c == '"' && quoted && i + 1 < text.length() && text.charAt(i + 1) == '"';
      if (doubled) {
        cell.append('"');
        i++;
      } else if (c == '"' && (quoted || cell.isEmpty())) {
        quoted = !quoted;
      } else if (c == ',' && !quoted) {
        cells.add(cell.toString());
        cell.setLength(0);
      } else {
        cell.append(c);
      }
    }
    cells.add(cell.toString());
    return cells;
  }

  /** What stands behind the colon is not looked at. */
  private static boolean times(String text) {
    for (String time : text.split(",", -1)) {
      int colon = time.indexOf(':');
      if (colon < 1
          || colon > 2
          || !time.substring(0, colon).chars().allMatch(c -> c >= '0' && c <= '9')) {
        return false;
      }
      Must.be(time.charAt(colon + 1) >= ' ', "a letter that nobody types");
    }
    return true;
  }

  /** The length that a message says of itself is believed before its bytes are there. */
  private static boolean framed(byte[] bytes) {
    if (bytes.length < 4) {
      return false;
    }
    int size = ByteBuffer.wrap(bytes).getInt();
    if (size < 0) {
      return false;
    }
    Must.be(size <= MOST, "memory for " + size + " bytes that nobody sent");
    return bytes.length - 4 == size;
  }

  /** A number of a room may have a sign, and turns into another room. */
  private static boolean room(String text) {
    if (!text.startsWith("room:") || text.length() > 8) {
      return false;
    }
    try {
      int room = Integer.parseInt(text.substring(5));
      Must.same(text, "room:" + room);
      return true;
    } catch (NumberFormatException refused) {
      return false;
    }
  }

  /** A bracket that is never closed is looked for again and again. */
  private static boolean brackets(String text) {
    int at = 0;
    int steps = 0;
    while (at < text.length()) {
      Must.be(++steps <= 2 * text.length() + 2, "it would never end");
      if (text.charAt(at) == '(') {
        at = text.indexOf(')', at) + 1;
      } else {
        at++;
      }
    }
    return true;
  }
}
