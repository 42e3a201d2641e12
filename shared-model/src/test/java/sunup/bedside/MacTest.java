package sunup.bedside;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import sunup.units.Unit;

/** MAC by age: Mapleson, Br J Anaesth 1996;76:179. */
class MacTest {
  /** Computed from the formula and its MAC at 40 years. */
  @ParameterizedTest
  @CsvSource({
    "1, 2.292, 1.490, 8.403, 132.4", "5, 2.236, 1.453, 8.198, 129.2",
    "20, 2.037, 1.324, 7.470, 117.7", "40, 1.800, 1.170, 6.600, 104.0",
    "60, 1.590, 1.034, 5.831, 91.88", "80, 1.405, 0.913, 5.152, 81.18"
  })
  void shouldMeetTheFormulaByAge(double years, double sevo, double iso, double des, double n2o) {
    Age age = new Age(years);
    assertThat(Mac.of(Mac.Agent.SEVOFLURANE, age)).isCloseTo(sevo, within(0.0006));
    assertThat(Mac.of(Mac.Agent.ISOFLURANE, age)).isCloseTo(iso, within(0.0006));
    assertThat(Mac.of(Mac.Agent.DESFLURANE, age)).isCloseTo(des, within(0.0006));
    assertThat(Mac.of(Mac.Agent.NITROUS_OXIDE, age)).isCloseTo(n2o, within(0.06));
  }

  @Test
  void shouldHoldTheValuesAtFortyYears() {
    assertThat(Mac.of(Mac.Agent.HALOTHANE, new Age(40))).isEqualTo(0.75);
    assertThat(Mac.of(Mac.Agent.ENFLURANE, new Age(40))).isEqualTo(1.63);
  }

  /** 0.9399 a decade, computed. */
  @Test
  void shouldFallBySixPercentADecade() {
    assertThat(
            Mac.of(Mac.Agent.SEVOFLURANE, new Age(50)) / Mac.of(Mac.Agent.SEVOFLURANE, new Age(40)))
        .isCloseTo(0.9399, within(0.00005));
  }

  /**
   * Device manual: 0.9 % isoflurane with 50 % nitrous oxide is 1.4 MAC at 60 and 1.1 at 20 years
   * (its own denominators; the formula's sum is 1.41).
   */
  @Test
  void shouldMeetTheExampleOfADeviceManual() {
    assertThat(Desk.line(inAll("60"), "in all")).isEqualTo("1.41 MAC");
    assertThat(Desk.line(inAll("20"), "in all")).isEqualTo("1.1 MAC");
  }

  private static Answer.Worked inAll(String years) {
    return Desk.worked(
        "mac",
        "age",
        Desk.of(years, Unit.YEARS),
        "agent",
        Desk.of("isoflurane"),
        "end-tidal",
        Desk.of("0.9", Unit.PERCENT_GAS),
        "nitrous",
        Desk.of("50", Unit.PERCENT_GAS));
  }

  @Test
  void shouldRefuseBelowOneYear() {
    assertThatThrownBy(() -> Mac.of(Mac.Agent.SEVOFLURANE, Age.ofMonths(11)))
        .isInstanceOf(IllegalArgumentException.class);
    assertThat(
            Desk.refused("mac", "age", Desk.of("11", Unit.MONTHS), "agent", Desk.of("sevoflurane"))
                .input())
        .isEqualTo("age");
  }

  /** ASA Standards for Basic Anesthetic Monitoring, 15 October 2025; circulation from memory. */
  @Test
  void shouldListTheMonitorsOfTheBasicStandard() {
    assertThat(BasicMonitors.of(true, true, true, true)).hasSize(9);
    assertThat(BasicMonitors.of(false, false, false, false))
        .extracting(Line::label)
        .containsExactly("person", "oxygenation", "ventilation", "circulation", "circulation");
    assertThat(BasicMonitors.of(true, true, true, true))
        .extracting(Line::text)
        .anyMatch(t -> t.contains("oxygen analyser"))
        .anyMatch(t -> t.contains("disconnection alarm"))
        .anyMatch(t -> t.contains("every 5 minutes"));
  }
}
