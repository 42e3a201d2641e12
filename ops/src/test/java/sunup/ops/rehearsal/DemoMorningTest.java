package sunup.ops.rehearsal;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;
import sunup.access.Page;
import sunup.board.Actor;
import sunup.board.Board;
import sunup.board.Command;
import sunup.board.CommandId;
import sunup.board.Morning;
import sunup.board.MorningPlan;
import sunup.board.Order;
import sunup.board.Outcome;
import sunup.board.Recorded;
import sunup.board.Role;
import sunup.board.Step;
import sunup.codec.BadJson;
import sunup.intake.CaseList;
import sunup.intake.Planner;
import sunup.intake.SiteFile;
import sunup.intake.SiteReader;
import sunup.sheets.Sheets;

/** The demo's morning meets the board's own rules, without sockets. */
class DemoMorningTest {
  private static final LocalDate DATE = LocalDate.of(2026, 11, 25);
  private static final int SEEDS = 2;

  private final List<String> refused = new ArrayList<>();
  private Morning morning;
  private int commands;

  @Test
  void shouldHaveEveryReportOfTheDemoTakenByTheBoard() throws IOException, BadJson {
    MorningPlan plan = plan();
    Story story = Story.read(text("story.json"));
    for (long seed = 1; seed <= SEEDS; seed++) {
      morning = Morning.NONE;
      Actor desk = new Actor(Role.DESK, null, "desk");
      give(new Command.Plan(plan), desk, plan.beginsAt());
      give(new Command.OpenMorning(), desk, plan.beginsAt());
      for (Report r : Script.write(plan, story, seed).reports()) {
        Actor actor = Page.named(r.page()).orElseThrow().actor(r.screen(), r.person(), morning);
        give(r.command(), actor, r.at());
      }
      assertThat(morning.cases().values())
          .as("seed %d", seed)
          .allMatch(day -> day.cancelled() || day.hasPassed(Step.INDUCTION));
    }
    assertThat(refused).isEmpty();
  }

  private void give(Command command, Actor actor, long at) {
    CommandId id = new CommandId("d" + ++commands);
    Outcome outcome = Board.decide(morning, new Order(id, command, actor, morning.seq(), at, at));
    if (outcome instanceof Outcome.Refused no) {
      refused.add(actor + " " + command + ": " + no.code().say(no.detail()));
    } else if (outcome instanceof Outcome.Accepted yes) {
      for (Recorded event : yes.events()) {
        morning = Board.apply(morning, morning.seq() + 1, event);
      }
    }
  }

  private static MorningPlan plan() throws IOException {
    SiteFile site = SiteReader.read("site.json", text("site.json")).site();
    byte[] cases = text("cases.csv").getBytes(StandardCharsets.UTF_8);
    return Planner.plan(site, CaseList.read(cases, site, DATE, Sheets.standard()).cases(), DATE)
        .plan();
  }

  private static String text(String name) throws IOException {
    try (InputStream in = DemoMorningTest.class.getResourceAsStream("/demo/" + name)) {
      return new String(in.readAllBytes(), StandardCharsets.UTF_8);
    }
  }
}
