package sunup.ops.madeup;

import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.time.LocalDate;
import sunup.board.MorningPlan;
import sunup.codec.BadJson;
import sunup.intake.CaseList;
import sunup.intake.Planner;
import sunup.intake.SiteFile;
import sunup.intake.SiteReader;
import sunup.sheets.Sheets;

/** The demo's hospital and what the invented year hides, as they come with the program. */
public final class DemoPlans {
  private DemoPlans() {}

  /** The demo's case list, planned for a date. */
  public static MorningPlan of(LocalDate date) throws IOException {
    SiteFile site = SiteReader.read("site.json", text("/demo/site.json")).site();
    byte[] cases = text("/demo/cases.csv").getBytes(StandardCharsets.UTF_8);
    return Planner.plan(site, CaseList.read(cases, site, date, Sheets.standard()).cases(), date)
        .plan();
  }

  /** What the invented year hides. */
  public static Scenario hidden() throws IOException, BadJson {
    return Scenario.read(text("/year/hidden.json"));
  }

  static String text(String name) throws IOException {
    try (InputStream in = DemoPlans.class.getResourceAsStream(name)) {
      return new String(in.readAllBytes(), StandardCharsets.UTF_8);
    }
  }
}
