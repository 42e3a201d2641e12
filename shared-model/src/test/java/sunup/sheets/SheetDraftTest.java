package sunup.sheets;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;

/** What a desk sees of a draft of the sheets before it publishes it. */
class SheetDraftTest {
  private static final Edition STANDARD = Edition.standard();

  static Map<String, String> onlyStandard(int number) {
    return number == 0 ? STANDARD.files() : null;
  }

  private static SheetDraft draft(SheetEdit... edits) {
    return SheetDraft.of(STANDARD, List.of(edits), SheetDraftTest::onlyStandard);
  }

  private static List<String> changes(SheetDraft draft) {
    return draft.changes().stream().map(EditionChanges.Changed::words).toList();
  }

  private static List<String> problems(SheetDraft draft) {
    return draft.problems().stream().map(Object::toString).toList();
  }

  private static ComposedSheet list(SheetDraft draft, String technique, String... options)
      throws BadSheet {
    assertThat(problems(draft)).isEmpty();
    return draft.sheets().compose(technique, List.of(options));
  }

  private static Map<String, Object> minutes(double usual, double oneInTen) {
    return Map.of("hands", Map.of("usual", usual, "oneInTen", oneInTen));
  }

  private static Map<String, Object> headrest() {
    return Map.of(
        "belongs", "case",
        "desk", "headrest padded",
        "wall", "headrest",
        "who", List.of("anaesthetist or trainee"),
        "hands", Map.of("usual", 1.5, "oneInTen", 3),
        "gates", "induction");
  }

  @Test
  void shouldSayWhatMinutesBecomeAndCountTheSheetsVersionUpAlone() throws BadSheet {
    SheetDraft draft = draft(Edits.change("general", "airway.tubes", minutes(3, 5)));

    assertThat(changes(draft)).containsExactly("general, airway.tubes: hands 2 (3.5), now 3 (5)");
    ComposedSheet after = list(draft, "general");
    assertThat(after.edition()).isEqualTo(1);
    assertThat(after.from()).containsExactly("edition:1", "general 3");
    ComposedSheet before = STANDARD.sheets().compose("general", List.of());
    assertThat(before.edition()).isZero();
    double more =
        SheetMinutes.of(after).all().handsUsual() - SheetMinutes.of(before).all().handsUsual();
    assertThat(more).isCloseTo(1, within(1e-9));
    assertThat(draft.files().get("block.json")).isEqualTo(STANDARD.files().get("block.json"));
  }

  @Test
  void shouldBringAnItemBehindTheOneItFollowsOrLastInItsSection() throws BadSheet {
    SheetDraft draft =
        draft(
            Edits.add("general", "airway.headrest", headrest(), "airway.tubes"),
            Edits.add("general", "suction.second", headrest(), null),
            Edits.add("block", "special.pillow", headrest(), null));

    List<String> keys = new ArrayList<>(list(draft, "general", "block").byKey().keySet());
    assertThat(keys.indexOf("airway.headrest")).isEqualTo(keys.indexOf("airway.tubes") + 1);
    assertThat(keys.indexOf("suction.second")).isEqualTo(keys.indexOf("suction.strong") + 1);
    assertThat(keys).contains("special.pillow");
    assertThat(list(draft, "general").byKey()).doesNotContainKey("special.pillow");
  }

  @Test
  void shouldLetThoseWaitForWhatAnItemWaitedForThatIsLeftOut() throws BadSheet {
    SheetDraft draft = draft(Edits.leaveOut("general", "machine.circuit"));

    assertThat(list(draft, "general").byKey().get("machine.flow").after())
        .containsExactly("machine.self-test", "machine.vaporisers", "machine.absorber");
    assertThat(changes(draft)).contains("general, machine.circuit: gone");
  }

  @Test
  void shouldTakeAnItemAwayByAnAdditionAndPutItBack() throws BadSheet {
    SheetEdit take = Edits.leaveOut("block", "monitors.record");

    assertThat(list(draft(take), "general", "block").byKey()).doesNotContainKey("monitors.record");
    assertThat(list(draft(take), "general").byKey()).containsKey("monitors.record");
    assertThat(changes(draft(take))).containsExactly("block: takes monitors.record");
    SheetDraft back = draft(take, Edits.putBack("block", "monitors.record"));
    assertThat(back.changes()).isEmpty();
    assertThat(back.canBePublished()).isFalse();
  }

  @Test
  void shouldMoveAnItemWithinItsSectionAndNotOutOfIt() throws BadSheet {
    SheetDraft draft = draft(Edits.move("general", "monitors.record", null));

    List<String> keys = new ArrayList<>(list(draft, "general").byKey().keySet());
    assertThat(keys.indexOf("monitors.record")).isLessThan(keys.indexOf("monitors.basic"));
    assertThat(changes(draft))
        .contains(
            "general, monitors.record: order behind monitors.alarms,"
                + " now behind suction.strong");
    SheetDraft out = draft(Edits.move("general", "monitors.record", "machine.bag"));
    assertThat(problems(out)).anyMatch(p -> p.contains("put it with its section"));
  }

  @Test
  void shouldRefuseToLoseWhatMayNeverBeLeftOutInWhateverWay() {
    for (String key : UnwaivableCore.keys()) {
      assertThat(problems(draft(Edits.leaveOut("general", key))))
          .as(key)
          .anyMatch(p -> p.contains(key) && p.contains("may never be left out"));
      SheetDraft taken = draft(Edits.leaveOut("lines", key));
      assertThat(problems(taken))
          .as(key)
          .anyMatch(p -> p.contains("lines.json") && p.contains("see general.json, line"));
      Map<String, Object> advised = new HashMap<>();
      advised.put("gates", null);
      assertThat(draft(Edits.change("general", key, advised)).canBePublished()).as(key).isFalse();
    }
    SheetDraft nobody =
        draft(Edits.change("general", "start.check", Map.of("who", List.of("technician"))));
    assertThat(problems(nobody)).anyMatch(p -> p.contains("takes nobody of the anaesthetic team"));
  }

  @Test
  void shouldNameBothPlacesOfADuplicateAndOfAContradiction() {
    SheetDraft twice = draft(Edits.add("block", "airway.tubes", headrest(), null));
    assertThat(problems(twice))
        .anyMatch(p -> p.matches("(?s)block.json, line \\d+.*general.json, line \\d+.*"));
    assertThat(problems(draft(Edits.add("general", "airway.tubes", headrest(), null))))
        .anyMatch(p -> p.contains("is there already"));

    SheetDraft gone = draft(Edits.leaveOut("general", "patient.assessment"));
    assertThat(problems(gone)).anyMatch(p -> p.startsWith("alone.json, line "));
    assertThat(gone.problems().stream().map(p -> p.file() + p.line() + p.field()))
        .doesNotHaveDuplicates();
  }

  @Test
  void shouldTellEveryChangeThatCanNotBeMadeAndMakeTheRest() {
    SheetDraft draft =
        draft(
            Edits.change("genral", "airway.tubes", minutes(3, 5)),
            Edits.change("general", "airway.tube", minutes(3, 5)),
            Edits.move("block", "airway.tubes", null),
            Edits.putBack("block", "airway.tubes"),
            Edits.asIn(null, 7),
            Edits.change("general", "airway.tubes", Map.of("key", "airway.other")),
            Edits.change("general", "airway.plan-b", minutes(2, 4)));

    assertThat(draft.problems()).hasSize(6);
    assertThat(problems(draft)).anyMatch(p -> p.contains("did you mean 'general'?"));
    assertThat(problems(draft)).anyMatch(p -> p.contains("did you mean 'airway.tubes'?"));
    assertThat(changes(draft)).hasSize(1);
  }

  @Test
  void shouldGoBackToAnEarlierEditionWithVersionsThatGoOnCounting() throws BadSheet {
    Map<String, String> first =
        draft(Edits.change("general", "airway.tubes", minutes(3, 5))).files();
    Edition one = Edition.of(1, first);

    SheetDraft back =
        SheetDraft.of(one, List.of(Edits.asIn(null, 0)), SheetDraftTest::onlyStandard);

    assertThat(changes(back)).containsExactly("general, airway.tubes: hands 3 (5), now 2 (3.5)");
    ComposedSheet list = back.sheets().compose("general", List.of());
    assertThat(list.hash()).isEqualTo(STANDARD.sheets().compose("general", List.of()).hash());
    assertThat(list.from()).containsExactly("edition:2", "general 4");
  }

  @Test
  void shouldSayWhatOthersPublishedMeanwhileAndWhereBothWereAtWork() {
    Edition theirs =
        Edition.of(
            1,
            draft(
                    Edits.change("general", "airway.tubes", minutes(3, 5)),
                    Edits.change("general", "airway.plan-b", minutes(2, 4)))
                .files());
    List<SheetEdit> mine =
        List.of(
            Edits.change("general", "airway.tubes", Map.of("desk", "tubes laid out")),
            Edits.leaveOut("block", "monitors.record"));

    SheetDraft.Since since = SheetDraft.Since.of(STANDARD, theirs, mine);
    SheetDraft again = SheetDraft.of(theirs, mine, SheetDraftTest::onlyStandard);

    assertThat(since.changes()).hasSize(2);
    assertThat(since.both()).containsExactly("general/airway.tubes");
    assertThat(again.canBePublished()).isTrue();
    assertThat(again.changes()).hasSize(2);
  }
}
