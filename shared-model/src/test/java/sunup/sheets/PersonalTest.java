package sunup.sheets;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.stream.Collectors;
import net.jqwik.api.Arbitraries;
import net.jqwik.api.Arbitrary;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.Provide;
import org.junit.jupiter.api.Test;
import sunup.board.Step;
import sunup.codec.Problem;

/** What a person adds to and orders in a list of his or her own. */
class PersonalTest {
  private static final String EARPIECE =
      "{\"key\": \"monitors.earpiece\", \"belongs\": \"case\", \"desk\": \"own earpiece\","
          + " \"who\": [\"anaesthetist or trainee\"],"
          + " \"hands\": {\"usual\": 1, \"oneInTen\": 2}%s}";

  private static ComposedSheet plain() {
    try {
      return Sheets.standard().compose("general", List.of());
    } catch (BadSheet e) {
      throw new AssertionError(e);
    }
  }

  private static final ComposedSheet PLAIN = plain();

  private static List<String> refused(String rest) {
    try {
      Personal.apply(PLAIN, Files.personal(rest));
      throw new AssertionError("was taken");
    } catch (BadSheet e) {
      return e.problems().stream().map(Problem::toString).toList();
    }
  }

  private static List<String> keys(ComposedSheet sheet) {
    return sheet.items().stream().map(SheetItem::key).toList();
  }

  @Test
  void shouldAddWhatAPersonLaysOutWithoutHoldingAnythingUp() throws BadSheet {
    ComposedSheet own =
        Personal.apply(
            PLAIN,
            Files.personal(
                "\"adds\": [" + EARPIECE.formatted(", \"follows\": \"monitors.basic\"") + "]"));
    SheetItem added = own.byKey().get("monitors.earpiece");
    assertThat(added.gates()).isNull();
    assertThat(added.wall()).isEqualTo("monitors");
    assertThat(keys(own)).containsSubsequence("monitors.basic", "monitors.earpiece");
    assertThat(keys(own)).hasSize(PLAIN.items().size() + 1).containsAll(keys(PLAIN));
    assertThat(own.from()).containsExactly("general 2", "own 3");
    assertThat(own.hash()).isEqualTo(Sheets.hashOf(own)).isNotEqualTo(PLAIN.hash());
  }

  @Test
  void shouldGoThroughASectionInThePersonsOrder() throws BadSheet {
    ComposedSheet own =
        Personal.apply(
            PLAIN,
            Files.personal("\"order\": [\"drugs.emergency\", \"drugs.drawn\", \"airway.awake\"]"));
    assertThat(keys(own))
        .containsSubsequence("iv.set", "drugs.emergency", "drugs.drawn", "drugs.controlled");
    assertThat(own.items()).containsExactlyInAnyOrderElementsOf(PLAIN.items());
  }

  @Test
  void shouldRefuseToHoldAStepUpOrToBeCore() {
    for (String field :
        List.of(
            ", \"gates\": \"induction\"",
            ", \"core\": true",
            ", \"marks\": \"release\"",
            ", \"uses\": [{\"kind\": \"ultrasound\"}]",
            ", \"place\": \"pharmacy\"",
            ", \"asa\": [4]")) {
      assertThat(refused("\"adds\": [" + EARPIECE.formatted(field) + "]"))
          .anyMatch(p -> p.startsWith("own.json, line 2, ") && p.contains("only advised"));
    }
  }

  @Test
  void shouldRefuseToTakeOrChangeAnything() {
    assertThat(refused("\"takes\": [\"room.table\"], \"order\": [\"iv.set\"]"))
        .anyMatch(p -> p.contains("takes: 'takes' is not known"));
    assertThat(refused("\"changes\": [{\"key\": \"iv.set\", \"core\": false}]"))
        .anyMatch(p -> p.contains("changes: 'changes' is not known"));
  }

  @Test
  void shouldRefuseASecondItemOfTheSameKeyAndOneOutsideTheSetUp() {
    assertThat(
            refused(
                "\"adds\": ["
                    + EARPIECE.formatted("").replace("monitors.earpiece", "iv.set")
                    + "]"))
        .containsExactly(
            "own.json, line 2, iv.set: key: is on the case's list already; use another key");
    assertThat(
            refused(
                "\"adds\": ["
                    + EARPIECE.formatted("").replace("monitors.earpiece", "start.rest")
                    + "]"))
        .containsExactly(
            "own.json, line 2, start.rest: key: must be of a set-up section, machine to special");
  }

  @Test
  void shouldRefuseAnOrderAgainstWhatAnItemWaitsFor() {
    assertThat(refused("\"order\": [\"machine.circuit\", \"machine.self-test\"]"))
        .contains(
            "own.json, line 2, order: machine.circuit waits for machine.self-test; put it behind"
                + " that");
    assertThat(refused("\"order\": [\"start.airway\"]"))
        .containsExactly(
            "own.json, line 2, order: start.airway is not of the set-up sections; only those are a"
                + " person's to order");
    assertThat(refused("\"order\": [\"iv.set\", \"iv.set\"]"))
        .containsExactly("own.json, line 2, order: names iv.set twice");
  }

  @Test
  void shouldBeNamedLikeAnOptionAndToldWithItsPlaceIfNoListCanHaveIt() throws BadSheet {
    String own =
        "{\"sheet\": \"own\", \"version\": 1, \"kind\": \"personal\", \"title\": \"x\","
            + " \"order\": [\"%s\"]}";
    Map<String, String> files =
        Map.of("general.json", Files.general(), "own.json", own.formatted("drugs.emergency"));
    List<String> keys = keys(Sheets.of(files).compose("general", List.of("own")));
    assertThat(keys.indexOf("drugs.emergency")).isLessThan(keys.indexOf("drugs.drawn"));

    Map<String, String> wrong =
        Map.of("general.json", Files.general(), "own.json", own.formatted("start.airway"));
    assertThatThrownBy(() -> Sheets.of(wrong))
        .isInstanceOf(BadSheet.class)
        .hasMessageContaining("own.json, line 1, order: start.airway is not of the set-up");
  }

  /** Whatever order a person writes, all items stay, and each before the step that it gates. */
  @Property(tries = 300)
  void shouldNeverMoveWhatGatesBehindItsStep(@ForAll("orders") List<String> order) throws BadSheet {
    String text = order.stream().map(k -> '"' + k + '"').collect(Collectors.joining(","));
    ComposedSheet own;
    try {
      own = Personal.apply(PLAIN, Files.personal("\"order\": [" + text + "]"));
    } catch (BadSheet e) {
      assertThat(e.problems()).allMatch(p -> p.field().equals("order"));
      return;
    }
    assertThat(own.items()).containsExactlyInAnyOrderElementsOf(PLAIN.items());
    List<String> keys = keys(own);
    for (SheetItem item : own.items()) {
      for (SheetItem step : own.items()) {
        if (step.marks() != null && step.marks() == item.gates()) {
          assertThat(keys.indexOf(item.key())).isLessThan(keys.indexOf(step.key()));
        }
      }
    }
    assertThat(own.items().stream().filter(i -> i.marks() == Step.INDUCTION)).hasSize(1);
  }

  @Provide
  Arbitrary<List<String>> orders() {
    List<String> keys = new ArrayList<>(keys(PLAIN));
    keys.removeIf(k -> k.startsWith("start.") || k.startsWith("machine."));
    keys.removeIf(k -> !PLAIN.byKey().get(k).section().isSetUp());
    keys.add("no.such");
    return Arbitraries.shuffle(keys).map(l -> l.subList(0, Math.max(1, l.size() / 2)));
  }
}
