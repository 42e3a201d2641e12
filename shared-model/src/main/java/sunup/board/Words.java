package sunup.board;

import sunup.sheets.SheetItem;

/**
 * Whose word was heard when: what silence is measured from. A room was heard from when one of the
 * room's people (not the desk, holding, porter, cleaner, pharmacy) said something of its own
 * set-up: arrived at it, reported it ready, told that a step from wheels in on was reached, or
 * observed one of its items outside the patient's and the surgeon's sections. A person was heard
 * from by any of these observations, wherever it was. Both by happenedAt.
 */
final class Words {
  private Words() {}

  /** An observation of an item, by whoever did it or told it. */
  static void ofItem(Edit edit, ItemRef ref, PersonId by) {
    ofPeople(edit, by);
    Morning morning = edit.soFar();
    SheetItem sheet = morning.sheetItem(ref);
    boolean aboutPeople =
        sheet != null && (sheet.section() == Section.PATIENT || sheet.section() == Section.SURGEON);
    RoomId room = morning.roomOf(ref);
    if (!aboutPeople && room != null) {
      fromTeam(edit, room);
    }
  }

  /** An observation of the room as a whole. */
  static void ofRoom(Edit edit, RoomId room) {
    ofPeople(edit, null);
    fromTeam(edit, room);
  }

  /** A person was heard from, but the room was not spoken of. */
  static void ofPeople(Edit edit, PersonId by) {
    PersonId signer = edit.signer();
    if (signer != null) {
      edit.person(signer, p -> Days.withWord(p, edit.at()));
    }
    if (by != null && !by.equals(signer)) {
      edit.person(by, p -> Days.withWord(p, edit.at()));
    }
  }

  private static void fromTeam(Edit edit, RoomId room) {
    Role role = edit.role();
    if (role != null && Rights.ROOM_TEAM.contains(role)) {
      edit.room(room, r -> Days.withWord(r, edit.at()));
    }
  }
}
