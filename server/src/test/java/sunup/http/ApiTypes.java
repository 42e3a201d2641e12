package sunup.http;

import java.util.List;
import sunup.bedside.CaseAnswer;
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
        BedsideApi.Figures.class,
        BedsideApi.Question.class,
        CaseAnswer.class,
        ReadingsApi.Found.class,
        Health.Status.class,
        Health.Live.class,
        Tried.class,
        TryAsk.class,
        Problem.class);
  }
}
