package sunup.forecast;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.IntRange;
import net.jqwik.api.constraints.LongRange;
import org.junit.jupiter.api.Test;
import sunup.codec.BadJson;
import sunup.codec.Json;
import sunup.forecast.Forecast.RoomOut;
import sunup.forecast.Forecast.Share;
import sunup.forecast.ForecastInput.ItemIn;
import sunup.forecast.ForecastInput.Progress;
import sunup.forecast.ForecastInput.RoomIn;
import sunup.forecast.ForecastInput.State;

class PropertiesTest {
  @Property(tries = 60)
  void shouldSplitLateMinutesIntoPiecesThatAddUpExactly(
      @ForAll @LongRange(min = 1, max = 1_000_000) long seed,
      @ForAll @IntRange(min = 1, max = 4) int rooms) {
    ForecastInput in = RandomMorning.of(seed, rooms, 1, false);
    List<Integer> all = new ArrayList<>();
    for (int r = 0; r < rooms; r++) {
      all.add(r);
    }
    Model m = Compiler.compile(in, all);
    Trial trial = new Trial(m);
    Chain chain = new Chain(m);
    long[] pieces = new long[1000];
    for (int n = 0; n < 20; n++) {
      trial.run(n);
      for (int r = 0; r < rooms; r++) {
        long s = Math.min(trial.course.good(m.startItem[r]), m.cap[r]);
        chain.walk(trial.course, r, s);
        long at = m.begins[r];
        for (int k = 0; k < chain.count; k++) {
          assertThat(chain.length[k]).isNotNegative();
          at += chain.length[k];
          assertThat(chain.end[k]).as("elements tile").isEqualTo(at);
        }
        assertThat(at).isEqualTo(Math.max(s, m.begins[r]));
        Pieces.split(m.begins[r], m.target[r], chain.count, chain.length, chain.allowed, pieces);
        long sum = 0;
        for (int k = 0; k <= chain.count; k++) {
          assertThat(pieces[k]).isNotNegative();
          sum += pieces[k];
        }
        assertThat(sum).isEqualTo(Math.max(0, s - m.target[r]));
      }
    }
  }

  @Property(tries = 25)
  void shouldGiveTheSameBitsTogetherOrByComponentAndInOneGoOrTwo(
      @ForAll @LongRange(min = 1, max = 1_000_000) long seed,
      @ForAll @IntRange(min = 1, max = 5) int rooms,
      @ForAll boolean alone) {
    ForecastInput in = RandomMorning.of(seed, rooms, 40, alone);
    Forecast byComponent = Forecaster.run(in);
    if (alone) {
      assertThat(byComponent.components()).hasSize(rooms);
    }
    Run whole = new Run(in, false);
    whole.advance(40);
    assertThat(whole.result()).isEqualTo(byComponent);

    Run twice = new Run(in);
    twice.advance(15);
    assertThat(twice.result()).isEqualTo(Forecaster.run(in.withTrials(15)));
    twice.advance(40);
    assertThat(twice.result()).isEqualTo(byComponent);
  }

  /**
   * A room's figures do not tell how long others of its component go on. Things lapse early and
   * late, the rooms start at different times, and some not by their cap.
   */
  @Property(tries = 60)
  void shouldReadOfARoomWhatWasAtItsStartHoweverLongOthersPlay(
      @ForAll @LongRange(min = 1, max = 1_000_000) long seed,
      @ForAll @IntRange(min = 2, max = 4) int rooms) {
    ForecastInput in = lapsing(RandomMorning.of(seed, rooms, 40, true), new Random(seed));
    Run together = new Run(in, false);
    together.advance(40);
    Forecast apart = Forecaster.run(in);
    assertThat(apart.components()).hasSize(rooms);
    assertThat(together.result()).isEqualTo(apart);
  }

  private static ForecastInput lapsing(ForecastInput in, Random random) {
    List<RoomIn> rooms = new ArrayList<>();
    String[] steps = {"sent-for", "start", "induction", "induction"};
    for (RoomIn r : in.rooms()) {
      List<ItemIn> items = new ArrayList<>();
      for (ItemIn i : r.items()) {
        boolean lives = i.marks() == null && i.arrival() == null && random.nextInt(3) == 0;
        String step = steps[random.nextInt(steps.length)];
        items.add(lives ? Copies.living(i, step, (4L + random.nextInt(30)) * 60_000) : i);
      }
      long later = random.nextInt(4) * 600_000L;
      rooms.add(Copies.aiming(Copies.withItems(r, items), r.target() + later));
    }
    ForecastInput.Settings s = in.settings();
    long cap = (5 + random.nextInt(60)) * 60_000L;
    return new ForecastInput(
        in.version(),
        in.now(),
        in.seed(),
        in.trials(),
        new ForecastInput.Settings(
            s.personShare(), s.graceMs(), cap, s.forgottenTouch(), s.silence()),
        in.people(),
        in.kinds(),
        in.places(),
        rooms);
  }

  @Property(tries = 25)
  void shouldGiveSharesThatAddToOneOrNone(@ForAll @LongRange(min = 1, max = 1_000_000) long seed) {
    Forecast f = Forecaster.run(RandomMorning.of(seed, 3, 60, false));
    for (RoomOut room : f.rooms()) {
      double sum = room.alreadyLost();
      for (Share share : room.holdups()) {
        sum += share.share();
      }
      assertThat(sum).isCloseTo(room.meanLateMs() < 6000 ? 0 : 1, within(1e-9));
      assertThat(room.start10()).isLessThanOrEqualTo(room.start50());
      assertThat(room.start50()).isLessThanOrEqualTo(room.start90());
      assertThat(room.could50()).isLessThanOrEqualTo(room.start50());
      assertThat(room.capped()).isZero();
    }
  }

  /** Nothing shared: what is done already can only help, in every trial. */
  @Property(tries = 40)
  void shouldNeverStartLaterWhenNothingIsSharedAndSomethingIsDone(
      @ForAll @LongRange(min = 1, max = 1_000_000) long seed,
      @ForAll @IntRange(min = 0, max = 5) int item) {
    ForecastInput in = chainsOnly(RandomMorning.of(seed, 1, 30, true));
    RoomIn room = in.rooms().get(0);
    List<ItemIn> items = new ArrayList<>(room.items());
    ItemIn old = items.get(item);
    items.set(item, done(old, in.now()));
    ForecastInput better = Mornings.withRooms(in, List.of(Copies.withItems(room, items)));
    Run a = new Run(in);
    Run b = new Run(better);
    for (int n = 0; n < 30; n++) {
      assertThat(startOf(better, n)).isLessThanOrEqualTo(startOf(in, n));
    }
    a.advance(30);
    b.advance(30);
    assertThat(b.result().rooms().get(0).meanLateMs())
        .isLessThanOrEqualTo(a.result().rooms().get(0).meanLateMs());
  }

  /** No people and no units: the network alone, for which the rule has no anomalies. */
  private static ForecastInput chainsOnly(ForecastInput in) {
    RoomIn room = in.rooms().get(0);
    List<ItemIn> items = new ArrayList<>();
    for (ItemIn i : room.items()) {
      items.add(
          new ItemIn(
              i.key(),
              i.section(),
              i.ofCase(),
              List.of(),
              i.hands(),
              i.waits(),
              i.extra(),
              i.after(),
              i.gates(),
              i.marks(),
              i.notBefore(),
              i.place(),
              i.inRoom(),
              List.of(),
              i.arrival(),
              null,
              i.progress().state() == State.FAULT ? Progress.OPEN : i.progress(),
              i.asked()));
    }
    return Mornings.withRooms(in, List.of(Copies.withItems(room, items)));
  }

  private static ItemIn done(ItemIn i, long now) {
    return Copies.with(i, new Progress(State.GOOD, now, null, null, null, null));
  }

  private static long startOf(ForecastInput in, int n) {
    Model m = Compiler.compile(in, List.of(0));
    Trial t = new Trial(m);
    t.run(n);
    return t.course.good(m.startItem[0]);
  }

  /** An item that nothing waits for and that takes nobody moves no other draw. */
  @Property(tries = 25)
  void shouldMoveNoOtherDrawWhenAnItemIsAdded(
      @ForAll @LongRange(min = 1, max = 1_000_000) long seed,
      @ForAll @IntRange(min = 0, max = 6) int place) {
    ForecastInput in = RandomMorning.of(seed, 3, 20, false);
    List<RoomIn> rooms = new ArrayList<>(in.rooms());
    List<ItemIn> items = new ArrayList<>(rooms.get(1).items());
    items.add(place, Mornings.item("extra").takes(Mornings.about(3, 6)).build());
    rooms.set(1, Copies.withItems(rooms.get(1), items));
    Forecast before = Forecaster.run(in);
    Forecast after = Forecaster.run(Mornings.withRooms(in, rooms));
    for (int r = 0; r < 3; r++) {
      RoomOut a = before.rooms().get(r);
      RoomOut b = after.rooms().get(r);
      assertThat(b.start10()).isEqualTo(a.start10());
      assertThat(b.start90()).isEqualTo(a.start90());
      assertThat(b.meanLateMs()).isEqualTo(a.meanLateMs());
    }
  }

  @Property(tries = 25)
  void shouldReadAsJsonWhatItWrote(@ForAll @LongRange(min = 1, max = 1_000_000) long seed)
      throws BadJson {
    ForecastInput in = RandomMorning.of(seed, 3, 10, false);
    ForecastInput read = Json.read(Json.write(in), ForecastInput.class);
    assertThat(read).isEqualTo(in);
    Forecast f = Forecaster.run(in);
    assertThat(Json.read(Json.write(f), Forecast.class)).isEqualTo(f);
  }

  /** Two people's work never overlaps in one person; units never exceed the capacity. */
  @Property(tries = 40)
  void shouldClaimNobodyTwice(@ForAll @LongRange(min = 1, max = 1_000_000) long seed) {
    ForecastInput in = RandomMorning.of(seed, 3, 1, false);
    Model m = Compiler.compile(in, List.of(0, 1, 2));
    Trial t = new Trial(m);
    for (int n = 0; n < 10; n++) {
      t.run(n);
      Course c = t.course;
      long[] until = new long[m.people];
      for (int k = 0; k < c.begun; k++) {
        int i = c.order[k];
        if (c.position[i] != k || c.begin(i) < 0 || m.state[i] != Model.OPEN || t.redone[i] > 0) {
          continue;
        }
        for (int s = m.firstSlot[i]; s < m.firstSlot[i + 1]; s++) {
          int p = c.person(s);
          if (p >= 0) {
            assertThat(c.begin(i)).isGreaterThanOrEqualTo(until[p]);
            until[p] = c.handsEnd(i);
          }
        }
        for (int j : m.before[i]) {
          assertThat(t.redone[j] > 0 || c.good(j) <= c.begin(i)).isTrue();
        }
        assertThat(m.place[i] < 0 || c.begin(i) >= m.opensAt[m.place[i]]).isTrue();
      }
    }
  }

  /** Rule 4: equal (model, inputs, seed, trials) give equal bits, on any thread. */
  @Test
  void shouldGiveTheSameBitsOnAnyThreadAndNameItsInput() {
    ForecastInput in = RandomMorning.of(5, 4, 60, false);
    Forecast here = Forecaster.run(in);
    List<Forecast> there =
        IntStream.range(0, 8).parallel().mapToObj(n -> Forecaster.run(in)).toList();
    assertThat(there).allMatch(here::equals);
    assertThat(here.inputs()).hasSize(32);
    assertThat(Forecaster.run(Mornings.withSeed(in, 6)).inputs()).isEqualTo(here.inputs());
    assertThat(Forecaster.run(in.withTrials(3)).inputs()).isEqualTo(here.inputs());
    assertThat(Forecaster.run(RandomMorning.of(6, 4, 60, false)).inputs())
        .isNotEqualTo(here.inputs());
    List<String> kinds =
        Stream.of(new Draw.Constant(9), new Draw.Exponential(9))
            .map(d -> List.of(Mornings.item("start").marks("start").takes(d).build()))
            .map(items -> List.of(Mornings.room("1", 0, 0, items)))
            .map(rooms -> InputKey.of(Mornings.withRooms(in, rooms)))
            .toList();
    assertThat(kinds.get(0)).isNotEqualTo(kinds.get(1));
  }
}
