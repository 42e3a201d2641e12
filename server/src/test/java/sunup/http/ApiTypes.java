package sunup.http;

import java.util.List;

/** The records of the API that only this package knows. */
public final class ApiTypes {
  private ApiTypes() {}

  public static List<Class<?>> all() {
    return List.of(
        IntakeApi.Taken.class,
        SiteApi.Site.class,
        SiteApi.SuiteNames.class,
        Health.Status.class,
        Health.Live.class,
        Problem.class);
  }
}
