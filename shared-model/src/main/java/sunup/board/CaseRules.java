package sunup.board;

import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import sunup.board.Morning.CaseDay;
import sunup.board.Outcome.Refused;
import sunup.sheets.ComposedSheet;
import sunup.sheets.SheetItem;

/** First cases added, changed, swapped, cancelled, agreed later. */
final class CaseRules {
  private CaseRules() {}

  static Outcome add(Ask ask, Command.AddCase c) {
    String problem = PlanCheck.problem(ask.morning, c.plan(), c.sheet());
    if (problem != null) {
      return Ask.refuse(RefusalCode.BAD_PLAN, problem);
    }
    if (ask.morning.cases().containsKey(c.plan().id())
        || ask.morning.next().containsKey(c.plan().id())) {
      return Ask.refuse(
          RefusalCode.BAD_PLAN, "Case " + c.plan().id() + " is on this morning already.");
    }
    Refused taken = roomTaken(ask, c.plan().room());
    return taken != null ? taken : ask.accept(new Event.CaseAdded(c.plan(), c.sheet()));
  }

  static Outcome change(Ask ask, Command.ChangeCase c) {
    Refused refused = ask.unknown(c.plan().id());
    if (refused != null) {
      return refused;
    }
    String problem = PlanCheck.problem(ask.morning, c.plan(), c.sheet());
    if (problem != null) {
      return Ask.refuse(RefusalCode.BAD_PLAN, problem);
    }
    CaseDay day = ask.morning.cases().get(c.plan().id());
    boolean moves = !c.plan().room().equals(day.plan().room());
    Refused stopped =
        Ask.first(cancelled(day), started(day), moves ? roomTaken(ask, c.plan().room()) : null);
    if (stopped != null) {
      return stopped;
    }
    List<ItemRef> voided = new ArrayList<>();
    for (Item item : made(ask.morning, day)) {
      SheetItem was = ask.morning.sheetItem(item.ref());
      if (!isAskedStill(was, c.sheet()) || (moves && !isAboutPeople(was))) {
        voided.add(item.ref());
      }
    }
    return ask.accept(new Event.CaseChanged(c.plan(), c.sheet(), List.copyOf(voided)));
  }

  static Outcome swap(Ask ask, Command.SwapCases c) {
    Refused refused = Ask.first(ask.unknown(c.one()), ask.unknown(c.other()));
    if (refused != null) {
      return refused;
    }
    if (c.one().equals(c.other())) {
      return Ask.refuse(
          RefusalCode.BAD_PLAN, "A case can't be swapped with itself. Choose two rooms.");
    }
    CaseDay one = ask.morning.cases().get(c.one());
    CaseDay other = ask.morning.cases().get(c.other());
    Refused stopped = Ask.first(cancelled(one), cancelled(other), started(one), started(other));
    if (stopped != null) {
      return stopped;
    }
    List<ItemRef> voided = new ArrayList<>();
    for (CaseDay day : List.of(one, other)) {
      for (Item item : made(ask.morning, day)) {
        if (!isAboutPeople(ask.morning.sheetItem(item.ref()))) {
          voided.add(item.ref());
        }
      }
    }
    return ask.accept(new Event.CasesSwapped(c.one(), c.other(), List.copyOf(voided)));
  }

  static Outcome confirmSwap(Ask ask, Command.ConfirmSwap c) {
    Refused refused = Ask.first(ask.unknown(c.room()), Rights.checkRoom(ask, c.room()));
    if (refused != null) {
      return refused;
    }
    SwapDay swap = ask.morning.swaps().get(c.room());
    if (swap == null) {
      return Ask.refuse(
          RefusalCode.TOO_LATE, "No case was swapped into room " + c.room() + " this morning.");
    }
    return swap.confirmedAt() != null
        ? ask.accept()
        : ask.accept(new Event.SwapConfirmed(c.room()));
  }

  static Outcome cancel(Ask ask, Command.CancelCase c) {
    Refused refused = ask.unknown(c.caseId());
    if (refused != null) {
      return refused;
    }
    return ask.morning.cases().get(c.caseId()).cancelled()
        ? ask.accept()
        : ask.accept(new Event.CaseCancelled(c.caseId(), c.reason()));
  }

  static Outcome agreeLater(Ask ask, Command.AgreeLater c) {
    Refused refused = cannotBeLater(ask, c.caseId(), c.at());
    if (refused != null) {
      return refused;
    }
    return Objects.equals(c.at(), ask.morning.cases().get(c.caseId()).agreedAt())
        ? ask.accept()
        : ask.accept(new Event.LaterAgreed(c.caseId(), c.at()));
  }

  /** Why a start can't be agreed for this time, or null. */
  static Refused cannotBeLater(Ask ask, CaseId caseId, Long at) {
    Refused refused = Ask.first(ask.unknown(caseId), ask.implausible(at));
    if (refused != null) {
      return refused;
    }
    CaseDay day = ask.morning.cases().get(caseId);
    Refused stopped = cancelled(day);
    if (stopped != null) {
      return stopped;
    }
    if (day.hasPassed(ask.morning.settings().startEvent())) {
      return Ask.refuse(
          RefusalCode.TOO_LATE, "The case has started already: give a reason instead.");
    }
    if (at != null && at <= day.plan().bookedAt()) {
      return Ask.refuse(
          RefusalCode.OUT_OF_RANGE,
          "An agreed start is later than the booked "
              + ask.clock(day.plan().bookedAt())
              + ". Leave it out to go back to that.");
    }
    return null;
  }

  /** What was made of the case's own items. */
  private static List<Item> made(Morning morning, CaseDay day) {
    List<Item> made = new ArrayList<>();
    var owned = morning.caseItems().get(day.plan().id());
    if (owned != null) {
      for (Item item : owned.values()) {
        if (item.isMade() && morning.sheetItem(item.ref()) != null) {
          made.add(item);
        }
      }
    }
    return made;
  }

  /**
   * Evidence about the patient, the surgeon and the team goes with the case; all else of the case
   * was prepared in the room and stays behind.
   */
  static boolean isAboutPeople(SheetItem item) {
    return switch (item.section()) {
      case PATIENT, SURGEON, TEAM, START -> true;
      default -> false;
    };
  }

  private static boolean isAskedStill(SheetItem was, ComposedSheet sheet) {
    for (SheetItem item : sheet.items()) {
      if (item.key().equals(was.key())) {
        return item.section() == was.section() && item.belongs() == was.belongs();
      }
    }
    return false;
  }

  private static Refused cancelled(CaseDay day) {
    return day.cancelled()
        ? Ask.refuse(
            RefusalCode.CASE_CANCELLED,
            "Add it again as a new case if it takes place after all (" + day.plan().id() + ").")
        : null;
  }

  private static Refused started(CaseDay day) {
    return day.hasPassed(Step.INDUCTION)
        ? Ask.refuse(
            RefusalCode.TOO_LATE,
            "Induction has begun in room "
                + day.plan().room()
                + ": its case stays as it is. Cancel it or write a note.")
        : null;
  }

  private static Refused roomTaken(Ask ask, RoomId room) {
    CaseDay there = ask.morning.caseIn(room);
    return there == null || there.cancelled()
        ? null
        : Ask.refuse(
            RefusalCode.ROOM_TAKEN,
            "Room " + room + " has case " + there.plan().id() + ". Swap or cancel that first.");
  }
}
