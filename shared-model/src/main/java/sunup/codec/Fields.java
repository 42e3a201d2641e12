package sunup.codec;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.HashSet;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Set;
import java.util.TreeSet;

/**
 * Reads the fields of one object of a file that people edit, and collects what is wrong instead of
 * stopping at the first mistake. Ask for every field, then call {@link #done()}: what nobody asked
 * for is unknown.
 */
public final class Fields {
  private final Lined object;
  private final String at;
  private final List<Problem> problems;
  private final Set<String> asked = new HashSet<>();

  /**
   * @param at the way to this object, for messages; empty for the file's own object
   */
  public Fields(Lined object, String at, List<Problem> problems) {
    this.object = object;
    this.at = at;
    this.problems = problems;
    if (object.kind() != Lined.Kind.OBJECT) {
      problems.add(
          new Problem(
              object.file(),
              object.line(),
              at,
              "must be an object { }, not " + object.kind().words()));
    }
  }

  /** The field's value, or null if it is absent or null. */
  public Lined get(String name) {
    asked.add(name);
    Lined value = object.fields().get(name);
    return value == null || value.kind() == Lined.Kind.NULL ? null : value;
  }

  private Lined get(String name, Lined.Kind kind) {
    Lined value = get(name);
    if (value != null && value.kind() != kind) {
      problem(name, "must be " + kind.words() + ", not " + value.kind().words());
      return null;
    }
    return value;
  }

  /** Says that a field is wrong, at its line, or at the object's if it is absent. */
  public void problem(String name, String message) {
    Lined value = object.fields().get(name);
    problems.add(
        new Problem(
            object.file(), value == null ? object.line() : value.line(), path(name), message));
  }

  public String path(String name) {
    return at.isEmpty() ? name : at + ": " + name;
  }

  /** A text, or null; blank counts as absent. */
  public String text(String name) {
    Lined value = get(name, Lined.Kind.TEXT);
    return value == null || value.text().isBlank() ? null : value.text().strip();
  }

  /** A text that must be there and have at most so many characters; on a mistake, null. */
  public String text(String name, int longest) {
    String text = text(name);
    if (text == null) {
      if (get(name) == null || get(name).kind() == Lined.Kind.TEXT) {
        problem(name, "is missing; write a text");
      }
    } else if (text.codePointCount(0, text.length()) > longest) {
      problem(
          name,
          "has "
              + text.codePointCount(0, text.length())
              + " letters; at most "
              + longest
              + " fit, say it shorter");
      return null;
    }
    return text;
  }

  /** A number between two bounds, or null if absent or wrong. */
  public Double number(String name, double least, double most) {
    Lined value = get(name, Lined.Kind.NUMBER);
    if (value == null) {
      return null;
    }
    double number = Double.parseDouble(value.text());
    if (!(number >= least && number <= most)) {
      problem(name, "is " + value.text() + "; it must be " + plain(least) + " to " + plain(most));
      return null;
    }
    return number;
  }

  /** A whole number between two bounds, or null if absent or wrong. */
  public Integer whole(String name, int least, int most) {
    Double number = number(name, least, most);
    if (number == null) {
      return null;
    }
    if (number != Math.rint(number)) {
      problem(name, "must be a whole number");
      return null;
    }
    return (int) Math.rint(number);
  }

  /** True or false; false if absent. */
  public boolean flag(String name) {
    Lined value = get(name, Lined.Kind.YES_OR_NO);
    return value != null && value.text().equals("true");
  }

  /** A list, empty if absent. */
  public List<Lined> list(String name, int longest) {
    Lined value = get(name, Lined.Kind.LIST);
    if (value == null) {
      return List.of();
    }
    if (value.items().size() > longest) {
      problem(name, "has " + value.items().size() + " entries; at most " + longest + " are read");
      return value.items().subList(0, longest);
    }
    return value.items();
  }

  /** A list of texts, empty if absent; entries that are no text are reported and left out. */
  public List<String> texts(String name, int longest) {
    List<String> texts = new ArrayList<>();
    for (Lined entry : list(name, longest)) {
      if (entry.kind() == Lined.Kind.TEXT && !entry.text().isBlank()) {
        texts.add(entry.text().strip());
      } else {
        problems.add(
            new Problem(
                object.file(), entry.line(), path(name), "must be a list of texts in quotes"));
      }
    }
    return texts;
  }

  /** An object's fields, or null if absent or no object. */
  public Fields object(String name) {
    Lined value = get(name, Lined.Kind.OBJECT);
    return value == null ? null : new Fields(value, path(name), problems);
  }

  /** The fields of one entry of a list. */
  public Fields entry(String name, Lined entry) {
    return new Fields(entry, path(name), problems);
  }

  /** One of a few words, or null if absent or another. */
  public <T> T oneOf(String name, Map<String, T> words) {
    String word = text(name);
    if (word == null) {
      return null;
    }
    T found = words.get(word);
    if (found == null) {
      problem(name, unknown(word, words.keySet()));
    }
    return found;
  }

  /** "x is not known", with the nearest known word or all of them. */
  public static String unknown(String word, Iterable<String> known) {
    String nearest = null;
    int least = 3;
    Set<String> all = new TreeSet<>();
    for (String k : known) {
      all.add(k);
      int d = distance(word.toLowerCase(Locale.ROOT), k.toLowerCase(Locale.ROOT));
      if (d < least) {
        least = d;
        nearest = k;
      }
    }
    return "'"
        + (word.length() > 40 ? word.substring(0, 40) + "..." : word)
        + "' is not known; "
        + (nearest != null ? "did you mean '" + nearest + "'?" : "use " + String.join(", ", all));
  }

  /** Reports the fields that nobody asked for. */
  public void done() {
    for (Map.Entry<String, Lined> field : object.fields().entrySet()) {
      if (!asked.contains(field.getKey())) {
        problems.add(
            new Problem(
                object.file(),
                field.getValue().line(),
                path(field.getKey()),
                unknown(field.getKey(), asked)));
      }
    }
  }

  private static String plain(double number) {
    return number == Math.rint(number) ? Long.toString((long) number) : Double.toString(number);
  }

  /** Levenshtein's distance, cut at words of 40 letters. */
  private static int distance(String a, String b) {
    if (a.length() > 40 || b.length() > 40) {
      return Integer.MAX_VALUE;
    }
    int[] row = new int[b.length() + 1];
    Arrays.setAll(row, i -> i);
    for (int i = 1; i <= a.length(); i++) {
      int diagonal = row[0];
      row[0] = i;
      for (int j = 1; j <= b.length(); j++) {
        int above = row[j];
        int change = a.charAt(i - 1) == b.charAt(j - 1) ? 0 : 1;
        row[j] = Math.min(Math.min(row[j] + 1, row[j - 1] + 1), diagonal + change);
        diagonal = above;
      }
    }
    return row[b.length()];
  }
}
