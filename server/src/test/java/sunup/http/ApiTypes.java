package sunup.http;

import java.util.List;
import sunup.archive.Archivist;
import sunup.archive.FactFigures;
import sunup.bedside.CaseAnswer;
import sunup.review.charts.Lateness;
import sunup.review.charts.RoomByWeekday;
import sunup.review.learn.Closing;
import sunup.review.replay.PastWall;
import sunup.review.trial.Trial;
import sunup.wire.Tried;
import sunup.wire.TryAsk;

/** The records of the API that only this package knows. */
public final class ApiTypes {
  private ApiTypes() {}

  public static List<Class<?>> all() {
    return List.of(
        IntakeApi.Taken.class,
        SiteApi.Site.class,
        SiteApi.SuiteNames.class,
        SheetsApi.Overview.class,
        SheetsApi.Draft.class,
        SheetsApi.Checked.class,
        SheetsApi.ToPublish.class,
        SheetsApi.Done.class,
        BedsideApi.Figures.class,
        BedsideApi.Question.class,
        CaseAnswer.class,
        ReadingsApi.Found.class,
        FactFigures.Choices.class,
        Closing.class,
        PastWall.class,
        ReviewApi.Closed.class,
        ReviewApi.Summary.class,
        ReviewApi.Groups.class,
        ReviewApi.Shares.class,
        ReviewApi.Minutes.class,
        ReviewCauses.Causes.class,
        ReviewCauses.Apart.class,
        ReviewCausesCompared.Compared.class,
        ReviewApi.Rows.class,
        ReviewApi.Reasons.class,
        RoomByWeekday.class,
        Lateness.class,
        ReviewCompare.Compared.class,
        Trial.class,
        ReviewApi.TrialsApart.class,
        Archivist.Progress.class,
        ReviewApi.Taken.class,
        Health.Status.class,
        Health.Live.class,
        Tried.class,
        TryAsk.class,
        Problem.class);
  }
}
