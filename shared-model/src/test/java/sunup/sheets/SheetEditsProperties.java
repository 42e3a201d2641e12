package sunup.sheets;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import net.jqwik.api.Arbitraries;
import net.jqwik.api.Arbitrary;
import net.jqwik.api.Combinators;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.Provide;
import sunup.sheets.SheetEdit.Does;

/** Whatever a desk does to the sheets, what can be published is whole. */
class SheetEditsProperties {
  private static final Edition STANDARD = Edition.standard();
  private static final List<String> NAMES =
      STANDARD.files().keySet().stream().map(SheetFiles::sheet).toList();
  private static final List<String> KEYS = keys();

  private static List<String> keys() {
    try {
      List<String> keys =
          new ArrayList<>(STANDARD.sheets().compose("general", List.of()).byKey().keySet());
      keys.add("airway.new");
      return keys;
    } catch (BadSheet e) {
      throw new IllegalStateException(e);
    }
  }

  @Provide
  Arbitrary<List<SheetEdit>> drafts() {
    Arbitrary<Map<String, Object>> fields =
        Arbitraries.of(
            Map.<String, Object>of("hands", Map.of("usual", 2.5, "oneInTen", 4)),
            Map.<String, Object>of("gates", "incision"),
            Map.<String, Object>of("desk", "said otherwise"),
            Map.<String, Object>of("core", false),
            Map.<String, Object>of(
                "belongs",
                "case",
                "desk",
                "new thing",
                "wall",
                "new",
                "who",
                List.of("trainee"),
                "hands",
                Map.of("usual", 1, "oneInTen", 2)));
    return Combinators.combine(
            Arbitraries.of(Does.class),
            Arbitraries.of(NAMES),
            Arbitraries.of(KEYS),
            fields,
            Arbitraries.of(KEYS).injectNull(0.5),
            Arbitraries.of(0, 3))
        .as(SheetEdit::new)
        .list()
        .ofMaxSize(4);
  }

  @Property(tries = 15)
  void shouldKeepWhatMayNeverBeLeftOutInAllThatCanBePublished(
      @ForAll("drafts") List<SheetEdit> edits) throws BadSheet {
    SheetDraft draft = SheetDraft.of(STANDARD, edits, SheetDraftTest::onlyStandard);

    if (draft.canBePublished()) {
      for (Sheets.Choice technique : draft.sheets().techniques()) {
        Map<String, SheetItem> list = draft.sheets().compose(technique.name(), List.of()).byKey();
        for (String key : UnwaivableCore.keys()) {
          assertThat(list.get(key)).as(key).matches(item -> item != null && item.core());
        }
      }
    }
  }

  @Property(tries = 30)
  void shouldTouchOnlySheetsThatAnEditNamesAndSayWhatIsOther(
      @ForAll("drafts") List<SheetEdit> edits) {
    Map<String, String> before = STANDARD.files();
    Map<String, String> after =
        SheetEdits.apply(before, edits, SheetDraftTest::onlyStandard).files();

    before.forEach(
        (file, text) -> {
          String sheet = SheetFiles.sheet(file);
          // What goes is taken from the sheets that don't go with it.
          if (edits.stream()
              .noneMatch(e -> sheet.equals(e.sheet()) || e.does() == Does.REMOVE_SHEET)) {
            assertThat(after.get(file)).isEqualTo(text);
          }
        });
    assertThat(EditionChanges.between(before, after).isEmpty()).isEqualTo(before.equals(after));
  }

  @Property(tries = 15)
  void shouldComeBackToTheLetterWhateverWasDoneBefore(@ForAll("drafts") List<SheetEdit> edits) {
    List<SheetEdit> all = new ArrayList<>(edits);
    all.add(Edits.asIn(null, 0));

    assertThat(SheetEdits.apply(STANDARD.files(), all, SheetDraftTest::onlyStandard).files())
        .isEqualTo(STANDARD.files());
  }
}
