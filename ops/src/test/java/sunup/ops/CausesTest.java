package sunup.ops;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import org.junit.jupiter.api.Test;

/** Every cause of a late first start shows while somebody can still act on it. */
class CausesTest {
  private static final int TRIALS = 64;
  private static final int EVERY_MINUTES = 15;

  /** Beyond this nobody reads them; a cause in each of seventeen rooms is far from usual. */
  private static final int LINES_AT_MOST = 20;

  @Test
  void shouldShowEveryCauseBeforeItsTimeToAct() throws Exception {
    List<CauseWatch.Shown> shown =
        Causes.own().watch(CauseTable.DATE, RunCommand.DEFAULT_SEED, TRIALS, EVERY_MINUTES);
    assertThat(shown).hasSize(15);
    assertThat(shown).allSatisfy(s -> assertThat(s.since()).as(s.cause().name()).isNotNull());
    assertThat(shown)
        .allSatisfy(s -> assertThat(s.lines()).as(s.cause().name()).isBetween(1, LINES_AT_MOST));
  }
}
