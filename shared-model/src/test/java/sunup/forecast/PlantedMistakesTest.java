package sunup.forecast;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;
import static sunup.forecast.Copies.with;
import static sunup.forecast.Copies.withItems;
import static sunup.forecast.Mornings.item;
import static sunup.forecast.Planted.holds;
import static sunup.forecast.Planted.items;
import static sunup.forecast.Planted.reseeded;
import static sunup.forecast.Planted.wrongInput;
import static sunup.forecast.Planted.wrongRooms;

import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.TreeMap;
import org.junit.jupiter.api.Test;
import sunup.forecast.Forecast.RoomOut;
import sunup.forecast.Forecast.Share;
import sunup.forecast.ForecastInput.ItemIn;
import sunup.forecast.ForecastInput.PersonIn;
import sunup.forecast.ForecastInput.RoomIn;

/**
 * What rules 4 to 6 promise, asked of the forecast through its public entry and then of forecasts
 * with a mistake planted in them, which must be noticed: a check that can't fail is none.
 */
class PlantedMistakesTest {
  @Test
  void shouldMoveNoOtherDrawWhenAnItemIsAddedOrTakenAway() {
    holds(
        engine -> {
          for (int seed = 1; seed <= 12; seed++) {
            ForecastInput with = RandomMorning.of(seed, 3, 20, false);
            List<RoomIn> rooms = new ArrayList<>(with.rooms());
            List<ItemIn> more = new ArrayList<>(rooms.get(1).items());
            more.add(seed % 6, item("more").takes(Mornings.about(3, 6)).build());
            rooms.set(1, withItems(rooms.get(1), more));
            Forecast a = engine.after(with, 20);
            Forecast b = engine.after(Mornings.withRooms(with, rooms), 20);
            for (int r = 0; r < 3; r++) {
              RoomOut room = b.rooms().get(r);
              assertThat(room.meanLateMs()).isEqualTo(a.rooms().get(r).meanLateMs());
              assertThat(room.start90()).isEqualTo(a.rooms().get(r).start90());
              assertThat(room.could10()).isEqualTo(a.rooms().get(r).could10());
              assertThat(room.holdups()).isEqualTo(a.rooms().get(r).holdups());
            }
          }
        },
        // Draws taken one after the other, so that each item moves those that follow.
        wrongInput(in -> reseeded(in, items(in))),
        // Draws keyed by an item's place in the sheet.
        wrongInput(PlantedMistakesTest::keyedByPlace));
  }

  private static ForecastInput keyedByPlace(ForecastInput in) {
    List<RoomIn> rooms = new ArrayList<>();
    for (RoomIn r : in.rooms()) {
      rooms.add(
          new RoomIn(
              r.id() + r.items().size(),
              r.caseId(),
              r.target(),
              r.startStep(),
              r.begins(),
              r.occupiedFor(),
              r.startedAt(),
              r.items()));
    }
    List<PersonIn> people = new ArrayList<>();
    for (PersonIn p : in.people()) {
      String room = p.room();
      for (int r = 0; r < rooms.size(); r++) {
        room = in.rooms().get(r).id().equals(p.room()) ? rooms.get(r).id() : room;
      }
      people.add(withRoom(p, room));
    }
    return Copies.with(
        in,
        people,
        in.kinds().stream()
            .map(k -> new ForecastInput.KindIn(k.id(), k.capacity(), List.of()))
            .toList(),
        rooms);
  }

  private static PersonIn withRoom(PersonIn p, String room) {
    return new PersonIn(
        p.id(),
        p.roles(),
        room,
        p.covers(),
        p.arrivedAt(),
        p.plannedAt(),
        p.late(),
        p.arrivalReported(),
        p.leavesAt(),
        p.away(),
        p.lastWordAt(),
        p.styles());
  }

  @Test
  void shouldGiveWithManyTrialsFirstWhatFewGive() {
    holds(
        engine -> {
          for (int seed = 1; seed <= 3; seed++) {
            ForecastInput many = EveryFeature.of(seed, 2000, new TreeMap<>());
            assertThat(engine.after(many, 256)).isEqualTo(engine.after(many.withTrials(256), 256));
          }
          ForecastInput in = EveryFeature.of(4, 600, new TreeMap<>());
          Run run = new Run(in);
          run.advance(256);
          run.advance(600);
          assertThat(run.result()).isEqualTo(engine.after(in, 600));
        },
        wrongInput(in -> reseeded(in, in.trials())));
  }

  @Test
  void shouldGiveAComponentAloneTheBitsThatItHasInTheSuite() {
    holds(
        engine -> {
          for (int seed = 1; seed <= 8; seed++) {
            ForecastInput in = RandomMorning.of(seed, 4, 30, true);
            Forecast whole = engine.after(in, 30);
            assertThat(whole.components()).hasSize(4);
            for (List<String> component : whole.components()) {
              Forecast alone = engine.after(only(in, component), 30);
              for (RoomOut room : alone.rooms()) {
                assertThat(whole.rooms()).contains(room);
              }
            }
          }
        },
        wrongInput(in -> reseeded(in, in.rooms().size())));
  }

  private static ForecastInput only(ForecastInput in, List<String> rooms) {
    return Copies.with(
        in,
        in.people().stream()
            .filter(
                p -> p.room() == null ? rooms.containsAll(p.covers()) : rooms.contains(p.room()))
            .toList(),
        in.kinds(),
        in.rooms().stream().filter(r -> rooms.contains(r.id())).toList());
  }

  @Test
  void shouldNotMindTheOrderOfPeopleNorOfRoomsThatShareNothing() {
    holds(
        engine -> {
          for (int seed = 1; seed <= 8; seed++) {
            ForecastInput shared = EveryFeature.of(seed, 30, new TreeMap<>());
            assertThat(engine.after(shuffled(shared, seed, false), 30).rooms())
                .isEqualTo(engine.after(shared, 30).rooms());
            ForecastInput apart = RandomMorning.of(seed, 4, 30, true);
            assertThat(engine.after(shuffled(apart, seed, true), 30).rooms())
                .containsExactlyInAnyOrderElementsOf(engine.after(apart, 30).rooms());
          }
        },
        wrongInput(in -> reseeded(in, in.people().get(0).id().hashCode())),
        wrongInput(in -> reseeded(in, in.rooms().get(0).id().hashCode())));
  }

  private static ForecastInput shuffled(ForecastInput in, long seed, boolean rooms) {
    List<PersonIn> people = new ArrayList<>(in.people());
    Collections.rotate(people, 1);
    List<RoomIn> list = new ArrayList<>(in.rooms());
    if (rooms) {
      Collections.rotate(list, 1 + (int) seed % 3);
    }
    return Copies.with(in, people, in.kinds(), list);
  }

  @Test
  void shouldSplitTheLateMinutesOfOneTrialIntoWholeMillisecondsThatAddUp() {
    holds(
        engine -> {
          for (int seed = 1; seed <= 60; seed++) {
            Forecast f = engine.after(RandomMorning.of(seed, 3, 1, false), 1);
            for (RoomOut room : f.rooms()) {
              double sum = room.alreadyLost();
              for (Share share : room.holdups()) {
                double ms = share.share() * room.meanLateMs();
                assertThat(ms).isCloseTo(Math.rint(ms), within(1e-3)).isPositive();
                sum += share.share();
              }
              if (room.meanLateMs() >= 6000) {
                assertThat(sum).isCloseTo(1, within(1e-9));
              }
            }
          }
        },
        wrongRooms(room -> withHoldups(room, withoutLast(room.holdups()))),
        wrongRooms(room -> withHoldups(room, scaled(room.holdups(), 1.001))),
        wrongRooms(room -> withHoldups(room, evened(room.holdups()))));
  }

  private static List<Share> withoutLast(List<Share> all) {
    return all.isEmpty() ? all : all.subList(0, all.size() - 1);
  }

  private static List<Share> scaled(List<Share> all, double by) {
    return all.stream().map(s -> withShare(s, s.share() * by)).toList();
  }

  /** The wrong attribution that gives each cause the same. */
  private static List<Share> evened(List<Share> all) {
    double sum = all.stream().mapToDouble(Share::share).sum();
    return all.stream().map(s -> withShare(s, sum / all.size())).toList();
  }

  private static Share withShare(Share s, double share) {
    return new Share(s.room(), s.kind(), s.item(), s.thing(), s.where(), share, s.until());
  }

  private static RoomOut withHoldups(RoomOut r, List<Share> holdups) {
    return Copies.with(r, holdups, r.items());
  }

  @Test
  void shouldWeighTheRoomsInTheSuitesShares() {
    holds(
        engine -> {
          for (int seed = 1; seed <= 10; seed++) {
            Forecast f = engine.after(RandomMorning.of(seed, 3, 40, false), 40);
            double all = f.rooms().stream().mapToDouble(RoomOut::meanLateMs).sum();
            for (Share s : f.holdups()) {
              double weight = 0;
              for (RoomOut room : f.rooms()) {
                for (Share own : room.holdups()) {
                  boolean same = withShare(own, 0).toString().equals(withShare(s, 0).toString());
                  weight += same ? own.share() * room.meanLateMs() / all : 0;
                }
              }
              assertThat(s.share()).as(s.toString()).isCloseTo(weight, within(1e-9));
            }
          }
        },
        wrongRooms(room -> withHoldups(room, scaled(room.holdups(), 1.01))));
  }
}
