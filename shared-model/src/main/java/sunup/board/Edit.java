package sunup.board;

import java.util.ArrayList;
import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.function.Consumer;
import java.util.function.UnaryOperator;
import sunup.board.Morning.CaseDay;
import sunup.board.Morning.MoveDay;
import sunup.board.Morning.NoteKept;
import sunup.board.Morning.PersonDay;
import sunup.board.Morning.Phase;
import sunup.board.Morning.PlaceDay;
import sunup.board.Morning.RoomDay;
import sunup.board.Morning.UnitDay;
import sunup.sheets.ComposedSheet;

/**
 * The next state of a morning while one event is applied: copies only what the event changes. What
 * an event names and the morning does not have is passed over, so that applying never fails.
 */
final class Edit {
  final Morning from;
  final Recorded recorded;
  final Touch touch;

  MorningId id;
  Phase phase;
  SiteSettings settings;
  long beginsAt;
  Long openedAt;
  Long closedAt;
  LearnedTimes learned;
  private Map<RoomId, RoomDay> rooms;
  private Map<CaseId, CaseDay> cases;
  private Map<PersonId, PersonDay> people;
  private Map<UnitId, UnitDay> units;
  private Map<PlaceId, PlaceDay> places;
  private Map<String, ComposedSheet> sheets;
  private Map<RoomId, Map<String, Item>> roomItems;
  private Map<CaseId, Map<String, Item>> caseItems;
  private List<NoteKept> notes;
  private Map<String, MoveDay> moves;
  private Map<CaseId, CaseDrugs> drugs;
  private Map<RoomId, SwapDay> swaps;
  private Map<CaseId, NextCase> next;

  Edit(Morning from, long seq, Recorded recorded) {
    this.from = from;
    this.recorded = recorded;
    touch = Touch.of(seq, recorded);
    id = from.id();
    phase = from.phase();
    settings = from.settings();
    beginsAt = from.beginsAt();
    openedAt = from.openedAt();
    closedAt = from.closedAt();
    rooms = from.rooms();
    cases = from.cases();
    people = from.people();
    units = from.units();
    places = from.places();
    sheets = from.sheets();
    roomItems = from.roomItems();
    caseItems = from.caseItems();
    notes = from.notes();
    moves = from.moves();
    drugs = from.drugs();
    swaps = from.swaps();
    learned = from.learned();
    next = from.next();
  }

  /** When it happened. */
  long at() {
    return recorded.happenedAt();
  }

  Role role() {
    return recorded.actor() == null ? null : recorded.actor().role();
  }

  PersonId signer() {
    return recorded.actor() == null ? null : recorded.actor().person();
  }

  /** The state as changed so far, for reading. */
  Morning soFar() {
    return new Morning(
        id,
        phase,
        touch.revision(),
        settings,
        beginsAt,
        openedAt,
        closedAt,
        Math.max(from.lastRecordedAt(), recorded.recordedAt()),
        rooms,
        cases,
        people,
        units,
        places,
        sheets,
        roomItems,
        caseItems,
        notes,
        moves,
        drugs,
        swaps,
        learned,
        next);
  }

  Morning done() {
    rooms = sealed(rooms, from.rooms());
    cases = sealed(cases, from.cases());
    people = sealed(people, from.people());
    units = sealed(units, from.units());
    places = sealed(places, from.places());
    sheets = sealed(sheets, from.sheets());
    roomItems = sealed(sealedInside(roomItems, from.roomItems()), from.roomItems());
    caseItems = sealed(sealedInside(caseItems, from.caseItems()), from.caseItems());
    moves = sealed(moves, from.moves());
    drugs = sealed(drugs, from.drugs());
    swaps = sealed(swaps, from.swaps());
    next = sealed(next, from.next());
    return soFar();
  }

  /** Forgets all but the notes: a new plan takes the place of the draft. */
  void startOver() {
    rooms = new LinkedHashMap<>();
    cases = new LinkedHashMap<>();
    people = new LinkedHashMap<>();
    units = new LinkedHashMap<>();
    places = new LinkedHashMap<>();
    sheets = new LinkedHashMap<>();
    roomItems = new LinkedHashMap<>();
    caseItems = new LinkedHashMap<>();
    moves = new LinkedHashMap<>();
    drugs = new LinkedHashMap<>();
    swaps = new LinkedHashMap<>();
    next = new LinkedHashMap<>();
  }

  void put(RoomDay room) {
    rooms = own(rooms, from.rooms());
    rooms.put(room.id(), room);
  }

  void put(CaseDay day) {
    cases = own(cases, from.cases());
    cases.put(day.plan().id(), day);
  }

  void put(PersonDay person) {
    people = own(people, from.people());
    people.put(person.plan().id(), person);
  }

  void put(UnitDay unit) {
    units = own(units, from.units());
    units.put(unit.plan().id(), unit);
  }

  void put(PlaceDay place) {
    places = own(places, from.places());
    places.put(place.plan().id(), place);
  }

  void put(ComposedSheet sheet) {
    sheets = own(sheets, from.sheets());
    sheets.put(sheet.hash(), sheet);
  }

  void put(NoteKept note) {
    List<NoteKept> next = new ArrayList<>(notes);
    next.add(note);
    int drop = Math.max(0, next.size() - Morning.MAX_NOTES);
    notes = List.copyOf(next.subList(drop, next.size()));
  }

  void put(MoveDay move) {
    moves = own(moves, from.moves());
    moves.put(move.move().key(), move);
  }

  void put(NextCase one) {
    next = own(next, from.next());
    next.put(one.id(), one);
  }

  void put(SwapDay swap) {
    swaps = own(swaps, from.swaps());
    swaps.put(swap.room(), swap);
  }

  void put(Item item) {
    ItemRef ref = item.ref();
    if (ref.room() != null) {
      roomItems = own(roomItems, from.roomItems());
      owned(roomItems, from.roomItems(), ref.room()).put(ref.key(), item);
    } else {
      caseItems = own(caseItems, from.caseItems());
      owned(caseItems, from.caseItems(), ref.caseId()).put(ref.key(), item);
    }
  }

  RoomDay room(RoomId room) {
    return rooms.get(room);
  }

  SwapDay swap(RoomId room) {
    return swaps.get(room);
  }

  CaseDay caseDay(CaseId caseId) {
    return cases.get(caseId);
  }

  PersonDay person(PersonId person) {
    return people.get(person);
  }

  Item item(ItemRef ref) {
    if (ref == null) {
      return null;
    }
    Map<String, Item> owned =
        ref.room() != null ? roomItems.get(ref.room()) : caseItems.get(ref.caseId());
    return owned == null ? null : owned.get(ref.key());
  }

  void room(RoomId room, UnaryOperator<RoomDay> change) {
    RoomDay old = rooms.get(room);
    if (old != null) {
      put(change.apply(old));
    }
  }

  void caseDay(CaseId caseId, UnaryOperator<CaseDay> change) {
    CaseDay old = cases.get(caseId);
    if (old != null) {
      put(change.apply(old));
    }
  }

  void person(PersonId person, UnaryOperator<PersonDay> change) {
    PersonDay old = people.get(person);
    if (old != null) {
      put(change.apply(old));
    }
  }

  void unit(UnitId unit, UnaryOperator<UnitDay> change) {
    UnitDay old = units.get(unit);
    if (old != null) {
      put(change.apply(old));
    }
  }

  void drugs(CaseId caseId, UnaryOperator<CaseDrugs> change) {
    CaseDrugs old = drugs.get(caseId);
    drugs = own(drugs, from.drugs());
    drugs.put(caseId, change.apply(old == null ? CaseDrugs.of(caseId) : old));
  }

  /** What was drawn for a case does not go with it to another room. */
  void voidDrugs(CaseId caseId) {
    if (drugs.containsKey(caseId)) {
      drugs(caseId, CaseDrugs::voided);
    }
  }

  void place(PlaceId place, UnaryOperator<PlaceDay> change) {
    PlaceDay old = places.get(place);
    if (old != null) {
      put(change.apply(old));
    }
  }

  /** A touch on an item, which the same screen can take back. */
  void touchItem(ItemRef ref, Consumer<ItemEdit> change) {
    Item old = item(ref);
    if (old != null) {
      ItemEdit edit = new ItemEdit(old, touch, recorded.command());
      change.accept(edit);
      put(edit.touched());
    }
  }

  /** What was made of an item does not count any more, by a decision about its case. */
  void voidItem(ItemRef ref) {
    Item old = item(ref);
    if (old != null) {
      ItemEdit edit = new ItemEdit(old, touch, null);
      edit.clear(at());
      put(edit.settled());
    }
  }

  /** A detail of an item that is no decision on it: revision and undo stay. */
  void asideItem(ItemRef ref, Consumer<ItemEdit> change) {
    Item old = item(ref);
    if (old != null) {
      ItemEdit edit = new ItemEdit(old, touch, null);
      change.accept(edit);
      put(edit.aside());
    }
  }

  private static <K, V> Map<K, V> own(Map<K, V> now, Map<K, V> before) {
    return now == before ? new LinkedHashMap<>(before) : now;
  }

  private static <K> Map<String, Item> owned(
      Map<K, Map<String, Item>> now, Map<K, Map<String, Item>> before, K owner) {
    Map<String, Item> inner = now.get(owner);
    if (inner == null || inner == before.get(owner)) {
      inner = inner == null ? new LinkedHashMap<>() : new LinkedHashMap<>(inner);
      now.put(owner, inner);
    }
    return inner;
  }

  private static <K, V> Map<K, V> sealed(Map<K, V> now, Map<K, V> before) {
    return now == before ? now : Collections.unmodifiableMap(now);
  }

  private static <K> Map<K, Map<String, Item>> sealedInside(
      Map<K, Map<String, Item>> now, Map<K, Map<String, Item>> before) {
    if (now != before) {
      now.replaceAll(
          (owner, items) ->
              items == before.get(owner) ? items : Collections.unmodifiableMap(items));
    }
    return now;
  }
}
