package sunup.live;

import java.util.List;
import sunup.board.Morning;
import sunup.board.MorningId;
import sunup.board.SiteSettings;
import sunup.forecast.Forecast;
import sunup.forecast.Run;
import sunup.moves.Ideas;
import sunup.moves.MoveSearch;
import sunup.outlook.Foretold;
import sunup.outlook.Judged;
import sunup.outlook.Outlook;
import sunup.review.facts.ForecastNote;
import sunup.review.facts.NotesDue;
import sunup.wire.Part;

/**
 * The board's own sight: the forecast and the outlook.
 *
 * @param site what is said of a morning that nobody has planned yet
 * @param rate morning seconds per real second
 */
public record OutlookSight(SiteSettings site, double rate) implements Sight {
  /** So long before its set-up begins a draft gets figures: nothing is known earlier. */
  private static final long FORECAST_FROM_MS = 36 * 3_600_000L;

  /** True while there is something to forecast, near enough for anything to be known of it. */
  public static boolean hasFigures(Morning state, long now) {
    boolean goesOn = state.phase() == Morning.Phase.DRAFT || state.phase() == Morning.Phase.OPEN;
    boolean isNear = state.beginsAt() - now <= FORECAST_FROM_MS;
    return goesOn && isNear && !state.cases().isEmpty();
  }

  @Override
  public Figuring figuring(Morning state, long now, int trialsMost) {
    if (!hasFigures(state, now)) {
      return null;
    }
    Run run = new Run(Outlook.input(state, now, trialsMost));
    return new Figuring() {
      @Override
      public Runnable sharing(int upTo) {
        return run.sharing(upTo);
      }

      @Override
      public Runnable reading() {
        return run.reading();
      }

      @Override
      public Forecast result() {
        return run.result();
      }
    };
  }

  @Override
  public Searching searching(Morning state, Forecast of) {
    if (state.phase() != Morning.Phase.OPEN) {
      return null;
    }
    MoveSearch search =
        new MoveSearch(
            Outlook.input(state, of.now(), MoveSearch.SCREEN_TRIALS),
            Outlook.free(state, of.now()),
            of,
            Outlook.movesOff(state, of.now()));
    return new Searching() {
      @Override
      public boolean advance() {
        return search.advance();
      }

      @Override
      public Ideas result() {
        return search.result();
      }
    };
  }

  @Override
  public Seen see(MorningId morning, Object before, Morning state, Foretold figures, long now) {
    if (state.phase() == Morning.Phase.NONE) {
      return new Seen(null, List.of(nothingPlanned(morning)));
    }
    Judged last = before == null ? Judged.NOTHING : (Judged) before;
    Judged judged = Outlook.judge(last, state, figures, now, rate);
    return new Seen(judged, Outlook.parts(state, figures, judged, now));
  }

  @Override
  public List<ForecastNote> due(Object memory, Morning state, Forecast figures) {
    Judged judged = (Judged) memory;
    return NotesDue.of(
        state,
        figures,
        room -> judged.rooms().containsKey(room) ? judged.rooms().get(room).standing() : null);
  }

  private Part nothingPlanned(MorningId morning) {
    return new Part.SuitePart(
        "suite",
        site.hospital(),
        site.suiteName(),
        morning.date().toString(),
        site.zone(),
        "none",
        site.startEvent(),
        site.graceMinutes(),
        null,
        0,
        0,
        0,
        null,
        site.demo(),
        site.style());
  }
}
