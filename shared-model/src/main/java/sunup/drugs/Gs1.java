package sunup.drugs;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;

/**
 * Reads a GS1 element string as a scanner types it: product (01), lot (10), expiry (17 or 7003),
 * serial (21) and every other application identifier passed over by its length. By the GS1 Barcode
 * Syntax Dictionary (GS1 AISBL) and the GS1 General Specifications. Total: any text whatever gives
 * an answer, none an exception.
 */
public final class Gs1 {
  /** A scan has at most so many characters; the largest symbols hold more, no package does. */
  public static final int LENGTH_MAX = 1024;

  /** FNC1 as scanners transmit it. */
  static final char GS = '\u001D';

  /** FNC1 as it is written in texts; no element may hold it. */
  static final char CARET = '^';

  /** Symbology identifiers in front of a scan: GS1-128, DataMatrix, QR, DataBar, dot code. */
  private static final List<String> SYMBOLOGIES = List.of("]C1", "]d2", "]Q3", "]e0", "]J1");

  private static final int DATA_MAX = 90;

  private Gs1() {}

  /** What a scan was read as. */
  public sealed interface Result {}

  /** It was read whole. */
  public record Read(Gs1Package contents) implements Result {}

  /**
   * It can't be read.
   *
   * @param at position in the scan, from 0
   * @param why what is wrong and what to do
   */
  public record Unreadable(int at, String why) implements Result {}

  /**
   * Format of an identifier's data.
   *
   * @param title in plain words
   * @param fixed true if it ends by its length and needs no FNC1
   * @param digits true if it is digits only
   * @param least shortest
   * @param most longest
   * @param summed so many characters from its beginning end in a check digit, 0 for none
   */
  private record Format(
      String title, boolean fixed, boolean digits, int least, int most, int summed) {}

  private static final Map<String, Format> FORMATS = new HashMap<>();

  /** Length of an identifier by its first two digits, where it is not 2. */
  private static final Map<String, Integer> LONGER = new HashMap<>();

  static {
    fixed("00", "shipping unit", 18, 18);
    fixed("01", "product", 14, 14);
    fixed("02", "contained product", 14, 14);
    fixed("03", "made-to-order product", 14, 14);
    for (String date : List.of("11", "12", "13", "15", "16", "17")) {
      fixed(date, date.equals("17") ? "expiry" : "date", 6, 0);
    }
    fixed("20", "variant", 2, 0);
    text("10", "lot", 20);
    text("21", "serial number", 20);
    text("22", "variant", 20);
    text("235", "serial extension", 28);
    text("240", "additional number", 30);
    text("241", "customer's number", 30);
    text("243", "component number", 20);
    text("250", "second serial number", 30);
    text("251", "source number", 30);
    text("254", "place extension", 20);
    digits("242", "variant", 1, 6, 0);
    digits("30", "count", 1, 8, 0);
    digits("37", "count", 1, 8, 0);
    digits("7003", "expiry with time", 10, 10, 0);
    digits("7004", "potency", 1, 4, 0);
    digits("8006", "piece of a product", 18, 18, 14);
    digits("8026", "piece of a product", 18, 18, 14);
    digits("402", "shipment", 17, 17, 17);
    digits("8017", "service relation", 18, 18, 18);
    digits("8018", "service relation", 18, 18, 18);
    for (int i = 0; i <= 5; i++) {
      text("71" + i, "national number", 20);
    }
    for (int i = 1; i <= 9; i++) {
      text("9" + i, "own use", DATA_MAX);
    }
    text("90", "own use", 30);
    for (String three : List.of("23", "24", "25", "40", "41", "42", "71")) {
      LONGER.put(three, 3);
    }
    for (String four :
        List.of("31", "32", "33", "34", "35", "36", "39", "43", "70", "72", "80", "81", "82")) {
      LONGER.put(four, 4);
    }
  }

  private static void fixed(String id, String title, int length, int summed) {
    FORMATS.put(id, new Format(title, true, true, length, length, summed));
  }

  private static void text(String id, String title, int most) {
    FORMATS.put(id, new Format(title, false, false, 1, most, 0));
  }

  private static void digits(String id, String title, int least, int most, int summed) {
    FORMATS.put(id, new Format(title, false, true, least, most, summed));
  }

  /**
   * Reads a scan.
   *
   * @param scan as typed by the scanner, with or without its symbology identifier
   * @param today for the century of dates: a year 51 or more ahead is of the last century, one 50
   *     or more back of the next
   */
  public static Result read(String scan, LocalDate today) {
    if (scan == null || scan.isEmpty()) {
      return new Unreadable(0, "nothing was scanned");
    }
    if (scan.length() > LENGTH_MAX) {
      return new Unreadable(
          LENGTH_MAX, "is longer than any package's code; scan one code at a time");
    }
    int at = 0;
    for (String symbology : SYMBOLOGIES) {
      if (scan.startsWith(symbology)) {
        at = symbology.length();
      }
    }
    if (at == 0 && scan.charAt(0) == ']') {
      return new Unreadable(0, "is no GS1 code; look for the code with (01) beside it");
    }
    if (at < scan.length() && isSeparator(scan.charAt(at))) {
      at++;
    }
    int end = scan.length();
    while (end > at && (scan.charAt(end - 1) == '\r' || scan.charAt(end - 1) == '\n')) {
      end--;
    }
    return elements(scan.substring(0, end), at, today);
  }

  private static Result elements(String scan, int from, LocalDate today) {
    List<Gs1Package.Element> elements = new ArrayList<>();
    int at = from;
    while (at < scan.length()) {
      String id = identifier(scan, at);
      if (id == null) {
        return new Unreadable(at, notKnown(scan, at));
      }
      Format format = format(id);
      int begin = at + id.length();
      int stop = format.fixed() ? begin + format.most() : next(scan, begin);
      if (stop > scan.length()) {
        return new Unreadable(at, format.title() + " (" + id + ") is cut off; scan it again");
      }
      String data = scan.substring(begin, stop);
      Unreadable wrong = wrong(id, format, data, begin, today);
      if (wrong != null) {
        return wrong;
      }
      elements.add(new Gs1Package.Element(id, format.title(), data));
      at = stop;
      if (at < scan.length() && isSeparator(scan.charAt(at))) {
        at++;
      }
    }
    return together(elements, from, today);
  }

  private static boolean isSeparator(char c) {
    return c == GS || c == CARET;
  }

  private static int next(String scan, int from) {
    int at = from;
    while (at < scan.length() && !isSeparator(scan.charAt(at))) {
      at++;
    }
    return at;
  }

  /** The identifier that stands here, or null. */
  private static String identifier(String scan, int at) {
    if (at + 2 > scan.length() || !digits(scan.substring(at, at + 2))) {
      return null;
    }
    String two = scan.substring(at, at + 2);
    int length = LONGER.getOrDefault(two, 2);
    if (at + length > scan.length() || !digits(scan.substring(at, at + length))) {
      return null;
    }
    String id = scan.substring(at, at + length);
    return length > 2 || FORMATS.containsKey(id) ? id : null;
  }

  private static String notKnown(String scan, int at) {
    String here = scan.substring(at, Math.min(scan.length(), at + 4));
    return here.startsWith("(")
        ? "brackets are printed beside a code and not in it; scan the code itself"
        : "'" + printable(here) + "' is no identifier of GS1; scan it again";
  }

  private static Format format(String id) {
    Format known = FORMATS.get(id);
    if (known != null) {
      return known;
    }
    if (id.charAt(0) == '3' && id.charAt(1) >= '1' && id.charAt(1) <= '6') {
      return new Format("measure", true, true, 6, 6, 0);
    }
    if (id.startsWith("41")) {
      return new Format("place", true, true, 13, 13, 13);
    }
    return new Format("other", false, false, 1, DATA_MAX, 0);
  }

  private static Unreadable wrong(String id, Format format, String data, int at, LocalDate today) {
    String what = format.title() + " (" + id + ")";
    if (data.length() < format.least() || data.length() > format.most()) {
      return new Unreadable(
          at,
          what
              + " has "
              + data.length()
              + " characters, not "
              + (format.least() == format.most()
                  ? Integer.toString(format.most())
                  : format.least() + " to " + format.most())
              + "; does the scanner leave the separator out?");
    }
    for (int i = 0; i < data.length(); i++) {
      char c = data.charAt(i);
      if (format.digits() ? !isDigit(c) : !isText(c)) {
        return new Unreadable(at + i, what + " holds a character that it can't; scan it again");
      }
    }
    if (format.summed() > 0 && !checked(data.substring(0, format.summed()))) {
      return new Unreadable(at, what + ": the check digit is wrong; scan it again");
    }
    boolean date = format.fixed() && format.most() == 6 && id.length() == 2;
    if (date && Gs1Date.of(data, today) == null) {
      return new Unreadable(at, what + ": " + data + " is no date; look at the package");
    }
    if (id.equals("7003") && Gs1Date.withTime(data, today) == null) {
      return new Unreadable(at, what + ": " + data + " is no date and time; look at the package");
    }
    return null;
  }

  /**
   * What may not stand together: one identifier twice with other data; a product and its content.
   */
  private static Result together(List<Gs1Package.Element> elements, int at, LocalDate today) {
    if (elements.isEmpty()) {
      return new Unreadable(at, "nothing was scanned");
    }
    Map<String, String> seen = new HashMap<>();
    for (Gs1Package.Element element : elements) {
      String before = seen.putIfAbsent(element.id(), element.data());
      if (before != null && !before.equals(element.data())) {
        return new Unreadable(
            at, element.title() + " (" + element.id() + ") stands twice and differs");
      }
    }
    String product = seen.get("01");
    if (product != null && (seen.containsKey("02") || seen.containsKey("37"))) {
      return new Unreadable(at, "is the code of a larger package; scan the one inside");
    }
    return new Read(new Gs1Package(elements, today));
  }

  /** True if the last digit is the check digit of those before. */
  static boolean checked(String digits) {
    return digits.length() > 1
        && digits(digits)
        && checkDigit(digits.substring(0, digits.length() - 1))
            == digits.charAt(digits.length() - 1) - '0';
  }

  /**
   * The check digit of digits without it: weights 3 and 1 in turn from the right.
   *
   * @throws IllegalArgumentException if they are no digits
   */
  public static int checkDigit(String digits) {
    if (!digits(digits)) {
      throw new IllegalArgumentException("a check digit is of digits only");
    }
    int sum = 0;
    for (int i = 0; i < digits.length(); i++) {
      int weight = (digits.length() - i) % 2 == 1 ? 3 : 1;
      sum += weight * (digits.charAt(i) - '0');
    }
    return (10 - sum % 10) % 10;
  }

  private static boolean digits(String text) {
    return !text.isEmpty() && text.chars().allMatch(c -> isDigit((char) c));
  }

  private static boolean isDigit(char c) {
    return c >= '0' && c <= '9';
  }

  /** GS1's character set 82: no blank and none of # $ @ [ \ ] ^ ` and what follows z. */
  private static boolean isText(char c) {
    return c >= '!' && c <= 'z' && "#$@[\\]^`".indexOf(c) < 0;
  }

  private static String printable(String text) {
    return text.replaceAll("[^!-~]", "?");
  }
}
