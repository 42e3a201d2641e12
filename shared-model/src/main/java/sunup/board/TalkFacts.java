package sunup.board;

import sunup.board.Morning.Help;
import sunup.board.Morning.NoteKept;
import sunup.board.Morning.Taken;

/** What holdups taken, help and notes make of the state. */
final class TalkFacts {
  private TalkFacts() {}

  static void holdupTaken(Edit edit, Event.HoldupTaken e) {
    Taken taken = new Taken(e.holdup(), edit.role(), e.said(), e.lookAgainAt(), edit.at());
    edit.room(e.room(), r -> Days.withTaken(r, taken, edit.touch));
  }

  static void helpAsked(Edit edit, Event.HelpAsked e) {
    Help help = new Help(e.what(), edit.role(), edit.at(), null);
    edit.room(e.room(), r -> Days.withHelp(r, help, edit.touch));
  }

  static void helpAnswered(Edit edit, Event.HelpAnswered e) {
    edit.room(
        e.room(),
        r -> r.help() == null ? r : Days.withHelp(r, answered(r.help(), e.by()), edit.touch));
  }

  private static Help answered(Help help, PersonId by) {
    return new Help(help.what(), help.by(), help.at(), by);
  }

  static void noted(Edit edit, Event.Noted e) {
    edit.put(new NoteKept(e.room(), edit.role(), edit.at(), e.text()));
  }
}
