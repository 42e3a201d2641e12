package sunup.sheets;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;

/** What the site editor is told before publishing: minutes, and what changes for whom. */
class SheetMinutesTest {
  private static final Sheets SHEETS = Sheets.standard();

  private static ComposedSheet general(String... options) throws BadSheet {
    return SHEETS.compose("general", List.of(options));
  }

  /** Practice's default sheet, rows 1 to 22 without 15, less suite box and walk: 25.8 min. */
  @Test
  void shouldSayTheHandsOnMinutesOfASetUp() throws BadSheet {
    SheetMinutes minutes = SheetMinutes.of(general());
    assertThat(minutes.setUp().handsUsual()).isCloseTo(31.3 - 2.5 - 3, within(1e-9));
    assertThat(minutes.setUp().handsMean()).isGreaterThan(minutes.setUp().handsUsual());
    assertThat(minutes.setUp().waitsUsual()).isEqualTo(6);
    assertThat(minutes.all().handsUsual()).isGreaterThan(minutes.setUp().handsUsual());
  }

  @Test
  void shouldSayThemByPersonAndAddUp() throws BadSheet {
    SheetMinutes minutes = SheetMinutes.of(general());
    assertThat(minutes.shares())
        .extracting(SheetMinutes.Share::words)
        .contains("technician or anaesthetist or trainee", "scrub", "surgeon")
        .doesNotHaveDuplicates();
    assertThat(minutes.shares().stream().mapToDouble(s -> s.sum().handsUsual()).sum())
        .isCloseTo(minutes.all().handsUsual(), within(1e-9));
  }

  @Test
  void shouldSayTheShortestThatAnyNumberOfPeopleCouldDoItIn() throws BadSheet {
    SheetMinutes minutes = SheetMinutes.of(general());
    assertThat(minutes.chain()).endsWith("start.prep", "start.time-out");
    Map<String, SheetItem> items = general().byKey();
    for (int i = 1; i < minutes.chain().size(); i++) {
      SheetItem item = items.get(minutes.chain().get(i));
      SheetItem before = items.get(minutes.chain().get(i - 1));
      assertThat(item.after().contains(before.key()) || item.marks() == before.gates()).isTrue();
    }
    assertThat(minutes.leastUsual()).isBetween(45.0, 90.0);
  }

  @Test
  void shouldSayThatNothingChangesBetweenEqualLists() throws BadSheet {
    SheetChanges changes = SheetChanges.between(general(), general());
    assertThat(changes.nothing()).isTrue();
    assertThat(changes.setUpMinutes()).isZero();
  }

  @Test
  void shouldSayWhatComesGoesChangesAndMoves() throws BadSheet {
    SheetChanges changes =
        SheetChanges.between(general(), SHEETS.compose("spinal", List.of("special-table")));
    assertThat(changes.added()).containsExactly("special.spinal", "start.spinal");
    assertThat(changes.taken()).containsExactly("airway.tubes", "start.airway");
    assertThat(changes.changed())
        .contains(
            new SheetChanges.Change("start.release", "after", "start.airway", "start.spinal"),
            new SheetChanges.Change(
                "room.table",
                "desk",
                "right table and attachments",
                "special table with its attachments"));
    assertThat(changes.moved()).isEmpty();
    assertThat(changes.setUpMinutes()).isCloseTo(1 - 2, within(1e-9));
    ComposedSheet plain = general();
    ComposedSheet own =
        Personal.apply(plain, Files.personal("\"order\": [\"drugs.emergency\", \"drugs.drawn\"]"));
    assertThat(SheetChanges.between(plain, own).moved()).contains("drugs.emergency");
  }

  /** A draft with a longer drawing of drugs, and a mistake that only some cases meet. */
  @Test
  void shouldSayForTheNextCasesWhatADraftWouldChange() throws BadSheet {
    Map<String, String> now = new LinkedHashMap<>();
    now.put("general.json", Files.general());
    now.put(
        "slow.json",
        Files.option(
            "slow",
            "\"changes\": [{\"key\": \"drugs.drawn\","
                + " \"hands\": {\"usual\": 6, \"oneInTen\": 9}}]"));
    now.put(
        "calm.json",
        Files.option(
            "calm", "\"changes\": [{\"key\": \"drugs.drawn\", \"desk\": \"drawn in calm\"}]"));
    Map<String, String> draft = new LinkedHashMap<>(now);
    draft.put(
        "calm.json",
        Files.option(
            "calm",
            "\"changes\": [{\"key\": \"drugs.drawn\","
                + " \"hands\": {\"usual\": 8, \"oneInTen\": 12}}]"));
    List<SheetChanges.ForCase> told =
        SheetChanges.forCases(
            Sheets.of(now),
            Sheets.of(draft),
            List.of(
                new SheetChanges.Coming("room 1", "general", List.of()),
                new SheetChanges.Coming("room 2", "general", List.of("calm")),
                new SheetChanges.Coming("room 3", "general", List.of("calm", "slow"))));
    assertThat(told.get(0).changes().nothing()).isTrue();
    assertThat(told.get(1).changes().setUpMinutes()).isCloseTo(3, within(1e-9));
    assertThat(told.get(1).changes().changed())
        .extracting(SheetChanges.Change::field)
        .containsExactly("desk", "hands");
    assertThat(told.get(2).changes()).isNull();
    assertThat(told.get(2).problems()).singleElement().asString().contains("don't go together");
  }
}
