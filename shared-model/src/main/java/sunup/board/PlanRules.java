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
    return ask.morning.phase() == Phase.OPEN
        ? Ask.refuse(RefusalCode.ALREADY_OPEN, null)
        : ask.accept(new Event.MorningOpened());
  }

  static Outcome close(Ask ask, Command.CloseMorning c) {
    return ask.morning.phase() == Phase.CLOSED
        ? ask.accept()
        : ask.accept(new Event.MorningClosed());
  }
}
