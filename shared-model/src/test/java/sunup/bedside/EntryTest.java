package sunup.bedside;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import sunup.board.CaseId;
import sunup.codec.Json;
import sunup.units.Unit;

/** Wrong unit, wrong decimal, wrong case. */
class EntryTest {
  private static Answer lidocaine(Entry age, Entry weight) {
    return Desk.ask(
        "local-anaesthetic",
        Desk.entries(
            "age",
            age,
            "weight",
            weight,
            "drug",
            Desk.of("lidocaine plain"),
            "concentration",
            Desk.of("1", Unit.PERCENT)));
  }

  private static Answer adult(Entry weight) {
    return lidocaine(Desk.of("40", Unit.YEARS), weight);
  }

  private static List<Answer.Reason> reasons(Answer answer) {
    return answer instanceof Answer.AskedAgain again
        ? again.reasons()
        : ((Answer.Refused) answer).reasons();
  }

  @Test
  void shouldNeverAssumeAUnit() {
    assertThat(reasons(adult(new Entry("70", null, null))))
        .containsExactly(new Answer.Reason("weight", "weight needs its unit: kg or lb"));
  }

  @Test
  void shouldRefuseAUnitOfAnotherKind() {
    assertThat(reasons(adult(Desk.of("70", Unit.CM))).get(0).message()).contains("kg or lb");
    assertThat(reasons(adult(new Entry("70", "stone", null))).get(0).message())
        .contains("kg or lb");
  }

  @Test
  void shouldReadPoundsBackInKilograms() {
    Answer.Worked worked = (Answer.Worked) adult(Desk.of("154", Unit.LB));
    assertThat(worked.given()).contains("weight 154 lb (69.9 kg)", "age 40 years");
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = ';',
      value = {
        "7,5; comma", "1,000; comma", ".5; zero before the point: 0.5", "-70; below 0",
        "7O; is no number", "70.; is no number", "1e2; is no number", "70 kg; is no number",
        "7..5; is no number", "NaN; is no number", "70.00001; four places"
      })
  void shouldSayHowToWriteANumber(String text, String mend) {
    List<Answer.Reason> reasons = reasons(adult(Desk.of(text, Unit.KG)));
    assertThat(reasons).hasSize(1);
    assertThat(reasons.get(0).input()).isEqualTo("weight");
    assertThat(reasons.get(0).message()).contains(mend);
  }

  @Test
  void shouldAskAgainForAWeightWhosePointHasSlipped() {
    assertThat(adult(Desk.of("7", Unit.KG))).isInstanceOf(Answer.AskedAgain.class);
    assertThat(reasons(adult(Desk.of("7", Unit.KG))).get(0).message())
        .contains("7 kg (15.4 lb)", "40 years", "38 kg to 200 kg", "chart");
    assertThat(lidocaine(Desk.of("4", Unit.YEARS), Desk.of("160", Unit.KG)))
        .isInstanceOf(Answer.AskedAgain.class);
    // An infant of 5 months entered as 5 years.
    assertThat(lidocaine(Desk.of("5", Unit.YEARS), Desk.of("6.5", Unit.KG)))
        .isInstanceOf(Answer.AskedAgain.class);
    assertThat(lidocaine(Desk.of("5", Unit.MONTHS), Desk.of("6.5", Unit.KG)))
        .isInstanceOf(Answer.Worked.class);
  }

  @Test
  void shouldTakeAnUnusualWeightOnceItWasEnteredTwiceAlike() {
    assertThat(adult(Desk.of("230", Unit.KG))).isInstanceOf(Answer.AskedAgain.class);
    assertThat(adult(Desk.of("230", Unit.KG).withAgain("230"))).isInstanceOf(Answer.Worked.class);
    assertThat(reasons(adult(Desk.of("230", Unit.KG).withAgain("23"))).get(0).message())
        .contains("differs from the first");
  }

  @Test
  void shouldRefuseWhatCannotBeMeantAtAll() {
    assertThat(reasons(adult(Desk.of("700", Unit.KG))).get(0).message())
        .contains("outside 0.3 kg to 400 kg");
    assertThat(reasons(adult(Desk.of("0", Unit.KG))).get(0).message()).contains("outside");
    assertThat(
            Desk.refused(
                    "local-anaesthetic",
                    "age",
                    Desk.of("40", Unit.YEARS),
                    "weight",
                    Desk.of("70", Unit.KG),
                    "drug",
                    Desk.of("lidocaine plain"),
                    "concentration",
                    Desk.of("20", Unit.PERCENT))
                .input())
        .isEqualTo("concentration");
  }

  @Test
  void shouldTellAllThatIsWrongAtOnce() {
    Answer answer = Desk.ask("local-anaesthetic", Desk.entries("weight", Desk.of("x", Unit.KG)));
    assertThat(reasons(answer))
        .extracting(Answer.Reason::input)
        .containsExactly("age", "weight", "drug", "concentration");
  }

  @Test
  void shouldRefuseWhatIsNotAskedForAndFactsOfThePatientFromElsewhere() {
    assertThat(
            Desk.refused(
                    "blade", "age", Desk.of("6", Unit.YEARS), "weight-2", Desk.of("6", Unit.KG))
                .message())
        .contains("isn't asked for");
    Answer answer =
        Desk.figures()
            .work(
                "blade",
                Desk.CASE,
                CaseInputs.of(Desk.CASE),
                Map.of("age", Desk.of("6", Unit.YEARS)),
                Desk.TODAY)
            .answer();
    assertThat(reasons(answer).get(0).message()).contains("comes with the case");
  }

  private static CaseInputs patient(String caseId) {
    return CaseInputs.of(new CaseId(caseId))
        .with("age", Desk.of("40", Unit.YEARS))
        .with("weight", Desk.of("70", Unit.KG));
  }

  private static final Map<String, Entry> LIDOCAINE =
      Desk.entries("drug", Desk.of("lidocaine plain"), "concentration", Desk.of("1", Unit.PERCENT));

  @Test
  void shouldRefuseTheWeightOfAnotherCase() {
    CaseAnswer answer =
        Desk.figures()
            .work(
                "local-anaesthetic",
                new CaseId("case-2"),
                patient("case-1"),
                LIDOCAINE,
                Desk.TODAY);
    assertThat(reasons(answer.answer()).get(0).message()).contains("another case");
  }

  @Test
  void shouldBeBlankAfterASwapAndAfterAChangedWeight() {
    CaseInputs before = patient("case-1");
    CaseAnswer answer =
        Desk.figures().work("local-anaesthetic", before.caseId(), before, LIDOCAINE, Desk.TODAY);
    assertThat(answer.shownFor(before)).isPresent();
    assertThat(answer.shownFor(patient("case-2"))).isEmpty();
    CaseInputs changed = before.with("weight", Desk.of("71", Unit.KG));
    assertThat(answer.shownFor(changed)).isEmpty();
    // Even back at the old number: it was looked at anew.
    assertThat(answer.shownFor(changed.with("weight", Desk.of("70", Unit.KG)))).isEmpty();
  }

  @Test
  void shouldGoThroughJsonWithWhatAPageNeeds() throws Exception {
    Answer answer = adult(Desk.of("70", Unit.KG));
    assertThat(Json.read(Json.write(answer), Answer.class)).isEqualTo(answer);
    Answer again = adult(Desk.of("7", Unit.KG));
    assertThat(Json.read(Json.write(again), Answer.class)).isEqualTo(again);
    for (BedsideFigures.Listed listed : Desk.figures().list(Desk.TODAY)) {
      assertThat(Json.read(Json.write(listed), BedsideFigures.Listed.class)).isEqualTo(listed);
    }
    BedsideSettings settings = Desk.releasing(BedsideSettings.first());
    assertThat(Json.read(Json.write(settings), BedsideSettings.class)).isEqualTo(settings);
  }
}
