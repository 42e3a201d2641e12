package sunup.sheets;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.function.Function;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import sunup.board.Role;
import sunup.board.Section;
import sunup.board.Step;
import sunup.codec.Fields;
import sunup.codec.Lined;
import sunup.codec.Problem;
import sunup.units.Quantity;
import sunup.units.Unit;

/** Reads one item of a sheet file, or checks the fields of a change to one. */
final class ItemReader {
  /** Letters of a wording on the wall: a line there holds no more beside room and minutes. */
  static final int WALL_LETTERS = 24;

  static final int DESK_LETTERS = 80;

  /** In {@code after}: all items that gate this step. */
  static final String GATES = "gates:";

  private static final int MAX_LIST = 60;
  private static final double DAY = 24 * 60;
  private static final Pattern KEY = Pattern.compile("[a-z]+\\.[a-z0-9-]{1,30}");

  private static final Map<String, Section> SECTIONS = words(Section.values(), Section::word);
  private static final Map<String, Role> ROLES = words(Role.values(), Role::word);
  static final Map<String, Step> STEPS = words(Step.values(), Step::code);
  private static final Map<String, SheetItem.Belongs> BELONGS =
      Map.of("room", SheetItem.Belongs.ROOM, "case", SheetItem.Belongs.CASE);
  private static final Map<String, EvidenceRule.Kind> EVIDENCE =
      words(EvidenceRule.Kind.values(), k -> k.name().toLowerCase(java.util.Locale.ROOT));

  private ItemReader() {}

  private static <T> Map<String, T> words(T[] values, Function<T, String> word) {
    return Arrays.stream(values)
        .collect(Collectors.toMap(word, v -> v, (a, b) -> a, LinkedHashMap::new));
  }

  /** The item's key if it has one, else null. */
  static String keyOf(Lined item) {
    Lined key = item.fields().get("key");
    return key == null || key.kind() != Lined.Kind.TEXT ? null : key.text().strip();
  }

  /** The section that a key begins with; the key was read without problems. */
  static Section sectionOf(String key) {
    return SECTIONS.get(key.substring(0, key.indexOf('.')));
  }

  /** Checks a change field by field, as far as one can without the item that it changes. */
  static void checkChange(Lined change, List<Problem> problems) {
    if (change.kind() != Lined.Kind.OBJECT || keyOf(change) == null) {
      problems.add(
          new Problem(
              change.file(),
              change.line(),
              "changes",
              "must be objects with the key of the item and the fields to change"));
      return;
    }
    Fields f = new Fields(change, keyOf(change), problems);
    f.flag("ifThere");
    f.texts("alsoAfter", MAX_LIST);
    item(f, true);
    if (change.fields().size() < 2) {
      f.problem("key", "changes nothing; name a field to change");
    }
  }

  /** Reads an item; null if there is something wrong with it, which then stands in problems. */
  static SheetItem read(Lined item, List<Problem> problems) {
    int before = problems.size();
    String key = keyOf(item);
    Fields f = new Fields(item, key == null ? "item" : key, problems);
    if (problems.size() > before) {
      return null;
    }
    SheetItem read = item(f, false);
    return problems.size() > before ? null : read;
  }

  private static SheetItem item(Fields f, boolean change) {
    String key = key(f);
    Section section = key == null ? null : sectionOf(key);
    SheetItem.Belongs belongs = f.oneOf("belongs", BELONGS);
    if (!change && f.get("belongs") == null) {
      f.problem("belongs", "is missing; write room (stays when cases swap) or case (goes with it)");
    }
    String desk = change && f.get("desk") == null ? null : f.text("desk", DESK_LETTERS);
    String wall = change && f.get("wall") == null ? null : f.text("wall", WALL_LETTERS);
    List<List<Role>> who = who(f);
    Hands hands = hands(f, "hands");
    Hands waits = hands(f, "waits");
    RareExtra extra = extra(f);
    List<String> after = f.texts("after", MAX_LIST);
    for (String prerequisite : after) {
      if (prerequisite.startsWith(GATES)
          && !STEPS.containsKey(prerequisite.substring(GATES.length()))) {
        f.problem("after", Fields.unknown(prerequisite.substring(GATES.length()), STEPS.keySet()));
      }
    }
    Step gates = f.oneOf("gates", STEPS);
    Step marks = f.oneOf("marks", STEPS);
    boolean core = f.flag("core");
    EvidenceRule evidence = evidence(f);
    Life life = life(f);
    String place = place(f);
    List<Uses> uses = uses(f);
    Integer plannedBefore = f.whole("plannedBefore", 0, 600);
    Integer plannedLate = f.whole("plannedLate", -600, 600);
    List<Integer> asa = asa(f);
    f.get("follows");
    f.get("note");
    f.done();
    if (change || key == null || section == null || belongs == null) {
      return null;
    }
    checkWhole(f, who, hands, marks, plannedBefore, plannedLate);
    SheetItem item =
        new SheetItem(
            key,
            section,
            belongs,
            desk,
            wall,
            who,
            hands,
            waits,
            extra,
            after,
            gates,
            marks,
            core,
            evidence,
            life,
            place,
            uses,
            plannedBefore,
            plannedLate,
            asa);
    if (item.outlastsItsCase() && !item.mayOutlastItsCase()) {
      f.problem(
          "life",
          "says nextCase, which only a check of the machine may that belongs to the room and has"
              + " minutes; what touched a patient, a drip or a syringe is done again");
    }
    return item;
  }

  private static void checkWhole(
      Fields f,
      List<List<Role>> who,
      Hands hands,
      Step marks,
      Integer plannedBefore,
      Integer plannedLate) {
    if ((plannedBefore == null) != (plannedLate == null)) {
      f.problem(
          plannedBefore == null ? "plannedLate" : "plannedBefore",
          "stands alone; an arrival has both plannedBefore and plannedLate");
    } else if (plannedBefore != null && plannedLate >= plannedBefore) {
      f.problem(
          "plannedLate",
          "must be fewer minutes before the target than plannedBefore: it is the later moment");
    } else if (plannedBefore == null && who.isEmpty() && marks == null) {
      f.problem(
          "who",
          "is missing; name who does it, or planned times for an arrival, or the step it marks");
    } else if (!who.isEmpty() && hands == null && f.get("hands") == null) {
      f.problem("hands", "is missing; write {\"usual\": minutes, \"oneInTen\": minutes}");
    }
  }

  private static String key(Fields f) {
    String key = f.text("key", 45);
    if (key == null) {
      return null;
    }
    if (!KEY.matcher(key).matches()) {
      f.problem("key", "must be section.word in lower case, for example 'machine.self-test'");
      return null;
    }
    String section = key.substring(0, key.indexOf('.'));
    if (!SECTIONS.containsKey(section)) {
      f.problem("key", "section " + Fields.unknown(section, SECTIONS.keySet()));
      return null;
    }
    return key;
  }

  private static List<List<Role>> who(Fields f) {
    List<List<Role>> who = new ArrayList<>();
    for (String entry : f.texts("who", 8)) {
      List<Role> roles = new ArrayList<>();
      for (String word : Arrays.asList(entry.split("\\s+or\\s+", -1))) {
        Role role = ROLES.get(word);
        if (role == null) {
          f.problem("who", "role " + Fields.unknown(word, ROLES.keySet()));
        } else {
          roles.add(role);
        }
      }
      who.add(roles);
    }
    return who;
  }

  private static Hands hands(Fields f, String name) {
    Fields h = f.object(name);
    if (h == null) {
      return null;
    }
    Double usual = h.number("usual", 0, DAY);
    Double oneInTen = h.number("oneInTen", 0, DAY);
    h.done();
    if (h.get("usual") == null || h.get("oneInTen") == null) {
      f.problem(name, "needs both usual and oneInTen, in minutes");
    } else if (usual != null && oneInTen != null && oneInTen < usual) {
      h.problem("oneInTen", "must not be less than usual: one in ten takes longer than it");
    } else if (usual != null && oneInTen != null && usual == 0 && oneInTen > 0) {
      h.problem("usual", "must be above 0 if oneInTen is: no spread can be drawn from it");
    } else if (usual != null && oneInTen != null) {
      return new Hands(usual, oneInTen);
    }
    return null;
  }

  private static RareExtra extra(Fields f) {
    Fields e = f.object("extra");
    if (e == null) {
      return null;
    }
    Integer oneIn = e.whole("oneIn", 2, 1_000_000);
    Double minutes = e.number("minutes", 0.01, DAY);
    e.done();
    if (e.get("oneIn") == null || e.get("minutes") == null) {
      f.problem("extra", "needs both oneIn and minutes: one in so many needs so many minutes more");
    }
    return oneIn == null || minutes == null ? null : new RareExtra(oneIn, minutes);
  }

  private static EvidenceRule evidence(Fields f) {
    Fields e = f.object("evidence");
    if (e == null) {
      return null;
    }
    EvidenceRule.Kind kind = e.oneOf("kind", EVIDENCE);
    String unit = e.text("unit");
    Double least = e.number("least", -1e9, 1e9);
    Double most = e.number("most", -1e9, 1e9);
    Double low = e.number("low", -1e9, 1e9);
    Double high = e.number("high", -1e9, 1e9);
    List<String> choices = e.texts("choices", 6);
    boolean witness = e.flag("witness");
    String undo = e.text("undo");
    e.done();
    if (kind == null) {
      if (e.get("kind") == null) {
        e.problem("kind", "is missing; use " + String.join(", ", EVIDENCE.keySet()));
      }
      return null;
    }
    EvidenceRule rule =
        new EvidenceRule(kind, unit, least, most, low, high, choices, witness, undo);
    checkEvidence(e, rule);
    return rule;
  }

  private static void checkEvidence(Fields e, EvidenceRule rule) {
    boolean number = rule.kind() == EvidenceRule.Kind.NUMBER;
    if (number) {
      if (rule.unit() == null) {
        e.problem("unit", "is missing; a number needs its unit");
      } else {
        for (Unit gauge : Unit.of(Quantity.PRESSURE)) {
          // Pages turn these into the site's unit; one that they don't know would stay as it is.
          if (gauge.word().equalsIgnoreCase(rule.unit()) && !gauge.word().equals(rule.unit())) {
            e.problem("unit", "'" + rule.unit() + "' is not known; write " + gauge.word());
          }
        }
      }
      if (rule.least() == null || rule.most() == null || rule.least() >= rule.most()) {
        e.problem("least", "and most must both be there, least below most");
        return;
      }
      if (rule.low() == null && rule.high() == null) {
        e.problem("low", "or high must say what is good; without a band ask for a touch instead");
      }
      double low = rule.low() == null ? rule.least() : rule.low();
      double high = rule.high() == null ? rule.most() : rule.high();
      if (low < rule.least() || high > rule.most() || low > high) {
        e.problem("low", "to high must be a band within least to most");
      }
    } else if (rule.unit() != null
        || rule.least() != null
        || rule.most() != null
        || rule.low() != null
        || rule.high() != null) {
      e.problem("kind", "must be number if there is a unit or a range");
    }
    boolean choice = rule.kind() == EvidenceRule.Kind.CHOICE;
    if (choice && rule.choices().stream().allMatch(c -> c.startsWith("!"))) {
      e.problem("choices", "needs at least one word that means good (without !)");
    } else if (choice && rule.choices().size() < 2) {
      e.problem("choices", "needs two words or more; for one, ask for a touch instead");
    } else if (choice && rule.choices().stream().distinct().count() < rule.choices().size()) {
      e.problem("choices", "names a word twice");
    } else if (!choice && !rule.choices().isEmpty()) {
      e.problem("choices", "belong to evidence of kind choice");
    }
  }

  private static Life life(Fields f) {
    Fields l = f.object("life");
    if (l == null) {
      return null;
    }
    Integer minutes = l.whole("minutes", 1, 60 * 24 * 60);
    String ends = l.text("ends");
    String source = l.text("source", 160);
    boolean nextCase = l.flag("nextCase");
    l.done();
    if (l.get("minutes") == null && ends == null) {
      f.problem("life", "needs minutes, or in 'ends' what else ends it");
    }
    return new Life(minutes, ends, source, nextCase ? true : null);
  }

  private static String place(Fields f) {
    String place = f.text("place");
    if (place != null && !SheetReader.NAME.matcher(place).matches()) {
      f.problem("place", "must be lower-case letters, digits and dashes, for example 'pharmacy'");
    }
    return place;
  }

  private static List<Uses> uses(Fields f) {
    List<Uses> uses = new ArrayList<>();
    for (Lined entry : f.list("uses", 6)) {
      Fields u = f.entry("uses", entry);
      String kind = u.text("kind", 30);
      String until = u.text("until");
      u.done();
      if (kind != null) {
        uses.add(new Uses(kind, until));
      }
    }
    return uses;
  }

  private static List<Integer> asa(Fields f) {
    List<Integer> asa = new ArrayList<>();
    for (Lined entry : f.list("asa", 15)) {
      if (entry.kind() == Lined.Kind.NUMBER && entry.text().matches("[1-9]|1[0-5]")) {
        asa.add(Integer.valueOf(entry.text()));
      } else {
        f.problem("asa", "names items of the ASA 2008 checkout: whole numbers 1 to 15");
      }
    }
    return asa;
  }
}
