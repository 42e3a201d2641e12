package sunup.cluster;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import org.junit.jupiter.api.Test;

class ClocksTest {
  @Test
  void shouldTellTheNodeWhoseClockIsOffFromTheOthers() {
    assertThat(Clocks.off(List.of(40_000L, 40_100L))).isEqualTo(40_000);
    assertThat(Clocks.off(List.of(0L, 40_000L))).isZero();
    assertThat(Clocks.off(List.of(-35_000L, -35_000L, 100L))).isEqualTo(100L - 100L);
  }

  @Test
  void shouldCallNobodyOffWhereOnlyTwoDisagree() {
    assertThat(Clocks.off(List.of(40_000L))).isZero();
    assertThat(Clocks.off(List.of())).isZero();
  }
}
