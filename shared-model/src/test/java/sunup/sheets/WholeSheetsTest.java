package sunup.sheets;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import org.junit.jupiter.api.Test;

/** Whole techniques and options that a desk adds to the sheets, changes and takes away. */
class WholeSheetsTest {
  private static final Edition STANDARD = Edition.standard();
  private static final SheetEdit AWAKE =
      Edits.addSheet("awake-scope", Map.of("kind", "option", "title", "Awake intubation"));
  private static final SheetEdit SCOPE =
      Edits.add(
          "awake-scope",
          "airway.awake",
          Map.of(
              "belongs", "case",
              "desk", "spray, scope and tube",
              "wall", "airway",
              "who", List.of("anaesthetist or trainee"),
              "hands", Map.of("usual", 6, "oneInTen", 12),
              "gates", "induction"),
          "airway.plan-b");

  private static SheetDraft draft(SheetEdit... edits) {
    return SheetDraft.of(STANDARD, List.of(edits), SheetDraftTest::onlyStandard);
  }

  private static List<String> changes(SheetDraft draft) {
    return draft.changes().stream().map(EditionChanges.Changed::words).toList();
  }

  private static List<String> problems(SheetDraft draft) {
    return draft.problems().stream().map(Object::toString).toList();
  }

  @Test
  void shouldBringANewOptionThatACaseMayNameOnceItDoesSomething() throws BadSheet {
    assertThat(problems(draft(AWAKE)))
        .containsExactly("awake-scope.json, line 1: does nothing: no items, no changes");

    SheetDraft whole = draft(AWAKE, SCOPE);

    assertThat(problems(whole)).isEmpty();
    assertThat(changes(whole)).containsExactly("awake-scope: added");
    assertThat(whole.sheets().compose("general", List.of("awake-scope")).byKey())
        .containsKey("airway.awake");
  }

  @Test
  void shouldBringANewTechniqueOnABaseAndRefuseOneOnNone() throws BadSheet {
    SheetEdit item = Edits.leaveOut("local", "monitors.record");
    SheetDraft good =
        draft(
            Edits.addSheet("local", Map.of("kind", "technique", "title", "Local", "on", "general")),
            item);

    assertThat(problems(good)).isEmpty();
    assertThat(good.sheets().compose("local", List.of()).from())
        .containsExactly("edition:1", "general 2", "local 1");
    SheetDraft none =
        draft(
            Edits.addSheet("local", Map.of("kind", "technique", "title", "Local", "on", "block")),
            item);
    assertThat(problems(none)).containsExactly("local.json, on: 'block' is no base sheet");
  }

  @Test
  void shouldBringANewBaseAsACopyOfAnotherSoThatNoStepAndNoCoreIsLost() throws BadSheet {
    SheetEdit local =
        Edits.addSheet("local", Map.of("kind", "base", "title", "Local", "like", "general"));
    SheetDraft draft =
        draft(local, Edits.leaveOut("local", "monitors.record"), Edits.head("local", kinds()));

    assertThat(problems(draft)).isEmpty();
    ComposedSheet list = draft.sheets().compose("local", List.of());
    assertThat(list.byKey()).doesNotContainKey("monitors.record").containsKey("suction.strong");
    assertThat(draft.files().get("general.json")).isEqualTo(STANDARD.files().get("general.json"));
    assertThat(problems(draft(local, Edits.leaveOut("local", "suction.strong"))))
        .anyMatch(p -> p.startsWith("local.json, line 1, suction.strong: is missing: suction"));
    assertThat(problems(draft(Edits.addSheet("x", Map.of("kind", "base", "like", "block")))))
        .containsExactly(
            "x.json, like: names the base of which a new one is a copy: 'block' is not known; use"
                + " general");
  }

  private static Map<String, Object> kinds() {
    List<String> more = List.of("special-table", "imaging", "airway-trolley", "ultrasound", "echo");
    return Map.of("kinds", more);
  }

  @Test
  void shouldRefuseASheetThatIsThereOrHasNoNameOrKind() {
    assertThat(problems(draft(Edits.addSheet("block", Map.of("kind", "option", "title", "x")))))
        .anyMatch(p -> p.contains("is the name of a sheet already"));
    assertThat(problems(draft(Edits.addSheet("My Sheet", Map.of("kind", "option")))))
        .anyMatch(p -> p.contains("must be lower-case letters"));
    assertThat(problems(draft(Edits.addSheet("other", Map.of("kind", "bass")))))
        .anyMatch(p -> p.contains("must be base, technique, option or personal"));
    assertThat(problems(draft(Edits.head("block", Map.of("version", 7)))))
        .anyMatch(p -> p.contains("version") && p.contains("can't be set on a sheet"));
  }

  @Test
  void shouldChangeAHeadAndSayIt() {
    SheetDraft draft = draft(Edits.head("prone", Map.of("notWith", List.of(), "title", "Prone")));

    assertThat(problems(draft)).isEmpty();
    assertThat(changes(draft)).contains("prone: no notWith, was supraglottic");
    assertThat(draft.files().get("prone.json")).contains("\"version\" : 2");
  }

  @Test
  void shouldTakeASheetAwayAndItsNameFromThoseItDidNotGoWith() throws BadSheet {
    SheetDraft draft = draft(Edits.removeSheet("supraglottic"));

    assertThat(problems(draft)).isEmpty();
    assertThat(draft.gone()).containsExactly("supraglottic");
    assertThat(changes(draft)).contains("supraglottic: gone");
    assertThat(draft.files().get("prone.json")).doesNotContain("\"supraglottic\"");
    assertThat(draft.sheets().techniques()).noneMatch(t -> t.name().equals("supraglottic"));
  }

  @Test
  void shouldNotTakeAwayTheBaseWithTheCoreNorWhatAnotherSheetBrings() {
    assertThat(draft(Edits.removeSheet("general")).canBePublished()).isFalse();
    assertThat(problems(draft(Edits.removeSheet("lines"))))
        .anyMatch(p -> p.startsWith("cardiac.json, line") && p.contains("brings"));
  }

  @Test
  void shouldSayThatBothWereAtWorkOnASheetThatIsTakenAway() {
    Edition theirs =
        Edition.of(1, draft(Edits.head("prone", Map.of("title", "Face down"))).files());

    assertThat(SheetDraft.Since.of(STANDARD, theirs, List.of(Edits.removeSheet("prone"))).both())
        .containsExactly("prone");
    assertThat(
            SheetDraft.Since.of(
                    STANDARD, theirs, List.of(Edits.head("prone", Map.of("title", "Prone"))))
                .both())
        .containsExactly("prone");
  }

  @Test
  void shouldSayEvidenceAndLifeInWordsAndNotAsAFile() {
    SheetDraft draft =
        draft(
            Edits.change(
                "general",
                "machine.vaporisers",
                Map.of(
                    "evidence",
                    new TreeMap<>(
                        Map.of(
                            "kind", "choice", "witness", true, "choices", List.of("full", "!no"))),
                    "uses",
                    List.of(new TreeMap<>(Map.of("kind", "imaging", "until", "start.release"))))));

    assertThat(changes(draft))
        .contains(
            "general, machine.vaporisers: evidence choices (full, !no), kind choice, witness",
            "general, machine.vaporisers: uses (kind imaging, until start.release)");
  }

  @Test
  void shouldKeepAPersonsOwnSheetThatAddsAndOrdersAndNeverTakesWhatGates() throws BadSheet {
    SheetEdit own = Edits.addSheet("early-bird", Map.of("kind", "personal", "title", "Early"));
    SheetEdit order = Edits.head("early-bird", Map.of("order", List.of("drugs.emergency")));
    SheetEdit earpiece =
        Edits.add(
            "early-bird",
            "monitors.earpiece",
            Map.of(
                "belongs",
                "case",
                "desk",
                "own earpiece",
                "who",
                List.of("anaesthetist or trainee"),
                "hands",
                Map.of("usual", 1, "oneInTen", 2)),
            null);
    SheetDraft draft = draft(own, order, earpiece);

    assertThat(problems(draft)).isEmpty();
    List<String> plain =
        List.copyOf(draft.sheets().compose("general", List.of("block")).byKey().keySet());
    ComposedSheet his = draft.sheets().compose("general", List.of("early-bird", "block"));
    List<String> keys = List.copyOf(his.byKey().keySet());
    assertThat(keys).hasSize(plain.size() + 1).containsAll(plain).contains("monitors.earpiece");
    assertThat(keys.indexOf("drugs.emergency")).isLessThan(keys.indexOf("drugs.drawn"));
    assertThat(his.from()).endsWith("early-bird 1");
    assertThat(problems(draft(own, order, Edits.leaveOut("early-bird", "suction.strong"))))
        .isNotEmpty();
    assertThat(
            problems(
                draft(
                    own,
                    earpiece,
                    Edits.change("early-bird", "monitors.earpiece", Map.of("gates", "incision")))))
        .anyMatch(p -> p.contains("is not a person's to say"));
  }
}
