package sunup.sheets;

import java.util.ArrayList;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import sunup.board.Section;
import sunup.board.Step;
import sunup.codec.Fields;
import sunup.codec.Lined;
import sunup.codec.Problem;

/**
 * What one person adds to a case's list and in which order he or she goes through it. It only adds
 * what is advised, within the set-up sections, and only reorders within a section: nothing is taken
 * away, nothing that gates becomes less, and nothing that gates a step comes to stand behind it.
 */
public final class Personal {
  /** Items that one person may add. */
  public static final int MAX_ADDS = 20;

  private Personal() {}

  /**
   * On the wall a person's own item is called by its section: the rest is the person's business.
   */
  static Lined withWall(Lined item) {
    String key = ItemReader.keyOf(item);
    int dot = key == null ? -1 : key.indexOf('.');
    if (dot < 0 || item.fields().containsKey("wall")) {
      return item;
    }
    Map<String, Lined> fields = new LinkedHashMap<>(item.fields());
    fields.put(
        "wall",
        new Lined(
            item.file(), item.line(), Lined.Kind.TEXT, key.substring(0, dot), Map.of(), List.of()));
    return new Lined(item.file(), item.line(), item.kind(), item.text(), fields, item.items());
  }

  /** Checks of its items what holds whatever list they are added to; items are well read. */
  static void checkAdds(Sheet sheet, List<Problem> problems) {
    if (sheet.adds().size() > MAX_ADDS) {
      problems.add(
          new Problem(
              sheet.at().file(),
              sheet.at().line(),
              "adds",
              "are more than " + MAX_ADDS + " items"));
    }
    for (Lined item : sheet.adds()) {
      SheetItem read = ItemReader.read(item, new ArrayList<>());
      if (read == null) {
        continue;
      }
      for (String field : List.of("gates", "marks", "core", "uses", "place", "asa")) {
        if (item.fields().containsKey(field)) {
          problems.add(
              at(item, field, "is not a person's to say; a personal item is only advised"));
        }
      }
      if (!read.section().isSetUp()) {
        problems.add(at(item, "key", "must be of a set-up section, machine to special"));
      }
      if (read.belongs() != SheetItem.Belongs.CASE) {
        problems.add(at(item, "belongs", "must be case: it goes with the person's case"));
      }
    }
  }

  private static Problem at(Lined item, String field, String message) {
    Lined value = item.fields().get(field);
    return new Problem(
        item.file(),
        value == null ? item.line() : value.line(),
        ItemReader.keyOf(item) + ": " + field,
        message);
  }

  /**
   * The list as one person goes through it. Keys of the order that are not on this list are passed
   * over, as a person has one order for all kinds of cases.
   *
   * @param list a composed list
   * @param own a personal sheet
   * @throws BadSheet if it adds what is there already, names a prerequisite that is not there, or
   *     puts an item before one that it waits for
   */
  public static ComposedSheet apply(ComposedSheet list, Sheet own) throws BadSheet {
    if (own.kind() != Sheet.Kind.PERSONAL) {
      throw new IllegalArgumentException("'" + own.name() + "' is no personal sheet");
    }
    List<Problem> problems = new ArrayList<>();
    List<SheetItem> items = new ArrayList<>(list.items());
    for (Lined written : own.adds()) {
      add(items, written, problems);
    }
    List<SheetItem> ordered = ordered(items, own.order(), problems);
    if (!problems.isEmpty()) {
      throw new BadSheet(problems);
    }
    List<String> from = new ArrayList<>(list.from());
    from.add(own.name() + " " + own.version());
    return new ComposedSheet(Sheets.hash(ordered), from, ordered);
  }

  private static void add(List<SheetItem> items, Lined written, List<Problem> problems) {
    SheetItem item = ItemReader.read(written, problems);
    if (item == null) {
      return;
    }
    Set<String> keys = new HashSet<>();
    items.forEach(i -> keys.add(i.key()));
    if (keys.contains(item.key())) {
      problems.add(at(written, "key", "is on the case's list already; use another key"));
      return;
    }
    for (String key : item.after()) {
      if (!keys.contains(key)) {
        problems.add(at(written, "after", "item " + Fields.unknown(key, keys)));
        return;
      }
    }
    Lined follows = written.fields().get("follows");
    int place = 0;
    for (int i = 0; i < items.size(); i++) {
      boolean earlier = items.get(i).section().compareTo(item.section()) <= 0;
      if (follows == null ? earlier : items.get(i).key().equals(follows.text())) {
        place = i + 1;
      }
    }
    if (place > 0 && items.get(place - 1).section() != item.section() && follows != null) {
      problems.add(at(written, "follows", "must name an item of the same section"));
      return;
    }
    items.add(place, item);
  }

  /** Within each set-up section the items that the order names go first, in its order. */
  private static List<SheetItem> ordered(
      List<SheetItem> items, List<Lined> order, List<Problem> problems) {
    Map<String, Lined> rank = new LinkedHashMap<>();
    for (Lined entry : order) {
      if (rank.putIfAbsent(entry.text().strip(), entry) != null) {
        problems.add(
            new Problem(
                entry.file(), entry.line(), "order", "names " + entry.text().strip() + " twice"));
      }
    }
    Map<String, SheetItem> byKey = new LinkedHashMap<>();
    items.forEach(i -> byKey.put(i.key(), i));
    List<SheetItem> ordered = new ArrayList<>();
    for (Section section : Section.values()) {
      List<SheetItem> here = items.stream().filter(i -> i.section() == section).toList();
      if (section.isSetUp()) {
        rank.keySet().stream()
            .map(byKey::get)
            .filter(i -> i != null && i.section() == section)
            .forEach(ordered::add);
        here.stream().filter(i -> !rank.containsKey(i.key())).forEach(ordered::add);
      } else {
        ordered.addAll(here);
      }
    }
    for (Map.Entry<String, Lined> each : rank.entrySet()) {
      SheetItem item = byKey.get(each.getKey());
      if (item != null && !item.section().isSetUp()) {
        problems.add(
            new Problem(
                each.getValue().file(),
                each.getValue().line(),
                "order",
                item.key() + " is not of the set-up sections; only those are a person's to order"));
      }
    }
    checkOrder(ordered, rank, problems);
    return ordered;
  }

  /** Nothing stands before what it waits for in its section, nor behind the step that it gates. */
  private static void checkOrder(
      List<SheetItem> ordered, Map<String, Lined> rank, List<Problem> problems) {
    Map<String, Integer> places = new LinkedHashMap<>();
    Map<Step, SheetItem> marks = new LinkedHashMap<>();
    for (SheetItem item : ordered) {
      places.put(item.key(), places.size());
      if (item.marks() != null) {
        marks.put(item.marks(), item);
      }
    }
    for (SheetItem item : ordered) {
      Lined named = rank.get(item.key());
      for (String key : item.after()) {
        boolean same = ItemReader.sectionOf(key) == item.section();
        if (named != null && same && places.get(key) > places.get(item.key())) {
          problems.add(
              new Problem(
                  named.file(),
                  named.line(),
                  "order",
                  item.key() + " waits for " + key + "; put it behind that"));
        }
      }
      SheetItem step = item.gates() == null ? null : marks.get(item.gates());
      if (step != null && places.get(item.key()) > places.get(step.key())) {
        throw new IllegalStateException(item.key() + " stands behind the step that it gates");
      }
    }
  }
}
