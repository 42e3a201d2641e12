package sunup.forecast;

import static org.assertj.core.api.Assertions.assertThat;
import static sunup.forecast.Mornings.MINUTE;
import static sunup.forecast.Mornings.at;

import java.util.ArrayList;
import java.util.List;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.LongRange;
import org.junit.jupiter.api.Test;
import sunup.forecast.AsRun.Piece;
import sunup.forecast.AsRun.RoomRun;
import sunup.forecast.ForecastInput.ItemIn;
import sunup.forecast.ForecastInput.Progress;
import sunup.forecast.ForecastInput.RoomIn;
import sunup.forecast.ForecastInput.State;

class AsRunTest {
  /** A random morning played to its end, as a board that heard everything would tell it. */
  private static ForecastInput played(long seed) {
    ForecastInput in = RandomMorning.of(seed, 3, 1, false);
    Model m = Compiler.compile(in, List.of(0, 1, 2));
    Trial trial = new Trial(m);
    trial.run(0);
    Course c = trial.course;
    List<RoomIn> rooms = new ArrayList<>();
    int i = 0;
    for (int r = 0; r < m.rooms; r++) {
      RoomIn room = in.rooms().get(r);
      List<ItemIn> items = new ArrayList<>();
      for (ItemIn item : room.items()) {
        i += m.mends[i] >= 0 ? 1 : 0;
        items.add(done(item, in.now(), m, c, i++));
      }
      long start = in.now() + c.good(m.startItem[r]);
      boolean started = c.good(m.startItem[r]) <= m.cap[r];
      rooms.add(Copies.started(room, started ? Long.valueOf(start) : null, items));
    }
    return new ForecastInput(
        1, at(13, 0), seed, 1, in.settings(), in.people(), in.kinds(), in.places(), rooms);
  }

  private static ItemIn done(ItemIn item, long now, Model m, Course c, int i) {
    boolean good = c.good(i) > Model.EVER && now + c.good(i) <= at(13, 0);
    boolean left = c.good(i) == Model.EVER;
    int p = m.slotsOf(i) > 0 ? c.person(m.firstSlot[i]) : -1;
    Progress progress =
        left
            ? new Progress(State.LEFT_OUT, null, null, null, null, null, null)
            : good
                ? new Progress(
                    State.GOOD,
                    now + c.good(i),
                    c.begin(i) > c.good(i) ? null : Long.valueOf(now + c.begin(i)),
                    p < 0 ? null : m.personId[p],
                    null,
                    null,
                    null)
                : Progress.OPEN;
    return Copies.with(item, progress);
  }

  @Property(tries = 200)
  void shouldExplainEveryLateMillisecondOfAMorningThatIsOver(
      @ForAll @LongRange(min = 1, max = 1_000_000) long seed) {
    for (RoomRun room : AsRun.of(played(seed)).rooms()) {
      long sum = 0;
      long to = room.pieces().get(0).to();
      for (Piece piece : room.pieces()) {
        assertThat(piece.lateMs()).isNotNegative();
        assertThat(piece.from()).as("pieces tile the morning").isEqualTo(to);
        to = piece.to();
        sum += piece.lateMs();
      }
      assertThat(to).isEqualTo(room.start());
      assertThat(sum).isEqualTo(room.lateMs());
      assertThat(room.lateMs()).isEqualTo(Math.max(0, room.start() - room.target()));
    }
  }

  /**
   * By hand: planned 6:30 to 7:15 with 5 minutes for coming, 15 and 10 of work, so 15 to spare. The
   * nurse comes 10 late and counts 5 longer: all spent, nothing late. The scan takes 10 longer, and
   * 5 pass before the start.
   */
  @Test
  void shouldSayWhereTheMinutesWent() {
    ForecastInput in =
        Mornings.with(
            Mornings.morning(
                at(9, 0),
                1,
                Mornings.PLAIN,
                Mornings.people(
                    Mornings.person("n", "nurse").in("1").here(at(6, 45)).plans(at(6, 35))),
                List.of(
                    Copies.started(
                        Mornings.room(
                            "1",
                            at(7, 15),
                            at(6, 30),
                            Mornings.items(
                                Mornings.item("count")
                                    .by("nurse")
                                    .takes(Mornings.exactly(15))
                                    .good(at(7, 5), "n"),
                                Mornings.item("scan")
                                    .by("nurse")
                                    .takes(Mornings.exactly(10))
                                    .after("count")
                                    .good(at(7, 25), "n"),
                                Mornings.item("start")
                                    .marks("start")
                                    .after("scan")
                                    .good(at(7, 30), null))),
                        at(7, 30)))),
            List.of(),
            List.of());
    RoomRun room = AsRun.of(in).rooms().get(0);
    assertThat(room.lateMs()).isEqualTo(15 * MINUTE);
    assertThat(room.pieces())
        .extracting(p -> p.kind() + " " + p.item() + " " + p.lateMs() / MINUTE)
        .containsExactly(
            "plan null 0", "arrival count 0", "work count 0", "work scan 10", "not-begun start 5");
    assertThat(room.pieces().get(2).implied()).isTrue();
  }

  /** What was told of rooms and equipment, by hand. */
  private static Past told(Long freed, Past.Came came) {
    return new Past() {
      @Override
      public Long freed(String room) {
        return freed;
      }

      @Override
      public Came came(String room, String kind, long by) {
        return came == null || came.at() > by ? null : came;
      }
    };
  }

  private static List<Piece> scanned(Past past) {
    ForecastInput in =
        Mornings.with(
            Mornings.morning(
                at(9, 0),
                1,
                Mornings.PLAIN,
                Mornings.people(
                    Mornings.person("n", "nurse").in("1").here(at(6, 30)).plans(at(6, 30))),
                List.of(
                    Copies.started(
                        Mornings.room(
                            "1",
                            at(7, 0),
                            at(6, 30),
                            Mornings.items(
                                Mornings.item("scan")
                                    .by("nurse")
                                    .inRoom()
                                    .needs("scanner", 1, null)
                                    .takes(Mornings.exactly(30))
                                    .good(at(7, 50), "n"),
                                Mornings.item("start")
                                    .marks("start")
                                    .after("scan")
                                    .good(at(7, 50), null))),
                        at(7, 50)))),
            List.of(new ForecastInput.KindIn("scanner", 1, List.of())),
            List.of());
    return AsRun.of(in, past).rooms().get(0).pieces();
  }

  /** Thirty minutes of work and none to spare; it is good at 7:50, and nobody said it was begun. */
  @Test
  void shouldNotTakeForWorkWhatWasAWaitForTheRoomOrForEquipment() {
    assertThat(late(scanned(Past.UNTOLD))).containsExactly("work 50");
    assertThat(late(scanned(told(at(7, 20), null)))).containsExactly("occupied 50");
    Past.Came came = new Past.Came(at(7, 15), null);
    assertThat(late(scanned(told(null, came)))).containsExactly("equipment 45", "work 5");
    assertThat(late(scanned(told(at(6, 50), came))))
        .as("first the room, then the scanner")
        .containsExactly("occupied 20", "equipment 25", "work 5");
    assertThat(late(scanned(told(at(8, 10), null))))
        .as("too late for it")
        .containsExactly("work 50");
  }

  private static List<String> late(List<Piece> pieces) {
    return pieces.stream()
        .filter(p -> p.lateMs() > 0)
        .map(p -> p.kind() + " " + p.lateMs() / MINUTE)
        .toList();
  }
}
