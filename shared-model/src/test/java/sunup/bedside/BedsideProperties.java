package sunup.bedside;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.math.BigDecimal;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.Random;
import net.jqwik.api.Arbitraries;
import net.jqwik.api.Arbitrary;
import net.jqwik.api.Combinators;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.Provide;
import net.jqwik.api.constraints.DoubleRange;
import net.jqwik.api.constraints.IntRange;
import sunup.units.Concentration;
import sunup.units.Mass;
import sunup.units.Numbers;
import sunup.units.Unit;

/** What holds of every figure whatever is entered. */
class BedsideProperties {
  @Property
  void shouldComeBackFromEveryUnit(
      @ForAll Unit unit, @ForAll @DoubleRange(min = 0.01, max = 100_000) double value) {
    assertThat(unit.fromBase(unit.toBase(value))).isCloseTo(value, within(value * 1e-12));
  }

  @Property
  void shouldLastLongerWithMorePressureAndShorterWithMoreFlow(
      @ForAll CylinderSize size,
      @ForAll @DoubleRange(min = 0, max = 3000) double psi,
      @ForAll @DoubleRange(min = 0, max = 500) double more,
      @ForAll @DoubleRange(min = 0, max = 1000) double kept,
      @ForAll @DoubleRange(min = 0.1, max = 50) double flow) {
    double less = Cylinders.usableLitres(size, new Pressure(psi), new Pressure(kept));
    double most = Cylinders.usableLitres(size, new Pressure(psi + more), new Pressure(kept));
    assertThat(less).isNotNegative();
    assertThat(most).isGreaterThanOrEqualTo(less);
    assertThat(Cylinders.minutes(less, new Flow(flow + 1), 0))
        .isLessThanOrEqualTo(Cylinders.minutes(less, new Flow(flow), 0));
  }

  @Property
  void shouldNeverBeAboveEitherLimitAndGrowWithWeight(
      @ForAll("whole") Ceiling ceiling,
      @ForAll @DoubleRange(min = 2, max = 300) double kg,
      @ForAll @DoubleRange(min = 0, max = 50) double more,
      @ForAll @IntRange(min = 1, max = 1200) int months) {
    Age age = Age.ofMonths(months);
    double mg = LocalAnaesthetics.limit(ceiling, new Weight(kg), age).most().mg();
    assertThat(mg).isLessThanOrEqualTo(ceiling.mgPerKg() * kg);
    assertThat(mg).isLessThanOrEqualTo(ceiling.fixedMg());
    assertThat(LocalAnaesthetics.limit(ceiling, new Weight(kg + more), age).most().mg())
        .isGreaterThanOrEqualTo(mg);
  }

  /** What a screen shows of a ceiling is never above it, in mg nor in mL. */
  @Property
  void shouldRoundCeilingsDown(
      @ForAll("whole") Ceiling ceiling,
      @ForAll @DoubleRange(min = 2, max = 300) double kg,
      @ForAll @DoubleRange(min = 0.5, max = 40) double mgPerMl) {
    Mass most = LocalAnaesthetics.limit(ceiling, new Weight(kg), new Age(40)).most();
    Concentration c = new Concentration(mgPerMl);
    Line.Dose dose = Line.Dose.atMost("", most, c);
    double slack = 1e-9 * most.mg();
    assertThat(number(dose.mg())).isLessThanOrEqualTo(most.mg() + slack);
    assertThat(number(dose.ml()) * mgPerMl).isLessThanOrEqualTo(most.mg() + slack);
  }

  private static double number(String text) {
    return Double.parseDouble(text.substring(0, text.indexOf(' ')).replace(",", ""));
  }

  @Provide
  Arbitrary<Ceiling> whole() {
    return Arbitraries.of(
        Ceiling.PUBLISHED.stream()
            .filter(c -> c.mgPerKg() != null && c.fixedMg() != null)
            .toList());
  }

  @Property
  void shouldNotShrinkWithAgeOrWeight(
      @ForAll @DoubleRange(min = 2, max = 12) double years,
      @ForAll @DoubleRange(min = 0, max = 5) double more,
      @ForAll @DoubleRange(min = 0.5, max = 150) double kg) {
    double older = Math.min(12, years + more);
    assertThat(AirwaySizes.made(AirwaySizes.cuffedMm(new Age(older))).mm())
        .isGreaterThanOrEqualTo(AirwaySizes.made(AirwaySizes.cuffedMm(new Age(years))).mm());
    assertThat(AirwaySizes.depthCm(new Age(older)))
        .isGreaterThanOrEqualTo(AirwaySizes.depthCm(new Age(years)));
    assertThat(AirwaySizes.mask(new Weight(kg + more)))
        .isGreaterThanOrEqualTo(AirwaySizes.mask(new Weight(kg)));
    assertThat(Maintenance.mlPerHour(new Weight(kg + more)))
        .isGreaterThanOrEqualTo(Maintenance.mlPerHour(new Weight(kg)));
    assertThat(Mac.of(Mac.Agent.DESFLURANE, new Age(older)))
        .isLessThanOrEqualTo(Mac.of(Mac.Agent.DESFLURANE, new Age(years)));
    assertThat(Rescue.vials(new Mass(kg + more), new Mass(20)))
        .isGreaterThanOrEqualTo(Rescue.vials(new Mass(kg), new Mass(20)));
  }

  /** The point that slips is asked again whatever the age. */
  @Property
  void shouldLeaveTheBandOfUsualWeightsTenfold(
      @ForAll @IntRange(min = 0, max = 1200) int months,
      @ForAll @DoubleRange(min = 0, max = 1) double place) {
    WeightBands.Band band = WeightBands.of(Age.ofMonths(months));
    double kg = band.lowKg() + place * (band.highKg() - band.lowKg());
    assertThat(band.holds(new Weight(kg))).isTrue();
    assertThat(band.holds(new Weight(kg * 10))).isFalse();
    assertThat(band.holds(new Weight(kg / 10))).isFalse();
  }

  @Property
  void shouldWriteNumbersWithoutTrailingZerosAndReadThemBack(
      @ForAll @DoubleRange(min = 0, max = 1_000_000) double value) {
    String text = Numbers.text(value);
    assertThat(text).doesNotMatch(".*\\.\\d*0").doesNotMatch("\\..*").doesNotEndWith(".");
    double least = value < 0.01 ? value * 0.006 : 0.00006;
    assertThat(Double.parseDouble(text.replace(",", ""))).isCloseTo(value, within(least + 1e-12));
  }

  /** Whatever is typed into whatever figure, there is an answer and never a crash. */
  @Property(tries = 3000)
  void shouldAnswerWhateverIsEntered(@ForAll("asked") Map<String, Entry> entries) {
    for (BedsideFigures.Listed listed : FIGURES.list(Desk.TODAY)) {
      assertThat(Desk.ask(FIGURES, listed.card().name(), entries)).isNotNull();
    }
  }

  /** The same with what fits each input: mostly worked, sometimes refused, never a crash. */
  @Property(tries = 500)
  void shouldWorkOutWhateverIsInRange(@ForAll long seed) {
    Random random = new Random(seed);
    for (BedsideFigures.Listed listed : FIGURES.list(Desk.TODAY)) {
      Map<String, Entry> entries = new LinkedHashMap<>();
      for (Input input : listed.card().inputs()) {
        if (input.needed() || random.nextBoolean()) {
          entries.put(input.name(), fitting(input, random));
        }
      }
      Answer answer = Desk.ask(FIGURES, listed.card().name(), entries);
      if (answer instanceof Answer.Worked worked) {
        assertThat(worked.lines()).isNotEmpty().allMatch(l -> !l.text().isBlank());
        assertThat(worked.toString()).doesNotContain("NaN", "Infinity", "null null");
      }
    }
  }

  private static Entry fitting(Input input, Random random) {
    if (input.kind() == Input.Kind.CHOICE) {
      return Entry.choice(input.choices().get(random.nextInt(input.choices().size())));
    }
    Unit first = input.units().get(0);
    Unit unit = input.units().get(random.nextInt(input.units().size()));
    double place = input.least() + random.nextDouble() * (input.most() - input.least());
    double value = Numbers.near(unit.fromBase(first.toBase(place)), 3);
    String text =
        unit == Unit.ONE_IN
            ? Long.toString(Math.max(1, Math.round(value)))
            : BigDecimal.valueOf(value).stripTrailingZeros().toPlainString();
    return new Entry(text, unit.word(), text);
  }

  private static final BedsideFigures FIGURES = Desk.figures();

  @Provide
  Arbitrary<Map<String, Entry>> asked() {
    Arbitrary<String> texts =
        Arbitraries.oneOf(
            Arbitraries.of("0", "1", "70", "7.5", "female", "cuffed", "oxygen", "1:1000", "", " "),
            Arbitraries.strings().ofMaxLength(8));
    Arbitrary<String> units =
        Arbitraries.of("kg", "lb", "years", "psi", "%", "1:", "mL", "mm", "x", "").injectNull(0.2);
    Arbitrary<Entry> entries =
        Combinators.combine(texts.injectNull(0.05), units, texts.injectNull(0.5)).as(Entry::new);
    Arbitrary<String> names =
        Arbitraries.of(
            "age",
            "weight",
            "height",
            "sex",
            "cuff",
            "bore",
            "gas",
            "size",
            "pressure",
            "flow",
            "drug",
            "concentration",
            "volume",
            "nonsense");
    return Arbitraries.maps(names, entries).ofMaxSize(6);
  }
}
