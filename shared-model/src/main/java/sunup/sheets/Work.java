package sunup.sheets;

import java.util.Comparator;
import java.util.List;
import sunup.board.Role;

/**
 * What a sheet asks for: an item, by whom, and how long that takes. Sheets that ask for the same
 * are taken together when durations are learned, whatever their techniques; those that ask for the
 * same key with other minutes or of other people (a magnet's shorter draping, say) are not, as what
 * one takes says nothing of the other.
 *
 * @param key the item's
 * @param who the people that it takes, as {@link SheetItem#who}
 * @param hands minutes, as the sheet says them
 */
public record Work(String key, List<List<Role>> who, Hands hands) {
  /** By key; of one key in an order that does not depend on where they were met. */
  public static final Comparator<Work> ORDER =
      Comparator.comparing(Work::key)
          .thenComparingDouble(w -> w.hands().usual())
          .thenComparingDouble(w -> w.hands().oneInTen())
          .thenComparing(w -> w.who().toString());

  public Work {
    who = who.stream().map(List::copyOf).toList();
  }
}
