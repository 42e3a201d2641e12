package sunup.cluster;

import static org.assertj.core.api.Assertions.assertThat;

import org.junit.jupiter.api.Test;
import sunup.board.MorningId;

/** A node's own stand-still, and moves one after the other. */
class StoodStillTest {
  @Test
  void shouldTellOnlyALongStandStill() {
    StoodStill stood = new StoodStill(1_000);

    assertThat(stood.since(1_200)).isZero();
    assertThat(stood.since(1_700)).isZero();
    assertThat(stood.since(4_900)).isEqualTo(3_000);
    assertThat(stood.since(5_000)).isZero();
  }

  @Test
  void shouldMoveMorningsOneAfterTheOtherAndOnlyIfSuggestedForLong() {
    Resettling resettling = new Resettling();
    MorningId one = MorningId.parse("east/2026-11-25");
    MorningId two = MorningId.parse("west/2026-11-25");

    assertThat(resettling.moves(one, 1_000)).isFalse();
    assertThat(resettling.moves(two, 1_000)).isFalse();
    assertThat(resettling.moves(one, 31_000)).isFalse();
    assertThat(resettling.moves(one, 31_001)).isTrue();
    assertThat(resettling.moves(two, 31_001)).isFalse();
    assertThat(resettling.moves(two, 31_300)).isFalse();
    resettling.stays(two);
    assertThat(resettling.moves(two, 31_301)).isFalse();
    assertThat(resettling.moves(two, 61_302)).isTrue();
  }
}
