package sunup.cluster;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.List;
import java.util.Set;
import org.junit.jupiter.api.Test;

class KnownNodesTest {
  private static final Node ONE = new Node("1", "10.0.0.1", 7461);
  private static final Node TWO = new Node("2", "10.0.0.2", 7461);
  private static final Node TWO_AGAIN = new Node("3", "10.0.0.2", 7461);

  private final KnownNodes known = new KnownNodes();

  private Set<Node> all(long now, Node... named) {
    return Set.copyOf(known.all(List.of(named), now));
  }

  @Test
  void shouldKeepANodeThatTheGridDroppedForAWhile() {
    assertEquals(Set.of(ONE, TWO), all(0, ONE, TWO));
    assertEquals(Set.of(ONE, TWO), all(KnownNodes.KEPT_MS, ONE));
    assertEquals(Set.of(ONE), all(KnownNodes.KEPT_MS + 1, ONE));
  }

  @Test
  void shouldForgetANodeWhoseAddressAnotherHas() {
    all(0, ONE, TWO);
    assertEquals(Set.of(ONE, TWO_AGAIN), all(1, ONE, TWO_AGAIN));
    assertEquals(Set.of(ONE, TWO_AGAIN), all(2, ONE));
  }
}
