package sunup.outlook;

import static sunup.outlook.FirstSettings.MINUTE;

import java.util.ArrayList;
import java.util.List;
import java.util.function.Predicate;
import sunup.board.Item;
import sunup.board.ItemState;
import sunup.board.Morning;
import sunup.board.Morning.UnitDay;
import sunup.board.PlaceId;
import sunup.board.Role;
import sunup.board.Section;
import sunup.board.Step;
import sunup.forecast.Draw;
import sunup.forecast.ForecastInput.Arrival;
import sunup.forecast.ForecastInput.Extra;
import sunup.forecast.ForecastInput.ItemIn;
import sunup.forecast.ForecastInput.Need;
import sunup.forecast.ForecastInput.Progress;
import sunup.forecast.ForecastInput.State;
import sunup.outlook.RoomSheet.Line;
import sunup.sheets.Hands;
import sunup.sheets.SheetItem;
import sunup.sheets.Uses;

/** The items of one room as the forecast sees them. */
final class ItemsInput {
  /** Tracks whose items are done outside the room. */
  private final Morning morning;

  private final RoomSheet sheet;
  private final long now;
  private final Predicate<Role> planned;
  private final Predicate<Section> heard;
  private final GoodTimes goodTimes;

  ItemsInput(
      Morning morning,
      RoomSheet sheet,
      long now,
      Predicate<Role> planned,
      Predicate<Section> heard) {
    this.morning = morning;
    this.sheet = sheet;
    this.now = now;
    this.planned = planned;
    this.heard = heard;
    this.goodTimes = new GoodTimes(sheet);
  }

  List<ItemIn> build() {
    List<ItemIn> items = new ArrayList<>();
    for (Line line : sheet.lines()) {
      items.add(item(line));
    }
    return items;
  }

  private ItemIn item(Line line) {
    SheetItem asks = line.asks();
    Arrival arrival = arrival(line);
    return new ItemIn(
        asks.key(),
        asks.section().word(),
        asks.belongs() == SheetItem.Belongs.CASE,
        arrival != null ? List.of() : who(asks),
        arrival != null ? new Draw.Constant(0) : draw(asks.hands()),
        asks.waits() == null || arrival != null ? null : draw(asks.waits()),
        asks.extra() == null || arrival != null
            ? null
            : new Extra(asks.extra().oneIn(), Math.round(asks.extra().minutes() * MINUTE)),
        asks.after(),
        asks.gates() == null ? null : asks.gates().code(),
        asks.marks() == null ? null : asks.marks().code(),
        notBefore(asks),
        arrival != null ? null : place(asks),
        asks.isInRoom(),
        arrival != null ? List.of() : needs(asks),
        arrival,
        life(asks),
        progress(line),
        false);
  }

  static Draw draw(Hands hands) {
    long usual = Math.round(hands.usual() * MINUTE);
    long oneInTen = Math.round(hands.oneInTen() * MINUTE);
    if (usual == oneInTen) {
      return new Draw.Constant(usual);
    }
    // A median of nothing has no logarithm: half a second stands for it.
    return new Draw.LogNormal(Math.max(usual, 500), Math.max(oneInTen, 1000));
  }

  private List<List<String>> who(SheetItem asks) {
    List<List<String>> who = new ArrayList<>();
    for (List<Role> any : asks.who()) {
      List<String> roles = new ArrayList<>();
      for (Role role : any) {
        if (planned.test(role)) {
          roles.add(role.word());
        }
      }
      if (!roles.isEmpty()) {
        who.add(roles);
      }
    }
    return who;
  }

  /** Lapses of the start chain and of what will be redone anyway are not simulated. */
  private static Long life(SheetItem asks) {
    if (asks.life() == null || asks.life().minutes() == null || asks.section() == Section.START) {
      return null;
    }
    return asks.life().minutes() * MINUTE;
  }

  private List<Need> needs(SheetItem asks) {
    List<Need> needs = new ArrayList<>();
    for (Uses uses : asks.uses()) {
      boolean known = false;
      boolean held = false;
      for (UnitDay unit : morning.units().values()) {
        if (unit.plan().kind().equals(uses.kind())) {
          known = true;
          held |= sheet.room().id().equals(unit.with());
        }
      }
      if (known) {
        needs.add(new Need(uses.kind(), 1, uses.until(), held));
      }
    }
    return needs;
  }

  /** A place that this morning does not plan is taken for open. */
  private String place(SheetItem asks) {
    boolean planned =
        asks.place() != null && morning.places().containsKey(new PlaceId(asks.place()));
    return planned ? asks.place() : null;
  }

  private Long notBefore(SheetItem asks) {
    if (asks.marks() == sheet.startStep()) {
      return sheet.target();
    }
    if (asks.marks() == Step.SENT_FOR) {
      return sheet.target() - Math.round(FirstSettings.SENT_FOR_LEAD * usualChain());
    }
    return null;
  }

  /** Usual milliseconds of the chain between "sent for" and the start event. */
  private long usualChain() {
    long sum = 0;
    for (Line line : sheet.lines()) {
      if (line.asks().section() != Section.START) {
        continue;
      }
      if (line.asks().marks() == sheet.startStep()) {
        break;
      }
      sum += Math.round(line.asks().hands().usual() * MINUTE);
    }
    return sum;
  }

  private Arrival arrival(Line line) {
    SheetItem asks = line.asks();
    Long expected = line.item().expectedAt();
    if (expected != null) {
      return new Arrival(expected - FirstSettings.ANNOUNCED_EARLY, FirstSettings.ANNOUNCED, false);
    }
    if (asks.isArrival()) {
      long usual = asks.plannedBefore() * MINUTE;
      long late = asks.plannedLate() * MINUTE;
      long spread = Math.max(MINUTE, usual - late);
      return new Arrival(
          sheet.target() - usual - spread,
          new Draw.LogNormal(spread, 2 * spread),
          !heard.test(asks.section()));
    }
    // A fault that was told is known, whoever reports the track.
    if (isTrack(asks) && line.state() != ItemState.FAULT && !heard.test(asks.section())) {
      return unheardTrack(asks);
    }
    return null;
  }

  /** The tracks beside the anaesthetist's own sections and the chain of the start. */
  static boolean isTrack(SheetItem asks) {
    return !asks.section().isSetUp() && asks.section() != Section.START;
  }

  /**
   * A track that nobody reports this morning: its items come about as the trade plans them, by the
   * time that the patient is sent for, and claim nobody.
   */
  private Arrival unheardTrack(SheetItem asks) {
    Draw took = draw(asks.hands());
    long usual = took.usual();
    long due = sheet.target() - Math.round(FirstSettings.SENT_FOR_LEAD * usualChain());
    return new Arrival(due - 2 * usual - 5 * MINUTE, took, true);
  }

  private Progress progress(Line line) {
    Item item = line.item();
    long since = item.since();
    String by = item.by() == null ? null : item.by().value();
    ItemState state = line.state();
    if (state == ItemState.GOOD) {
      long good = goodTimes.of(line);
      Long begun = item.begunAt() == null ? null : (Long) Math.min(item.begunAt(), good);
      return new Progress(State.GOOD, good, begun, by, null, null, null);
    }
    if (state == ItemState.LEFT_OUT) {
      return new Progress(State.LEFT_OUT, since, by, null, null, null);
    }
    if (state == ItemState.IN_HAND) {
      long begun = item.begunAt() != null ? item.begunAt() : since;
      return new Progress(State.IN_HAND, Math.min(begun, now), by, null, null, null);
    }
    if (state == ItemState.FAULT) {
      return new Progress(
          State.FAULT,
          since,
          by,
          mend(line.asks()),
          menders(line.asks()),
          item.mender() == null ? null : item.mender().value());
    }
    return Progress.OPEN;
  }

  private static Draw mend(SheetItem asks) {
    if (asks.extra() == null) {
      return FirstSettings.MEND;
    }
    long usual = Math.round(asks.extra().minutes() * MINUTE);
    return new Draw.LogNormal(usual, 2 * usual);
  }

  /** A fault of the set-up is the technician's; any other is mended by those who do the item. */
  private List<String> menders(SheetItem asks) {
    if (asks.section().isSetUp() && planned.test(Role.TECHNICIAN)) {
      return List.of(Role.TECHNICIAN.word());
    }
    return who(asks).isEmpty() ? List.of() : who(asks).get(0);
  }
}
