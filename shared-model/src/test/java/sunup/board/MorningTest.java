package sunup.board;

import static org.assertj.core.api.Assertions.assertThat;

import org.junit.jupiter.api.Test;
import sunup.board.Morning.Phase;

class MorningTest {
  @Test
  void shouldMakeRoomItemsAndCaseItemsFromTheSheetWhenPlanned() {
    Morning morning = Day.draft().morning();

    assertThat(morning.phase()).isEqualTo(Phase.DRAFT);
    assertThat(morning.rooms().keySet()).containsExactly(Fixture.R1, Fixture.R2, Fixture.R3);
    assertThat(morning.itemsOf(Fixture.R1)).hasSize(Fixture.PLAIN.items().size());
    assertThat(morning.itemsOf(Fixture.R2)).hasSize(Fixture.BLOCK.items().size());
    assertThat(morning.item(Fixture.in(Fixture.R1, "machine.bag")).state())
        .isEqualTo(ItemState.OPEN);
  }

  @Test
  void shouldGoFromOpenOverInHandToGoodWhenAStationReports() {
    ItemRef bag = Fixture.in(Fixture.R1, "machine.bag");
    Day day =
        Day.open()
            .minute(5)
            .by(Fixture.ANAESTHETIST_1, new Command.Arrive(Fixture.A1, Fixture.R1))
            .by(Fixture.ANAESTHETIST_1, new Command.Begin(bag, null));
    assertThat(day.state(bag)).isEqualTo(ItemState.IN_HAND);

    day.minute(6)
        .by(Fixture.ANAESTHETIST_1, new Command.Good(bag, new Evidence.Touch(), null, null));

    assertThat(day.state(bag)).isEqualTo(ItemState.GOOD);
    assertThat(day.item(bag).by()).isEqualTo(Fixture.A1);
    assertThat(day.item(bag).begunAt()).isEqualTo(Fixture.BEGIN + 5 * Fixture.MINUTE);
    assertThat(day.morning().rooms().get(Fixture.R1).lastWordAt()).isEqualTo(day.now());
  }
}
