package sunup.ops;

import static org.assertj.core.api.Assertions.assertThat;

import org.junit.jupiter.api.Test;

class ScaledClockTest {
  private long epoch = 1_000_000;
  private long monotonic = 5_000;
  private final ScaledClock.RealTime real =
      new ScaledClock.RealTime() {
        @Override
        public long epochMs() {
          return epoch;
        }

        @Override
        public long monotonicMs() {
          return monotonic;
        }
      };

  @Test
  void shouldRunTheMorningFasterThanRealTimeByItsRate() {
    ScaledClock clock = new ScaledClock(real, 500, 60);
    monotonic += 2_000;
    epoch += 2_000;
    assertThat(clock.morningMs()).isEqualTo(500 + 120_000);
    assertThat(clock.realMs()).isEqualTo(1_002_000);
    assertThat(clock.monotonicMs()).isEqualTo(7_000);
  }

  @Test
  void shouldNotGoBackWhenTheMachinesClockIsSetBack() {
    ScaledClock clock = new ScaledClock(real, 500, 1);
    monotonic += 1_000;
    epoch -= 3_600_000;
    assertThat(clock.morningMs()).isEqualTo(1_500);
  }
}
