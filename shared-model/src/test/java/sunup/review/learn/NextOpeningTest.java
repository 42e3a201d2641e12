package sunup.review.learn;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.time.LocalDate;
import java.util.Collections;
import java.util.List;
import org.junit.jupiter.api.Test;
import sunup.board.LearnedTimes;
import sunup.board.LearnedTimes.Reporting;
import sunup.review.learn.Lessons.Left;
import sunup.review.learn.Lessons.Style;

/** How people report stays something a forecast can go by, whatever mornings taught. */
class NextOpeningTest {
  private static final LocalDate DAY = LocalDate.of(2026, 11, 24);

  private static Learned told(Style style, int begun, int forgotten) {
    return Learned.of(
        List.of(),
        List.of(
            new Lessons(
                List.of(),
                List.of(),
                Collections.nCopies(20_000, style),
                List.of(),
                begun,
                forgotten,
                new Left(0, 0, 0))));
  }

  private static LearnedTimes after(int mornings, Learned learned, LearnedTimes went) {
    LearnedTimes next = went;
    for (int morning = 0; morning < mornings; morning++) {
      next = NextOpening.after(DAY, learned, next);
      Reporting by = next.reporting();
      assertThat(List.of(by.eachItem(), by.eachSection(), by.atEnd(), by.never(), by.forgotten()))
          .as("morning %d", morning)
          .allMatch(share -> share >= NextOpening.LEAST_SHARE && share < 1);
      assertThat(by.eachItem() + by.eachSection() + by.atEnd() + by.never())
          .as("morning %d", morning)
          .isCloseTo(1, within(1e-9));
    }
    return next;
  }

  @Test
  void shouldFreezeSharesThatAddToOneAndCanGrowAgainWhereAllReportAlike() {
    LearnedTimes went = null;
    for (Style style : Style.values()) {
      went = after(60, told(style, 100_000, 0), went);
    }
    assertThat(went.reporting().forgotten()).isEqualTo(NextOpening.LEAST_SHARE);
    went = after(60, told(Style.EACH_ITEM, 100_000, 20_000), went);
    assertThat(went.reporting().eachItem()).isGreaterThan(0.99);
    assertThat(went.reporting().forgotten()).isCloseTo(0.2, within(0.001));
  }

  @Test
  void shouldGoOnFromSharesOfAnEarlierProgramThatWereNothing() {
    Reporting none = new Reporting(0.4951, 0.3029, 0.2021, 0, 0, null, 900, 300, 0);
    LearnedTimes went = new LearnedTimes(DAY, 30, List.of(), none);
    Reporting by = after(60, told(Style.NEVER, 100_000, 20_000), went).reporting();
    assertThat(by.never()).isGreaterThan(0.99);
    assertThat(by.forgotten()).isCloseTo(0.2, within(0.001));
  }
}
