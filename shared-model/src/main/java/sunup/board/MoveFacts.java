package sunup.board;

import sunup.board.Morning.MoveDay;
import sunup.board.Morning.MoveState;

/** What events about moves make of the state. */
final class MoveFacts {
  private MoveFacts() {}

  static void asked(Edit edit, Event.MoveAsked e) {
    edit.put(
        new MoveDay(
            e.move(),
            MoveState.ASKED,
            e.role(),
            e.person(),
            edit.role(),
            edit.at(),
            null,
            null,
            edit.touch));
  }

  static void accepted(Edit edit, Event.MoveAccepted e) {
    answered(edit, e.move(), MoveState.ACCEPTED);
  }

  static void declined(Edit edit, Event.MoveDeclined e) {
    answered(edit, e.move(), e.notSafe() ? MoveState.NOT_SAFE : MoveState.DECLINED);
  }

  static void done(Edit edit, Event.MoveDone e) {
    answered(edit, e.move(), MoveState.DONE);
  }

  static void withdrawn(Edit edit, Event.MoveWithdrawn e) {
    answered(edit, e.move(), MoveState.WITHDRAWN);
  }

  private static void answered(Edit edit, String key, MoveState state) {
    MoveDay was = edit.from.moves().get(key);
    if (was != null) {
      edit.put(
          new MoveDay(
              was.move(),
              state,
              was.role(),
              was.person(),
              was.askedBy(),
              was.askedAt(),
              edit.role(),
              edit.at(),
              edit.touch));
    }
  }
}
