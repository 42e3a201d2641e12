package sunup.board;

import sunup.sheets.ComposedSheet;
import sunup.sheets.SheetItem;

/** What the beginning of a next case's set-up makes of the state. */
final class NextCaseFacts {
  private NextCaseFacts() {}

  static void begun(Edit edit, Event.NextCaseBegun e) {
    Morning before = edit.from;
    ComposedSheet sheet = before.sheets().get(e.sheet());
    if (sheet == null || edit.room(e.room()) == null) {
      return;
    }
    edit.put(
        new NextCase(
            e.id(),
            e.room(),
            e.like(),
            e.technique(),
            e.options(),
            e.sheet(),
            e.carried(),
            edit.touch));
    for (SheetItem asks : NextCase.setUpOf(sheet)) {
      ItemRef ref = ItemRef.of(e.id(), asks.key());
      Item was =
          e.carried().contains(asks.key()) ? NextCase.before(before, e.room(), asks.key()) : null;
      edit.put(was == null ? Item.open(ref, edit.touch) : carried(was, ref, edit.touch));
    }
  }

  /** Good since it was looked at, and by whom: a life goes on, it does not begin anew. */
  private static Item carried(Item was, ItemRef ref, Touch touch) {
    return new Item(
        ref,
        ItemState.GOOD,
        touch,
        was.since(),
        null,
        null,
        was.by(),
        was.witness(),
        was.evidence(),
        null,
        null,
        null,
        was.together(),
        null,
        null);
  }
}
