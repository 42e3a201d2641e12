package sunup.board;

import sunup.board.Morning.Help;
import sunup.board.Outcome.Refused;

/** Holdups taken, help asked and answered, notes. */
final class TalkRules {
  /** Longest key of a holdup. */
  static final int MAX_HOLDUP = 120;

  private TalkRules() {}

  static Outcome takeHoldup(Ask ask, Command.TakeHoldup c) {
    Refused refused = Ask.first(ask.unknown(c.room()), ask.implausible(c.lookAgainAt()));
    if (refused != null) {
      return refused;
    }
    if (c.holdup().isBlank() || c.holdup().length() > MAX_HOLDUP) {
      return Ask.refuse(
          RefusalCode.BAD_COMMAND, "'holdup' must be 1 to " + MAX_HOLDUP + " letters");
    }
    return ask.accept(new Event.HoldupTaken(c.room(), c.holdup(), c.said(), c.lookAgainAt()));
  }

  static Outcome askHelp(Ask ask, Command.AskHelp c) {
    Refused refused = ask.unknown(c.room());
    if (refused != null) {
      return refused;
    }
    Help help = ask.morning.rooms().get(c.room()).help();
    boolean asked = help != null && help.answeredBy() == null && c.what() == null;
    return asked ? ask.accept() : ask.accept(new Event.HelpAsked(c.room(), c.what()));
  }

  static Outcome answerHelp(Ask ask, Command.AnswerHelp c) {
    PersonId by = ask.doer(c.by());
    Refused refused = Ask.first(ask.unknown(c.room()), ask.unknown(by));
    if (refused != null) {
      return refused;
    }
    Help help = ask.morning.rooms().get(c.room()).help();
    if (help == null) {
      return Ask.refuse(
          RefusalCode.TOO_LATE, "Nobody asks for help in room " + c.room() + " any more.");
    }
    if (by == null) {
      return Ask.refuse(RefusalCode.EVIDENCE_MISSING, "Say who goes to room " + c.room() + ".");
    }
    return by.equals(help.answeredBy())
        ? ask.accept()
        : ask.accept(new Event.HelpAnswered(c.room(), by));
  }

  static Outcome note(Ask ask, Command.AddNote c) {
    Refused refused = ask.unknown(c.room());
    if (refused != null) {
      return refused;
    }
    return c.text() == null
        ? Ask.refuse(RefusalCode.BAD_COMMAND, "a note needs 'text'")
        : ask.accept(new Event.Noted(c.room(), c.text()));
  }
}
