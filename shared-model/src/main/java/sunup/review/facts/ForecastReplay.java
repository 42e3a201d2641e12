package sunup.review.facts;

import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import java.util.TreeMap;
import java.util.TreeSet;
import sunup.board.Board;
import sunup.board.Morning;
import sunup.board.Morning.CaseDay;
import sunup.board.Recorded;
import sunup.forecast.BadInput;
import sunup.forecast.Forecast;
import sunup.forecast.Forecaster;
import sunup.outlook.Foretold;
import sunup.outlook.Judged;
import sunup.outlook.Outlook;

/**
 * What today's model says of the moments of a morning whose forecasts nobody kept: from the
 * journal, each moment with what was recorded by then and nothing later. Equal to what the board
 * said if its model is the same; the standing is judged without memory of what was shown before.
 */
public final class ForecastReplay {
  private ForecastReplay() {}

  /**
   * The notes of a morning, in order of time.
   *
   * @param journal all events in order of their sequence
   * @param trials for each forecast
   * @param kept moments that the board itself has a note of: nothing is computed for them
   */
  public static List<ForecastNote> notes(
      List<Recorded> journal, int trials, Set<NotesDue.Key> kept) {
    List<ForecastNote> notes = new ArrayList<>();
    Morning state = Morning.NONE;
    for (Recorded recorded : journal) {
      say(state, state.lastRecordedAt(), recorded.recordedAt(), trials, kept, notes);
      state = Board.apply(state, state.seq() + 1, recorded);
    }
    return notes;
  }

  /** The moments from the last event on and before the next. */
  private static void say(
      Morning state,
      long from,
      long to,
      int trials,
      Set<NotesDue.Key> kept,
      List<ForecastNote> notes) {
    if (state.phase() != Morning.Phase.OPEN || from == to) {
      return;
    }
    TreeMap<Long, TreeSet<String>> moments = new TreeMap<>();
    for (CaseDay day : state.cases().values()) {
      for (int before : BoardSaid.MOMENTS) {
        long at = day.target() - before * FirstCaseFact.MINUTE;
        boolean asked = at >= from && at < to && !day.cancelled();
        if (asked && !kept.contains(NotesDue.Key.of(state.id(), day, before))) {
          moments.computeIfAbsent(at, k -> new TreeSet<>()).add(day.plan().room().value());
        }
      }
    }
    moments.forEach((at, rooms) -> notes.addAll(at(state, at, rooms, trials)));
  }

  private static List<ForecastNote> at(Morning state, long at, Set<String> rooms, int trials) {
    Forecast figures;
    try {
      figures = Forecaster.run(Outlook.input(state, at, trials));
    } catch (BadInput e) {
      return List.of();
    }
    Judged judged =
        Outlook.judge(Judged.NOTHING, state, new Foretold(figures, state.seq(), false), at);
    return figures.rooms().stream()
        .filter(r -> rooms.contains(r.id()))
        .map(
            r ->
                ForecastNote.of(
                    state,
                    figures,
                    r,
                    judged.rooms().get(r.id()).standing(),
                    ForecastNote.Origin.RECOMPUTED))
        .toList();
  }
}
