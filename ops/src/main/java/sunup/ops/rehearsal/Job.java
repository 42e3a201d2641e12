package sunup.ops.rehearsal;

import java.util.ArrayList;
import java.util.EnumSet;
import java.util.List;
import java.util.Set;
import sunup.board.ItemRef;
import sunup.board.PersonId;
import sunup.board.Role;
import sunup.sheets.SheetItem;

/** One item as it truly stands. */
final class Job {
  /** True states; what was reported of it is another matter. */
  enum State {
    OPEN,
    IN_HAND,
    WAITING,
    GOOD,
    BROKEN
  }

  final Theatre room;
  final SheetItem item;
  final ItemRef ref;

  /** The roles of which somebody can take part in it. */
  final Set<Role> wanted = EnumSet.noneOf(Role.class);

  State state = State.OPEN;
  List<Worker> hands = List.of();

  /** Since when nothing but people was missing, or null. */
  Long wantedSince;

  long endsAt;
  int occurrence;
  Story.Broken broken;
  long brokeAt;
  Worker mender;
  final List<World.Unit> holds = new ArrayList<>();

  Job(Theatre room, SheetItem item) {
    this.room = room;
    this.item = item;
    this.ref =
        item.belongs() == SheetItem.Belongs.ROOM
            ? ItemRef.of(room.id, item.key())
            : ItemRef.of(room.plan.id(), item.key());
    item.who().forEach(wanted::addAll);
  }

  String name() {
    return ref + "#" + occurrence;
  }

  List<PersonId> named() {
    return hands.stream().map(w -> w.id).filter(id -> id != null).toList();
  }
}
