package sunup.sheets;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.TreeSet;
import org.junit.jupiter.api.Test;
import sunup.codec.Problem;

/** Every pair and triple of additions with every technique. */
class CombinationsTest {
  private static final Sheets SHEETS = Sheets.standard();
  private static final List<String> TECHNIQUES =
      SHEETS.techniques().stream().map(Sheets.Choice::name).toList();
  private static final List<String> OPTIONS =
      SHEETS.options().stream().map(Sheets.Choice::name).toList();

  @Test
  void shouldHaveASheetForEveryKindOfMorning() {
    assertThat(TECHNIQUES)
        .containsExactly("general", "supraglottic", "sedation", "spinal", "epidural");
    assertThat(OPTIONS)
        .contains("block", "trunk-block", "child", "obstetric-emergency", "rapid-sequence")
        .contains("difficult-airway", "blood-loss", "one-lung", "prone", "mri", "cardiac");
  }

  private static List<List<String>> upToThree() {
    List<List<String>> all = new ArrayList<>(List.of(List.of()));
    for (int i = 0; i < OPTIONS.size(); i++) {
      all.add(List.of(OPTIONS.get(i)));
      for (int j = i + 1; j < OPTIONS.size(); j++) {
        all.add(List.of(OPTIONS.get(j), OPTIONS.get(i)));
        for (int k = j + 1; k < OPTIONS.size(); k++) {
          all.add(List.of(OPTIONS.get(i), OPTIONS.get(k), OPTIONS.get(j)));
        }
      }
    }
    return all;
  }

  @Test
  void shouldComposeEveryPairAndTripleOrSayWhichTwoDoNotGoTogether() throws BadSheet {
    int composed = 0;
    int refused = 0;
    for (String technique : TECHNIQUES) {
      for (List<String> options : upToThree()) {
        if (Combinations.goTogether(technique, options)) {
          looksRight(SHEETS.compose(technique, options), technique + " with " + options);
          composed++;
        } else {
          namesBothPlaces(technique, options);
          refused++;
        }
      }
    }
    assertThat(composed + refused).isEqualTo(5 * (1 + 17 + 136 + 680));
    assertThat(composed).isGreaterThan(1500);
  }

  private static void looksRight(ComposedSheet sheet, String what) {
    assertThat(sheet.byKey()).as(what).hasSize(sheet.items().size());
    assertThat(sheet.items().stream().map(SheetItem::desk).distinct())
        .as(what)
        .hasSize(sheet.items().size());
    assertThat(sheet.items().stream().map(SheetItem::section)).as(what).isSorted();
    for (String key : UnwaivableCore.keys()) {
      assertThat(sheet.byKey().get(key)).as(what).matches(i -> i != null && i.core());
    }
  }

  private static void namesBothPlaces(String technique, List<String> options) {
    try {
      SHEETS.compose(technique, options);
      throw new AssertionError(technique + " with " + options + " was composed");
    } catch (BadSheet e) {
      assertThat(e.problems()).isNotEmpty();
      for (Problem problem : e.problems()) {
        assertThat(problem.toString())
            .matches(
                "[a-z-]+\\.json, line \\d+, notWith: '[a-z-]+' does not go with '[a-z-]+' in"
                    + " [a-z-]+\\.json, line \\d+; take one of the two away");
      }
    }
  }

  @Test
  void shouldBringAlongWhatAnOptionCannotDoWithout() throws BadSheet {
    ComposedSheet cardiac = SHEETS.compose("general", List.of("cardiac"));
    assertThat(cardiac.byKey()).containsKeys("patient.blood", "start.lines", "special.bypass");
    assertThat(cardiac.from()).containsExactly("general 2", "blood 1", "cardiac 1", "lines 1");
    assertThat(SHEETS.compose("general", List.of("cardiac", "lines", "blood"))).isEqualTo(cardiac);
    assertThat(SHEETS.compose("general", List.of("blood-loss")).byKey())
        .containsKeys("patient.blood", "iv.large");
  }

  @Test
  void shouldReplaceTheTubeInEveryTechniqueWithoutOne() throws BadSheet {
    for (String technique : List.of("supraglottic", "sedation", "spinal", "epidural")) {
      ComposedSheet sheet = SHEETS.compose(technique, List.of());
      assertThat(sheet.byKey()).doesNotContainKeys("airway.tubes", "start.airway");
      assertThat(sheet.byKey()).containsKey("airway.plan-b");
      assertThat(sheet.byKey().get("start.release").after()).containsExactly("start." + technique);
    }
  }

  @Test
  void shouldOpenNoInstrumentsInAScanner() throws BadSheet {
    ComposedSheet mri = SHEETS.compose("general", List.of("mri"));
    assertThat(mri.items()).noneMatch(i -> i.key().startsWith("instruments."));
    assertThat(mri.byKey().get("team.metal").evidence().witness()).isTrue();
  }

  @Test
  void shouldTurnThePatientBeforePrepAndAfterRelease() throws BadSheet {
    ComposedSheet prone = SHEETS.compose("general", List.of("prone"));
    assertThat(prone.byKey().get("start.prone").after()).containsExactly("start.release");
    assertThat(prone.byKey().get("start.prep").after())
        .contains("start.prone", "instruments.field");
  }

  /** Its files in another order, and one that adds prerequisites before one that sets them anew. */
  @Test
  void shouldKeepAddedPrerequisitesWhateverTheNamesOfAdditions() throws BadSheet {
    String adds = "{\"sheet\": \"%s\", \"version\": 1, \"kind\": \"option\", \"title\": \"x\", ";
    String more = adds + "\"changes\": [{\"key\": \"start.prep\", \"alsoAfter\": [\"team.bed\"]}]}";
    String anew =
        adds + "\"changes\": [{\"key\": \"start.prep\", \"after\": [\"start.release\"]}]}";
    for (String[] names : new String[][] {{"a", "b"}, {"b", "a"}}) {
      Sheets sheets =
          Sheets.of(
              Map.of(
                  "general.json",
                  Files.general(),
                  names[0] + ".json",
                  more.formatted(names[0]),
                  names[1] + ".json",
                  anew.formatted(names[1])));
      assertThat(sheets.compose("general", List.of("a", "b")).byKey().get("start.prep").after())
          .as(new TreeSet<>(List.of(names)).toString())
          .containsExactly("start.release", "team.bed");
    }
  }
}
