package sunup.board;

import java.time.LocalDate;
import java.util.Comparator;
import java.util.List;
import sunup.codec.Maybe;
import sunup.sheets.Hands;
import sunup.sheets.SheetItem;
import sunup.sheets.Work;

/**
 * What a suite's own closed mornings taught of how long things take and how the board is told,
 * frozen for one morning when it was opened. The sheets stay what they are; this stands beside
 * them, so that a replay needs neither the archive nor the mornings that taught.
 *
 * @param upTo the last morning that taught
 * @param mornings how many taught
 * @param items what this morning goes by instead of its sheets, by key in order
 * @param reporting how people report here, or null: then first settings hold
 */
public record LearnedTimes(
    LocalDate upTo, int mornings, List<Time> items, @Maybe Reporting reporting) {
  public LearnedTimes {
    items = items.stream().sorted(Comparator.comparing(Time::key)).toList();
  }

  /** Durations alone. */
  public LearnedTimes(LocalDate upTo, int mornings, List<Time> items) {
    this(upTo, mornings, items, null);
  }

  /**
   * One item as sheets ask for it.
   *
   * @param who of whom they ask it; null in journals of a time when that was not kept: of anybody
   * @param sheet what its sheet said when it was learned; a sheet that says something else is a new
   *     decision, and goes first
   * @param hands what this morning goes by
   * @param measured on how many durations that rests
   */
  public record Time(
      String key, @Maybe List<List<Role>> who, Hands sheet, Hands hands, int measured) {
    /** Of work that sheets ask for. */
    public Time(Work work, Hands hands, int measured) {
      this(work.key(), work.who(), work.hands(), hands, measured);
    }

    private boolean isOf(List<List<Role>> people, Hands minutes) {
      return sheet.equals(minutes) && (who == null || who.equals(people));
    }
  }

  /**
   * How people report here, in the place of rule 3's first settings.
   *
   * @param eachItem share of rooms that report each item as it is done; with the next three it adds
   *     to one
   * @param eachSection that report a section when it is gone through
   * @param atEnd that report once at the end
   * @param never that never report
   * @param forgotten chance that an item in hand is done and nobody said so
   * @param delayOneInTenMs one in ten words comes longer than this after what it tells; null where
   *     words are taken to come at once
   * @param rooms on how many rooms of mornings the shares rest
   * @param begun on how many items whose beginning was touched the chance rests
   * @param told on how many words the delay rests
   */
  public record Reporting(
      double eachItem,
      double eachSection,
      double atEnd,
      double never,
      double forgotten,
      @Maybe Long delayOneInTenMs,
      int rooms,
      int begun,
      int told) {}

  /** True if there is anything that a morning would go by. */
  boolean teaches() {
    return !items.isEmpty() || reporting != null;
  }

  /** What was learned of work that a sheet asks for, or null. */
  public Time of(Work work) {
    return find(work.key(), work.who(), work.hands());
  }

  /** An item as this morning goes by it. */
  public SheetItem applied(SheetItem item) {
    Time time = find(item.key(), item.who(), item.hands());
    return time == null ? item : item.withHands(time.hands());
  }

  /** Asked for each item of each frame: by halves, as they stand by key in order. */
  private Time find(String key, List<List<Role>> people, Hands hands) {
    int low = 0;
    int high = items.size();
    while (low < high) {
      int middle = (low + high) >>> 1;
      if (items.get(middle).key().compareTo(key) < 0) {
        low = middle + 1;
      } else {
        high = middle;
      }
    }
    for (; low < items.size() && items.get(low).key().equals(key); low++) {
      if (items.get(low).isOf(people, hands)) {
        return items.get(low);
      }
    }
    return null;
  }
}
