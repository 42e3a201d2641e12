package sunup.bedside;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import sunup.units.Concentration;
import sunup.units.Mass;
import sunup.units.Unit;
import sunup.units.Volume;

/** Percent, mg/mL and ratios; amounts and volumes. */
class ConcentrationTest {
  /** Lidocaine and bupivacaine labels; computed. */
  @ParameterizedTest
  @CsvSource({"1, 10", "2, 20", "0.25, 2.5", "0.5, 5"})
  void shouldMeetPercentOfLabels(double percent, double mgPerMl) {
    assertThat(Concentration.of(percent, Unit.PERCENT).mgPerMl()).isCloseTo(mgPerMl, within(1e-9));
  }

  /**
   * 1:1000 = 1 mg/mL (epinephrine label), the others computed. Two web pages print 0.001 mg/mL for
   * 1:1000: wrong by a thousand.
   */
  @ParameterizedTest
  @CsvSource({"1000, 1000", "10000, 100", "200000, 5", "80000, 12.5", "100000, 10", "400000, 2.5"})
  void shouldMeetRatios(double oneIn, double micrograms) {
    Concentration c = Concentration.of(oneIn, Unit.ONE_IN);
    assertThat(c.microgramsPerMl()).isCloseTo(micrograms, within(1e-9));
  }

  @Test
  void shouldBeOneMilligramForOneInAThousandAndNotAThousandthOfIt() {
    assertThat(Concentration.of(1000, Unit.ONE_IN).mgPerMl()).isEqualTo(1.0);
  }

  /** 20 mL of 1:200,000 = 100 micrograms; computed. */
  @Test
  void shouldShowTheAdrenalineOfALocalAnaesthetic() {
    Answer.Worked worked =
        Desk.worked(
            "concentration",
            "concentration",
            Desk.of("1:200,000", Unit.ONE_IN),
            "volume",
            Desk.of("20", Unit.ML));
    assertThat(Desk.line(worked, "in mg or micrograms")).isEqualTo("5 micrograms/mL");
    assertThat(Desk.line(worked, "in percent")).isEqualTo("0.0005 %");
    assertThat(Desk.line(worked, "as ratio")).isEqualTo("1:200,000");
    assertThat(Desk.line(worked, "in this volume"))
        .isEqualTo("100 micrograms = 20 mL of 5 micrograms/mL");
  }

  /** 0.1 mL of 1:1000 made up to 20 mL is 1:200,000; added to 20 mL about 4.98 micrograms/mL. */
  @Test
  void shouldTellMadeUpFromAddedTo() {
    Concentration adrenaline = Concentration.of(1000, Unit.ONE_IN);
    assertThat(adrenaline.madeUp(new Volume(0.1), new Volume(20)).oneIn())
        .isCloseTo(200_000, within(1e-6));
    assertThat(adrenaline.madeUp(new Volume(0.1), new Volume(20.1)).microgramsPerMl())
        .isCloseTo(4.98, within(0.005));
  }

  /** 1 mL of 1:1000 and 9 mL is 1:10,000; 1 mg in 250 mL is 4 micrograms/mL (epinephrine text). */
  @Test
  void shouldMeetTheTenFoldCheck() {
    Concentration adrenaline = Concentration.of(1000, Unit.ONE_IN);
    assertThat(adrenaline.madeUp(new Volume(1), new Volume(10)).oneIn())
        .isCloseTo(10_000, within(1e-6));
    assertThat(Concentration.of(new Mass(1), new Volume(250)).microgramsPerMl())
        .isCloseTo(4, within(1e-9));
    Answer.Worked worked =
        Desk.worked(
            "dilution",
            "concentration",
            Desk.of("1:1000", Unit.ONE_IN),
            "drawn",
            Desk.of("1", Unit.ML),
            "whole",
            Desk.of("10", Unit.ML));
    assertThat(Desk.line(worked, "in the whole")).isEqualTo("1 mg = 10 mL of 100 micrograms/mL");
    assertThat(Desk.line(worked, "as ratio")).isEqualTo("1:10,000");
  }

  /**
   * Arithmetic only, no doses of ours. Sugammadex 100 mg/mL: 140, 280, 1120 mg; neostigmine 1 mg/mL
   * 3.5 mg with glycopyrrolate 0.2 mg/mL 0.7 mg; flumazenil 0.1 mg/mL; naloxone 0.4 mg/mL and made
   * up to 0.04; 2 mg in 500 mL: prescribing information for strengths, volumes computed.
   */
  @ParameterizedTest
  @CsvSource({
    "140, 100, 1.4",
    "280, 100, 2.8",
    "1120, 100, 11.2",
    "3.5, 1, 3.5",
    "0.7, 0.2, 3.5",
    "0.2, 0.1, 2",
    "1, 0.1, 10",
    "0.1, 0.4, 0.25",
    "10, 0.4, 25",
    "0.1, 0.04, 2.5",
    "2, 0.004, 500"
  })
  void shouldMeetVolumesOfPublishedStrengths(double mg, double mgPerMl, double ml) {
    assertThat(new Concentration(mgPerMl).holding(new Mass(mg)).ml()).isCloseTo(ml, within(1e-9));
  }

  @Test
  void shouldWriteMicrogramsInFullBelowAMilligram() {
    assertThat(new Mass(0.25)).hasToString("250 micrograms");
    assertThat(new Mass(1)).hasToString("1 mg");
    assertThat(new Concentration(0.1)).hasToString("100 micrograms/mL");
    Answer.Worked worked =
        Desk.worked(
            "volume-of-amount",
            "amount",
            Desk.of("100", Unit.MICROGRAMS),
            "concentration",
            Desk.of("0.05", Unit.MG_PER_ML));
    assertThat(Desk.line(worked, "volume")).isEqualTo("100 micrograms = 2 mL of 50 micrograms/mL");
  }

  @Test
  void shouldRefuseAWholeThatIsLessThanItsPart() {
    assertThat(
            Desk.refused(
                    "dilution",
                    "concentration",
                    Desk.of("1", Unit.MG_PER_ML),
                    "drawn",
                    Desk.of("10", Unit.ML),
                    "whole",
                    Desk.of("1", Unit.ML))
                .input())
        .isEqualTo("whole");
    Concentration c = new Concentration(1);
    assertThatThrownBy(() -> c.madeUp(new Volume(10), new Volume(1)))
        .isInstanceOf(IllegalArgumentException.class);
  }
}
