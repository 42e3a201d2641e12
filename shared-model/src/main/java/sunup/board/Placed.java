package sunup.board;

import sunup.sheets.SheetItem;

/** An item with what its sheet says of it and where it is now. */
public record Placed(Item item, SheetItem sheet, RoomId room) {
  public ItemRef ref() {
    return item.ref();
  }
}
