package sunup.board;

import com.fasterxml.jackson.annotation.JsonInclude;
import com.fasterxml.jackson.annotation.JsonProperty;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import sunup.sheets.ComposedSheet;
import sunup.sheets.SheetItem;

/**
 * The state of one morning: what the events so far make of it. Immutable; maps keep the order in
 * which the plan named things. Items are kept by their owner, so that a touch copies one room's or
 * case's items and not the suite's; read them by {@link #item}, {@link #itemsOf} or {@link
 * #allItems}.
 *
 * @param id suite and date, or null before the first plan
 * @param phase none, draft, open or closed
 * @param seq the journal sequence of the last event applied
 * @param settings the site's decisions
 * @param beginsAt when set-up is planned to begin
 * @param openedAt when the morning was first opened, or null
 * @param closedAt when it was closed, or null
 * @param lastRecordedAt recordedAt of the last event; the next is never before it
 * @param rooms by id, in the wall's order
 * @param cases by id
 * @param people by id
 * @param units by id
 * @param places by id
 * @param sheets composed sheets by hash
 * @param roomItems the items of each room-day by key; also those that its present case does not ask
 *     for
 * @param caseItems the items of each case by key; also those that its present sheet does not ask
 *     for
 * @param notes in order, the newest {@link #MAX_NOTES}
 * @param moves that were ever asked, by {@link Move#key()}
 * @param drugs what was drawn for a case; read it by {@link #drugsOf}
 * @param swaps rooms into which another case was swapped while the morning was open
 * @param learned what its forecasts go by instead of the sheets' durations, or null
 * @param next set-ups of later cases, in the order in which they were begun
 */
public record Morning(
    MorningId id,
    Phase phase,
    long seq,
    SiteSettings settings,
    long beginsAt,
    Long openedAt,
    Long closedAt,
    long lastRecordedAt,
    Map<RoomId, RoomDay> rooms,
    Map<CaseId, CaseDay> cases,
    Map<PersonId, PersonDay> people,
    Map<UnitId, UnitDay> units,
    Map<PlaceId, PlaceDay> places,
    Map<String, ComposedSheet> sheets,
    Map<RoomId, Map<String, Item>> roomItems,
    Map<CaseId, Map<String, Item>> caseItems,
    List<NoteKept> notes,
    @JsonInclude(JsonInclude.Include.NON_EMPTY) Map<String, MoveDay> moves,
    @JsonInclude(JsonInclude.Include.NON_EMPTY) Map<CaseId, CaseDrugs> drugs,
    @JsonInclude(JsonInclude.Include.NON_EMPTY) Map<RoomId, SwapDay> swaps,
    @JsonInclude(JsonInclude.Include.NON_NULL) LearnedTimes learned,
    @JsonInclude(JsonInclude.Include.NON_EMPTY) Map<CaseId, NextCase> next) {

  /** The state keeps so many notes; older ones stay in the journal only. */
  public static final int MAX_NOTES = 500;

  /** Phases of a morning. */
  public enum Phase {
    NONE,
    DRAFT,
    OPEN,
    CLOSED
  }

  /** Before the first event. */
  public static final Morning NONE =
      new Morning(
          null,
          Phase.NONE,
          0,
          null,
          0,
          null,
          null,
          0,
          Collections.emptyMap(),
          Collections.emptyMap(),
          Collections.emptyMap(),
          Collections.emptyMap(),
          Collections.emptyMap(),
          Collections.emptyMap(),
          Collections.emptyMap(),
          Collections.emptyMap(),
          List.of(),
          Collections.emptyMap(),
          Collections.emptyMap(),
          Collections.emptyMap(),
          null,
          Collections.emptyMap());

  /**
   * A room on this morning.
   *
   * @param caseId its first case, or null; a cancelled case stays until another is added
   * @param use what it is used for
   * @param useUntil until when, as expected, or null
   * @param useSince when it was first said to be used so, or null
   * @param last what last touched it (its case, its use, ready, a holdup taken, help)
   * @param lastWordAt when anybody of the room last said anything about its set-up, by happenedAt,
   *     or null; BOARD.md says what counts
   * @param readyAt when it was last reported ready, or null
   * @param readyBy the role that reported it
   * @param readyOpen what was open then
   * @param taken the holdup that somebody has taken, or null
   * @param help the request for help that stands, or null
   * @param entered the last single touches that made items good, at most {@link
   *     TogetherRule#TOUCHES}: from them follows what was entered together
   */
  public record RoomDay(
      RoomId id,
      CaseId caseId,
      RoomUse use,
      Long useUntil,
      Long useSince,
      Touch last,
      Long lastWordAt,
      Long readyAt,
      Role readyBy,
      List<ItemRef> readyOpen,
      Taken taken,
      Help help,
      List<Entered> entered) {
    /** The journal sequence that last touched it. */
    public long revision() {
      return last.revision();
    }
  }

  /** A touch that made an item good. */
  public record Entered(ItemRef item, long at) {}

  /** A holdup that somebody has taken. */
  public record Taken(String holdup, Role by, Private said, Long lookAgainAt, long at) {}

  /** A request for help by a role. {@code answeredBy} is null until somebody goes. */
  public record Help(Private what, Role by, long at, PersonId answeredBy) {}

  /**
   * A first case on this morning.
   *
   * @param plan as it stands now; its room is where the case is now
   * @param agreedAt an agreed later start, or null
   * @param cancelled true if it will not happen
   * @param last what last touched it
   * @param steps when each step of the start chain was reached
   * @param saidBy what said so, for undo
   * @param flagged items that were open when a step happened all the same
   * @param reason the reported cause, or null
   */
  public record CaseDay(
      CasePlan plan,
      Long agreedAt,
      boolean cancelled,
      Touch last,
      Map<Step, Long> steps,
      Map<Step, Said> saidBy,
      List<ItemRef> flagged,
      Reason reason) {
    /** The journal sequence that last touched it. */
    public long revision() {
      return last.revision();
    }

    /** The time that its start is measured against: agreed, or else booked. */
    public long target() {
      return agreedAt != null ? agreedAt : plan.bookedAt();
    }

    /** True if the step, or one that comes after it, has happened. */
    public boolean hasPassed(Step step) {
      for (Step reached : steps.keySet()) {
        if (reached.compareTo(step) >= 0) {
          return true;
        }
      }
      return false;
    }

    /**
     * When a step had been reached at the latest: the earliest time told of it and of those that
     * come after it; null if none was told.
     */
    public Long reachedBy(Step step) {
      return Step.reachedBy(step, steps::get);
    }

    /** When it started: as it was told, or else at the latest by what comes after; or null. */
    public Long startedAt(Step startEvent) {
      Long told = steps.get(startEvent);
      return told != null ? told : reachedBy(startEvent);
    }
  }

  /** The command and the screen that said a step was reached, and what was open then. */
  public record Said(CommandId command, String screen, List<ItemRef> open) {}

  /**
   * A reported cause.
   *
   * @param by the role that gave it
   * @param person who gave it, or null if nobody signed
   * @param at when
   * @param instead what the other side sees, or null
   */
  public record Reason(
      DelayReason reason,
      Private said,
      Role by,
      PersonId person,
      long at,
      boolean agreed,
      DelayReason instead) {}

  /**
   * A person on this morning.
   *
   * @param plan as planned
   * @param arrivedAt or null
   * @param expectedAt another expected time than planned, or null
   * @param room where the person is, or null
   * @param leftAt when the person left the morning, or null
   * @param lastWordAt when the person last reported anything, or null
   */
  public record PersonDay(
      PersonPlan plan,
      Long arrivedAt,
      Long expectedAt,
      RoomId room,
      Long leftAt,
      Long lastWordAt,
      Touch last) {
    /** The journal sequence that last touched it. */
    public long revision() {
      return last.revision();
    }

    public boolean isHere() {
      return arrivedAt != null && leftAt == null;
    }
  }

  /** A piece of equipment: with which room, and to which room the next free one is promised. */
  public record UnitDay(UnitPlan plan, RoomId with, Long since, RoomId promised, Touch last) {
    /** The journal sequence that last touched it. */
    public long revision() {
      return last.revision();
    }
  }

  /** A place and when it opens. */
  public record PlaceDay(PlacePlan plan, long opensAt, Touch last) {
    /** The journal sequence that last touched it. */
    public long revision() {
      return last.revision();
    }
  }

  /** Where a move stands. */
  public enum MoveState {
    @JsonProperty("asked")
    ASKED,
    @JsonProperty("accepted")
    ACCEPTED,
    @JsonProperty("declined")
    DECLINED,
    @JsonProperty("not-safe")
    NOT_SAFE,
    @JsonProperty("done")
    DONE,
    @JsonProperty("withdrawn")
    WITHDRAWN
  }

  /**
   * A move that was asked.
   *
   * @param role who is asked, if it is not one person
   * @param person who is asked, or null
   * @param askedBy by which role
   * @param answeredBy the role that answered last, or null
   */
  public record MoveDay(
      Move move,
      MoveState state,
      Role role,
      PersonId person,
      Role askedBy,
      long askedAt,
      Role answeredBy,
      Long answeredAt,
      Touch last) {
    /** The journal sequence that last touched it. */
    public long revision() {
      return last.revision();
    }

    boolean isAsked() {
      return state == MoveState.ASKED;
    }

    boolean isAskedOf(Command.AskMove again) {
      return role == again.role() && Objects.equals(person, again.person());
    }
  }

  /** A note. */
  public record NoteKept(RoomId room, Role by, long at, Private text) {}

  /** What was drawn for a case, possibly nothing. */
  public CaseDrugs drugsOf(CaseId caseId) {
    CaseDrugs there = drugs.get(caseId);
    return there == null ? CaseDrugs.of(caseId) : there;
  }

  /** The composed sheet of a case, or null. */
  public ComposedSheet sheetOf(CaseDay caseDay) {
    return caseDay == null ? null : sheets.get(caseDay.plan().sheet());
  }

  /** The case in a room, cancelled or not; null if it has none. */
  public CaseDay caseIn(RoomId room) {
    RoomDay day = rooms.get(room);
    return day == null || day.caseId() == null ? null : cases.get(day.caseId());
  }

  /** An item, or null if this morning has no such item. */
  public Item item(ItemRef ref) {
    if (ref == null) {
      return null;
    }
    Map<String, Item> owned =
        ref.room() != null ? roomItems.get(ref.room()) : caseItems.get(ref.caseId());
    return owned == null ? null : owned.get(ref.key());
  }

  /** Where an item is now: case items move with their case. Null if there is no such owner. */
  public RoomId roomOf(ItemRef ref) {
    if (ref.room() != null) {
      return rooms.containsKey(ref.room()) ? ref.room() : null;
    }
    CaseDay day = cases.get(ref.caseId());
    NextCase later = next.get(ref.caseId());
    return day != null ? day.plan().room() : later == null ? null : later.room();
  }

  /** The case that an item is asked for by: its own, or the one in its room; or null. */
  public CaseDay caseOf(ItemRef ref) {
    return ref.room() != null ? caseIn(ref.room()) : cases.get(ref.caseId());
  }

  /** What the present sheet says of an item, or null if it does not ask for it. */
  public SheetItem sheetItem(ItemRef ref) {
    if (ref.caseId() != null && next.containsKey(ref.caseId())) {
      return next.get(ref.caseId()).asks(this, ref.key());
    }
    ComposedSheet sheet = sheetOf(caseOf(ref));
    if (sheet == null) {
      return null;
    }
    SheetItem.Belongs belongs =
        ref.room() != null ? SheetItem.Belongs.ROOM : SheetItem.Belongs.CASE;
    for (SheetItem item : sheet.items()) {
      if (item.belongs() == belongs && item.key().equals(ref.key())) {
        return item;
      }
    }
    return null;
  }

  /** The items that a room's present case asks for, of the room and of the case, in sheet order. */
  public List<Placed> itemsOf(RoomId room) {
    CaseDay day = caseIn(room);
    ComposedSheet sheet = sheetOf(day);
    if (sheet == null) {
      return List.of();
    }
    Map<String, Item> ofRoom = roomItems.getOrDefault(room, Collections.emptyMap());
    Map<String, Item> ofCase = caseItems.getOrDefault(day.plan().id(), Collections.emptyMap());
    List<Placed> list = new ArrayList<>(sheet.items().size());
    for (SheetItem item : sheet.items()) {
      Item kept = (item.belongs() == SheetItem.Belongs.ROOM ? ofRoom : ofCase).get(item.key());
      if (kept != null) {
        list.add(new Placed(kept, item, room));
      }
    }
    return list;
  }

  /** Every item that is kept, rooms first. */
  public List<Item> allItems() {
    List<Item> list = new ArrayList<>();
    roomItems.values().forEach(owned -> list.addAll(owned.values()));
    caseItems.values().forEach(owned -> list.addAll(owned.values()));
    return list;
  }

  /** The state of an item at a moment, with lapses worked out. */
  public ItemState stateOf(Item item, long now) {
    return Lapses.stateOf(this, item, sheetItem(item.ref()), now);
  }

  /** The same for an item whose sheet's line is at hand, without looking for it. */
  public ItemState stateOf(Placed placed, long now) {
    return Lapses.stateOf(this, placed.item(), placed.sheet(), now);
  }

  /**
   * The state of an item at a moment, with lapses worked out.
   *
   * @return null if there is no such item
   */
  public ItemState stateOf(ItemRef ref, long now) {
    Item item = item(ref);
    return item == null ? null : stateOf(item, now);
  }

  /** When an item that is good stops counting, or null if it does not. May lie in the past. */
  public Long lapsesAt(Item item) {
    return Lapses.lapsesAt(this, item, sheetItem(item.ref()));
  }

  /** The same for an item whose sheet's line is at hand, without looking for it. */
  public Long lapsesAt(Placed placed) {
    return Lapses.lapsesAt(this, placed.item(), placed.sheet());
  }

  /**
   * The items that are not good and without which a step may not happen: those that gate it, and
   * those that gate an earlier step which has not happened either. In sheet order.
   */
  public List<Placed> gating(CaseId caseId, Step step, long now) {
    return Gates.gating(this, caseId, step, now);
  }
}
