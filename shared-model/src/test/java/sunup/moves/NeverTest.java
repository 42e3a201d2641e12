package sunup.moves;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.IntRange;
import net.jqwik.api.constraints.LongRange;
import sunup.board.Move;
import sunup.forecast.ForecastInput;
import sunup.forecast.ForecastInput.ItemIn;
import sunup.forecast.ForecastInput.PersonIn;
import sunup.forecast.ForecastInput.Progress;
import sunup.forecast.ForecastInput.RoomIn;
import sunup.forecast.ForecastInput.State;
import sunup.forecast.RandomMornings;
import sunup.forecast.Run;
import sunup.moves.Proposals.Proposal;

/** What no move may ever do, over random mornings of which some rooms have a patient in them. */
class NeverTest {
  private static final Set<String> CARERS = Set.of("anaesthetist", "supervisor");

  /** In the first {@code under} rooms the patient was wheeled in. */
  private static ForecastInput morning(long seed, int rooms, int under) {
    ForecastInput in = RandomMornings.shared(seed, rooms, 64);
    List<RoomIn> list = new ArrayList<>();
    for (RoomIn room : in.rooms()) {
      list.add(list.size() < under ? wheeledIn(room, in.now()) : room);
    }
    return new ForecastInput(
        1, in.now(), seed, 64, in.settings(), in.people(), in.kinds(), in.places(), list);
  }

  private static RoomIn wheeledIn(RoomIn room, long now) {
    List<ItemIn> items = new ArrayList<>();
    for (ItemIn i : room.items()) {
      Progress good = new Progress(State.GOOD, now, null, null, null, null);
      boolean sent = "sent-for".equals(i.marks());
      items.add(
          !sent
              ? i
              : new ItemIn(
                  i.key(),
                  i.section(),
                  i.ofCase(),
                  i.who(),
                  i.hands(),
                  i.waits(),
                  i.extra(),
                  i.after(),
                  i.gates(),
                  i.marks(),
                  i.notBefore(),
                  i.place(),
                  i.inRoom(),
                  i.needs(),
                  i.arrival(),
                  i.lifeMs(),
                  good,
                  i.asked()));
    }
    return Copies.at(room, room.target(), items);
  }

  @Property(tries = 150)
  void shouldLeaveOutAndShortenNothing(
      @ForAll @LongRange(min = 1, max = 100_000) long seed,
      @ForAll @IntRange(min = 2, max = 6) int rooms,
      @ForAll @IntRange(min = 0, max = 2) int under) {
    ForecastInput in = morning(seed, rooms, under);
    for (Proposal p : Small.proposals(in)) {
      ForecastInput copy = p.copy();
      assertThat(copy.settings()).isEqualTo(in.settings());
      assertThat(copy.rooms()).hasSameSizeAs(in.rooms());
      for (int r = 0; r < in.rooms().size(); r++) {
        shouldAskForTheSame(in.rooms().get(r), copy.rooms().get(r));
      }
    }
  }

  private static void shouldAskForTheSame(RoomIn was, RoomIn is) {
    assertThat(is.id()).isEqualTo(was.id());
    assertThat(is.caseId()).as("no case changes its room").isEqualTo(was.caseId());
    assertThat(is.target()).isGreaterThanOrEqualTo(was.target());
    assertThat(is.begins()).isEqualTo(was.begins());
    assertThat(is.occupiedFor()).isEqualTo(was.occupiedFor());
    assertThat(is.items()).hasSameSizeAs(was.items());
    for (int i = 0; i < was.items().size(); i++) {
      ItemIn a = was.items().get(i);
      ItemIn b = is.items().get(i);
      Progress now = b.progress();
      boolean onlyTaken =
          a.progress().equals(now)
              || (now.state() == State.FAULT
                  && a.progress().state() == State.FAULT
                  && a.progress().taken() == null
                  && a.progress().mend().equals(now.mend()));
      assertThat(onlyTaken).as("no more than that somebody is on a fault").isTrue();
      if (a.notBefore() != null) {
        assertThat(b.notBefore()).isGreaterThanOrEqualTo(a.notBefore());
      }
      assertThat(like(b, a)).as("the same work, the same checks").isEqualTo(a);
    }
  }

  /** The item with what a move may change taken from another. */
  private static ItemIn like(ItemIn i, ItemIn other) {
    return new ItemIn(
        i.key(),
        i.section(),
        i.ofCase(),
        i.who(),
        i.hands(),
        i.waits(),
        i.extra(),
        i.after(),
        i.gates(),
        i.marks(),
        other.notBefore(),
        i.place(),
        i.inRoom(),
        i.needs(),
        i.arrival(),
        i.lifeMs(),
        other.progress(),
        other.asked());
  }

  @Property(tries = 150)
  void shouldTakeNobodyFromAPatientAndNoRoomsOnlyCarer(
      @ForAll @LongRange(min = 1, max = 100_000) long seed,
      @ForAll @IntRange(min = 2, max = 6) int rooms,
      @ForAll @IntRange(min = 1, max = 3) int under) {
    ForecastInput in = morning(seed, rooms, under);
    for (Proposal p : Small.proposals(in)) {
      assertThat(p.move()).as("a swap is talked about, not done").isNotInstanceOf(Move.Talk.class);
      List<PersonIn> was = in.people();
      List<PersonIn> is = p.copy().people();
      assertThat(is).extracting(PersonIn::id).isEqualTo(was.stream().map(PersonIn::id).toList());
      for (int k = 0; k < was.size(); k++) {
        assertThat(is.get(k).roles()).isEqualTo(was.get(k).roles());
        assertThat(is.get(k).room()).as("own people stay").isEqualTo(was.get(k).room());
        assertThat(is.get(k).covers()).containsAll(was.get(k).covers());
      }
      if (p.move() instanceof Move.SendTo send) {
        shouldLeaveEveryPatientWithACarer(in, send);
      }
    }
  }

  private static void shouldLeaveEveryPatientWithACarer(ForecastInput in, Move.SendTo send) {
    PersonIn sent =
        in.people().stream().filter(p -> p.id().equals(send.person().value())).findFirst().get();
    if (sent.roles().stream().noneMatch(CARERS::contains)) {
      return;
    }
    for (RoomIn room : in.rooms()) {
      boolean patient =
          room.items().stream()
              .anyMatch(i -> i.marks() != null && i.progress().state() == State.GOOD);
      if (patient && !room.id().equals(send.room().value())) {
        assertThat(in.people())
            .as("somebody of the room's own stays in " + room.id())
            .anyMatch(
                p ->
                    !p.id().equals(sent.id())
                        && room.id().equals(p.room())
                        && p.arrivedAt() != null
                        && p.roles().stream().anyMatch(CARERS::contains));
      }
    }
  }

  @Property(tries = 40)
  void shouldHaveTheBitsOfTheWholeSuiteThoughOnlyWhatChangesIsSimulated(
      @ForAll @LongRange(min = 1, max = 100_000) long seed,
      @ForAll @IntRange(min = 2, max = 5) int rooms) {
    ForecastInput in =
        seed % 2 == 0
            ? RandomMornings.shared(seed, rooms, 64)
            : RandomMornings.alone(seed, rooms, 64);
    Stream stream = new Stream(in, in.seed(), 64);
    List<ForecastInput> copies = new ArrayList<>();
    copies.add(in);
    Small.proposals(in).forEach(p -> copies.add(p.copy()));
    for (ForecastInput each : copies) {
      Stream.Copy copy = stream.new Copy(each);
      while (copy.advance()) {
        // Goes on to the end.
      }
      Run whole = new Run(each);
      whole.advance(64);
      for (RoomIn room : in.rooms()) {
        long[] expected = whole.starts(room.id());
        for (int n = 0; n < expected.length; n++) {
          expected[n] = Math.max(0, expected[n] - room.target());
        }
        assertThat(copy.late(room)).containsExactly(expected);
      }
    }
  }
}
