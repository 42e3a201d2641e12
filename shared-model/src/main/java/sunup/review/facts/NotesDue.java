package sunup.review.facts;

import java.util.ArrayList;
import java.util.List;
import java.util.function.Function;
import sunup.board.CaseId;
import sunup.board.Morning;
import sunup.board.MorningId;
import sunup.board.RoomId;
import sunup.forecast.Forecast;
import sunup.forecast.Forecast.RoomOut;
import sunup.wire.Standing;

/** Which lines of the forecast log the figures that are shown give. */
public final class NotesDue {
  private NotesDue() {}

  /**
   * What there is one line of.
   *
   * @param minutesBefore the target: one of {@link BoardSaid#MOMENTS}
   */
  public record Key(MorningId morning, RoomId room, CaseId caseId, long target, int minutesBefore) {
    /** That of a case at one of its moments. */
    static Key of(MorningId morning, Morning.CaseDay day, int minutesBefore) {
      return new Key(morning, day.plan().room(), day.plan().id(), day.target(), minutesBefore);
    }

    /** That of a note. */
    public static Key of(ForecastNote note) {
      long left = note.target() - note.at();
      int minutes = (int) -Math.floorDiv(-left, FirstCaseFact.MINUTE);
      return new Key(note.morning(), note.room(), note.caseId(), note.target(), minutes);
    }
  }

  /**
   * The lines of rooms that figures of the first minute from one of their moments on were shown of.
   *
   * @param state that the figures were computed from
   * @param figures as they were shown
   * @param standing of a room as it was shown, or null
   */
  public static List<ForecastNote> of(
      Morning state, Forecast figures, Function<String, Standing> standing) {
    List<ForecastNote> due = new ArrayList<>();
    if (state.phase() != Morning.Phase.OPEN) {
      return due;
    }
    for (RoomOut out : figures.rooms()) {
      Morning.CaseDay day = state.caseIn(new RoomId(out.id()));
      if (day != null && !day.cancelled() && isDue(day.target() - figures.now())) {
        due.add(
            ForecastNote.of(
                state, figures, out, standing.apply(out.id()), ForecastNote.Origin.LOGGED));
      }
    }
    return due;
  }

  /** The moment counts for a minute, as long as a note of it does. */
  private static boolean isDue(long left) {
    for (int before : BoardSaid.MOMENTS) {
      long since = before * FirstCaseFact.MINUTE - left;
      if (since >= 0 && since < FirstCaseFact.MINUTE) {
        return true;
      }
    }
    return false;
  }
}
