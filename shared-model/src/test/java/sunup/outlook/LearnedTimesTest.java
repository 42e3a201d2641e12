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
import sunup.board.Placed;
import sunup.board.Recorded;
import sunup.board.Role;
import sunup.board.RoomId;
import sunup.forecast.Draw;
import sunup.forecast.Forecast;
import sunup.forecast.ForecastInput;
import sunup.forecast.ForecastInput.ItemIn;
import sunup.forecast.Forecaster;
import sunup.sheets.ComposedSheet;
import sunup.sheets.Hands;
import sunup.sheets.SheetItem;
import sunup.wire.LearnedHow;
import sunup.wire.Part.LearnedPart;

/** A morning whose set-up takes longer than its sheets say, and knows it from closed ones. */
class LearnedTimesTest {
  private static final int TRIALS = 256;

  private static List<SheetItem> worked(Morning morning) {
    return morning.itemsOf(new RoomId("1")).stream()
        .map(Placed::sheet)
        .filter(i -> i.section().isSetUp() && i.hands().usual() > 0)
        .toList();
  }

  private static Morning taught(Morning morning, double times) {
    List<LearnedTimes.Time> items = new ArrayList<>();
    for (SheetItem item : worked(morning)) {
      Hands longer = new Hands(times * item.hands().usual(), times * item.hands().oneInTen());
      items.add(new LearnedTimes.Time(item.work(), longer, 20));
    }
    return taught(morning, new LearnedTimes(LocalDate.of(2026, 11, 24), 3, items));
  }

  private static Morning taught(Morning morning, LearnedTimes learned) {
    Actor desk = new Actor(Role.DESK, null, "desk");
    long at = morning.lastRecordedAt();
    Recorded event =
        new Recorded(new Event.LessonsFrozen(learned), desk, new CommandId("l"), at, at);
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

  /** Two sheets ask for one key with other minutes, and the second one's were learned. */
  @Test
  void shouldShowTheDeskEachLearnedTimeThatASheetGoesByWhicheverSheetStandsFirst() {
    SheetItem item = worked(new Suite(1, "06:30").morning()).get(0);
    SheetItem other =
        item.withHands(new Hands(item.hands().usual() + 3, item.hands().oneInTen() + 5));
    Morning morning =
        Suite.changed(
                3,
                sheet ->
                    Suite.each(
                        sheet, i -> i.key().equals(item.key()) && isBlock(sheet) ? other : i))
            .morning();
    Hands longer = new Hands(other.hands().usual() + 1, other.hands().oneInTen() + 1);
    Morning learned =
        taught(
            morning,
            new LearnedTimes(
                LocalDate.of(2026, 11, 24),
                3,
                List.of(new LearnedTimes.Time(other.work(), longer, 20))));
    assertThat(shown(learned).times())
        .singleElement()
        .matches(t -> t.usual() == longer.usual() && t.sheetUsual() == other.hands().usual());
    assertThat(hands(learned, 1, item.key())).isEqualTo(ItemsInput.draw(item.hands()));
    assertThat(hands(learned, 3, item.key())).isEqualTo(ItemsInput.draw(longer));
  }

  private static boolean isBlock(ComposedSheet sheet) {
    return sheet.byKey().containsKey("patient.block");
  }

  private static Draw hands(Morning morning, int room, String key) {
    return Outlook.input(morning, Suite.at("06:31"), 1).rooms().get(room - 1).items().stream()
        .filter(i -> i.key().equals(key))
        .findFirst()
        .orElseThrow()
        .hands();
  }

  private static LearnedPart shown(Morning morning) {
    return Outlook.parts(morning, Foretold.NONE, Judged.NOTHING, Suite.at("06:31")).stream()
        .filter(LearnedPart.class::isInstance)
        .map(LearnedPart.class::cast)
        .findFirst()
        .orElseThrow();
  }

  @Test
  void shouldForecastByHowPeopleReportHereAndSaySo() {
    Morning first = new Suite(2, "06:30").morning();
    Morning learned =
        taught(
            first,
            new LearnedTimes(
                LocalDate.of(2026, 11, 24),
                30,
                List.of(),
                new LearnedTimes.Reporting(0.3, 0.3, 0.2, 0.2, 0.08, 90_000L, 60, 300, 4000)));
    ForecastInput.Settings settings = Outlook.input(learned, Suite.at("06:31"), 1).settings();
    assertThat(settings.forgottenTouch()).isEqualTo(0.08);
    assertThat(settings.silence().never()).isEqualTo(0.2);
    assertThat(settings.silence().delay()).isEqualTo(new Draw.Exponential(39_087));
    assertThat(settings.silence().away()).isEqualTo(0.07);
    assertThat(Outlook.input(first, Suite.at("06:31"), 1).settings().silence())
        .isEqualTo(ForecastInput.Silence.DEFAULT);
    assertThat(onTime(learned)).as("silence says less here").isGreaterThan(onTime(first));
    assertThat(shown(learned).how())
        .extracting(LearnedHow::now)
        .containsExactly(
            "each item 30, each section 30, at the end 20, never 20 in 100",
            "8.0 in 100",
            "one in ten over 90 s later");
  }

  /** As a program froze them that rounded each share for itself. */
  @Test
  void shouldForecastByFrozenSharesThatAddToALittleMoreThanOne() {
    Morning learned =
        taught(
            new Suite(1, "06:30").morning(),
            new LearnedTimes(
                LocalDate.of(2026, 11, 24),
                30,
                List.of(),
                new LearnedTimes.Reporting(0.4951, 0.3029, 0.2021, 0, 0.03, null, 900, 300, 0)));
    assertThat(onTime(learned)).isBetween(0.0, 1.0);
  }

  /** Nobody has said a word by ten minutes before the target. */
  private static double onTime(Morning morning) {
    Forecast forecast = Forecaster.run(Outlook.input(morning, Suite.at("07:15"), TRIALS));
    return forecast.rooms().get(0).onTime();
  }
}
