package sunup.review.charts;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;
import static sunup.review.facts.InventedFacts.MONDAY;
import static sunup.review.facts.InventedFacts.on;

import java.time.DayOfWeek;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.IntRange;
import net.jqwik.api.constraints.Size;
import org.junit.jupiter.api.Test;
import sunup.board.DelayReason;
import sunup.review.charts.MinutesByCause.Beside;
import sunup.review.charts.MinutesByCause.Grouping;
import sunup.review.charts.MinutesByCause.Row;
import sunup.review.facts.FirstCaseFact;
import sunup.review.facts.FirstCaseFact.Settled;

class PicturesTest {
  private static List<FirstCaseFact> twelve() {
    List<FirstCaseFact> facts = new ArrayList<>();
    for (int i = 0; i < 12; i++) {
      DelayReason reason = i < 8 ? DelayReason.PATIENT : DelayReason.SURGEON;
      Settled settled = i < 2 ? Settled.AGREED : Settled.OPEN;
      facts.add(
          on(MONDAY.plusDays(7L * i), "2")
              .late(10)
              .piece("work", "drugs.drawn", 6, i < 3)
              .piece("arrival", "patient.arrived", 4, false)
              .reported(reason, settled)
              .fact());
    }
    facts.add(on(MONDAY, "10").late(20).piece("place", "drugs.drawn", 20, false).fact());
    return facts;
  }

  @Test
  void shouldRankMinutesByCauseWithARunningShare() {
    MinutesByCause item = MinutesByCause.of(twelve(), Grouping.ITEM);
    assertThat(item.minutes()).isEqualTo(140);
    assertThat(item.weakMinutes()).isEqualTo(18);
    assertThat(item.unexplained()).isZero();
    assertThat(item.rows())
        .extracting(Row::label)
        .containsExactly("work drugs.drawn", "arrival patient.arrived", "place drugs.drawn");
    assertThat(item.rows()).extracting(Row::minutes).containsExactly(72.0, 48.0, 20.0);
    assertThat(item.rows().get(1).running()).isCloseTo(120.0 / 140, within(1e-12));
    assertThat(item.rows().get(0).starts()).isEqualTo(12);
    MinutesByCause section = MinutesByCause.of(twelve(), Grouping.SECTION);
    assertThat(section.rows()).extracting(Row::label).containsExactly("drugs", "patient");
    assertThat(section.rows()).extracting(Row::minutes).containsExactly(92.0, 48.0);
  }

  @Test
  void shouldPutWhatPeopleReportedBesideWhatTheChainSays() {
    MinutesByCause reported = MinutesByCause.of(twelve(), Grouping.REPORTED);
    assertThat(reported.rows()).extracting(Row::label).containsExactly("patient", "surgeon");
    assertThat(reported.unexplained()).as("nobody gave a reason").isEqualTo(20);
    List<Beside> table = MinutesByCause.sideBySide(twelve());
    assertThat(table)
        .containsExactly(
            new Beside("drugs", "patient", 8, 2),
            new Beside("drugs", "surgeon", 4, 0),
            new Beside("drugs", "none", 1, 0));
  }

  @Test
  void shouldWithholdPicturesOfFewStarts() {
    List<FirstCaseFact> few = twelve().subList(0, 9);
    MinutesByCause withheld = MinutesByCause.of(few, Grouping.KIND);
    assertThat(withheld).isEqualTo(new MinutesByCause(few.size(), null, null, null, null));
    assertThat(MinutesByCause.sideBySide(few)).isNull();
    assertThat(Lateness.of(few).bins()).isNull();
    assertThat(RoomByWeekday.ofFacts(few).cells().get(0).onTime()).isNull();
    assertThat(Period.MORNING.shares(few, FirstCaseFact::onTime)).allMatch(c -> c.n() == 0);
    assertThat(Period.MORNING.minutes(few)).isEmpty();
  }

  @Test
  void shouldShowRoomsByWeekdayInTheOrderOfTheirNumbers() {
    RoomByWeekday table = RoomByWeekday.ofFacts(twelve());
    assertThat(table.rooms()).containsExactly("2", "10");
    assertThat(table.days()).containsExactly(DayOfWeek.MONDAY);
    assertThat(table.cells().get(0).starts()).isEqualTo(12);
    assertThat(table.cells().get(0).meanLate()).isEqualTo(10);
    assertThat(table.cells().get(1).meanLate()).isNull();
  }

  @Property
  void shouldPutEveryStartIntoOneBin(
      @ForAll @Size(min = 10, max = 80) List<@IntRange(min = -90, max = 200) Integer> late) {
    List<FirstCaseFact> facts =
        late.stream().map(minutes -> on(MONDAY, "1").late(minutes).fact()).toList();
    Lateness lateness = Lateness.of(facts);
    assertThat(lateness.bins().stream().mapToInt(Lateness.Bin::starts).sum())
        .isEqualTo(late.size());
    assertThat(lateness.bins()).hasSize(20);
    assertThat(lateness.bins().get(0).from()).isNull();
    assertThat(lateness.bins().get(19).to()).isNull();
    assertThat(lateness.quantiles()).isSorted();
  }

  @Test
  void shouldCountByPeriodsThatBeginOnMondays() {
    assertThat(Period.WEEK.of(LocalDate.of(2026, 3, 8))).isEqualTo(MONDAY);
    assertThat(Period.MONTH.of(LocalDate.of(2026, 3, 31))).isEqualTo(LocalDate.of(2026, 3, 1));
    LocalDate four = Period.FOUR_WEEKS.of(MONDAY);
    assertThat(four.getDayOfWeek()).isEqualTo(DayOfWeek.MONDAY);
    assertThat(Period.FOUR_WEEKS.of(four.plusDays(27))).isEqualTo(four);
    assertThat(Period.FOUR_WEEKS.of(four.plusDays(28))).isEqualTo(four.plusDays(28));
    assertThat(Period.FOUR_WEEKS.of(four.minusDays(1))).isEqualTo(four.minusDays(28));
  }

  @Test
  void shouldDrawAChangeInMarchThatSomebodyMarked() {
    List<FirstCaseFact> facts = new ArrayList<>();
    for (int day = 0; day < 70; day++) {
      for (int room = 0; room < 3; room++) {
        boolean onTime = day < 35 ? (day + room) % 2 == 0 : (day + room) % 4 != 0;
        facts.add(on(MONDAY.plusDays(day), "" + room).late(onTime ? 0 : 9).fact());
      }
    }
    List<ShareChart.Counted> weeks = Period.WEEK.shares(facts, FirstCaseFact::onTime);
    assertThat(weeks).hasSize(10).allMatch(c -> c.n() == 21);
    List<String> labels = weeks.stream().map(ShareChart.Counted::label).toList();
    List<Integer> at = Period.WEEK.changesAt(labels, List.of(MONDAY.plusDays(36)));
    assertThat(at).containsExactly(5);
    ShareChart chart = ShareChart.of(weeks, at);
    assertThat(chart.phases()).hasSize(2);
    assertThat(chart.phases().get(0).centre()).isCloseTo(.5, within(.02));
    assertThat(chart.phases().get(1).centre()).isCloseTo(.75, within(.02));
    assertThat(Period.WEEK.minutes(facts)).hasSize(10);
  }
}
