package sunup.outlook;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;
import sunup.board.Actor;
import sunup.board.Board;
import sunup.board.CommandId;
import sunup.board.Event;
import sunup.board.LearnedTimes;
import sunup.board.Morning;
import sunup.board.Recorded;
import sunup.board.Role;
import sunup.board.RoomId;
import sunup.forecast.Draw;
import sunup.forecast.Forecast;
import sunup.forecast.ForecastInput.ItemIn;
import sunup.forecast.Forecaster;
import sunup.sheets.Hands;
import sunup.sheets.SheetItem;

/** A morning whose set-up takes longer than its sheets say, and knows it from closed ones. */
class LearnedTimesTest {
  private static final int TRIALS = 256;

  private static List<SheetItem> worked(Morning morning) {
    return morning.itemsOf(new RoomId("1")).stream()
        .map(Morning.Placed::sheet)
        .filter(i -> i.section().isSetUp() && i.hands().usual() > 0)
        .toList();
  }

  private static Morning taught(Morning morning, double times) {
    List<LearnedTimes.Time> items = new ArrayList<>();
    for (SheetItem item : worked(morning)) {
      Hands longer = new Hands(times * item.hands().usual(), times * item.hands().oneInTen());
      items.add(new LearnedTimes.Time(item.key(), item.hands(), longer, 20));
    }
    LearnedTimes learned = new LearnedTimes(LocalDate.of(2026, 11, 24), 3, items);
    Actor desk = new Actor(Role.DESK, null, "desk");
    long at = morning.lastRecordedAt();
    Recorded event =
        new Recorded(new Event.DurationsLearned(learned), desk, new CommandId("l"), at, at);
    return Board.apply(morning, morning.seq() + 1, event);
  }

  private static double could(Morning morning) {
    Forecast forecast = Forecaster.run(Outlook.input(morning, Suite.at("06:31"), TRIALS));
    return forecast.rooms().get(0).meanLateMs();
  }

  @Test
  void shouldForecastByTheLearnedDurationsAndSayWhichTheyAre() {
    Morning sheets = new Suite(1, "06:30").morning();
    Morning learned = taught(sheets, 1.25);
    SheetItem first = worked(sheets).get(0);
    ItemIn in =
        Outlook.input(learned, Suite.at("06:31"), TRIALS).rooms().get(0).items().stream()
            .filter(i -> i.key().equals(first.key()))
            .findFirst()
            .orElseThrow();
    assertThat(in.hands().usual())
        .isEqualTo(Math.round(1.25 * first.hands().usual() * FirstSettings.MINUTE));
    assertThat(in.hands()).isInstanceOf(Draw.LogNormal.class);
    assertThat(could(learned)).as("late minutes").isGreaterThan(could(sheets));
    assertThat(could(taught(sheets, 0.8))).isLessThan(could(sheets));
    assertThat(sheets.sheetItem(Suite.ofRoom(1, first.key())))
        .as("the sheet stays")
        .isEqualTo(learned.sheetItem(Suite.ofRoom(1, first.key())));
  }
}
