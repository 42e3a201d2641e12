package sunup.drugs;

import static org.assertj.core.api.Assertions.assertThat;

import java.math.BigDecimal;
import java.util.List;
import net.jqwik.api.Arbitraries;
import net.jqwik.api.Arbitrary;
import net.jqwik.api.Combinators;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.Provide;
import org.junit.jupiter.api.Test;
import sunup.board.CaseId;
import sunup.board.PersonId;
import sunup.board.Private;
import sunup.codec.Json;

/** Controlled drugs must come out, and two sign. */
class ControlledCountTest {
  private static final PersonId ANN = new PersonId("A7");
  private static final PersonId BOB = new PersonId("B2");
  private static final ControlledDrug FENTANYL = ControlledDrug.ofMicrograms("fentanyl", "100");
  private static final ControlledDrug MORPHINE = ControlledDrug.ofMg("morphine", "10.0");
  private static final ControlledCount EMPTY = ControlledCount.of(new CaseId("case-1"));

  private static ControlledEntry drawn(ControlledDrug drug, int units) {
    return new ControlledEntry.Drawn(drug, units, 0, ANN, BOB);
  }

  private static ControlledEntry given(ControlledDrug drug, String micrograms) {
    return new ControlledEntry.Given(drug, new BigDecimal(micrograms), 1, ANN);
  }

  private static ControlledEntry wasted(ControlledDrug drug, String micrograms) {
    return new ControlledEntry.Wasted(drug, new BigDecimal(micrograms), 2, ANN, BOB);
  }

  private static ControlledEntry returned(ControlledDrug drug, int units) {
    return new ControlledEntry.Returned(drug, units, 3, ANN, BOB);
  }

  private static ControlledCount after(ControlledEntry... entries) {
    ControlledCount count = EMPTY;
    for (ControlledEntry entry : entries) {
      ControlledCount.Outcome outcome = count.take(entry);
      assertThat(outcome).isInstanceOf(ControlledCount.Taken.class);
      count = ((ControlledCount.Taken) outcome).count();
    }
    return count;
  }

  private static String refused(ControlledCount count, ControlledEntry entry) {
    ControlledCount.Outcome outcome = count.take(entry);
    assertThat(outcome).isInstanceOf(ControlledCount.Refused.class);
    return ((ControlledCount.Refused) outcome).why();
  }

  @Test
  void shouldComeOutWhenAllIsGivenWastedOrReturned() {
    ControlledCount count =
        after(
            drawn(FENTANYL, 3),
            given(FENTANYL, "150"),
            wasted(FENTANYL, "50"),
            returned(FENTANYL, 1));
    assertThat(count.open()).isEmpty();
    assertThat(count.sums()).singleElement().matches(ControlledCount.Sum::comesOut);
  }

  @Test
  void shouldSayWhatIsMissingToTheMicrogram() {
    ControlledCount count = after(drawn(FENTANYL, 2), given(FENTANYL, "150.5"));
    assertThat(count.open())
        .containsExactly("fentaNYL: 49.5 micrograms drawn and neither given, wasted nor returned");
    assertThat(after(drawn(MORPHINE, 1), given(MORPHINE, "2500")).open())
        .containsExactly("morphine: 7.5 mg drawn and neither given, wasted nor returned");
  }

  @Test
  void shouldRefuseTwoSignaturesOfOnePerson() {
    assertThat(refused(EMPTY, new ControlledEntry.Drawn(FENTANYL, 1, 0, ANN, ANN)))
        .contains("two different signatures");
    assertThat(refused(EMPTY, new ControlledEntry.Drawn(FENTANYL, 1, 0, ANN, null)))
        .contains("second signature");
    ControlledCount count = after(drawn(FENTANYL, 2));
    assertThat(refused(count, new ControlledEntry.Wasted(FENTANYL, BigDecimal.TEN, 0, BOB, BOB)))
        .contains("two different signatures");
    assertThat(refused(count, new ControlledEntry.Returned(FENTANYL, 1, 0, null, BOB)))
        .contains("signature");
  }

  @Test
  void shouldRefuseMoreThanWasDrawn() {
    assertThat(refused(EMPTY, given(FENTANYL, "50"))).contains("50 micrograms more");
    ControlledCount count = after(drawn(FENTANYL, 1), given(FENTANYL, "80"));
    assertThat(refused(count, wasted(FENTANYL, "20.1"))).contains("0.1 micrograms more");
    assertThat(refused(count, given(MORPHINE, "1"))).contains("morphine");
  }

  @Test
  void shouldTakeBackWholeUnopenedAmpoulesOnly() {
    ControlledCount count = after(drawn(FENTANYL, 2), given(FENTANYL, "50"));
    assertThat(refused(count, returned(FENTANYL, 2))).contains("more given");
    ControlledCount opened = after(drawn(FENTANYL, 3), given(FENTANYL, "150"));
    after(drawn(FENTANYL, 3), given(FENTANYL, "150"), returned(FENTANYL, 1));
    assertThat(
            refused(
                after(drawn(FENTANYL, 3), given(FENTANYL, "50"), returned(FENTANYL, 2)),
                wasted(FENTANYL, "60")))
        .contains("more given");
    assertThat(opened.sums().get(0).openedUnits()).isEqualTo(2);
  }

  @Test
  void shouldRefuseNothingAndTooMuch() {
    assertThat(refused(EMPTY, drawn(FENTANYL, 0))).contains("1 to 100");
    assertThat(refused(EMPTY, drawn(FENTANYL, 101))).contains("1 to 100");
    ControlledCount count = after(drawn(FENTANYL, 2));
    assertThat(refused(count, given(FENTANYL, "0"))).contains("above 0");
    assertThat(refused(count, given(FENTANYL, "-5"))).contains("above 0");
    assertThat(refused(count, given(FENTANYL, "1e99"))).contains("above 0");
    assertThat(refused(count, new ControlledEntry.Given(FENTANYL, null, 0, ANN)))
        .contains("above 0");
  }

  @Test
  void shouldStrikeAWrongEntryByTwoAndKeepIt() {
    ControlledCount count = after(drawn(FENTANYL, 2), given(FENTANYL, "200"));
    ControlledEntry strike = new ControlledEntry.Struck(1, Private.of("was 20"), 4, ANN, BOB);
    ControlledCount struck = ((ControlledCount.Taken) count.take(strike)).count();
    assertThat(struck.entries()).hasSize(3);
    assertThat(struck.sums().get(0).open()).isEqualByComparingTo("200");
    assertThat(refused(struck, strike)).contains("struck already");
    assertThat(refused(struck, new ControlledEntry.Struck(2, Private.of("x"), 5, ANN, BOB)))
        .contains("can't be struck");
    assertThat(refused(struck, new ControlledEntry.Struck(9, Private.of("x"), 5, ANN, BOB)))
        .contains("no such entry");
    assertThat(refused(count, new ControlledEntry.Struck(1, Private.of("x"), 5, ANN, ANN)))
        .contains("two different signatures");
    // Striking the drawing would leave more given than drawn.
    assertThat(refused(count, new ControlledEntry.Struck(0, Private.of("x"), 5, ANN, BOB)))
        .contains("more given");
  }

  @Test
  void shouldTellAmpoulesOfTwoSizesApart() {
    ControlledDrug large = ControlledDrug.ofMicrograms("fentanyl", "500");
    ControlledCount count = after(drawn(FENTANYL, 1), drawn(large, 1), given(large, "300"));
    assertThat(count.sums()).hasSize(2);
    assertThat(count.open()).hasSize(2);
    assertThat(ControlledDrug.ofMg("fentanyl", "0.10")).isEqualTo(FENTANYL);
  }

  @Test
  void shouldGoThroughJson() throws Exception {
    ControlledCount count = after(drawn(FENTANYL, 2), given(FENTANYL, "150.5"));
    assertThat(Json.read(Json.write(count), ControlledCount.class)).isEqualTo(count);
  }

  /** Whatever is entered in whatever order: what was drawn is what is accounted for or open. */
  @Property
  void shouldAlwaysBalance(@ForAll("entries") List<ControlledEntry> entries) {
    ControlledCount count = EMPTY;
    for (ControlledEntry entry : entries) {
      if (count.take(entry) instanceof ControlledCount.Taken taken) {
        count = taken.count();
      }
      for (ControlledCount.Sum sum : count.sums()) {
        BigDecimal unit = sum.drug().unitMicrograms();
        BigDecimal drawn = unit.multiply(BigDecimal.valueOf(sum.drawnUnits()));
        BigDecimal back = unit.multiply(BigDecimal.valueOf(sum.returnedUnits()));
        assertThat(sum.given().add(sum.wasted()).add(back).add(sum.open()))
            .isEqualByComparingTo(drawn);
        assertThat(sum.open()).isNotNegative();
        assertThat(sum.openedUnits() + sum.returnedUnits()).isLessThanOrEqualTo(sum.drawnUnits());
      }
    }
  }

  @Provide
  Arbitrary<List<ControlledEntry>> entries() {
    Arbitrary<ControlledDrug> drugs = Arbitraries.of(FENTANYL, MORPHINE);
    Arbitrary<Integer> units = Arbitraries.integers().between(1, 3);
    Arbitrary<String> amounts = Arbitraries.of("0.5", "25", "33.3", "50", "100", "2500", "10000");
    return Arbitraries.oneOf(
            Combinators.combine(drugs, units).as(ControlledCountTest::drawn),
            Combinators.combine(drugs, amounts).as(ControlledCountTest::given),
            Combinators.combine(drugs, amounts).as(ControlledCountTest::wasted),
            Combinators.combine(drugs, units).as(ControlledCountTest::returned),
            units.map(
                u -> (ControlledEntry) new ControlledEntry.Struck(u, Private.of("x"), 9, ANN, BOB)))
        .list()
        .ofMaxSize(20);
  }
}
