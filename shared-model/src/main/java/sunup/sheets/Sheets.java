package sunup.sheets;

import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.databind.MapperFeature;
import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.databind.SerializationFeature;
import com.fasterxml.jackson.databind.json.JsonMapper;
import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.Collection;
import java.util.Deque;
import java.util.HexFormat;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.TreeSet;
import java.util.function.Predicate;
import sunup.board.Step;
import sunup.codec.Fields;
import sunup.codec.Lined;
import sunup.codec.Problem;

/**
 * The sheets of a site: bases, techniques, options and people's own, from which a case's list is
 * composed.
 */
public final class Sheets {
  /** Sheets that a site may have. */
  public static final int MAX_SHEETS = 100;

  /** Options that one case may ask for. */
  public static final int MAX_OPTIONS = 12;

  /** The sheets that come with Sunup, first settings that a site replaces by its own. */
  private static final List<String> STANDARD =
      List.of(
          "general",
          "supraglottic",
          "sedation",
          "spinal",
          "epidural",
          "agent-level",
          "alone",
          "block",
          "blood",
          "blood-loss",
          "cardiac",
          "child",
          "difficult-airway",
          "imaging",
          "lines",
          "mri",
          "obstetric-emergency",
          "one-lung",
          "prone",
          "rapid-sequence",
          "special-table",
          "trunk-block");

  private static final ObjectMapper CANONICAL =
      JsonMapper.builder()
          .configure(MapperFeature.SORT_PROPERTIES_ALPHABETICALLY, true)
          .configure(MapperFeature.SORT_CREATOR_PROPERTIES_FIRST, false)
          .configure(SerializationFeature.ORDER_MAP_ENTRIES_BY_KEYS, true)
          .build();

  private final Map<String, Sheet> sheets;

  /** The number of the suite's edition, or 0. */
  private final int edition;

  private Sheets(Map<String, Sheet> sheets, int edition) {
    this.sheets = sheets;
    this.edition = edition;
  }

  /**
   * A name and what the desk calls it.
   *
   * @param name the word in a case list
   */
  public record Choice(String name, String title) {}

  /**
   * The sheets that come with Sunup.
   *
   * @throws IllegalStateException if they are missing or wrong, which tests exclude
   */
  public static Sheets standard() {
    try {
      return of(standardFiles());
    } catch (BadSheet e) {
      throw new IllegalStateException("the sheets that come with Sunup: " + e.getMessage(), e);
    }
  }

  /** Their texts by file name. */
  public static Map<String, String> standardFiles() {
    Map<String, String> files = new LinkedHashMap<>();
    for (String name : STANDARD) {
      String file = SheetFiles.file(name);
      try (InputStream in = Sheets.class.getResourceAsStream(file)) {
        if (in == null) {
          throw new IllegalStateException("sheet " + file + " is missing from the program");
        }
        files.put(file, new String(in.readAllBytes(), StandardCharsets.UTF_8));
      } catch (IOException e) {
        throw new UncheckedIOException(e);
      }
    }
    return files;
  }

  /**
   * Reads a site's sheets and checks each technique alone and with each option that goes with it.
   * Pairs of options are checked when a case asks for them.
   *
   * @param files text by file name
   * @throws BadSheet with everything that is wrong
   */
  public static Sheets of(Map<String, String> files) throws BadSheet {
    return of(0, files);
  }

  /** The same as a suite's edition of this number, which each list then names. */
  static Sheets of(int edition, Map<String, String> files) throws BadSheet {
    List<Problem> problems = new ArrayList<>();
    if (files.size() > MAX_SHEETS) {
      throw new BadSheet(
          List.of(new Problem("sheets", 0, "", "are more than " + MAX_SHEETS + " files")));
    }
    Map<String, Sheet> sheets = new LinkedHashMap<>();
    Map<String, String> from = new LinkedHashMap<>();
    files.forEach(
        (file, text) -> {
          SheetReader.Result result = SheetReader.read(file, text);
          problems.addAll(result.problems());
          Sheet sheet = result.sheet();
          if (sheet != null && sheets.putIfAbsent(sheet.name(), sheet) != null) {
            problems.add(
                new Problem(
                    file,
                    0,
                    "sheet",
                    "'" + sheet.name() + "' is the name of " + from.get(sheet.name()) + " too"));
          } else if (sheet != null) {
            from.put(sheet.name(), file);
          }
        });
    if (problems.isEmpty()) {
      Sheets all = new Sheets(sheets, edition);
      all.checkAll(problems, from);
      if (problems.isEmpty()) {
        return all;
      }
    }
    throw new BadSheet(problems.stream().distinct().toList());
  }

  private void checkAll(List<Problem> problems, Map<String, String> from) {
    if (techniques().isEmpty()) {
      problems.add(new Problem("sheets", 0, "", "have no base; one file needs \"kind\": \"base\""));
    }
    checkNamed(problems);
    if (!problems.isEmpty()) {
      return;
    }
    for (Choice technique : techniques()) {
      String on = sheets.get(technique.name()).on();
      if (on != null && (sheets.get(on) == null || sheets.get(on).kind() != Sheet.Kind.BASE)) {
        problems.add(
            new Problem(from.get(technique.name()), 0, "on", "'" + on + "' is no base sheet"));
        continue;
      }
      int had = problems.size();
      List<SheetItem> plain = lay(technique.name(), List.of(), problems);
      if (problems.size() > had) {
        continue;
      }
      checkPersonal(plain, problems);
      for (Choice option : choices(kind -> kind == Sheet.Kind.OPTION)) {
        List<Sheet> layers = layers(technique.name(), List.of(option.name()));
        if (clashes(layers).isEmpty()) {
          lay(technique.name(), List.of(option.name()), problems);
        }
      }
    }
  }

  private void checkPersonal(List<SheetItem> plain, List<Problem> problems) {
    for (Choice own : choices(kind -> kind == Sheet.Kind.PERSONAL)) {
      try {
        Personal.apply(new ComposedSheet("", List.of(), plain), sheets.get(own.name()));
      } catch (BadSheet e) {
        problems.addAll(e.problems());
      }
    }
  }

  /** What a case list may name as technique. */
  public List<Choice> techniques() {
    return sheets.values().stream()
        .filter(Sheet::isTechnique)
        .map(s -> new Choice(s.name(), s.title()))
        .toList();
  }

  /** What a case list may name as options: those of the case, and people's own sheets. */
  public List<Choice> options() {
    return choices(kind -> kind == Sheet.Kind.OPTION || kind == Sheet.Kind.PERSONAL);
  }

  private List<Choice> choices(Predicate<Sheet.Kind> kinds) {
    return sheets.values().stream()
        .filter(s -> kinds.test(s.kind()))
        .map(s -> new Choice(s.name(), s.title()))
        .toList();
  }

  private boolean isPersonal(String option) {
    return sheets.get(option).kind() == Sheet.Kind.PERSONAL;
  }

  /**
   * Composes a case's list. Equal sheets, technique and set of options give the same list and hash,
   * in whatever order the options are named.
   *
   * @throws BadSheet if a name is unknown or additions don't go together; the message says what and
   *     where
   */
  public ComposedSheet compose(String technique, Collection<String> options) throws BadSheet {
    List<Problem> problems = new ArrayList<>();
    checkNames(technique, options, problems);
    if (!problems.isEmpty()) {
      throw new BadSheet(problems);
    }
    List<String> asked = options.stream().filter(option -> !isPersonal(option)).toList();
    List<Sheet> layers = layers(technique, asked);
    List<SheetItem> items = lay(technique, asked, problems);
    if (!problems.isEmpty()) {
      throw new BadSheet(problems);
    }
    List<String> from = new ArrayList<>();
    if (edition > 0) {
      from.add(ComposedSheet.EDITION + edition);
    }
    layers.forEach(s -> from.add(s.name() + " " + s.version()));
    ComposedSheet list = new ComposedSheet(hash(items), from, items);
    for (String own : new TreeSet<>(options)) {
      list = isPersonal(own) ? Personal.apply(list, sheets.get(own)) : list;
    }
    return list;
  }

  private void checkNames(String technique, Collection<String> options, List<Problem> problems) {
    List<String> known = techniques().stream().map(Choice::name).toList();
    if (technique == null || !known.contains(technique)) {
      problems.add(
          new Problem(
              "sheets", 0, "technique", Fields.unknown(technique == null ? "" : technique, known)));
    }
    if (options.size() > MAX_OPTIONS) {
      problems.add(
          new Problem("sheets", 0, "options", "are more than " + MAX_OPTIONS + " for one case"));
      return;
    }
    List<String> knownOptions = options().stream().map(Choice::name).toList();
    for (String option : options) {
      if (option == null || !knownOptions.contains(option)) {
        problems.add(
            new Problem(
                "sheets",
                0,
                "options",
                Fields.unknown(option == null ? "" : option, knownOptions)));
      }
    }
  }

  /** The base first, then the technique, then the options by name. */
  private List<Sheet> layers(String technique, Collection<String> options) {
    List<Sheet> layers = new ArrayList<>();
    Sheet named = sheets.get(technique);
    if (named.kind() == Sheet.Kind.TECHNIQUE) {
      layers.add(sheets.get(named.on()));
    }
    layers.add(named);
    for (String option : withBrought(named, options)) {
      layers.add(sheets.get(option));
    }
    return layers;
  }

  /** The options, and those that they or the technique bring along, by name. */
  private Collection<String> withBrought(Sheet technique, Collection<String> options) {
    TreeSet<String> all = new TreeSet<>(options);
    Deque<Sheet> open = new ArrayDeque<>(options.stream().map(sheets::get).toList());
    open.add(technique);
    while (!open.isEmpty()) {
      for (Lined brought : open.remove().brings()) {
        if (all.add(brought.text().strip())) {
          open.add(sheets.get(brought.text().strip()));
        }
      }
    }
    return all;
  }

  /** Sheets that say of another one here that they don't go with it. */
  private static List<Problem> clashes(List<Sheet> layers) {
    List<Problem> clashes = new ArrayList<>();
    for (Sheet one : layers) {
      for (Lined name : one.notWith()) {
        for (Sheet other : layers) {
          if (other.name().equals(name.text().strip())) {
            clashes.add(
                new Problem(
                    name.file(),
                    name.line(),
                    "notWith",
                    "'"
                        + one.name()
                        + "' does not go with '"
                        + other.name()
                        + "' in "
                        + other.at().where()
                        + "; take one of the two away"));
          }
        }
      }
    }
    return clashes;
  }

  /** That every sheet named by another exists and is of the right kind, and no base is missing. */
  private void checkNamed(List<Problem> problems) {
    for (Sheet sheet : sheets.values()) {
      List<String> options =
          choices(kind -> kind == Sheet.Kind.OPTION).stream().map(Choice::name).toList();
      for (Lined name : sheet.brings()) {
        if (!options.contains(name.text().strip())) {
          problems.add(
              new Problem(
                  name.file(),
                  name.line(),
                  "brings",
                  "option " + Fields.unknown(name.text().strip(), options)));
        }
      }
      for (Lined name : sheet.notWith()) {
        if (!sheets.containsKey(name.text().strip())) {
          problems.add(
              new Problem(
                  name.file(),
                  name.line(),
                  "notWith",
                  "sheet " + Fields.unknown(name.text().strip(), sheets.keySet())));
        }
      }
    }
  }

  private List<SheetItem> lay(
      String technique, Collection<String> options, List<Problem> problems) {
    List<Sheet> layers = layers(technique, options);
    Sheet base = layers.get(0);
    int had = problems.size();
    problems.addAll(clashes(layers));
    if (problems.size() > had) {
      return List.of();
    }
    List<Lined> merged = new Composer(base, problems).compose(layers.subList(1, layers.size()));
    Map<String, Lined> written = new LinkedHashMap<>();
    List<SheetItem> items = new ArrayList<>();
    for (Lined item : merged) {
      SheetItem read = ItemReader.read(item, problems);
      if (read != null) {
        items.add(read);
        written.put(read.key(), item);
      }
    }
    if (problems.size() > had) {
      return List.of();
    }
    List<SheetItem> whole = items.stream().map(item -> expand(item, items)).toList();
    new SheetChecks(whole, written, base.kinds(), base.at(), problems).check();
    return whole;
  }

  /** Replaces {@code gates:step} in {@code after} by all items that gate the step. */
  private static SheetItem expand(SheetItem item, List<SheetItem> all) {
    if (item.after().stream().noneMatch(key -> key.startsWith(ItemReader.GATES))) {
      return item;
    }
    List<String> after = new ArrayList<>();
    for (String key : item.after()) {
      if (!key.startsWith(ItemReader.GATES)) {
        after.add(key);
        continue;
      }
      Step step = ItemReader.STEPS.get(key.substring(ItemReader.GATES.length()));
      for (SheetItem other : all) {
        if (other.gates() == step && !other.key().equals(item.key())) {
          after.add(other.key());
        }
      }
    }
    return item.withAfter(after.stream().distinct().toList());
  }

  static String hash(List<SheetItem> items) {
    try {
      // Straight from the records, in a form that no mapper setting elsewhere can change.
      byte[] bytes = CANONICAL.writeValueAsBytes(items);
      return HexFormat.of().formatHex(MessageDigest.getInstance("SHA-256").digest(bytes));
    } catch (JsonProcessingException | NoSuchAlgorithmException e) {
      throw new IllegalStateException(e);
    }
  }

  /** The hash that a composed sheet with this content has. */
  public static String hashOf(ComposedSheet sheet) {
    return hash(sheet.items());
  }
}
