package sunup.board;

import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Map;
import sunup.board.Morning.CaseDay;
import sunup.board.Morning.PersonDay;
import sunup.board.Morning.Phase;
import sunup.board.Morning.PlaceDay;
import sunup.board.Morning.RoomDay;
import sunup.board.Morning.UnitDay;
import sunup.board.SwapDay.Way;
import sunup.sheets.ComposedSheet;
import sunup.sheets.SheetItem;

/** What events about the plan and its cases make of the state. */
final class CaseFacts {
  private CaseFacts() {}

  static void planned(Edit edit, Event.MorningPlanned e) {
    MorningPlan plan = e.plan();
    edit.startOver();
    edit.id = plan.id();
    edit.phase = Phase.DRAFT;
    edit.settings = plan.settings();
    edit.beginsAt = plan.beginsAt();
    plan.sheets().forEach(edit::put);
    for (RoomId room : plan.rooms()) {
      edit.put(
          new RoomDay(
              room,
              null,
              RoomUse.FREE,
              null,
              null,
              edit.touch,
              null,
              null,
              null,
              List.of(),
              null,
              null,
              List.of()));
    }
    for (PersonPlan person : plan.people()) {
      edit.put(new PersonDay(person, null, null, null, null, null, edit.touch));
    }
    for (UnitPlan unit : plan.units()) {
      edit.put(new UnitDay(unit, null, null, null, edit.touch));
    }
    for (PlacePlan place : plan.places()) {
      edit.put(new PlaceDay(place, place.opensAt(), edit.touch));
    }
    for (CasePlan one : plan.cases()) {
      place(edit, one);
    }
  }

  static void opened(Edit edit, Event.MorningOpened e) {
    edit.phase = Phase.OPEN;
    edit.openedAt = edit.openedAt == null ? (Long) edit.at() : edit.openedAt;
    edit.closedAt = null;
  }

  static void learned(Edit edit, LearnedTimes learned) {
    edit.learned = learned;
  }

  static void closed(Edit edit, Event.MorningClosed e) {
    edit.phase = Phase.CLOSED;
    edit.closedAt = edit.recorded.recordedAt();
  }

  static void added(Edit edit, Event.CaseAdded e) {
    edit.put(e.sheet());
    place(edit, e.plan());
  }

  private static void place(Edit edit, CasePlan plan) {
    edit.put(
        new CaseDay(
            plan,
            null,
            false,
            edit.touch,
            Collections.emptyMap(),
            Collections.emptyMap(),
            List.of(),
            null));
    edit.room(plan.room(), r -> Days.withCase(r, plan.id(), edit.touch));
    askFor(edit, plan.id());
  }

  /** Makes the items that the case's sheet asks for and that are not there yet. */
  private static void askFor(Edit edit, CaseId caseId) {
    CaseDay day = edit.caseDay(caseId);
    ComposedSheet sheet = day == null ? null : edit.soFar().sheetOf(day);
    if (sheet == null) {
      return;
    }
    for (SheetItem item : sheet.items()) {
      ItemRef ref =
          item.belongs() == SheetItem.Belongs.ROOM
              ? ItemRef.of(day.plan().room(), item.key())
              : ItemRef.of(caseId, item.key());
      if (edit.item(ref) == null) {
        edit.put(Item.open(ref, edit.touch));
      }
    }
  }

  static void changed(Edit edit, Event.CaseChanged e) {
    CaseDay old = edit.caseDay(e.plan().id());
    if (old == null) {
      return;
    }
    RoomId from = old.plan().room();
    RoomId to = e.plan().room();
    boolean moves = !from.equals(to);
    if (moves && edit.phase == Phase.OPEN) {
      Morning before = edit.soFar();
      List<ItemRef> prepared = e.voided().stream().filter(ref -> isOfTheRoom(before, ref)).toList();
      edit.put(leftBehind(edit, from, old.plan().id(), to, prepared, List.of(), Way.WENT));
      // What was made ready there for a case that does not take place is not this one's.
      CaseDay cancelled = before.caseIn(to);
      CaseId gone = cancelled == null ? null : cancelled.plan().id();
      edit.put(leftBehind(edit, to, gone, from, madeFor(before, gone), prepared, Way.CAME));
    }
    edit.put(e.sheet());
    Long agreed = old.plan().bookedAt() == e.plan().bookedAt() ? old.agreedAt() : null;
    edit.put(Days.withPlan(old, e.plan(), agreed, edit.touch));
    if (moves) {
      edit.room(from, r -> Days.withCase(r, null, edit.touch));
      edit.voidDrugs(e.plan().id());
    }
    edit.room(to, r -> Days.withCase(r, e.plan().id(), edit.touch));
    e.voided().forEach(edit::voidItem);
    askFor(edit, e.plan().id());
  }

  static void swapped(Edit edit, Event.CasesSwapped e) {
    CaseDay one = edit.caseDay(e.one());
    CaseDay other = edit.caseDay(e.other());
    if (one == null || other == null) {
      return;
    }
    if (edit.phase == Phase.OPEN) {
      RoomId here = one.plan().room();
      RoomId there = other.plan().room();
      List<ItemRef> ones = e.voided().stream().filter(r -> e.one().equals(r.caseId())).toList();
      List<ItemRef> others = e.voided().stream().filter(r -> e.other().equals(r.caseId())).toList();
      edit.put(leftBehind(edit, here, e.one(), there, ones, others, null));
      edit.put(leftBehind(edit, there, e.other(), here, others, ones, null));
    }
    move(edit, one, other.plan().room());
    move(edit, other, one.plan().room());
    e.voided().forEach(edit::voidItem);
    askFor(edit, e.one());
    askFor(edit, e.other());
  }

  /**
   * What a room has to put right once its case is gone, with what it had not confirmed yet.
   *
   * @param goes the case that was there, or null
   * @param voided what was made ready here for it
   * @param came what was made ready elsewhere for the case that comes
   */
  private static SwapDay leftBehind(
      Edit edit,
      RoomId room,
      CaseId goes,
      RoomId with,
      List<ItemRef> voided,
      List<ItemRef> came,
      Way way) {
    SwapDay before = edit.swap(room);
    List<SwapDay.Left> left = new ArrayList<>();
    if (before != null && before.confirmedAt() == null) {
      left.addAll(before.left());
    }
    Morning soFar = edit.soFar();
    for (ItemRef ref : voided) {
      if (ref.caseId() == null || !ref.caseId().equals(goes)) {
        continue;
      }
      SheetItem asks = soFar.sheetItem(ref);
      boolean listed = left.stream().anyMatch(one -> one.item().equals(ref));
      if (asks != null && !listed) {
        left.add(new SwapDay.Left(ref, asks.section()));
      }
    }
    return new SwapDay(room, with, edit.at(), left, came, way, null, null, edit.touch);
  }

  /** What was made ready in the room for a case. */
  private static List<ItemRef> madeFor(Morning morning, CaseId goes) {
    Map<String, Item> owned = goes == null ? null : morning.caseItems().get(goes);
    return owned == null
        ? List.of()
        : owned.values().stream()
            .filter(item -> item.isMade() && isOfTheRoom(morning, item.ref()))
            .map(Item::ref)
            .toList();
  }

  private static boolean isOfTheRoom(Morning morning, ItemRef ref) {
    SheetItem asks = morning.sheetItem(ref);
    return asks != null && !CaseRules.isAboutPeople(asks);
  }

  static void swapConfirmed(Edit edit, Event.SwapConfirmed e) {
    SwapDay s = edit.swap(e.room());
    if (s != null) {
      edit.put(s.confirmed(edit.at(), edit.role(), edit.touch));
    }
  }

  private static void move(Edit edit, CaseDay day, RoomId to) {
    CasePlan p = day.plan();
    CasePlan moved = p.in(to);
    edit.put(Days.withPlan(day, moved, day.agreedAt(), edit.touch));
    edit.voidDrugs(p.id());
    edit.room(to, r -> Days.withCase(r, p.id(), edit.touch));
  }

  static void cancelled(Edit edit, Event.CaseCancelled e) {
    edit.caseDay(e.caseId(), c -> Days.withCancelled(c, edit.touch));
    edit.voidDrugs(e.caseId());
  }

  static void laterAgreed(Edit edit, Event.LaterAgreed e) {
    edit.caseDay(e.caseId(), c -> Days.withPlan(c, c.plan(), e.at(), edit.touch));
  }
}
