package sunup.sheets;

import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.Deque;
import java.util.EnumMap;
import java.util.HashMap;
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
 * What must hold of a whole list: every name in it leads somewhere, nothing waits for itself, every
 * step comes after the one before, nothing lapses while it is being done again, and equipment held
 * across items is taken in one order everywhere.
 */
final class SheetChecks {
  private final Map<String, SheetItem> items = new LinkedHashMap<>();
  private final Map<String, Lined> written;
  private final List<String> kinds;
  private final Lined base;
  private final List<Problem> problems;
  private final Map<Step, SheetItem> marking = new EnumMap<>(Step.class);

  /** Every item that must be good before an item may begin, however long the way. */
  private final Map<String, Set<String>> before = new HashMap<>();

  /**
   * @param items with unique keys, in sheet order
   * @param written where each stands, by key
   * @param kinds the fixed order of kinds
   * @param base the base's own object, for what is missing
   */
  SheetChecks(
      List<SheetItem> items,
      Map<String, Lined> written,
      List<String> kinds,
      Lined base,
      List<Problem> problems) {
    items.forEach(item -> this.items.put(item.key(), item));
    this.written = written;
    this.kinds = kinds;
    this.base = base;
    this.problems = problems;
  }

  void check() {
    int had = problems.size();
    checkSteps();
    UnwaivableCore.check(items, base, problems);
    Section last = null;
    for (SheetItem item : items.values()) {
      checkNames(item);
      checkLife(item);
      if (item.core() && item.gates() == null) {
        problem(item, "core", "must gate a step: what may never be left out holds something up");
      }
      if (last != null && item.section().compareTo(last) < 0) {
        problem(item, "key", "stands after section " + last.word() + "; put it with its section");
      }
      last = item.section();
    }
    if (problems.size() == had && !findCycle()) {
      checkStepOrder();
      checkKinds();
    }
  }

  private void checkSteps() {
    for (SheetItem item : items.values()) {
      if (item.marks() != null) {
        SheetItem other = marking.putIfAbsent(item.marks(), item);
        if (other != null) {
          problem(
              item,
              "marks",
              "marks " + item.marks().words() + ", which " + other.key() + " marks already");
        }
      }
    }
  }

  private void checkNames(SheetItem item) {
    for (String key : item.after()) {
      if (!items.containsKey(key)) {
        problem(item, "after", "item " + Fields.unknown(key, items.keySet()));
      }
    }
    if (item.gates() != null && !marking.containsKey(item.gates())) {
      problem(
          item,
          "gates",
          "gates " + item.gates().words() + ", which no item marks; add one with \"marks\"");
    }
    for (Uses use : item.uses()) {
      if (!kinds.contains(use.kind())) {
        problem(
            item,
            "uses",
            "kind "
                + Fields.unknown(use.kind(), kinds)
                + " (a new kind is written into the base's \"kinds\" first)");
      }
      if (use.until() != null && !items.containsKey(use.until())) {
        problem(item, "uses", "until " + Fields.unknown(use.until(), items.keySet()));
      }
    }
  }

  private void checkLife(SheetItem item) {
    if (item.life() == null || item.life().minutes() == null) {
      return;
    }
    double oneInTen =
        item.hands().oneInTen() + (item.waits() == null ? 0 : item.waits().oneInTen());
    if (item.life().minutes() < 2 * oneInTen) {
      problem(
          item,
          "life",
          "is "
              + item.life().minutes()
              + " min, but one in ten takes "
              + oneInTen
              + " min: it would lapse while it is redone; give it at least twice as much");
    }
  }

  /** What an item waits for directly: its prerequisites, and what gates the step that it marks. */
  private List<String> directly(SheetItem item) {
    List<String> direct = new ArrayList<>(item.after());
    if (item.marks() != null) {
      for (SheetItem other : items.values()) {
        if (other.gates() == item.marks() && !other.key().equals(item.key())) {
          direct.add(other.key());
        }
      }
    }
    return direct;
  }

  private boolean findCycle() {
    Set<String> done = new HashSet<>();
    for (SheetItem item : items.values()) {
      if (visit(item.key(), new ArrayDeque<>(), done)) {
        return true;
      }
    }
    return false;
  }

  private boolean visit(String key, Deque<String> way, Set<String> done) {
    if (way.contains(key)) {
      List<String> circle = new ArrayList<>(way);
      circle = circle.subList(circle.indexOf(key), circle.size());
      problem(
          items.get(key),
          "after",
          "waits for itself: " + String.join(" waits for ", circle) + " waits for " + key);
      return true;
    }
    if (!done.add(key)) {
      return false;
    }
    way.addLast(key);
    Set<String> all = new HashSet<>();
    for (String direct : directly(items.get(key))) {
      if (visit(direct, way, done)) {
        return true;
      }
      all.add(direct);
      all.addAll(before.getOrDefault(direct, Set.of()));
    }
    way.removeLast();
    before.put(key, all);
    return false;
  }

  private void checkStepOrder() {
    SheetItem last = null;
    for (Step step : Step.values()) {
      SheetItem item = marking.get(step);
      if (item != null && last != null && !before.get(item.key()).contains(last.key())) {
        problem(
            item,
            "after",
            "marks " + step.words() + " but does not wait for " + last.key() + " before it");
      }
      last = item == null ? last : item;
    }
  }

  /**
   * A room that holds one kind and needs another to be able to give the first back must take them
   * in the fixed order; if all rooms do, no circle of rooms can wait for each other.
   */
  private void checkKinds() {
    for (SheetItem holder : items.values()) {
      for (Uses held : holder.uses()) {
        if (held.until() == null || held.until().equals(holder.key())) {
          continue;
        }
        Set<String> needed = new HashSet<>(before.get(held.until()));
        needed.add(held.until());
        needed.removeAll(before.get(holder.key()));
        needed.remove(holder.key());
        for (String key : needed) {
          for (Uses other : items.get(key).uses()) {
            if (kinds.indexOf(other.kind()) <= kinds.indexOf(held.kind())) {
              problem(
                  items.get(key),
                  "uses",
                  "takes "
                      + other.kind()
                      + " while "
                      + held.kind()
                      + " is held for "
                      + held.until()
                      + " since "
                      + holder.key()
                      + ", against the base's order of kinds; two rooms could wait for each other"
                      + " for ever: put one before the other with \"after\"");
            }
          }
        }
      }
    }
  }

  private void problem(SheetItem item, String field, String message) {
    Lined at = written.get(item.key());
    Lined value = at.fields().get(field);
    Lined place = value == null ? at : value;
    problems.add(new Problem(place.file(), place.line(), item.key() + ": " + field, message));
  }
}
