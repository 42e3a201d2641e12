package sunup.cluster;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;
import sunup.access.Seals;
import sunup.board.Actor;
import sunup.board.Command;
import sunup.board.CommandId;
import sunup.board.MorningId;
import sunup.board.Private;
import sunup.board.Role;
import sunup.board.SuiteId;
import sunup.codec.Json;
import sunup.suites.Seal;
import sunup.suites.Submission;

/** A command from another node counts only as it was when a node of this board saw whose it is. */
class SealedBusTest {
  private static final MorningId MORNING =
      new MorningId(new SuiteId("main"), LocalDate.of(2026, 11, 25));
  private static final Actor DESK = new Actor(Role.DESK, null, "desk-1");
  private static final Actor STATION = new Actor(Role.HOLDING, null, "station-4");

  private final Seal ours = Seals.with((byte) 1);
  private final Seal theirs = Seals.with((byte) 2);
  private final List<BusMessage> sent = new ArrayList<>();
  private final SealedBus bus = bus(ours);

  private SealedBus bus(Seal seal) {
    return new SealedBus((node, message, payload) -> sent.add(message), seal);
  }

  private static BusMessage.Ask ask(Actor actor, String text) {
    Command note = new Command.AddNote(null, Private.of(text));
    return new BusMessage.Ask(
        7,
        MORNING,
        new Submission(new CommandId("c-1"), note, List.of(), actor, 3L, 100, -3).on("station"));
  }

  /** As it comes out at the other node. */
  private BusMessage.Ask sentBy(SealedBus from) throws Exception {
    from.send("b", ask(STATION, "two trays missing"), null);
    byte[] bytes = Json.bytes(sent.remove(sent.size() - 1));
    return (BusMessage.Ask) Json.read(bytes, BusMessage.class);
  }

  @Test
  void shouldHearACommandOfOurNodes() throws Exception {
    BusMessage.Ask came = sentBy(bus);
    assertThat(bus.mayBeHeard("a", came)).isTrue();
    assertThat(came.submission()).isEqualTo(ask(STATION, "two trays missing").submission());
    assertThat(sent).isEmpty();
  }

  @Test
  void shouldNotHearOneThatWasChangedOrIsOfNobodyOfOurs() throws Exception {
    String seal = sentBy(bus).seal();
    BusMessage.Ask other =
        new BusMessage.Ask(
            7,
            new MorningId(new SuiteId("main"), LocalDate.of(2026, 11, 26)),
            ask(STATION, "two trays missing").submission());
    List<BusMessage.Ask> wrong =
        List.of(
            ask(DESK, "two trays missing").sealed(seal),
            ask(STATION, "three trays missing").sealed(seal),
            other.sealed(seal),
            ask(STATION, "two trays missing"),
            ask(STATION, "two trays missing").sealed(""),
            sentBy(bus(theirs)),
            sentBy(bus(Seal.NONE)));
    for (BusMessage.Ask one : wrong) {
      sent.clear();
      assertThat(bus.mayBeHeard("a", one)).as("%s", one).isFalse();
      assertThat(sent)
          .singleElement()
          .isInstanceOfSatisfying(
              BusMessage.Reply.class, reply -> assertThat(reply.kind()).isEqualTo("later"));
    }
  }

  @Test
  void shouldHearAllWhereNobodyIsKnown() throws Exception {
    SealedBus open = bus(Seal.NONE);
    assertThat(open.mayBeHeard("a", sentBy(open))).isTrue();
    assertThat(open.mayBeHeard("a", new BusMessage.Follow(MORNING, true))).isTrue();
  }
}
