package sunup.review.replay;

import sunup.board.Morning;
import sunup.board.PlaceId;
import sunup.outlook.Outlook;
import sunup.review.facts.Cause;
import sunup.review.facts.ForecastNote;
import sunup.sheets.ComposedSheet;
import sunup.sheets.SheetItem;
import sunup.wire.Part.NeedPart;

/**
 * Holdups as the log keeps them: what it was, and not until when, which was not kept. So a line of
 * a past wall says no time that nobody said.
 */
final class PastWords {
  private PastWords() {}

  /** A line that rests on figures, in words without their times; others as they are. */
  static NeedPart timeless(NeedPart need, Morning state, ForecastNote note) {
    boolean figured = need.kind().equals("late") || need.kind().equals("tight");
    if (!figured) {
      return need;
    }
    String words =
        note == null
            ? "several small things"
            : note.named().stream()
                .map(ForecastNote.Named::cause)
                .filter(c -> !c.kind().equals("plan"))
                .findFirst()
                .map(c -> words(c, state, note))
                .orElse("several small things");
    return new NeedPart(
        need.key(),
        need.rank(),
        need.room(),
        need.kind(),
        need.minutes(),
        need.orMore(),
        need.saveable(),
        words,
        need.holdup(),
        need.help(),
        need.takenBy(),
        need.lookAgainAt());
  }

  private static String words(Cause cause, Morning state, ForecastNote note) {
    SheetItem item = item(cause, state, note);
    boolean place = cause.kind().equals("place") && cause.thing() != null;
    String thing = place ? place(cause.thing(), state) : cause.thing();
    return Outlook.timeless(cause.kind(), item == null ? null : item.wall(), thing);
  }

  private static SheetItem item(Cause cause, Morning state, ForecastNote note) {
    Morning.CaseDay day = state.caseIn(note.room());
    ComposedSheet sheet = day == null ? null : state.sheets().get(day.plan().sheet());
    return sheet == null || cause.item() == null
        ? null
        : sheet.items().stream().filter(i -> i.key().equals(cause.item())).findFirst().orElse(null);
  }

  private static String place(String id, Morning state) {
    Morning.PlaceDay place = state.places().get(new PlaceId(id));
    return place == null ? id : place.plan().wall();
  }
}
