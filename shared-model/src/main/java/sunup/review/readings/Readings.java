package sunup.review.readings;

import com.fasterxml.jackson.annotation.JsonInclude;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import sunup.board.Evidence;
import sunup.board.Item;
import sunup.board.Morning;
import sunup.board.RoomId;
import sunup.codec.Maybe;
import sunup.sheets.EvidenceRule;
import sunup.sheets.SheetItem;
import sunup.units.Unit;

/** What was read at the machines of a morning's rooms, and how it went on over mornings. */
public final class Readings {
  private Readings() {}

  /**
   * One reading that belongs to a room.
   *
   * @param item key of the item on its sheet
   * @param name the item's wording for staff
   * @param low end of the good band, or null
   * @param high end of the good band, or null
   */
  public record Reading(
      RoomId room,
      String item,
      String name,
      LocalDate date,
      double value,
      String unit,
      Double low,
      Double high) {}

  /** A reading of one morning. */
  public record Day(LocalDate date, double value) {}

  /**
   * A machine's reading over mornings, the last of them today's.
   *
   * @param days oldest first; today's is the last
   * @param slow how it changes slowly to the worse, or null if it does not, or not surely
   */
  @JsonInclude(JsonInclude.Include.NON_NULL)
  public record Series(
      String room,
      String item,
      String name,
      String unit,
      @Maybe Double low,
      @Maybe Double high,
      List<Day> days,
      @Maybe SlowChange slow) {
    public Series {
      days = List.copyOf(days);
    }
  }

  /** All readings of a morning that belong to its rooms, as they were last said. */
  public static List<Reading> of(Morning morning) {
    List<Reading> found = new ArrayList<>();
    if (morning.id() == null) {
      return found;
    }
    morning
        .roomItems()
        .forEach(
            (room, items) -> {
              for (Item item : items.values()) {
                SheetItem line = morning.sheetItem(item.ref());
                if (item.evidence() instanceof Evidence.Reading read
                    && line != null
                    && read.unit().equals(line.evidence().unit())) {
                  EvidenceRule rule = line.evidence();
                  found.add(
                      new Reading(
                          room,
                          item.ref().key(),
                          line.desk(),
                          morning.id().date(),
                          read.value(),
                          read.unit(),
                          rule.low(),
                          rule.high()));
                }
              }
            });
    return found;
  }

  /**
   * Each reading of today with those of earlier mornings. What has not been read today is left out,
   * so that nobody copies an earlier number.
   *
   * @param earlier of other mornings, in any order
   */
  public static List<Series> today(Morning today, List<Reading> earlier) {
    List<Series> all = new ArrayList<>();
    for (Reading read : of(today)) {
      Map<LocalDate, Double> days = new TreeMap<>();
      for (Reading old : earlier) {
        if (old.room().equals(read.room())
            && old.item().equals(read.item())
            && old.date().isBefore(read.date())) {
          // A sheet that gives another unit of pressure now: the gauge goes on.
          Unit.gauge(old.value(), old.unit(), read.unit())
              .ifPresent(value -> days.put(old.date(), value));
        }
      }
      days.put(read.date(), read.value());
      List<Day> list =
          days.entrySet().stream().map(e -> new Day(e.getKey(), e.getValue())).toList();
      all.add(
          new Series(
              read.room().value(),
              read.item(),
              read.name(),
              read.unit(),
              read.low(),
              read.high(),
              list,
              SlowChange.of(list.stream().map(Day::value).toList(), read.low(), read.high())));
    }
    return all;
  }
}
