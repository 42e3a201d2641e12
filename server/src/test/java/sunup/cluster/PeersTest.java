package sunup.cluster;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import sunup.live.fake.ManualClock;

/** What a node makes of who is named, who is heard and who has ended. */
class PeersTest {
  private static final long FORGET_MS = 60_000;
  private static final Set<String> NEW = Set.of("new-kind");

  private final ManualClock clock = new ManualClock();
  private final List<Node> named = new ArrayList<>(List.of(node("a"), node("b"), node("c")));
  private final Peers peers =
      new Peers(
          "a",
          3,
          clock,
          new Members() {
            @Override
            public List<Node> nodes() {
              return named;
            }

            @Override
            public String suggested(String key) {
              return null;
            }
          },
          (to, message, payload) -> true);

  private static Node node(String id) {
    return new Node(id, "10.0.0." + id, 7461);
  }

  private void hear(String id, String... heardThere) {
    long now = clock.monotonicMs();
    BusMessage.Pulse pulse =
        new BusMessage.Pulse(
            now, now, 0, 0, true, 0, List.of(), List.of(), NEW, Set.of(heardThere));
    peers.heard(id, pulse);
  }

  private boolean amongMost() {
    peers.look(0, 0);
    return peers.amongMost();
  }

  private void pass(long ms) {
    clock.pass(ms);
    peers.forget(FORGET_MS);
  }

  @BeforeEach
  void begin() {
    hear("b");
    hear("c");
  }

  @Test
  void shouldNotLetANodeThatEndedHoldBackANewKindForAsLongAsItIsNamed() {
    assertThat(peers.readByAll(NEW)).isEqualTo(NEW);
    assertThat(peers.ended("b")).isTrue();
    for (int minute = 0; minute < 2; minute++) {
      pass(FORGET_MS + 1);
      hear("c");
      assertThat(peers.readByAll(NEW)).isEqualTo(NEW);
    }
  }

  @Test
  void shouldKnowWhatASilentNodeReadsThatItNeverHeard() {
    named.add(node("d"));
    assertThat(peers.readByAll(NEW)).as("a version that does not say").isEmpty();
    named.set(3, new Node("d", "10.0.0.d", 7461, Set.of("old-kind")));
    assertThat(peers.readByAll(NEW)).as("an older version").isEmpty();
    named.set(3, new Node("d", "10.0.0.d", 7461, Set.of("old-kind", "new-kind")));
    assertThat(peers.readByAll(NEW)).isEqualTo(NEW);
  }

  @Test
  void shouldKnowThatALaterVersionReadsWhatItCallsNewNoMore() {
    long now = clock.monotonicMs();
    named.add(new Node("d", "10.0.0.d", 7461, NEW));
    peers.heard(
        "d",
        new BusMessage.Pulse(
            now, now, 0, 0, true, 0, List.of(), List.of(), Set.of("newer-kind"), Set.of()));
    assertThat(peers.readByAll(NEW)).isEqualTo(NEW);
  }

  @Test
  void shouldBeAmongMostByTheNodesThatHaveNotEnded() {
    assertThat(amongMost()).isTrue();
    pass(Placement.SILENT_MS + 1);
    assertThat(amongMost()).as("hears nobody").isFalse();
    peers.ended("b");
    peers.ended("c");
    assertThat(amongMost()).as("nobody else is there").isTrue();
    pass(FORGET_MS + 1);
    assertThat(amongMost()).as("later, too").isTrue();
  }

  @Test
  void shouldNotCountAProcessAsEndedThatWasStartedAgain() {
    peers.ended("b");
    peers.ended("c");
    named.set(1, node("b2"));
    named.set(2, node("c2"));
    assertThat(amongMost()).isFalse();
  }

  @Test
  void shouldNotBeAmongMostIfOthersHearWhomItDoesNot() {
    pass(Placement.SILENT_MS + 1);
    hear("b", "a", "c");
    assertThat(peers.othersHearMore()).isTrue();
    assertThat(amongMost()).isFalse();
    peers.ended("c");
    assertThat(amongMost()).as("it has ended, whatever they still say").isTrue();
  }
}
