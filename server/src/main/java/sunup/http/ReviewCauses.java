package sunup.http;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.stream.Stream;
import sunup.archive.FactFigures;
import sunup.board.SuiteId;
import sunup.codec.Maybe;
import sunup.review.Split;
import sunup.review.charts.MinutesByCause;
import sunup.review.charts.MinutesByCause.Grouping;
import sunup.review.charts.MinutesByCause.Row;

/** Late minutes by cause, with the names that the suite's sheets have for their items. */
final class ReviewCauses {
  private ReviewCauses() {}

  /**
   * Late minutes by cause.
   *
   * @param names what to show for a label that has an item's key in it: the kind, and the item as
   *     the sheet of the last closed morning has it for the desk. Labels without one, and items
   *     that no sheet has any more, are not in it
   */
  record Causes(Grouping by, MinutesByCause causes, Map<String, String> names) {}

  /** The same of each group, to be held beside each other. */
  record Apart(Grouping by, Split split, List<Group> groups) {}

  /**
   * One group.
   *
   * @param starts of it; where there are too few all else is null: withheld
   * @param minutes late, of all of them
   * @param perStart the same for each start
   * @param rows its causes, largest first
   */
  record Group(
      String name,
      int starts,
      @Maybe Double minutes,
      @Maybe Double perStart,
      @Maybe List<Rate> rows) {}

  /**
   * One cause of a group.
   *
   * @param name what to show for the label, or null if the label itself will do
   * @param minutes late, of all its starts
   * @param perStart the same for each start of the group, whether it has this cause or not: what
   *     can be held beside other groups
   * @param starts in which it carries any
   */
  record Rate(String label, @Maybe String name, double minutes, double perStart, int starts) {}

  static Causes all(FactFigures figures, ReviewQuery query) throws Answers.Wrong {
    MinutesByCause causes = figures.causes(query.filter(), query.grouping());
    List<Row> rows = causes.rows() == null ? List.of() : causes.rows();
    Map<String, String> names = names(rows.stream().map(Row::label), items(figures, query));
    return new Causes(query.grouping(), causes, names);
  }

  /** What to show for the labels that have a name. */
  static Map<String, String> names(Stream<String> labels, Map<String, String> items) {
    Map<String, String> names = new TreeMap<>();
    labels.forEach(
        label -> {
          String name = name(label, items);
          if (name != null) {
            names.put(label, name);
          }
        });
    return names;
  }

  static Apart apart(FactFigures figures, ReviewQuery query) throws Answers.Wrong {
    Map<String, String> items = items(figures, query);
    List<Group> groups = new ArrayList<>();
    figures
        .causes(query.filter(), query.grouping(), query.split())
        .forEach((name, causes) -> groups.add(group(name, causes, items)));
    return new Apart(query.grouping(), query.split(), groups);
  }

  static Map<String, String> items(FactFigures figures, ReviewQuery query) throws Answers.Wrong {
    return query.grouping() == Grouping.ITEM
        ? figures.itemNames(new SuiteId(query.suite()))
        : Map.of();
  }

  private static Group group(String name, MinutesByCause causes, Map<String, String> items) {
    int starts = causes.starts();
    if (causes.rows() == null) {
      return new Group(name, starts, null, null, null);
    }
    List<Rate> rates =
        causes.rows().stream()
            .map(
                r ->
                    new Rate(
                        r.label(),
                        name(r.label(), items),
                        r.minutes(),
                        r.minutes() / starts,
                        r.starts()))
            .toList();
    return new Group(name, starts, causes.minutes(), causes.minutes() / starts, rates);
  }

  /** A label is a kind, or a kind and an item's key. */
  static String name(String label, Map<String, String> items) {
    int at = label.indexOf(' ');
    String item = at < 0 ? null : items.get(label.substring(at + 1));
    return item == null ? null : label.substring(0, at) + ": " + item;
  }
}
