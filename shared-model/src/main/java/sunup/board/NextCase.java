package sunup.board;

import java.util.ArrayList;
import java.util.List;
import sunup.sheets.ComposedSheet;
import sunup.sheets.SheetItem;

/**
 * The set-up of a room's next case. The board follows first cases: a later one has no target, no
 * steps and no forecast here, only what is made ready for it. All of its items are its own, the
 * machine's too, so that what was recorded of the case before stays as it was.
 *
 * @param id names its items: {@code case:7.2/machine.circuit}
 * @param room where it is set up
 * @param like the first case of this morning by whose list it goes
 * @param technique of that list
 * @param options of that list
 * @param sheet hash of that list; what is asked is its set-up
 * @param carried keys of what was good for the case before and outlasts it
 * @param last what began it
 */
public record NextCase(
    CaseId id,
    RoomId room,
    CaseId like,
    String technique,
    List<String> options,
    String sheet,
    List<String> carried,
    Touch last) {

  /** The set-up that was begun last in a room, or null. */
  public static NextCase newestIn(Morning morning, RoomId room) {
    NextCase newest = null;
    for (NextCase one : morning.next().values()) {
      newest = one.room().equals(room) ? one : newest;
    }
    return newest;
  }

  /** The items of the set-up that was begun last in a room; none if there is none. */
  static List<Placed> newestItems(Morning morning, RoomId room) {
    NextCase newest = newestIn(morning, room);
    return newest == null ? List.of() : newest.items(morning);
  }

  /** What of a list is set up for a later case: no steps, nobody's coming, no track beside. */
  static List<SheetItem> setUpOf(ComposedSheet sheet) {
    return sheet.items().stream()
        .filter(i -> i.section().isSetUp() && i.marks() == null && !i.isArrival())
        .toList();
  }

  /** What its list says of one of its items, or null if it does not ask for it. */
  SheetItem asks(Morning morning, String key) {
    for (SheetItem item : setUpOf(morning.sheets().get(sheet))) {
      if (item.key().equals(key)) {
        return item;
      }
    }
    return null;
  }

  /** Its items, in the order of its list. */
  public List<Placed> items(Morning morning) {
    List<Placed> list = new ArrayList<>();
    for (SheetItem asks : setUpOf(morning.sheets().get(sheet))) {
      Item item = morning.item(ItemRef.of(id, asks.key()));
      if (item != null) {
        list.add(new Placed(item, asks, room));
      }
    }
    return list;
  }

  /** True if nothing was said of an item since it came over from the case before. */
  public boolean isCarried(Item item) {
    return carried.contains(item.ref().key())
        && item.state() == ItemState.GOOD
        && item.revision() == last.revision();
  }

  /** True if nobody has said anything of it yet. */
  boolean isUntouched(Morning morning) {
    return items(morning).stream().allMatch(i -> i.item().revision() == last.revision());
  }

  /**
   * What the next case in a room would find of a key: how it stands for the case before it.
   *
   * @return null if nothing is known of it
   */
  static Item before(Morning morning, RoomId room, String key) {
    NextCase newest = newestIn(morning, room);
    Item own = newest == null ? null : morning.item(ItemRef.of(newest.id(), key));
    return own != null ? own : morning.item(ItemRef.of(room, key));
  }
}
