package sunup.bedside;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import sunup.units.Mass;
import sunup.units.Unit;

/** Lipid and dantrolene. */
class RescueTest {
  /**
   * ASRA checklist 2017 (Neal, Woodward, Harrison, Reg Anesth Pain Med 2018;43:150): below 70 kg
   * 1.5 mL/kg; above 70 kg 100 mL. 60 kg: 90 mL then 15 mL/min, computed.
   */
  @Test
  void shouldMeetTheChecklistOnEitherSideOfSeventyKilograms() {
    assertThat(Rescue.lipidBolus(new Weight(60)).ml()).isEqualTo(90);
    assertThat(Rescue.lipidMlPerMinute(new Weight(60))).isEqualTo(15);
    assertThat(Rescue.lipidBolus(new Weight(71)).ml()).isEqualTo(100);
    assertThat(Rescue.lipidMost(new Weight(70)).ml()).isEqualTo(840);
  }

  /**
   * CAUTION: 70.0 kg is in neither row. Chosen: the fixed dose, 100 mL, not 105 mL; then 200 to 250
   * mL over 15 to 20 min, not 17.5 mL/min.
   */
  @Test
  void shouldTakeTheFixedDoseAtExactlySeventyKilogramsAndSaySo() {
    assertThat(Rescue.lipidBolus(new Weight(70)).ml()).isEqualTo(100);
    assertThatThrownBy(() -> Rescue.lipidMlPerMinute(new Weight(70)))
        .isInstanceOf(IllegalArgumentException.class);
    assertThat(
            Desk.figures().list(Desk.TODAY).stream()
                .filter(f -> f.card().name().equals("lipid"))
                .findFirst()
                .orElseThrow()
                .card()
                .range())
        .contains("exactly 70 kg is the fixed dose");
  }

  /** CAUTION: between 66.67 and 70 kg the rule by weight is above the fixed dose: the source. */
  @Test
  void shouldKeepTheSourcesOwnStepBelowSeventyKilograms() {
    assertThat(Rescue.lipidBolus(new Weight(66.67)).ml()).isCloseTo(100, within(0.01));
    assertThat(Rescue.lipidBolus(new Weight(69)).ml()).isEqualTo(103.5);
  }

  @Test
  void shouldShowLipidInMlAndMgAndConcentration() {
    Answer.Worked light =
        Desk.worked("lipid", "age", Desk.of("40", Unit.YEARS), "weight", Desk.of("60", Unit.KG));
    assertThat(Desk.line(light, "bolus of lipid 20 %")).isEqualTo("18,000 mg = 90 mL of 200 mg/mL");
    assertThat(Desk.line(light, "then"))
        .isEqualTo("15 mL each min = 3,000 mg each min of 200 mg/mL");
    assertThat(Desk.line(light, "in all at most")).isEqualTo("144,000 mg = 720 mL of 200 mg/mL");
    Answer.Worked heavy =
        Desk.worked("lipid", "age", Desk.of("40", Unit.YEARS), "weight", Desk.of("80", Unit.KG));
    assertThat(Desk.line(heavy, "bolus of lipid 20 %"))
        .isEqualTo("20,000 mg = 100 mL of 200 mg/mL");
    assertThat(Desk.line(heavy, "then")).startsWith("200 to 250 mL over 15 to 20 min");
  }

  /** 2.5 mg/kg (Malignant Hyperthermia Association of the United States); vials computed. */
  @ParameterizedTest
  @CsvSource({"8, 20, 1, 1", "70, 175, 9, 1", "100, 250, 13, 1", "101, 252.5, 13, 2"})
  void shouldMeetTheVialsOfDantrolene(double kg, double mg, int of20, int of250) {
    Mass dose = Rescue.dantrolene(new Weight(kg));
    assertThat(dose.mg()).isEqualTo(mg);
    assertThat(Rescue.vials(dose, new Mass(20))).isEqualTo(of20);
    assertThat(Rescue.vials(dose, new Mass(250))).isEqualTo(of250);
  }

  /** The stock of 36 vials of 20 mg is 10 mg/kg for 72 kg; computed. */
  @Test
  void shouldMakeTheStockTenMilligramsForSeventyTwoKilograms() {
    assertThat(36 * 20 / 10.0).isEqualTo(72);
    assertThat(Rescue.vials(new Mass(10 * 72), new Mass(20))).isEqualTo(36);
  }

  @Test
  void shouldSayHowDantroleneIsMadeUp() {
    Answer.Worked worked =
        Desk.worked(
            "dantrolene",
            "age",
            Desk.of("40", Unit.YEARS),
            "weight",
            Desk.of("70", Unit.KG),
            "vial",
            Desk.of("20 mg"));
    assertThat(Desk.line(worked, "first dose")).isEqualTo("175 mg = 525 mL of 20 mg in 60 mL");
    assertThat(Desk.line(worked, "vials to open"))
        .isEqualTo("9 of 20 mg, made up as 20 mg in 60 mL");
    Answer.Worked large =
        Desk.worked(
            "dantrolene",
            "age",
            Desk.of("40", Unit.YEARS),
            "weight",
            Desk.of("70", Unit.KG),
            "vial",
            Desk.of("250 mg"));
    assertThat(Desk.line(large, "first dose")).isEqualTo("175 mg = 3.5 mL of 250 mg in 5 mL");
  }
}
