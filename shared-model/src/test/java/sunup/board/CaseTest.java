package sunup.board;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;
import sunup.board.Morning.CaseDay;
import sunup.sheets.ComposedSheet;
import sunup.sheets.EvidenceRule;
import sunup.sheets.SheetItem;

class CaseTest {
  private static final ItemRef DRAWN = Fixture.of(Fixture.C1, "drugs.drawn");
  private static final ItemRef TUBE = Fixture.of(Fixture.C1, "airway.tube");
  private static final ItemRef IDENTITY = Fixture.of(Fixture.C1, "patient.identity");
  private static final ItemRef SEEN = Fixture.of(Fixture.C1, "surgeon.seen");
  private static final ItemRef BRIEF = Fixture.of(Fixture.C1, "team.brief");
  private static final ItemRef BAG = Fixture.in(Fixture.R1, "machine.bag");

  private final Day day = Day.open().minute(5);

  private Day good(ItemRef... items) {
    for (ItemRef item : items) {
      day.by(Fixture.ANAESTHETIST_1, new Command.Good(item, new Evidence.Touch(), null, null));
    }
    return day;
  }

  private CaseDay caseOne() {
    return day.morning().cases().get(Fixture.C1);
  }

  @Test
  void shouldVoidWhatWasPreparedInTheRoomAndKeepWhatIsAboutPeopleWhenSwapped() {
    good(DRAWN, IDENTITY, SEEN, BRIEF, BAG)
        .by(Fixture.ANAESTHETIST_1, new Command.Begin(TUBE, null))
        .by(Fixture.ANAESTHETIST_1, new Command.ReportReady(Fixture.R1))
        .decided(Fixture.DESK, new Command.SwapCases(Fixture.C1, Fixture.C2));

    assertThat(((Event.CasesSwapped) day.events().get(0)).voided())
        .containsExactlyInAnyOrder(DRAWN, TUBE);
    assertThat(day.state(DRAWN)).isEqualTo(ItemState.OPEN);
    assertThat(day.state(TUBE)).isEqualTo(ItemState.OPEN);
    assertThat(day.state(IDENTITY)).isEqualTo(ItemState.GOOD);
    assertThat(day.state(SEEN)).isEqualTo(ItemState.GOOD);
    assertThat(day.state(BRIEF)).isEqualTo(ItemState.GOOD);
    assertThat(day.state(BAG)).isEqualTo(ItemState.GOOD);
    assertThat(caseOne().plan().room()).isEqualTo(Fixture.R2);
    assertThat(day.morning().caseIn(Fixture.R1).plan().id()).isEqualTo(Fixture.C2);
    assertThat(day.morning().rooms().get(Fixture.R1).readyAt()).isNull();
    assertThat(day.morning().roomOf(DRAWN)).isEqualTo(Fixture.R2);
  }

  @Test
  void shouldAskTheNewRoomForWhatTheCaseNeedsOfItWhenSwapped() {
    List<SheetItem> items = new ArrayList<>(Fixture.PLAIN.items());
    items.add(
        Fixture.item(
            "room.table", SheetItem.Belongs.ROOM, Step.WHEELS_IN, EvidenceRule.TOUCHED, null));
    ComposedSheet table = Fixture.sheet("table", items);
    day.decided(
            Fixture.DESK,
            new Command.ChangeCase(Fixture.casePlan(Fixture.C1, Fixture.R1, table), table))
        .decided(Fixture.DESK, new Command.SwapCases(Fixture.C1, Fixture.C2));

    assertThat(day.state(Fixture.in(Fixture.R2, "room.table"))).isEqualTo(ItemState.OPEN);
    assertThat(day.morning().itemsOf(Fixture.R2)).hasSize(items.size());
    assertThat(day.morning().itemsOf(Fixture.R1)).hasSize(Fixture.BLOCK.items().size());
  }

  @Test
  void shouldNotGiveVoidedWorkBackByUndo() {
    good(DRAWN).decided(Fixture.DESK, new Command.SwapCases(Fixture.C1, Fixture.C2));

    day.by(Fixture.DESK, new Command.Undo(day.lastId()));

    assertThat(day.code()).isEqualTo(RefusalCode.NOTHING_TO_UNDO);
  }

  @Test
  void shouldStandAsBeforeInTheirRoomsWhenSwappedTwice() {
    day.decided(Fixture.DESK, new Command.SwapCases(Fixture.C1, Fixture.C2))
        .decided(Fixture.DESK, new Command.SwapCases(Fixture.C1, Fixture.C2));

    assertThat(caseOne().plan().room()).isEqualTo(Fixture.R1);
    assertThat(day.morning().caseIn(Fixture.R2).plan().id()).isEqualTo(Fixture.C2);
    assertThat(day.morning().itemsOf(Fixture.R2)).hasSize(Fixture.BLOCK.items().size());
  }

  private static SwapDay.Left left(ItemRef item) {
    String section = item.key().substring(0, item.key().indexOf('.'));
    return new SwapDay.Left(item, Section.valueOf(section.toUpperCase(java.util.Locale.ROOT)));
  }

  private SwapDay swapOf(RoomId room) {
    return day.morning().swaps().get(room);
  }

  @Test
  void shouldAskBothRoomsToConfirmASwapWithWhatWasLeftInEach() {
    good(DRAWN, IDENTITY, BAG)
        .by(Fixture.ANAESTHETIST_1, new Command.Begin(TUBE, null))
        .decided(Fixture.DESK, new Command.SwapCases(Fixture.C1, Fixture.C2));

    assertThat(swapOf(Fixture.R1).left()).containsExactlyInAnyOrder(left(DRAWN), left(TUBE));
    assertThat(swapOf(Fixture.R1).with()).isEqualTo(Fixture.R2);
    assertThat(swapOf(Fixture.R1).confirmedAt()).isNull();
    assertThat(swapOf(Fixture.R2).left()).isEmpty();
    long seen = day.morning().seq();

    day.minute(7).decided(Fixture.ANAESTHETIST_1, new Command.ConfirmSwap(Fixture.R1));
    assertThat(swapOf(Fixture.R1).confirmedAt()).isEqualTo(day.now());
    assertThat(swapOf(Fixture.R1).confirmedBy()).isEqualTo(Role.ANAESTHETIST);
    assertThat(swapOf(Fixture.R2).confirmedAt()).isNull();
    day.order(Fixture.ANAESTHETIST_1, new Command.ConfirmSwap(Fixture.R1), seen, day.now());
    assertThat(day.events()).isEmpty();
  }

  @Test
  void shouldNotConfirmASwapThatTheRoomHasNotSeen() {
    day.decided(Fixture.DESK, new Command.SwapCases(Fixture.C1, Fixture.C2));
    long seen = day.morning().seq();
    day.minute(8).decided(Fixture.DESK, new Command.SwapCases(Fixture.C2, Fixture.C3));

    day.order(Fixture.ANAESTHETIST_1, new Command.ConfirmSwap(Fixture.R1), seen, day.now());
    assertThat(day.code()).isEqualTo(RefusalCode.CHANGED_MEANWHILE);
    assertThat(day.words()).contains("by desk");
    assertThat(swapOf(Fixture.R1).confirmedAt()).isNull();
    day.by(Fixture.ANAESTHETIST_1, new Command.ConfirmSwap(Fixture.R1));
    assertThat(day.code()).isEqualTo(RefusalCode.BAD_COMMAND);

    day.decided(Fixture.ANAESTHETIST_1, new Command.ConfirmSwap(Fixture.R1));
    assertThat(swapOf(Fixture.R1).confirmedAt()).isEqualTo(day.now());
  }

  @Test
  void shouldLetOnlyTheRoomsOwnPeopleConfirmASwap() {
    day.decided(Fixture.DESK, new Command.SwapCases(Fixture.C1, Fixture.C2));
    for (Actor actor : List.of(Fixture.DESK, Fixture.ANAESTHETIST_2)) {
      day.decided(actor, new Command.ConfirmSwap(Fixture.R1));
      assertThat(day.code()).isEqualTo(RefusalCode.NOT_ALLOWED);
    }
    day.decided(Fixture.ANAESTHETIST_1, new Command.ConfirmSwap(Fixture.R3));
    assertThat(day.code()).isNotNull();
    assertThat(swapOf(Fixture.R1).confirmedAt()).isNull();
  }

  @Test
  void shouldGoOnAskingForWhatLiesThereWhenTheRoomIsSwappedAgainUnconfirmed() {
    good(DRAWN)
        .decided(Fixture.DESK, new Command.SwapCases(Fixture.C1, Fixture.C2))
        .decided(Fixture.DESK, new Command.SwapCases(Fixture.C2, Fixture.C1));

    assertThat(swapOf(Fixture.R1).left()).containsExactly(left(DRAWN));
  }

  @Test
  void shouldAskNobodyToConfirmASwapInADraftNorWithoutOne() {
    Day draft = Day.draft().decided(Fixture.DESK, new Command.SwapCases(Fixture.C1, Fixture.C2));
    assertThat(draft.morning().swaps()).isEmpty();

    day.decided(Fixture.ANAESTHETIST_1, new Command.ConfirmSwap(Fixture.R1));
    assertThat(day.code()).isEqualTo(RefusalCode.TOO_LATE);
    assertThat(day.words()).contains("room 1");
  }

  @Test
  void shouldRefuseASwapOnceInductionHasBegun() {
    day.by(Fixture.ANAESTHETIST_1, new Command.Reach(Fixture.C1, Step.INDUCTION))
        .decided(Fixture.DESK, new Command.SwapCases(Fixture.C2, Fixture.C1));
    assertThat(day.code()).isEqualTo(RefusalCode.TOO_LATE);
    assertThat(day.words()).contains("room 1");
  }

  @Test
  void shouldRefuseASwapWithItselfWithACancelledOrAnUnknownCase() {
    day.decided(Fixture.DESK, new Command.SwapCases(Fixture.C1, Fixture.C1));
    assertThat(day.code()).isEqualTo(RefusalCode.BAD_PLAN);

    day.decided(Fixture.DESK, new Command.SwapCases(Fixture.C1, new CaseId("C8")));
    assertThat(day.code()).isEqualTo(RefusalCode.UNKNOWN);

    day.decided(Fixture.DESK, new Command.CancelCase(Fixture.C2, null))
        .decided(Fixture.DESK, new Command.SwapCases(Fixture.C1, Fixture.C2));
    assertThat(day.code()).isEqualTo(RefusalCode.CASE_CANCELLED);
  }

  @Test
  void shouldKeepWhatTheNewSheetStillAsksForWhenACaseChanges() {
    Day other = Day.open().minute(5);
    ItemRef ultrasound = Fixture.of(Fixture.C2, "special.ultrasound");
    ItemRef drawn = Fixture.of(Fixture.C2, "drugs.drawn");
    other
        .by(
            Fixture.ANAESTHETIST_2,
            new Command.Good(ultrasound, new Evidence.Scan(Fixture.US1), null, null))
        .by(Fixture.ANAESTHETIST_2, new Command.Good(drawn, new Evidence.Touch(), null, null));
    other.decided(
        Fixture.DESK,
        new Command.ChangeCase(
            Fixture.casePlan(Fixture.C2, Fixture.R2, Fixture.PLAIN), Fixture.PLAIN));

    assertThat(((Event.CaseChanged) other.events().get(0)).voided()).containsExactly(ultrasound);
    assertThat(other.state(drawn)).isEqualTo(ItemState.GOOD);
    assertThat(other.morning().itemsOf(Fixture.R2)).hasSize(Fixture.PLAIN.items().size());

    other.by(
        Fixture.ANAESTHETIST_2,
        new Command.Good(ultrasound, new Evidence.Scan(Fixture.US1), null, null));
    assertThat(other.events())
        .containsExactly(new Event.WordKept(ultrasound, Kept.NOT_ASKED.code()));
  }

  @Test
  void shouldAskForTheNewItemsWhenACaseChanges() {
    day.decided(
        Fixture.DESK,
        new Command.ChangeCase(
            Fixture.casePlan(Fixture.C1, Fixture.R1, Fixture.BLOCK), Fixture.BLOCK));

    assertThat(day.state(Fixture.of(Fixture.C1, "special.block"))).isEqualTo(ItemState.OPEN);
  }

  @Test
  void shouldRefuseToMoveACaseIntoARoomThatHasOne() {
    day.decided(
        Fixture.DESK,
        new Command.ChangeCase(
            Fixture.casePlan(Fixture.C1, Fixture.R2, Fixture.PLAIN), Fixture.PLAIN));
    assertThat(day.code()).isEqualTo(RefusalCode.ROOM_TAKEN);
    assertThat(day.words()).contains("C2");
  }

  @Test
  void shouldMoveACaseIntoAFreeRoomAndVoidWhatWasPrepared() {
    good(DRAWN, IDENTITY)
        .decided(Fixture.DESK, new Command.CancelCase(Fixture.C3, null))
        .decided(
            Fixture.DESK,
            new Command.ChangeCase(
                Fixture.casePlan(Fixture.C1, Fixture.R3, Fixture.PLAIN), Fixture.PLAIN));

    assertThat(day.morning().caseIn(Fixture.R1)).isNull();
    assertThat(day.morning().caseIn(Fixture.R3).plan().id()).isEqualTo(Fixture.C1);
    assertThat(day.state(DRAWN)).isEqualTo(ItemState.OPEN);
    assertThat(day.state(IDENTITY)).isEqualTo(ItemState.GOOD);
  }

  private static Command moved(CaseId one, RoomId to) {
    return new Command.ChangeCase(Fixture.casePlan(one, to, Fixture.PLAIN), Fixture.PLAIN);
  }

  @Test
  void shouldAskBothRoomsToConfirmAMoveIntoARoomWhoseOwnCaseIsCancelled() {
    ItemRef other = Fixture.of(Fixture.C3, "drugs.drawn");
    day.by(
        Fixture.at(Fixture.R3, Role.ANAESTHETIST, null),
        new Command.Good(other, new Evidence.Touch(), null, null));
    good(DRAWN, IDENTITY, BAG)
        .decided(Fixture.DESK, new Command.CancelCase(Fixture.C3, null))
        .decided(Fixture.DESK, moved(Fixture.C1, Fixture.R3));

    assertThat(swapOf(Fixture.R1).way()).isEqualTo(SwapDay.Way.WENT);
    assertThat(swapOf(Fixture.R1).with()).isEqualTo(Fixture.R3);
    assertThat(swapOf(Fixture.R1).left()).containsExactly(left(DRAWN));
    assertThat(swapOf(Fixture.R3).way()).isEqualTo(SwapDay.Way.CAME);
    assertThat(swapOf(Fixture.R3).with()).isEqualTo(Fixture.R1);
    assertThat(swapOf(Fixture.R3).left()).as("of the cancelled one").containsExactly(left(other));

    day.decided(Fixture.ANAESTHETIST_1, new Command.ConfirmSwap(Fixture.R1));
    assertThat(swapOf(Fixture.R1).confirmedBy()).isEqualTo(Role.ANAESTHETIST);
    assertThat(swapOf(Fixture.R1).way()).isEqualTo(SwapDay.Way.WENT);
    assertThat(swapOf(Fixture.R3).confirmedAt()).isNull();
  }

  @Test
  void shouldAskNobodyToConfirmAMoveInADraftNorAChangeWithinTheRoom() {
    Day draft =
        Day.draft()
            .decided(Fixture.DESK, new Command.CancelCase(Fixture.C3, null))
            .decided(Fixture.DESK, moved(Fixture.C1, Fixture.R3));
    assertThat(draft.morning().caseIn(Fixture.R3).plan().id()).isEqualTo(Fixture.C1);
    assertThat(draft.morning().swaps()).isEmpty();

    day.decided(Fixture.DESK, moved(Fixture.C1, Fixture.R1));
    assertThat(day.morning().swaps()).isEmpty();
  }

  @Test
  void shouldGoOnAskingForWhatLiesInTheFirstRoomWhenTheCaseComesBackUnconfirmed() {
    good(DRAWN)
        .decided(Fixture.DESK, new Command.CancelCase(Fixture.C3, null))
        .decided(Fixture.DESK, moved(Fixture.C1, Fixture.R3))
        .decided(Fixture.DESK, moved(Fixture.C1, Fixture.R1));

    assertThat(swapOf(Fixture.R1).way()).isEqualTo(SwapDay.Way.CAME);
    assertThat(swapOf(Fixture.R1).left()).containsExactly(left(DRAWN));
    assertThat(swapOf(Fixture.R3).way()).isEqualTo(SwapDay.Way.WENT);
  }

  @Test
  void shouldAddACaseToARoomWithoutOneOnly() {
    CasePlan added = Fixture.casePlan(new CaseId("C9"), Fixture.R1, Fixture.PLAIN);
    day.by(Fixture.DESK, new Command.AddCase(added, Fixture.PLAIN));
    assertThat(day.code()).isEqualTo(RefusalCode.ROOM_TAKEN);

    good(BAG)
        .decided(Fixture.DESK, new Command.CancelCase(Fixture.C1, null))
        .by(Fixture.DESK, new Command.AddCase(added, Fixture.PLAIN));

    assertThat(day.morning().caseIn(Fixture.R1).plan().id()).isEqualTo(new CaseId("C9"));
    assertThat(day.state(BAG)).isEqualTo(ItemState.GOOD);
    assertThat(day.state(Fixture.of(new CaseId("C9"), "drugs.drawn"))).isEqualTo(ItemState.OPEN);
  }

  @Test
  void shouldMeasureAgainstTheAgreedTimeUntilItIsTakenBack() {
    long later = Fixture.BOOKED + 15 * Fixture.MINUTE;
    Actor supervisor = new Actor(Role.SUPERVISOR, Fixture.V1, "pocket-V1");
    day.decided(supervisor, new Command.AgreeLater(Fixture.C1, later));
    assertThat(caseOne().target()).isEqualTo(later);

    day.decided(supervisor, new Command.AgreeLater(Fixture.C1, null));
    assertThat(caseOne().target()).isEqualTo(Fixture.BOOKED);

    day.decided(supervisor, new Command.AgreeLater(Fixture.C1, Fixture.BOOKED));
    assertThat(day.code()).isEqualTo(RefusalCode.OUT_OF_RANGE);
    assertThat(day.words()).contains("07:30");

    day.by(Fixture.ANAESTHETIST_1, new Command.Reach(Fixture.C1, Step.INDUCTION))
        .decided(supervisor, new Command.AgreeLater(Fixture.C1, later));
    assertThat(day.code()).isEqualTo(RefusalCode.TOO_LATE);
  }
}
