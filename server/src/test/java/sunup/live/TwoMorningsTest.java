package sunup.live;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.LocalDate;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import sunup.board.SuiteId;
import sunup.live.fake.FakeOwner;
import sunup.live.fake.ManualClock;
import sunup.live.fake.ManualLane;
import sunup.live.fake.NoteSight;
import sunup.live.fake.Unkept;
import sunup.suites.Owner;
import sunup.wire.Audience;
import sunup.wire.ServerMessage;

/** A desk works on tomorrow's draft while today's morning runs. */
class TwoMorningsTest {
  private static final LocalDate TODAY = LocalDate.of(2026, 11, 25);
  private static final LocalDate TOMORROW = TODAY.plusDays(1);
  private static final long DAY_MS = 24 * 3_600_000L;

  private final ManualClock clock = new ManualClock();
  private final ManualLane lane = new ManualLane(clock);
  private final Map<LocalDate, FakeOwner> owners = new HashMap<>();
  private final Kept wall = new Kept(Audience.WALL);
  private final Kept desk = new Kept(Audience.DESK);
  private final Mornings mornings =
      new Mornings(
          new SuiteId("main"),
          ZoneOffset.UTC,
          morning -> owners.computeIfAbsent(morning.date(), d -> new FakeOwner(morning, clock)),
          clock,
          lane,
          new NoteSight(),
          Runnable::run,
          Runnable::run,
          Pace.DEFAULT,
          Unkept.LOG,
          Nudges.NONE);

  @BeforeEach
  void open() {
    mornings.open();
    mornings.join(wall, null, null, null, null);
    mornings.join(desk, mornings.on(TOMORROW), null, null, null);
    lane.pass(1_000);
  }

  /** The dates of the views that a screen got, in order. */
  private static List<LocalDate> views(Kept screen) {
    List<LocalDate> dates = new ArrayList<>();
    for (ServerMessage message : screen.messages) {
      if (message instanceof ServerMessage.View view) {
        dates.add(view.morning().date());
      }
    }
    return dates;
  }

  @Test
  void shouldShowADeskTheDateThatItChoseAndTheWallTheMorningThatIsOn() {
    assertThat(views(wall)).containsExactly(TODAY);
    assertThat(views(desk)).containsExactly(TOMORROW);

    owners.get(TOMORROW).say("a draft");
    lane.pass(100);
    assertThat(desk.last().upTo()).isEqualTo(1);
    assertThat(desk.last().morning().date()).isEqualTo(TOMORROW);
    assertThat(wall.frames()).allMatch(frame -> frame.morning().date().equals(TODAY));
    assertThat(desk.beats()).isNotEmpty();
  }

  @Test
  void shouldDecideWhatTheDeskSaysOnTheMorningThatItSees() {
    List<Owner> found = new ArrayList<>();
    mornings.owner(mornings.on(TOMORROW), found::add);
    mornings.owner(null, found::add);
    assertThat(found).containsExactly(owners.get(TOMORROW), owners.get(TODAY));
    assertThat(mornings.standpoint(mornings.on(TOMORROW)).morning().date()).isEqualTo(TOMORROW);
    assertThat(mornings.standpoint().morning().date()).isEqualTo(TODAY);
  }

  @Test
  void shouldShowTheWallTheNextMorningFromMidnightAndLeaveEachDeskWhereItIs() {
    Kept yesterdays = new Kept(Audience.DESK);
    mornings.join(yesterdays, mornings.on(TODAY), null, null, null);
    lane.pass(1_000);

    clock.jump(DAY_MS);
    lane.pass(2_000);

    assertThat(views(wall)).containsExactly(TODAY, TOMORROW);
    assertThat(views(desk)).containsExactly(TOMORROW);
    assertThat(views(yesterdays)).containsExactly(TODAY);
    assertThat(mornings.standpoint().morning().date()).isEqualTo(TOMORROW);
    owners.get(TODAY).say("late word");
    lane.pass(100);
    assertThat(yesterdays.last().upTo()).isEqualTo(1);
  }

  @Test
  void shouldLetGoOfAMorningThatNobodySeesAnyMoreButNeverOfTheOneThatIsOn() {
    mornings.leave(desk);
    mornings.leave(wall);
    lane.pass(2_000);

    assertThat(owners.get(TOMORROW).watchers()).isZero();
    assertThat(owners.get(TODAY).watchers()).isEqualTo(1);
  }
}
