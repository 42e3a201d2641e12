package sunup.live;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.charset.StandardCharsets;
import java.time.LocalDate;
import org.junit.jupiter.api.Test;
import sunup.board.Actor;
import sunup.board.Board;
import sunup.board.Command;
import sunup.board.CommandId;
import sunup.board.Morning;
import sunup.board.Order;
import sunup.board.Outcome;
import sunup.board.Role;
import sunup.intake.CaseList;
import sunup.intake.Intake;
import sunup.intake.SiteFile;
import sunup.sheets.Sheets;

class OutlookSightTest {
  private static final long HOUR = 3_600_000L;
  private static final LocalDate DAY = LocalDate.of(2026, 11, 25);

  /** The standard site with one case, the day before. */
  static Morning draft() {
    return draft(SiteFile.standard());
  }

  private static Morning draft(SiteFile site) {
    byte[] csv = "room,start,technique\n1,07:30,general\n".getBytes(StandardCharsets.UTF_8);
    Intake.Taken taken =
        Intake.compare(
            CaseList.read(csv, site, DAY, Sheets.standard()), site, DAY, Morning.NONE, 0);
    Command plan = taken.commands().get(0);
    Actor desk = new Actor(Role.DESK, null, "desk");
    Outcome outcome =
        Board.decide(Morning.NONE, new Order(new CommandId("c1"), plan, desk, null, 0, 0));
    return Board.apply(Morning.NONE, 1, ((Outcome.Accepted) outcome).events().get(0));
  }

  @Test
  void shouldComputeTomorrowsDraftAndNoneOfALaterDay() {
    SiteFile site = SiteFile.standard();
    OutlookSight sight = new OutlookSight(site.settings(), 1);
    Morning draft = draft(site);
    assertThat(sight.figuring(draft, draft.beginsAt() - 18 * HOUR, 64)).isNotNull();
    assertThat(sight.figuring(draft, draft.beginsAt() - 40 * HOUR, 64)).isNull();
  }
}
