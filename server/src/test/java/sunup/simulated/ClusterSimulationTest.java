package sunup.simulated;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;

/** Three nodes, by a few hundred seeds; {@code ops/faults histories} runs them for minutes. */
class ClusterSimulationTest {
  private static final int HISTORIES = Integer.getInteger("sunup.histories", 250);
  private static final long FIRST_SEED = Long.getLong("sunup.seed", 1);
  private static final int BUG_LIMIT = 400;

  @Test
  void shouldLoseAndDoubleNothingAndShowNoOldBoardAsLiveOnThreeNodes() {
    Histories histories = new Histories(Bug.NONE);
    for (long seed = FIRST_SEED; seed < FIRST_SEED + HISTORIES; seed++) {
      if (!histories.run(seed)) {
        throw new AssertionError(histories.story());
      }
    }
    System.out.println(histories);
    if (HISTORIES >= 200) {
      for (Fault.Kind kind : Fault.Kind.values()) {
        for (String phase : List.of("owner still", "other still")) {
          String pair = kind.words() + " x " + phase;
          assertThat(kind.once() || histories.coverage().of(pair) > 0).as(pair).isTrue();
        }
      }
    }
  }

  /** Seed 106731, cut down. */
  @Test
  void shouldNotPassOnAHeartbeatThatANodeHeldWhileItStoodStill() {
    Fault pause = new Fault(Fault.Kind.PAUSE, 1_692, 5_445, 2, 0, 1);
    Script.Touch touch = new Script.Touch(2, 8, 1_069, 3_060, 0, 0);
    assertThat(Histories.wrong(new Script(106_731, List.of(pause), List.of(touch)))).isEmpty();
  }

  @ParameterizedTest
  @EnumSource(value = Bug.class, names = "NONE", mode = EnumSource.Mode.EXCLUDE)
  void shouldFindAPlantedBugAmongThreeNodes(Bug bug) {
    Histories histories = new Histories(bug);
    boolean right = true;
    while (right && histories.count() < BUG_LIMIT) {
      right = histories.run(FIRST_SEED + histories.count());
    }
    System.out.printf(
        "%s found after %d histories of three nodes: %s%n",
        bug, histories.count(), histories.wrong());
    assertThat(right).as("%s hid in %s histories", bug, BUG_LIMIT).isFalse();
  }
}
