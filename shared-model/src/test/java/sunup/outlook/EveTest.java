package sunup.outlook;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.util.List;
import org.junit.jupiter.api.Test;
import sunup.board.Command;
import sunup.board.Evidence;
import sunup.board.ItemState;
import sunup.board.Private;
import sunup.wire.Audience;
import sunup.wire.Part;
import sunup.wire.Part.EvePart;
import sunup.wire.Part.ItemPart;
import sunup.wire.Standing;

/** What a draft shows that can still be mended the day before. */
class EveTest {
  private static final Command COMPLETE =
      new Command.Good(
          Suite.ofCase(1, "instruments.trays"), new Evidence.Choice("complete"), null, null);

  private static List<EvePart> eve(Suite suite, String kind) {
    return Shown.at(suite, "06:10").parts().stream()
        .filter(EvePart.class::isInstance)
        .map(EvePart.class::cast)
        .filter(p -> p.kind().equals(kind))
        .toList();
  }

  private static ItemPart item(Suite suite, String key) {
    return (ItemPart) Shown.at(suite, "06:10").part("item/" + Suite.ofCase(1, key));
  }

  @Test
  void shouldNameWhatMoreRoomsWantAtOnceThanThereAre() {
    // Rooms 3 and 6 ask for a block; there is one ultrasound machine.
    assertThat(eve(Suite.draft(6, "06:00"), "equipment"))
        .extracting(EvePart::rooms)
        .containsExactly(List.of("3", "6"));
    assertThat(eve(Suite.draft(6, "06:00"), "equipment").get(0).words())
        .startsWith("ultrasound: 2 rooms may want one at 06:")
        .endsWith("there is 1");
    assertThat(eve(Suite.draft(5, "06:00"), "equipment")).isEmpty();
  }

  @Test
  void shouldNameTheRolesInWhichNobodyIsPlanned() {
    assertThat(eve(Suite.draft(2, "06:00"), "people"))
        .extracting(EvePart::words)
        .containsExactly("nobody planned as supervisor");
  }

  @Test
  void shouldNameCasesWithoutOptionsAndNothingOnceTheMorningIsOpen() {
    assertThat(eve(Suite.draft(3, "06:00"), "options").get(0).rooms()).containsExactly("1", "2");
    assertThat(Shown.at(new Suite(6, "06:00"), "06:10").parts())
        .noneMatch(EvePart.class::isInstance);
    assertThat(eve(Suite.draft(3, "06:00"), "options"))
        .extracting(Part::audience)
        .containsOnly(Audience.DESK);
  }

  @Test
  void shouldTakeWhatNobodyNeedBeThereForAndKeepItInTheMorning() {
    Suite suite = Suite.draft(1, "06:00").desk("06:00", COMPLETE);
    assertThat(item(suite, "instruments.trays").state()).isEqualTo(ItemState.GOOD);
    suite.desk("06:05", new Command.OpenMorning());
    assertThat(item(suite, "instruments.trays").state()).isEqualTo(ItemState.GOOD);
  }

  @Test
  void shouldTakeThatConsentIsMissingAndNotThatItIsThere() {
    Suite suite = Suite.draft(1, "06:00");
    assertThat(item(suite, "patient.consent").eve()).isEqualTo("fault");
    assertThat(item(suite, "instruments.trays").eve()).isEqualTo("good");
    assertThat(item(suite, "drugs.drawn").eve()).isNull();
    assertThatThrownBy(
            () ->
                suite.desk(
                    "06:00",
                    new Command.Good(
                        Suite.ofCase(1, "patient.consent"), new Evidence.Touch(), null, null)))
        .hasMessageContaining("draft");
    assertThatThrownBy(
            () ->
                suite.desk(
                    "06:00", new Command.Fault(Suite.ofCase(1, "drugs.drawn"), Private.of("none"))))
        .hasMessageContaining("draft");
    suite.desk(
        "06:00",
        new Command.Fault(Suite.ofCase(1, "patient.consent"), Private.of("no form in the file")));
    assertThat(item(suite, "patient.consent").what()).isEqualTo("no form in the file");
    assertThat(Shown.at(suite, "06:10").room(1).standing()).isEqualTo(Standing.STUCK);
    suite.desk("06:02", new Command.Mend(Suite.ofCase(1, "patient.consent")));
    assertThat(item(suite, "patient.consent").state()).isEqualTo(ItemState.OPEN);
  }

  @Test
  void shouldNotTakeAWordOfTheDayBeforeForSomebodyWhoReportsInTheMorning() {
    Suite told = Suite.draft(1, "06:00").desk("06:00", COMPLETE);
    told.desk("06:05", new Command.OpenMorning());
    Suite silent = new Suite(1, "06:00");
    assertThat(late(told)).isLessThanOrEqualTo(late(silent));
  }

  private static double late(Suite suite) {
    return Shown.forecast(suite.morning(), "07:00").rooms().get(0).meanLateMs();
  }
}
