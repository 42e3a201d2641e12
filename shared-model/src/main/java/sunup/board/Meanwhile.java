package sunup.board;

import java.util.ArrayList;
import java.util.List;
import sunup.board.Morning.CaseDay;
import sunup.board.Morning.UnitDay;
import sunup.board.Outcome.Refused;

/** Whether what a decision touches is still as the screen showed it. */
final class Meanwhile {
  private Meanwhile() {}

  /**
   * A refusal if a decision was made on an old view, else null. A screen sends the newest revision
   * of all that it showed of what the decision touches.
   */
  static Refused check(Ask ask, CommandKind kind) {
    if (kind.manner() != Manner.DECISION) {
      return null;
    }
    Long seen = ask.order.seen();
    if (seen == null) {
      return Ask.refuse(
          RefusalCode.BAD_COMMAND, "a decision needs 'seen', the revision that the screen showed");
    }
    for (Touch touch : touches(ask.morning, ask.order.command())) {
      if (touch.revision() > seen) {
        return Ask.refuse(RefusalCode.CHANGED_MEANWHILE, by(ask, touch));
      }
    }
    return null;
  }

  /** Who touched something last, and when. */
  static String by(Ask ask, Touch touch) {
    String who = touch.by() == null ? "somebody" : touch.by().word();
    return "by " + who + " at " + ask.clock(touch.at());
  }

  /** What last touched the things that a decision is about; none for things that are not there. */
  private static List<Touch> touches(Morning morning, Command command) {
    List<Touch> list = new ArrayList<>();
    if (command instanceof Command.ChangeCase c) {
      add(list, morning.cases().get(c.plan().id()));
    } else if (command instanceof Command.SwapCases c) {
      add(list, morning.cases().get(c.one()));
      add(list, morning.cases().get(c.other()));
    } else if (command instanceof Command.ConfirmSwap c) {
      add(list, morning.swaps().get(c.room()));
    } else if (command instanceof Command.CancelCase c) {
      add(list, morning.cases().get(c.caseId()));
    } else if (command instanceof Command.AgreeLater c) {
      add(list, morning.cases().get(c.caseId()));
    } else if (command instanceof Command.AgreeReason c) {
      add(list, morning.cases().get(c.caseId()));
    } else if (command instanceof Command.DisputeReason c) {
      add(list, morning.cases().get(c.caseId()));
    } else if (command instanceof Command.Reopen c) {
      add(list, morning.item(c.item()));
    } else if (command instanceof Command.LeaveOut c) {
      add(list, morning.item(c.item()));
    } else if (command instanceof Command.Claim c) {
      add(list, morning.units().get(c.unit()));
    } else if (command instanceof Command.Release c) {
      add(list, morning.units().get(c.unit()));
    } else if (command instanceof Command.PromiseUnit c) {
      add(list, morning.units().get(c.unit()));
    }
    return list;
  }

  private static void add(List<Touch> list, CaseDay day) {
    if (day != null) {
      list.add(day.last());
    }
  }

  private static void add(List<Touch> list, Item item) {
    if (item != null) {
      list.add(item.last());
    }
  }

  /** One that is confirmed says nothing new: the second of two who confirm need not look again. */
  private static void add(List<Touch> list, SwapDay swap) {
    if (swap != null && swap.confirmedAt() == null) {
      list.add(swap.last());
    }
  }

  private static void add(List<Touch> list, UnitDay unit) {
    if (unit != null) {
      list.add(unit.last());
    }
  }
}
