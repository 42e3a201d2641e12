package sunup.ops;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.LocalDate;
import java.util.List;
import sunup.board.MorningPlan;
import sunup.codec.BadJson;
import sunup.codec.Problem;
import sunup.intake.CaseList;
import sunup.intake.CaseListResult;
import sunup.intake.Planner;
import sunup.intake.SiteFile;
import sunup.intake.SiteReader;
import sunup.ops.madeup.Gauges;
import sunup.ops.madeup.Scenario;
import sunup.ops.rehearsal.Script;
import sunup.ops.rehearsal.Story;
import sunup.sheets.Sheets;

/**
 * A hospital with a case list and a story, to be rehearsed.
 *
 * @param cases the case list as it is in its file, CSV
 * @param past what its mornings before were like; null for one without a past
 */
record Demo(SiteFile site, String cases, Story story, Scenario past) {
  /** The invented hospital that comes with the program, as its files are in the folder. */
  static Demo in(DemoFolder folder) throws IOException, Wrong {
    Demo demo = read(folder.file("site.json"), folder.file("cases.csv"), folder.file("story.json"));
    Path past = folder.file("past.json");
    try {
      return new Demo(demo.site, demo.cases, demo.story, Scenario.read(text(past)));
    } catch (BadJson e) {
      throw Wrong.input(past + ": " + e.getMessage());
    }
  }

  /**
   * @param storyFile null if nothing special happens
   */
  static Demo read(Path siteFile, Path caseFile, Path storyFile) throws IOException, Wrong {
    try {
      Story story = storyFile == null ? Story.PLAIN : Story.read(text(storyFile));
      return of(siteFile.toString(), text(siteFile), text(caseFile), story);
    } catch (BadJson e) {
      throw Wrong.input(storyFile + ": " + e.getMessage());
    }
  }

  /**
   * @param name of the site's file, for what is wrong in it
   */
  static Demo of(String name, String site, String cases, Story story) throws Wrong {
    SiteReader.Result read = SiteReader.read(name, site);
    if (read.site() == null) {
      throw wrong(Path.of(name), read.problems());
    }
    return new Demo(read.site(), cases, story, null);
  }

  private static String text(Path file) throws IOException, Wrong {
    if (!Files.isReadable(file)) {
      throw Wrong.input(file + " can't be read.");
    }
    return Files.readString(file);
  }

  /** The plan of a morning, as taking the case list makes it. */
  MorningPlan plan(LocalDate date) throws Wrong {
    CaseListResult list =
        CaseList.read(cases.getBytes(StandardCharsets.UTF_8), site, date, Sheets.standard());
    if (!list.problems().isEmpty()) {
      throw wrong(Path.of("the case list"), list.problems());
    }
    Planner.Planned planned = Planner.plan(site, list.cases(), date);
    if (planned.plan() == null) {
      throw wrong(Path.of("the case list"), planned.problems());
    }
    return planned.plan();
  }

  /** The morning as it is played from a seed. */
  Script script(LocalDate date, long seed) throws Wrong {
    try {
      MorningPlan plan = plan(date);
      return Script.write(plan, past == null ? story : story.showing(gauges(plan, seed)), seed);
    } catch (IllegalArgumentException e) {
      throw Wrong.input(e.getMessage());
    }
  }

  /** Its machines go on as their past went. */
  private List<Story.Shows> gauges(MorningPlan plan, long seed) {
    return new Gauges(seed, past.before(plan.id().date(), 1, seed).leaks()).on(plan);
  }

  private static Wrong wrong(Path file, List<Problem> problems) {
    StringBuilder text = new StringBuilder(file + " can't be used:");
    problems.forEach(p -> text.append(System.lineSeparator()).append("  ").append(p));
    return Wrong.input(text.toString());
  }
}
