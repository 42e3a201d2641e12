package sunup.board;

/** The next state of one item while it is being put together. */
final class ItemEdit {
  private final Item old;
  private final Touch touch;
  private final CommandId command;
  ItemState state;
  long since;
  Long notBefore;
  Long begunAt;
  PersonId by;
  PersonId witness;
  Evidence evidence;
  Private what;
  PersonId mender;
  Long expectedAt;
  boolean together;

  ItemEdit(Item old, Touch touch, CommandId command) {
    this.old = old;
    this.touch = touch;
    this.command = command;
    state = old.state();
    since = old.since();
    notBefore = old.notBefore();
    begunAt = old.begunAt();
    by = old.by();
    witness = old.witness();
    evidence = old.evidence();
    what = old.what();
    mender = old.mender();
    expectedAt = old.expectedAt();
    together = old.together();
  }

  /** Nothing that was said of it counts any more; words older than {@code at} have no effect. */
  void clear(long at) {
    state = ItemState.OPEN;
    since = at;
    notBefore = notBefore == null ? at : Math.max(notBefore, at);
    begunAt = null;
    by = null;
    witness = null;
    evidence = null;
    what = null;
    mender = null;
    expectedAt = null;
    together = false;
  }

  /** The item as a touch leaves it: the command can be taken back. */
  Item touched() {
    Item before =
        command != null && command.equals(old.command()) && old.before() != null
            ? old.before()
            : bare(old);
    return build(touch, command, before);
  }

  /** The item as a decision about its case leaves it: not to be taken back by itself. */
  Item settled() {
    return build(touch, null, null);
  }

  /** The item with a detail changed that nobody decided on: same revision, same undo. */
  Item aside() {
    return build(old.last(), old.command(), old.before());
  }

  /** What an item goes back to when a touch is undone. */
  static Item restored(Item before, Touch touch) {
    return new ItemEdit(before, touch, null).settled();
  }

  private static Item bare(Item item) {
    return new ItemEdit(item, item.last(), null).build(item.last(), null, null);
  }

  private Item build(Touch last, CommandId from, Item before) {
    return new Item(
        old.ref(),
        state,
        last,
        since,
        notBefore,
        begunAt,
        by,
        witness,
        evidence,
        what,
        mender,
        expectedAt,
        together,
        from,
        before);
  }
}
