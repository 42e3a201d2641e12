package sunup.board;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;
import sunup.sheets.ComposedSheet;
import sunup.sheets.EvidenceRule;
import sunup.sheets.SheetItem;

class SweepTest {
  private static final ItemRef BAG = Fixture.in(Fixture.R1, "machine.bag");
  private static final ItemRef ALARMS = Fixture.in(Fixture.R1, "machine.alarms");
  private static final ItemRef CYLINDER = Fixture.in(Fixture.R1, "machine.cylinder");

  private final Day day = Day.open().minute(5);

  private Day sweep(Section section, ItemRef... except) {
    return day.by(
        Fixture.ANAESTHETIST_1, new Command.Sweep(Fixture.R1, section, List.of(except), null));
  }

  @Test
  void shouldMakeGoodWhatALookIsEnoughForAndLeaveReadingsOpen() {
    sweep(Section.MACHINE);

    assertThat(day.events())
        .containsExactly(
            new Event.SectionSwept(Fixture.R1, Section.MACHINE, List.of(BAG, ALARMS), Fixture.A1));
    assertThat(day.state(BAG)).isEqualTo(ItemState.GOOD);
    assertThat(day.item(BAG).evidence()).isEqualTo(new Evidence.Swept());
    assertThat(day.item(BAG).together()).isTrue();
    assertThat(day.state(CYLINDER)).isEqualTo(ItemState.OPEN);
    assertThat(day.state(Fixture.in(Fixture.R1, "machine.absorbent"))).isEqualTo(ItemState.OPEN);
  }

  @Test
  void shouldLeaveItemsThatNeedAWitness() {
    sweep(Section.DRUGS);

    assertThat(day.state(Fixture.of(Fixture.C1, "drugs.drawn"))).isEqualTo(ItemState.GOOD);
    assertThat(day.state(Fixture.of(Fixture.C1, "drugs.controlled"))).isEqualTo(ItemState.OPEN);
  }

  @Test
  void shouldLeaveExceptionsFaultsAndWhatIsLeftOut() {
    sweep(Section.MACHINE, BAG);
    assertThat(day.state(BAG)).isEqualTo(ItemState.OPEN);
    assertThat(day.state(ALARMS)).isEqualTo(ItemState.GOOD);
    assertThat(day.item(ALARMS).together()).isFalse();

    day.by(Fixture.ANAESTHETIST_1, new Command.Fault(BAG, null));
    sweep(Section.MACHINE);
    assertThat(day.state(BAG)).isEqualTo(ItemState.FAULT);
  }

  @Test
  void shouldBeAcceptedWithoutAnEventWhenNothingIsLeft() {
    sweep(Section.SUCTION);
    sweep(Section.SUCTION);
    assertThat(day.events()).isEmpty();
  }

  @Test
  void shouldMakeALapsedItemGoodAgain() {
    sweep(Section.MACHINE);
    day.minute(25);
    assertThat(day.state(ALARMS)).isEqualTo(ItemState.LAPSED);

    sweep(Section.MACHINE);

    assertThat(day.state(ALARMS)).isEqualTo(ItemState.GOOD);
    assertThat(day.events())
        .containsExactly(
            new Event.SectionSwept(Fixture.R1, Section.MACHINE, List.of(ALARMS), Fixture.A1));
  }

  @Test
  void shouldLeaveWhatWasReopenedAfterTheSweepHappened() {
    sweep(Section.MACHINE);
    day.minute(10).decided(Fixture.ANAESTHETIST_1, new Command.Reopen(BAG, null));

    day.minute(12)
        .touched(
            7,
            Fixture.ANAESTHETIST_1,
            new Command.Sweep(Fixture.R1, Section.MACHINE, List.of(), null));

    assertThat(day.state(BAG)).isEqualTo(ItemState.OPEN);
  }

  @Test
  void shouldSayWhoMayWhenNothingOfTheSectionIsTheActorsOwn() {
    Actor scrub = new Actor(Role.SCRUB, null, "station-1");
    day.by(scrub, new Command.Sweep(Fixture.R1, Section.MACHINE, List.of(), null));
    assertThat(day.code()).isEqualTo(RefusalCode.NOT_ALLOWED);
    assertThat(day.words()).contains("anaesthetist");
  }

  @Test
  void shouldCountEightTouchesWithinTwentySecondsAsEnteredTogether() {
    ComposedSheet nine = Fixture.sheet("nine", nineTouches());
    Day many =
        Day.open()
            .minute(1)
            .decided(
                Fixture.DESK,
                new Command.ChangeCase(Fixture.casePlan(Fixture.C1, Fixture.R1, nine), nine));
    for (int i = 0; i < 7; i++) {
      many.minute(5 + i * 2 / 60.0).by(Fixture.ANAESTHETIST_1, touch(i));
    }
    assertThat(together(many)).containsOnly(false);

    many.minute(5 + 19 / 60.0).by(Fixture.ANAESTHETIST_1, touch(7));

    assertThat(together(many).subList(0, 8)).containsOnly(true);
    many.minute(6).by(Fixture.ANAESTHETIST_1, touch(8));
    assertThat(together(many).get(8)).isFalse();
  }

  @Test
  void shouldStillTakeBackATouchThatTurnedOutToBeOneOfManyTogether() {
    ComposedSheet nine = Fixture.sheet("nine", nineTouches());
    Day many =
        Day.open()
            .minute(1)
            .decided(
                Fixture.DESK,
                new Command.ChangeCase(Fixture.casePlan(Fixture.C1, Fixture.R1, nine), nine));
    many.minute(5).by(Fixture.ANAESTHETIST_1, touch(0));
    CommandId first = many.lastId();
    for (int i = 1; i < 8; i++) {
      many.by(Fixture.ANAESTHETIST_1, touch(i));
    }

    many.by(Fixture.ANAESTHETIST_1, new Command.Undo(first));

    assertThat(many.state(Fixture.of(Fixture.C1, "iv.line0"))).isEqualTo(ItemState.OPEN);
    assertThat(many.state(Fixture.of(Fixture.C1, "iv.line1"))).isEqualTo(ItemState.GOOD);
  }

  @Test
  void shouldNotCountEightTouchesOverALongerTimeAsTogether() {
    ComposedSheet nine = Fixture.sheet("nine", nineTouches());
    Day many =
        Day.open()
            .minute(1)
            .decided(
                Fixture.DESK,
                new Command.ChangeCase(Fixture.casePlan(Fixture.C1, Fixture.R1, nine), nine));
    for (int i = 0; i < 9; i++) {
      many.minute(5 + i * 3 / 60.0).by(Fixture.ANAESTHETIST_1, touch(i));
    }
    assertThat(together(many)).containsOnly(false);
  }

  private static List<SheetItem> nineTouches() {
    List<SheetItem> items = new ArrayList<>();
    for (int i = 0; i < 9; i++) {
      items.add(
          Fixture.item(
              "iv.line" + i, SheetItem.Belongs.CASE, Step.INDUCTION, EvidenceRule.TOUCHED, null));
    }
    return items;
  }

  private static Command touch(int i) {
    return new Command.Good(
        Fixture.of(Fixture.C1, "iv.line" + i), new Evidence.Touch(), null, null);
  }

  private static List<Boolean> together(Day many) {
    List<Boolean> flags = new ArrayList<>();
    for (int i = 0; i < 9; i++) {
      flags.add(many.item(Fixture.of(Fixture.C1, "iv.line" + i)).together());
    }
    return flags;
  }
}
