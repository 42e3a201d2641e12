package sunup.cluster;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import sunup.board.MorningId;
import sunup.journal.EventTypes;
import sunup.journal.Journal;
import sunup.journal.TakenOver;
import sunup.live.Line;
import sunup.live.Place;
import sunup.simulated.Bug;
import sunup.simulated.Coverage;
import sunup.simulated.Disk;
import sunup.simulated.Faults;
import sunup.simulated.NoteTaking;
import sunup.simulated.SimulatedClock;
import sunup.simulated.SimulatedJournal;
import sunup.simulated.SimulatedTime;
import sunup.suites.Company;
import sunup.suites.Suites;

/** How long a node leaves a morning alone that another one took from it. */
class HoldOffTest {
  private static final MorningId MORNING = MorningId.parse("east/2026-11-30");
  private static final long SOON_MS = 1_000;

  private final SimulatedTime time = new SimulatedTime();
  private final SimulatedTime.Loop loop = time.loop();
  private final SimulatedClock clock = new SimulatedClock(time, 0);
  private final Disk disk = new Disk(Bug.NONE);
  private final Journal rivals = journal();
  private final List<Place> told = new ArrayList<>();
  private final Suites suites =
      new Suites(
          journal(),
          new NoteTaking(),
          clock,
          loop,
          loop,
          byte[]::new,
          EventTypes.ofProgram(),
          new Others(),
          suite -> null);
  private final Placement placement =
      new Placement(
          "self",
          2,
          suites,
          Set.of(),
          clock,
          loop,
          new Both(),
          (node, message, payload) -> true,
          new NoScreens());
  private boolean speaking = true;
  private long rivalsEpoch;

  private Journal journal() {
    return new SimulatedJournal(disk, loop, loop, Faults.none(), Bug.NONE, new Coverage());
  }

  private final class Others implements Company {
    @Override
    public void gone(MorningId morning) {
      placement.gone(morning);
    }

    @Override
    public boolean reads(String type) {
      return true;
    }
  }

  /** The grid suggests this node. */
  private static final class Both implements Members {
    @Override
    public List<Node> nodes() {
      return List.of(new Node("self", "10.0.0.1", 7461), new Node("rival", "10.0.0.2", 7461));
    }

    @Override
    public String suggested(String key) {
      return "self";
    }
  }

  private static final class NoScreens implements Screens {
    @Override
    public int open() {
      return 0;
    }

    @Override
    public Place.There line(MorningId morning, String node) {
      return new Place.There(
          new Line() {
            @Override
            public String node() {
              return node;
            }

            @Override
            public void follow(boolean views) {}
          });
    }
  }

  @BeforeEach
  void begin() {
    placement.start();
    placement.watch(MORNING, told::add);
    speak();
    assertThat(msUntilHere(3_000)).isPositive();
  }

  /** The rival says twice a second what it has. */
  private void speak() {
    Runnable unused = loop.after(Placement.PULSE_MS, this::speak);
    if (speaking) {
      List<BusMessage.Claim> claims =
          rivalsEpoch == 0 ? List.of() : List.of(new BusMessage.Claim(MORNING, rivalsEpoch, false));
      long now = clock.monotonicMs();
      placement.heard(
          "rival",
          new BusMessage.Pulse(
              now, now, 0, now, true, 0, claims, List.of(), Set.of(), Set.of("self")));
    }
  }

  private void pass(long ms) {
    time.runUntil(time.now() + ms);
  }

  private Place place() {
    return told.get(told.size() - 1);
  }

  /** Milliseconds until this node has the morning, or -1 if it takes longer than that. */
  private long msUntilHere(long most) {
    for (long passed = 0; passed < most; passed += 10) {
      pass(10);
      if (place() instanceof Place.Here) {
        return passed + 10;
      }
    }
    return -1;
  }

  /** The rival takes the morning, and says so unless it is silent. */
  private void isTaken() {
    long before = disk.load(MORNING).head().epoch();
    rivals.takeOver(MORNING, before, taken -> rivalsEpoch = ((TakenOver.Won) taken).head().epoch());
    pass(50);
    assertThat(rivalsEpoch).isEqualTo(before + 1);
    placement.gone(MORNING);
    pass(SOON_MS);
    assertThat(place()).isNotInstanceOf(Place.Here.class);
  }

  /** Its process is killed: its port refuses. */
  private void ends() {
    speaking = false;
    rivalsEpoch = 0;
    placement.ended("rival");
  }

  @Test
  void shouldTakeItAtOnceFromARivalThatWasHeardToHaveItAndEnded() {
    isTaken();
    assertThat(place()).isInstanceOf(Place.There.class);
    ends();
    assertThat(msUntilHere(10_000)).isBetween(1L, SOON_MS);
  }

  @Test
  void shouldLeaveItAloneFor3SecondsIfNobodyIsHeardToHaveIt() {
    speaking = false;
    pass(Placement.SILENT_MS);
    isTaken();
    ends();
    long more = msUntilHere(10_000);
    assertThat(SOON_MS + more).isBetween(Placement.HOLD_OFF_MS, Placement.HOLD_OFF_MS + SOON_MS);
  }

  @Test
  void shouldLeaveItAloneForLongerIfItWasLostOftenAlsoIfTheRivalIsHeard() {
    for (int time = 0; time < 3; time++) {
      isTaken();
      ends();
      assertThat(msUntilHere(10_000)).isBetween(1L, SOON_MS);
      speaking = true;
      pass(SOON_MS);
    }
    isTaken();
    ends();
    assertThat(msUntilHere(20_000)).isEqualTo(-1);
    assertThat(msUntilHere(10_000)).isPositive();
  }
}
