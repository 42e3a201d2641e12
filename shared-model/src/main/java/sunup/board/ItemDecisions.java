package sunup.board;

import java.util.ArrayList;
import java.util.List;
import sunup.board.Morning.CaseDay;
import sunup.board.Morning.Said;
import sunup.board.Outcome.Refused;
import sunup.sheets.SheetItem;

/** What is decided or expected of items. */
final class ItemDecisions {
  private ItemDecisions() {}

  static Outcome takeFault(Ask ask, Command.TakeFault c) {
    PersonId by = ask.doer(c.by());
    Refused refused = ItemRules.meets(ask, c.item(), CommandKind.TAKE_FAULT, by);
    if (refused != null) {
      return refused;
    }
    Item item = ask.morning.item(c.item());
    if (item.state() != ItemState.FAULT) {
      return Ask.refuse(
          RefusalCode.TOO_LATE, "This fault is gone already: look at the item again.");
    }
    if (by == null) {
      return Ask.refuse(RefusalCode.EVIDENCE_MISSING, "Say who goes to mend it.");
    }
    return by.equals(item.mender()) ? ask.accept() : ask.accept(new Event.FaultTaken(c.item(), by));
  }

  static Outcome reopen(Ask ask, Command.Reopen c) {
    Refused refused = decides(ask, c.item(), CommandKind.REOPEN);
    if (refused != null) {
      return refused;
    }
    return switch (ask.morning.item(c.item()).state()) {
      case OPEN -> ask.accept();
      case FAULT ->
          Ask.refuse(
              RefusalCode.TOO_LATE, "It is a fault now: say when it is mended, and it is open.");
      default -> ask.accept(new Event.ItemReopened(c.item(), c.why()));
    };
  }

  static Outcome leaveOut(Ask ask, Command.LeaveOut c) {
    Refused refused = decides(ask, c.item(), CommandKind.LEAVE_OUT);
    if (refused != null) {
      return refused;
    }
    SheetItem sheet = ask.morning.sheetItem(c.item());
    if (sheet != null && sheet.core()) {
      return Ask.refuse(RefusalCode.CORE, sheet.desk());
    }
    if (c.reason() == null) {
      return Ask.refuse(
          RefusalCode.EVIDENCE_MISSING, "Leaving out needs a reason. Say it in a few words.");
    }
    return ask.morning.item(c.item()).state() == ItemState.LEFT_OUT
        ? ask.accept()
        : ask.accept(new Event.ItemLeftOut(c.item(), c.reason()));
  }

  static Outcome expect(Ask ask, Command.ExpectItem c) {
    Refused refused =
        Ask.first(
            ItemRules.meets(ask, c.item(), CommandKind.EXPECT_ITEM, null), ask.implausible(c.at()));
    return refused != null
        ? refused
        : ask.accept(new Event.ItemExpected(c.item(), c.at(), c.said()));
  }

  /** Takes back what one's own screen said of items and steps, as far as nothing followed. */
  static Outcome undo(Ask ask, Command.Undo c) {
    String screen = ask.order.actor().screen();
    List<ItemRef> items = new ArrayList<>();
    boolean elsewhere = false;
    for (Item item : ask.morning.allItems()) {
      if (c.command().equals(item.command()) && item.before() != null) {
        if (screen != null && screen.equals(item.last().screen())) {
          items.add(item.ref());
        } else {
          elsewhere = true;
        }
      }
    }
    boolean steps = false;
    for (CaseDay day : ask.morning.cases().values()) {
      for (Said said : day.saidBy().values()) {
        if (c.command().equals(said.command())) {
          boolean own = screen != null && screen.equals(said.screen());
          steps |= own;
          elsewhere |= !own;
        }
      }
    }
    if (items.isEmpty() && !steps) {
      return Ask.refuse(
          RefusalCode.NOTHING_TO_UNDO,
          elsewhere
              ? "it was touched on another screen, take it back there"
              : "something else was said of it since, or it had no effect");
    }
    return ask.accept(new Event.TouchUndone(c.command(), List.copyOf(items)));
  }

  private static Refused decides(Ask ask, ItemRef ref, CommandKind kind) {
    Refused refused = ItemRules.meets(ask, ref, kind, null);
    if (refused != null) {
      return refused;
    }
    CaseDay day = ask.morning.caseOf(ref);
    return day != null && day.cancelled()
        ? Ask.refuse(RefusalCode.CASE_CANCELLED, "There is nothing to decide about its items.")
        : null;
  }
}
