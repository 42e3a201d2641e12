package sunup.board;

import java.util.EnumSet;
import java.util.Set;
import sunup.sheets.SheetItem;

/**
 * What may be told the day before, while the morning is a draft: of patient, surgeon, instruments
 * and team, what is wrong and that it is mended; and that it is good where nobody need be there for
 * it (blood, trays, the bed afterwards). All else is made or looked at in the morning.
 */
public final class Eve {
  private static final Set<Section> SECTIONS =
      EnumSet.of(Section.PATIENT, Section.SURGEON, Section.INSTRUMENTS, Section.TEAM);

  private Eve() {}

  /** True if what is wrong with the item may be told, and mended, the day before. */
  public static boolean mayFault(SheetItem item) {
    return SECTIONS.contains(item.section()) && item.marks() == null;
  }

  /** True if it may be good the day before: nothing must have come or been done before it. */
  public static boolean mayBeGood(SheetItem item) {
    return mayFault(item) && !item.isArrival() && item.after().isEmpty();
  }

  /** True if a draft takes the command, of which the kind alone does not say so. */
  static boolean takes(Morning morning, Command command) {
    if (command instanceof Command.Good good) {
      SheetItem item = morning.sheetItem(good.item());
      return item != null && mayBeGood(item);
    }
    if (command instanceof Command.Fault fault) {
      return mayFault(morning, fault.item());
    }
    return command instanceof Command.Mend mend && mayFault(morning, mend.item());
  }

  private static boolean mayFault(Morning morning, ItemRef ref) {
    SheetItem item = morning.sheetItem(ref);
    return item != null && mayFault(item);
  }
}
