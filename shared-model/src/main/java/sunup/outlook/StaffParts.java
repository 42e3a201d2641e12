package sunup.outlook;

import java.util.ArrayList;
import java.util.Collections;
import java.util.HashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import sunup.board.Eve;
import sunup.board.Item;
import sunup.board.ItemState;
import sunup.board.Morning;
import sunup.board.Morning.CaseDay;
import sunup.board.Morning.PersonDay;
import sunup.board.Morning.PlaceDay;
import sunup.board.Morning.Reason;
import sunup.board.Morning.Taken;
import sunup.board.Morning.UnitDay;
import sunup.board.NextCase;
import sunup.board.Placed;
import sunup.board.Private;
import sunup.board.Role;
import sunup.board.RoomId;
import sunup.board.Step;
import sunup.board.SwapDay;
import sunup.forecast.Forecast;
import sunup.forecast.Forecast.RoomOut;
import sunup.forecast.Forecast.Share;
import sunup.outlook.RoomSheet.Line;
import sunup.sheets.SheetItem;
import sunup.wire.Part;
import sunup.wire.Part.CasePart;
import sunup.wire.Part.ItemPart;
import sunup.wire.Part.NextItemPart;
import sunup.wire.Part.NextPart;
import sunup.wire.Part.PersonPart;
import sunup.wire.Part.PlacePart;
import sunup.wire.Part.SwapPart;
import sunup.wire.Part.UnitPart;
import sunup.wire.Part.WaitPart;
import sunup.wire.StepAt;
import sunup.wire.SwapLeft;
import sunup.wire.Wait;

/** The parts for those who work in the suite. */
final class StaffParts {
  private static final int WAITS_AT_MOST = 4;
  private static final double WAIT_SHARE = 0.05;

  private final Snapshot snapshot;
  private final Morning morning;
  private final long now;
  private final Judged judged;
  private final Map<String, RoomOut> figures = new HashMap<>();

  StaffParts(Snapshot snapshot, Foretold foretold, Judged judged) {
    Forecast forecast = foretold.forecast();
    this.snapshot = snapshot;
    this.judged = judged;
    this.morning = snapshot.morning();
    this.now = snapshot.now();
    if (forecast != null) {
      for (RoomOut room : forecast.rooms()) {
        figures.put(room.id(), room);
      }
    }
  }

  void addTo(List<Part> parts) {
    for (CaseDay caseDay : morning.cases().values()) {
      parts.add(casePart(caseDay));
    }
    for (RoomId id : morning.rooms().keySet()) {
      RoomSheet sheet = snapshot.sheets().get(id);
      if (sheet != null) {
        for (Line line : sheet.lines()) {
          parts.add(item(id, sheet, line));
        }
        parts.add(waits(id, sheet));
      }
      nextCase(parts, NextCase.newestIn(morning, id));
    }
    for (PersonDay person : morning.people().values()) {
      parts.add(person(person));
    }
    for (SwapDay swap : morning.swaps().values()) {
      parts.add(swap(swap));
    }
    for (UnitDay unit : morning.units().values()) {
      parts.add(unit(unit));
    }
    for (PlaceDay place : morning.places().values()) {
      parts.add(
          new PlacePart(
              "place/" + place.plan().id(),
              place.plan().id().value(),
              place.plan().wall(),
              place.opensAt(),
              place.revision()));
    }
  }

  private SwapPart swap(SwapDay s) {
    List<SwapLeft> left = new ArrayList<>();
    for (SwapDay.Left one : s.left()) {
      CaseDay itsCase = morning.caseOf(one.item());
      String to = itsCase.cancelled() ? null : itsCase.plan().room().value();
      left.add(new SwapLeft(one.item().key(), one.section(), to));
    }
    return new SwapPart(
        "swap/" + s.room(),
        s.room().value(),
        s.with().value(),
        s.at(),
        left,
        lacks(s),
        s.way(),
        s.confirmedAt(),
        s.confirmedBy(),
        s.revision());
  }

  /** What was made ready elsewhere, was void by the case's coming, and is open still. */
  private List<String> lacks(SwapDay s) {
    CaseDay here = morning.caseIn(s.room());
    if (here == null || here.cancelled() || s.confirmedAt() != null) {
      return List.of();
    }
    return morning.itemsOf(s.room()).stream()
        .map(Placed::item)
        .filter(item -> here.plan().id().equals(item.ref().caseId()))
        .filter(item -> item.state() == ItemState.OPEN && item.revision() == s.revision())
        .filter(item -> s.came().contains(item.ref()))
        .map(item -> item.ref().key())
        .toList();
  }

  private CasePart casePart(CaseDay c) {
    List<StepAt> steps = new ArrayList<>();
    for (Step step : Step.values()) {
      if (c.steps().containsKey(step)) {
        steps.add(new StepAt(step, c.steps().get(step)));
      }
    }
    Reason reason = c.reason();
    return new CasePart(
        "case/" + c.plan().id(),
        c.plan().id().value(),
        c.plan().room().value(),
        c.plan().bookedAt(),
        c.agreedAt(),
        shown(c.plan().procedure()),
        c.plan().service(),
        c.plan().technique(),
        c.plan().options(),
        c.cancelled(),
        steps,
        c.flagged(),
        reason == null ? null : reason.reason(),
        reason != null && reason.agreed(),
        reason == null ? null : reason.instead(),
        c.revision());
  }

  private void nextCase(List<Part> parts, NextCase next) {
    if (next == null) {
      return;
    }
    String room = next.room().value();
    parts.add(
        new NextPart(
            "next/" + next.id(),
            room,
            next.id().value(),
            next.technique(),
            next.options(),
            next.last().at()));
    int order = 0;
    for (Placed placed : next.items(morning)) {
      Item item = placed.item();
      ItemState state = morning.stateOf(placed, now);
      boolean outlasts = state == ItemState.GOOD && placed.sheet().outlastsItsCase();
      parts.add(
          new NextItemPart(
              "next-item/" + placed.ref(),
              room,
              next.isCarried(item),
              item(
                  placed,
                  state,
                  order++,
                  outlasts ? goodUntil(placed) : null,
                  state == ItemState.IN_HAND && isLong(placed))));
    }
  }

  private ItemPart item(RoomId room, RoomSheet sheet, Line line) {
    Placed placed = new Placed(line.item(), line.asks(), room);
    boolean started = sheet.startedAt() != null;
    boolean carries = started && line.state() == ItemState.GOOD && line.asks().outlastsItsCase();
    return item(
        placed,
        line.state(),
        line.order(),
        carries ? goodUntil(placed) : null,
        !started && line.state() == ItemState.IN_HAND && isLong(placed));
  }

  private ItemPart item(
      Placed placed, ItemState state, int order, Long goodUntil, boolean stillGoing) {
    SheetItem asks = placed.sheet();
    Item item = placed.item();
    return new ItemPart(
        "item/" + placed.ref(),
        placed.ref(),
        placed.room().value(),
        order,
        asks.section(),
        asks.desk(),
        roles(asks),
        state,
        item.since(),
        asks.gates(),
        asks.marks(),
        asks.evidence(),
        item.evidence(),
        item.together(),
        shown(item.what()),
        item.mender() == null ? null : item.mender().value(),
        item.expectedAt(),
        morning.lapsesAt(placed),
        goodUntil,
        stillGoing,
        asks.core(),
        eve(asks),
        item.revision());
  }

  /** The machine's checks of the day need no second look for the next case. */
  private static long goodUntil(Placed placed) {
    return placed.sheet().life().until(placed.item().since());
  }

  private static String eve(SheetItem asks) {
    if (!Eve.mayFault(asks)) {
      return null;
    }
    return Eve.mayBeGood(asks) ? "good" : "fault";
  }

  private static String shown(Private value) {
    return value == null ? null : value.shown();
  }

  private static List<Role> roles(SheetItem asks) {
    Set<Role> roles = new LinkedHashSet<>();
    for (List<Role> any : asks.who()) {
      roles.addAll(any);
    }
    return List.copyOf(roles);
  }

  /** Past 1.5 times what one in ten takes longer than, the station asks (rule 3). */
  private boolean isLong(Placed placed) {
    Item item = placed.item();
    long begun = item.begunAt() != null ? item.begunAt() : item.since();
    SheetItem asks = placed.sheet();
    double minutes = asks.hands().oneInTen() + (asks.waits() == null ? 0 : asks.waits().oneInTen());
    return now - begun > 1.5 * minutes * FirstSettings.MINUTE;
  }

  private WaitPart waits(RoomId id, RoomSheet sheet) {
    List<Wait> waits = new ArrayList<>();
    RoomOut figure = figures.get(id.value());
    Words words = new Words(snapshot);
    Taken taken = sheet.room().taken();
    if (figure != null && sheet.startedAt() == null) {
      for (Share share : figure.holdups()) {
        if (share.share() < WAIT_SHARE || waits.size() == WAITS_AT_MOST) {
          break;
        }
        String key = words.key(share);
        boolean mine = taken != null && taken.holdup().equals(key);
        waits.add(
            new Wait(key, words.staff(share), isOwn(sheet, share), mine ? taken.by() : null, null));
      }
    }
    boolean told = figure != null && sheet.startedAt() == null;
    Long about = told ? judged.of(id.value()).startShown(now) : null;
    return new WaitPart("wait/" + id, id.value(), about, waits);
  }

  private static boolean isOwn(RoomSheet sheet, Share share) {
    Line line = share.item() == null ? null : sheet.line(share.item());
    return line != null && line.asks().section().isSetUp() && share.thing() == null;
  }

  private PersonPart person(PersonDay p) {
    List<String> covers = new ArrayList<>();
    for (RoomId room : p.plan().covers()) {
      covers.add(room.value());
    }
    RoomId own = p.plan().room();
    return new PersonPart(
        "person/" + p.plan().id(),
        p.plan().id().value(),
        p.plan().role(),
        p.plan().role().word() + (own == null ? " " + p.plan().id() : " of " + own),
        own == null ? null : own.value(),
        covers,
        p.plan().plannedAt(),
        p.expectedAt(),
        p.arrivedAt(),
        p.leftAt(),
        p.room() == null ? null : p.room().value(),
        p.lastWordAt(),
        waitedFor(p.plan().id().value()),
        p.revision());
  }

  private List<String> waitedFor(String person) {
    List<String> rooms = new ArrayList<>();
    judged
        .rooms()
        .forEach(
            (room, said) -> {
              if (said.waitsFor().people().contains(person)) {
                rooms.add(room);
              }
            });
    Collections.sort(rooms);
    return rooms;
  }

  private static UnitPart unit(UnitDay u) {
    return new UnitPart(
        "unit/" + u.plan().id(),
        u.plan().id().value(),
        u.plan().kind(),
        u.plan().wall(),
        u.with() == null ? null : u.with().value(),
        u.since(),
        u.promised() == null ? null : u.promised().value(),
        u.revision());
  }
}
