package sunup.board;

import sunup.board.Morning.Phase;

/** A morning planned, opened, closed. */
final class PlanRules {
  /** After closing a morning still takes commands for so long. */
  static final long TAKES_AFTER_CLOSING_MS = 7L * 24 * 60 * 60_000;

  private PlanRules() {}

  static Outcome plan(Ask ask, Command.Plan c) {
    Phase phase = ask.morning.phase();
    if (phase == Phase.OPEN || phase == Phase.CLOSED) {
      return Ask.refuse(RefusalCode.ALREADY_OPEN, null);
    }
    String problem = PlanCheck.problem(c.plan(), ask.morning.id());
    return problem != null
        ? Ask.refuse(RefusalCode.BAD_PLAN, problem)
        : ask.accept(new Event.MorningPlanned(c.plan()));
  }

  static Outcome open(Ask ask, Command.OpenMorning c) {
    if (ask.morning.phase() == Phase.OPEN) {
      return Ask.refuse(RefusalCode.ALREADY_OPEN, null);
    }
    LearnedTimes learned = ask.order.learned();
    // One that is opened again goes on by what it went by, and no morning by what came after it.
    boolean counts =
        learned != null
            && learned.teaches()
            && ask.morning.openedAt() == null
            && ask.morning.id() != null
            && learned.upTo().isBefore(ask.morning.id().date());
    return counts
        ? ask.accept(new Event.MorningOpened(), new Event.LessonsFrozen(learned))
        : ask.accept(new Event.MorningOpened());
  }

  static Outcome close(Ask ask, Command.CloseMorning c) {
    return ask.morning.phase() == Phase.CLOSED
        ? ask.accept()
        : ask.accept(new Event.MorningClosed());
  }
}
