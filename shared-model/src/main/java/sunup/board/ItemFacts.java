package sunup.board;

import java.util.List;
import sunup.board.Morning.CaseDay;
import sunup.board.Morning.Entered;
import sunup.board.Morning.RoomDay;

/** What events about items make of the state. */
final class ItemFacts {
  private ItemFacts() {}

  static void begun(Edit edit, Event.ItemBegun e) {
    edit.touchItem(
        e.item(),
        i -> {
          i.state = ItemState.IN_HAND;
          i.since = edit.at();
          i.begunAt = edit.at();
          i.by = e.by();
          i.witness = null;
          i.evidence = null;
          i.what = null;
          i.together = false;
        });
    Words.ofItem(edit, e.item(), e.by());
  }

  static void good(Edit edit, Event.ItemGood e) {
    boolean together = e.flags() != null && e.flags().contains(TogetherRule.FLAG);
    makeGood(edit, e.item(), e.evidence(), e.by(), e.witness(), together);
    RoomId room = edit.soFar().roomOf(e.item());
    RoomDay day = room == null ? null : edit.room(room);
    if (day != null) {
      List<Entered> entered = TogetherRule.after(day.entered(), new Entered(e.item(), edit.at()));
      edit.put(Days.withEntered(day, entered));
      if (together) {
        for (Entered one : entered) {
          edit.asideItem(one.item(), i -> i.together |= i.state == ItemState.GOOD);
        }
      }
    }
    Words.ofItem(edit, e.item(), e.by());
  }

  static void swept(Edit edit, Event.SectionSwept e) {
    boolean together = e.items().size() > 1;
    for (ItemRef ref : e.items()) {
      makeGood(edit, ref, new Evidence.Swept(), e.by(), null, together);
    }
    if (!e.items().isEmpty()) {
      Words.ofItem(edit, e.items().get(0), e.by());
    }
  }

  private static void makeGood(
      Edit edit, ItemRef ref, Evidence evidence, PersonId by, PersonId witness, boolean together) {
    edit.touchItem(
        ref,
        i -> {
          boolean begunBefore =
              i.state == ItemState.IN_HAND && i.begunAt != null && i.begunAt <= edit.at();
          i.begunAt = begunBefore ? i.begunAt : null;
          i.state = ItemState.GOOD;
          i.since = edit.at();
          i.by = by;
          i.witness = witness;
          i.evidence = evidence;
          i.what = null;
          i.mender = null;
          i.expectedAt = null;
          i.together = together;
        });
  }

  static void witnessed(Edit edit, Event.ItemWitnessed e) {
    Item item = edit.item(e.item());
    boolean second =
        item != null && item.witness() == null && e.by() != null && !e.by().equals(item.by());
    if (second) {
      edit.asideItem(e.item(), i -> i.witness = e.by());
    }
    Words.ofItem(edit, e.item(), e.by());
  }

  static void faulted(Edit edit, Event.ItemFaulted e) {
    edit.touchItem(
        e.item(),
        i -> {
          boolean already = i.state == ItemState.FAULT;
          if (!already) {
            i.clear(edit.at());
            i.state = ItemState.FAULT;
          }
          i.by = edit.signer();
          i.evidence = e.reading() != null ? e.reading() : i.evidence;
          i.what = e.what() != null ? e.what() : i.what;
        });
    Words.ofItem(edit, e.item(), null);
  }

  static void faultTaken(Edit edit, Event.FaultTaken e) {
    edit.touchItem(e.item(), i -> i.mender = e.by());
  }

  static void mended(Edit edit, Event.ItemMended e) {
    edit.touchItem(e.item(), i -> i.clear(edit.at()));
    Words.ofItem(edit, e.item(), null);
  }

  static void reopened(Edit edit, Event.ItemReopened e) {
    edit.touchItem(
        e.item(),
        i -> {
          i.clear(edit.at());
          i.what = e.why();
        });
  }

  static void leftOut(Edit edit, Event.ItemLeftOut e) {
    edit.touchItem(
        e.item(),
        i -> {
          i.clear(edit.at());
          i.state = ItemState.LEFT_OUT;
          i.by = edit.signer();
          i.what = e.reason();
        });
  }

  static void expected(Edit edit, Event.ItemExpected e) {
    edit.touchItem(
        e.item(),
        i -> {
          i.expectedAt = e.at();
          boolean free = i.state == ItemState.OPEN || i.state == ItemState.IN_HAND;
          i.what = free ? e.said() : i.what;
        });
  }

  static void kept(Edit edit, Event.WordKept e) {
    Words.ofItem(edit, e.item(), null);
  }

  static void undone(Edit edit, Event.TouchUndone e) {
    for (ItemRef ref : e.items()) {
      Item item = edit.item(ref);
      if (item != null && item.before() != null) {
        edit.put(ItemEdit.restored(item.before(), edit.touch));
      }
    }
    for (CaseDay day : List.copyOf(edit.from.cases().values())) {
      StartFacts.takenBack(edit, day, e.undone());
    }
  }
}
