package sunup.outlook;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import org.junit.jupiter.api.Test;
import sunup.board.CaseId;
import sunup.board.Command;
import sunup.board.ItemState;
import sunup.board.RoomId;
import sunup.board.Step;
import sunup.wire.Audience;
import sunup.wire.Part;
import sunup.wire.Part.NextItemPart;
import sunup.wire.Part.NextPart;

class NextCaseShownTest {
  private static Suite started() {
    return new Suite(3, "06:00")
        .everythingGood("07:00", 1)
        .nurse("07:35", 1, new Command.Reach(new CaseId("C1"), Step.INDUCTION));
  }

  private static <P extends Part> List<P> of(Class<P> kind, List<Part> parts) {
    return parts.stream().filter(kind::isInstance).map(kind::cast).toList();
  }

  @Test
  void shouldShowTheNextCasesItemsBesideTheFirstsAndChangeNothingOfThese() {
    Suite suite = started();
    List<Part> before = Shown.at(suite, "08:00").parts();
    assertThat(of(NextPart.class, before)).isEmpty();

    suite.station("08:00", 1, new Command.SetUpNext(new RoomId("1"), new CaseId("C3"), null));
    List<Part> after = Shown.at(suite, "08:00").parts();

    assertThat(after).containsAll(before);
    NextPart next = of(NextPart.class, after).get(0);
    assertThat(next.room()).isEqualTo("1");
    assertThat(next.options()).containsExactly("block");
    List<NextItemPart> items = of(NextItemPart.class, after);
    assertThat(after).hasSize(before.size() + 1 + items.size());
    assertThat(items)
        .filteredOn(NextItemPart::carried)
        .extracting(i -> i.item().item().key())
        .containsExactly(
            "machine.bag", "machine.supplies", "machine.self-test", "machine.cylinder");
    assertThat(items)
        .filteredOn(i -> !i.carried())
        .isNotEmpty()
        .allMatch(i -> i.item().state() == ItemState.OPEN)
        .anyMatch(i -> i.item().item().key().equals("special.ultrasound"));
  }

  @Test
  void shouldBeForThoseWhoWorkInTheRooms() {
    Suite suite = started();
    suite.station("08:00", 1, new Command.SetUpNext(new RoomId("1"), new CaseId("C1"), null));
    assertThat(Shown.at(suite, "08:00").parts())
        .filteredOn(p -> p instanceof NextPart || p instanceof NextItemPart)
        .isNotEmpty()
        .allMatch(p -> p.audience() == Audience.STAFF);
  }
}
