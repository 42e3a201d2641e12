package sunup.simulated;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import java.util.regex.Pattern;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;

class SimulationTest {
  private static final int HISTORIES = Integer.getInteger("sunup.histories", 300);
  private static final long FIRST_SEED = Long.getLong("sunup.seed", 1);

  /** A problem that a client could see from its own answers: it begins with the command's id. */
  private static final Pattern CLIENTS_WORD = Pattern.compile("^c\\d+ .*(lost|receipt|events)");

  private static final int BUG_LIMIT = 200;

  @Test
  void shouldLoseAndDoubleNothingInManyHistories() {
    Coverage coverage = new Coverage();
    long began = System.nanoTime();
    for (int n = 0; n < HISTORIES; n++) {
      long seed = FIRST_SEED + n;
      List<String> problems = new History(seed, Bug.NONE, coverage, false).run();
      if (!problems.isEmpty()) {
        History again = new History(seed, Bug.NONE, new Coverage(), true);
        again.run();
        throw new AssertionError(problems + "\n" + again.story());
      }
    }
    long ms = (System.nanoTime() - began) / 1_000_000;
    System.out.println(HISTORIES + " histories in " + ms + " ms: " + coverage);
    for (String what :
        List.of(
            "killed before append",
            "killed in commit, written",
            "killed in commit, torn",
            "killed between commit and answer",
            "unknown, written",
            "unknown, lost",
            "unknown, written later",
            "write failed",
            "take-over failed",
            "take-over unknown",
            "fenced",
            "paused",
            "message lost",
            "message doubled",
            "answer lost",
            "answered Later",
            "answered Refused",
            "id reused",
            "told read-only")) {
      assertThat(coverage.of(what)).as(what).isGreaterThan(HISTORIES / 40);
    }
  }

  @Test
  void shouldTellTheSameStoryOfTheSameSeed() {
    History one = new History(17, Bug.NONE, new Coverage(), true);
    History other = new History(17, Bug.NONE, new Coverage(), true);
    one.run();
    other.run();
    assertThat(one.story()).isEqualTo(other.story()).contains("dies").contains("answers");
  }

  @ParameterizedTest
  @EnumSource(names = {"ACKNOWLEDGE_BEFORE_COMMIT", "SKIP_EPOCH", "FORGET_RECEIPTS"})
  void shouldFindAPlantedBug(Bug bug) {
    int byAny = 0;
    int byClients = 0;
    String first = null;
    for (int tried = 1; tried <= BUG_LIMIT && byClients == 0; tried++) {
      List<String> problems = new History(FIRST_SEED + tried, bug, new Coverage(), false).run();
      if (byAny == 0 && !problems.isEmpty()) {
        byAny = tried;
        first = problems.get(0);
      }
      if (problems.stream().anyMatch(problem -> CLIENTS_WORD.matcher(problem).find())) {
        byClients = tried;
      }
    }
    System.out.printf(
        "%s found after %d histories (%s), by the clients' own answers after %d%n",
        bug, byAny, first, byClients);
    assertThat(byAny).as("%s in %s histories", bug, BUG_LIMIT).isPositive();
    assertThat(byClients).as("%s by what clients were told", bug).isPositive();
  }
}
