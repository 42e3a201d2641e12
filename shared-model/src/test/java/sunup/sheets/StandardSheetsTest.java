package sunup.sheets;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Set;
import java.util.TreeSet;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import sunup.board.Role;
import sunup.board.Section;
import sunup.board.Step;
import sunup.codec.Json;

/** The sheets that come with Sunup, against the table that they were made from. */
class StandardSheetsTest {
  private static final Sheets SHEETS = Sheets.standard();

  /** Rows of the table in practice's default sheet for a plain case, and the items they became. */
  private static final String ROWS =
      """
      1 machine.bag
      2 machine.supplies
      3 machine.self-test
      4 machine.cylinder
      5 machine.vaporisers
      6 machine.absorber
      7 machine.circuit machine.flow
      8 machine.ventilator
      9 suction.strong
      10 monitors.basic
      11 monitors.alarms
      12 monitors.record
      13 airway.tubes
      14 airway.plan-b
      16 iv.set
      17 drugs.drawn
      18 drugs.emergency
      19 drugs.controlled
      20 drugs.antibiotic
      21 drugs.rescue
      22 special.comfort
      26 room.clean
      27 room.table
      28 room.tried
      29 instruments.trays
      30 instruments.field
      31 instruments.count
      32 patient.arrived
      33 patient.papers
      34 patient.drip
      35 surgeon.seen
      36 patient.consent
      37 patient.assessment
      39 team.brief
      40 team.bed
      41 start.sent-for start.transport start.wheels-in
      42 start.on-table
      43 start.check
      44 start.induction start.airway
      45 start.release
      46 start.prep
      47 start.time-out
      """;

  private static ComposedSheet compose(String technique, String... options) {
    try {
      return SHEETS.compose(technique, List.of(options));
    } catch (BadSheet e) {
      throw new AssertionError(technique + " with " + Arrays.toString(options), e);
    }
  }

  @Test
  void shouldHoldThe42RowsOfAPlainCaseAndNothingElse() {
    List<String> rows = ROWS.lines().toList();
    assertThat(rows).hasSize(42);
    Set<String> keys =
        rows.stream()
            .flatMap(row -> Arrays.stream(row.split(" ", -1)).skip(1))
            .collect(Collectors.toCollection(LinkedHashSet::new));
    assertThat(compose("general").byKey().keySet()).containsExactlyInAnyOrderElementsOf(keys);
  }

  @Test
  void shouldBringTheConditionalRowsByOption() {
    // Rows 15, 23 with 38, 24 and 25 of the same table.
    assertThat(added("difficult-airway")).containsExactly("airway.trolley");
    assertThat(added("block"))
        .containsExactly("drugs.block", "special.ultrasound", "patient.block");
    assertThat(added("lines")).containsExactly("special.lines", "start.lines");
    assertThat(added("blood")).containsExactly("patient.blood");
    assertThat(added("imaging")).containsExactly("room.imaging");
  }

  private static List<String> added(String option) {
    List<String> keys = new ArrayList<>(compose("general", option).byKey().keySet());
    keys.removeAll(compose("general").byKey().keySet());
    return keys;
  }

  @Test
  void shouldReplaceTubeAndAirwayByTenMinutesForASpinal() {
    ComposedSheet spinal = compose("spinal");
    assertThat(spinal.byKey()).doesNotContainKeys("airway.tubes", "start.airway");
    assertThat(spinal.byKey().get("start.spinal").hands()).isEqualTo(new Hands(10, 20));
    assertThat(spinal.byKey().get("start.release").after()).containsExactly("start.spinal");
  }

  @Test
  void shouldWaitForTheWeightBeforeSizesAndDrugsOfAChild() {
    ComposedSheet child = compose("general", "child");
    assertThat(child.byKey().get("airway.tubes").after()).contains("patient.weight");
    assertThat(child.byKey().get("drugs.drawn").after()).contains("patient.weight");
    assertThat(child.byKey().get("start.airway").hands()).isEqualTo(new Hands(8, 16));
  }

  /**
   * American Society of Anesthesiologists, Sub-Committee on Equipment and Facilities,
   * Recommendations for Pre-Anesthesia Checkout Procedures (2008): items 1 to 15; to be done daily,
   * and before each procedure {2, 4, 7, 11, 12, 13, 14, 15}.
   */
  @Test
  void shouldCoverEveryItemOfTheAsa2008CheckoutAtItsFrequency() {
    Set<Integer> beforeEach = Set.of(2, 4, 7, 11, 12, 13, 14, 15);
    Set<Integer> covered = new TreeSet<>();
    for (SheetItem item : compose("general").items()) {
      covered.addAll(item.asa());
      for (int asa : item.asa()) {
        Life life = item.life();
        assertThat(life).as(item.key()).isNotNull();
        if (beforeEach.contains(asa)) {
          assertThat(life.ends()).as(item.key()).contains("next case");
          assertThat(life.minutes() == null || life.minutes() < 1440).as(item.key()).isTrue();
        } else {
          assertThat(life.minutes()).as(item.key()).isEqualTo(1440);
        }
        assertThat(item.gates()).as(item.key()).isEqualTo(Step.INDUCTION);
      }
    }
    // Item 14 is the record of the checkout. The board keeps it by itself: who found what good and
    // when. It is derived from the items and never a tick of its own, so no item may name it.
    Set<Integer> derived = Set.of(14);
    assertThat(covered).doesNotContainAnyElementsOf(derived);
    covered.addAll(derived);
    assertThat(covered).containsExactlyElementsOf(IntStream.rangeClosed(1, 15).boxed().toList());
  }

  /** Which item answers for which of the fifteen; item 14 as above. */
  @Test
  void shouldMapEachAsaItemToTheSheetItemThatAnswersForIt() {
    List<List<String>> expected =
        List.of(
            List.of("machine.bag"),
            List.of("suction.strong"),
            List.of("machine.supplies"),
            List.of("monitors.basic", "monitors.alarms"),
            List.of("machine.cylinder"),
            List.of("machine.supplies"),
            List.of("machine.vaporisers"),
            List.of("machine.self-test"),
            List.of("machine.supplies"),
            List.of("machine.self-test"),
            List.of("machine.absorber"),
            List.of("machine.circuit"),
            List.of("machine.flow"),
            List.of(),
            List.of("machine.ventilator", "start.check"));
    for (int asa = 1; asa <= 15; asa++) {
      int number = asa;
      assertThat(
              compose("general").items().stream()
                  .filter(i -> i.asa().contains(number))
                  .map(SheetItem::key))
          .as("item " + asa)
          .containsExactlyElementsOf(expected.get(asa - 1));
    }
  }

  /** Item 15 is for the provider only (responsible column: from memory). */
  @Test
  void shouldLeaveTheReadinessCheckToTheProvider() {
    for (SheetItem item : compose("general").items()) {
      if (item.asa().contains(15)) {
        assertThat(item.who().get(0)).containsExactly(Role.ANAESTHETIST, Role.TRAINEE);
      }
    }
  }

  @Test
  void shouldNeverLetBagSuctionOxygenCarbonDioxideOrTheCheckBeLeftOut() {
    assertThat(compose("general").items().stream().filter(SheetItem::core).map(SheetItem::key))
        .containsExactly(
            "machine.bag",
            "machine.supplies",
            "machine.cylinder",
            "suction.strong",
            "monitors.basic",
            "start.check");
  }

  @Test
  void shouldAskForThreeNumbersAndOneChoiceInASetUp() {
    // Ten touches: arrived, three readings, suction, monitors, airway, iv, drugs, special gone
    // through; machine is gone through with its last reading.
    List<SheetItem> setUp =
        compose("general").items().stream().filter(i -> i.section().isSetUp()).toList();
    assertThat(keysWith(setUp, EvidenceRule.Kind.NUMBER))
        .containsExactly("machine.self-test", "machine.cylinder", "machine.circuit");
    assertThat(keysWith(setUp, EvidenceRule.Kind.CHOICE)).containsExactly("drugs.antibiotic");
    assertThat(keysWith(setUp, EvidenceRule.Kind.SCAN)).isEmpty();
  }

  private static List<String> keysWith(List<SheetItem> items, EvidenceRule.Kind kind) {
    return items.stream().filter(i -> i.evidence().kind() == kind).map(SheetItem::key).toList();
  }

  @Test
  void shouldSayNothingOfThePatientOnTheWall() {
    // Words of practice's list "must not show", as far as words can tell.
    List<String> never =
        List.of(
            "consent",
            "blood",
            "weight",
            "child",
            "parent",
            "block",
            "spinal",
            "difficult",
            "line",
            "site",
            "allerg",
            "fasting",
            "pregnan",
            "result",
            "assess",
            "antibiotic",
            "implant",
            "isolation",
            "controlled",
            "opioid",
            "microscope",
            "newborn",
            "womb",
            "obstet",
            "bleed",
            "cardiac",
            "lung",
            "prone",
            "scanner",
            "epidural",
            "sedat",
            "rapid");
    for (ComposedSheet sheet : everyOptionAlone()) {
      for (SheetItem item : sheet.items()) {
        assertThat(item.wall().length()).as(item.key()).isBetween(1, 24);
        assertThat(never).noneMatch(word -> item.wall().toLowerCase(Locale.ROOT).contains(word));
      }
    }
  }

  /** Every technique with every option that goes with it; CombinationsTest has pairs and more. */
  private static List<ComposedSheet> everyOptionAlone() {
    List<ComposedSheet> sheets = new ArrayList<>();
    for (Sheets.Choice technique : SHEETS.techniques()) {
      sheets.add(compose(technique.name()));
      for (Sheets.Choice option : SHEETS.options()) {
        if (Combinations.goTogether(technique.name(), List.of(option.name()))) {
          sheets.add(compose(technique.name(), option.name()));
        }
      }
    }
    return sheets;
  }

  @Test
  void shouldGiveTheSameListAndHashWhateverTheOrderOfOptions() {
    ComposedSheet one = compose("general", "block", "child", "lines");
    ComposedSheet other = compose("general", "lines", "block", "child", "block");
    assertThat(other).isEqualTo(one);
    assertThat(one.hash()).matches("[0-9a-f]{64}").isNotEqualTo(compose("general").hash());
    assertThat(one.from()).containsExactly("general 2", "block 1", "child 2", "lines 1");
  }

  @Test
  void shouldKeepEverythingThroughJson() throws Exception {
    for (ComposedSheet sheet : everyOptionAlone()) {
      ComposedSheet back = Json.read(Json.bytes(sheet), ComposedSheet.class);
      assertThat(back).isEqualTo(sheet);
      assertThat(Sheets.hashOf(back)).isEqualTo(sheet.hash());
    }
  }

  @Test
  void shouldMakeTheCheckWaitForAllThatGatesInduction() {
    SheetItem check = compose("general", "difficult-airway").byKey().get("start.check");
    assertThat(check.after())
        .contains("machine.bag", "drugs.controlled", "airway.trolley", "start.on-table")
        .doesNotContain("start.check", "drugs.antibiotic");
  }

  /**
   * Cross-checks of practice's table, computed from the two numbers of each row: log-normal means,
   * from memory of published studies as that page cites them (42 to 45: mean 20.3 min to release;
   * 42 to 47: 36.9 min).
   */
  @Test
  void shouldMeetTheTablesOwnCrossChecks() {
    assertThat(mean("start.on-table", "start.check", "start.airway", "start.release"))
        .isCloseTo(20.3, within(0.1));
    assertThat(
            mean(
                "start.on-table",
                "start.check",
                "start.airway",
                "start.release",
                "start.prep",
                "start.time-out"))
        .isCloseTo(36.9, within(0.1));
  }

  /**
   * Usual hands-on minutes of the seven sections: the table's rows 1 to 22 without the conditional
   * 15 have 31.3, of which 3 for row 21 are the suite's (0.5 here) and 3 of row 19 are the walk.
   */
  @Test
  void shouldAddUpToTheTablesHandsOnMinutes() {
    double usual =
        compose("general").items().stream()
            .filter(i -> i.section().isSetUp())
            .mapToDouble(i -> i.hands().usual())
            .sum();
    assertThat(usual).isCloseTo(31.3 - 2.5 - 3, within(1e-9));
    double drugsAndDrip =
        compose("general").items().stream()
            .filter(i -> i.section() == Section.DRUGS || i.section() == Section.IV)
            .filter(i -> !i.key().equals("drugs.rescue"))
            .mapToDouble(i -> i.hands().usual())
            .sum();
    assertThat(drugsAndDrip).isCloseTo(14.5 - 3, within(1e-9));
  }

  private static double mean(String... keys) {
    double sum = 0;
    for (String key : keys) {
      Hands hands = compose("general").byKey().get(key).hands();
      double sigma = Math.log(hands.oneInTen() / hands.usual()) / 1.2816;
      sum += hands.usual() * Math.exp(sigma * sigma / 2);
    }
    return sum;
  }

  @Test
  void shouldReadTheAgentsLevelAsANumberOnlyWhereARoomAsksForIt() throws BadSheet {
    String vaporisers = "machine.vaporisers";
    Sheets sheets = Sheets.standard();

    EvidenceRule plain = sheets.compose("general", List.of()).byKey().get(vaporisers).evidence();
    EvidenceRule read =
        sheets.compose("general", List.of("agent-level")).byKey().get(vaporisers).evidence();

    assertThat(plain.kind()).isEqualTo(EvidenceRule.Kind.TOUCH);
    assertThat(read.kind()).isEqualTo(EvidenceRule.Kind.NUMBER);
    assertThat(read.low()).isEqualTo(25);
  }

  @Test
  void shouldCarryTheDaysChecksOfTheMachineOverToTheNextCaseAndNothingElse() throws BadSheet {
    List<String> carried =
        Sheets.standard().compose("general", List.of()).items().stream()
            .filter(SheetItem::outlastsItsCase)
            .map(SheetItem::key)
            .toList();

    // The drip is good for a day by its clock, and nobody says that it is for another patient.
    assertThat(carried)
        .containsExactly(
            "machine.bag", "machine.supplies", "machine.self-test", "machine.cylinder");
  }

  @ParameterizedTest
  @ValueSource(strings = {"suction.strong", "drugs.drawn", "iv.set", "machine.ventilator"})
  void shouldRefuseASheetThatCallsGoodForTheNextCaseWhatTouchedAPatient(String key) {
    Map<String, Object> life = Map.of("life", Map.of("minutes", 600, "nextCase", true));

    SheetDraft draft =
        SheetDraft.of(
            Edition.standard(),
            List.of(Edits.change("general", key, life)),
            SheetDraftTest::onlyStandard);

    assertThat(draft.problems())
        .extracting(Object::toString)
        .anyMatch(
            p -> p.contains(key + ": life: says nextCase, which only a check of the machine"));
  }
}
