package sunup.access;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.util.List;
import org.junit.jupiter.api.Test;

class ConnectionsTest {
  private final Connections connections = new Connections(List.of("http://127.0.0.1:5173"));

  @Test
  void shouldKnowThisMachinesOwnAddressesAndLookUpNoNames() {
    for (String host : new String[] {"127.0.0.1", "127.9.9.9", "::1", "localhost"}) {
      assertThat(Connections.isLoopback(host)).as(host).isTrue();
    }
    for (String host :
        new String[] {
          "0.0.0.0", "::", "10.0.0.1", "board.example", "localhost.example", "", null
        }) {
      assertThat(Connections.isLoopback(host)).as(host).isFalse();
    }
  }

  @Test
  void shouldSayWhyItListensNowhereElse() {
    Connections.checkLoopback("127.0.0.1");
    assertThatThrownBy(() -> Connections.checkLoopback("0.0.0.0"))
        .isInstanceOf(IllegalArgumentException.class)
        .hasMessageContaining("this machine only");
  }

  @Test
  void shouldTakeOnlyThisMachinesNamesAsHost() {
    for (String host :
        new String[] {"localhost", "LOCALHOST:80", "127.0.0.1:8080", "[::1]", "[::1]:8080"}) {
      assertThat(connections.hostIsOurs(host)).as(host).isTrue();
    }
    for (String host :
        new String[] {
          "evil.example", "localhost.evil.example:1", "127.0.0.1.evil:1", "::1", "", null
        }) {
      assertThat(connections.hostIsOurs(host)).as(host).isFalse();
    }
  }

  @Test
  void shouldTakeItsOwnAndListedOriginsAndNoneFromThisMachineOnly() {
    String host = "localhost:8080";
    String here = "127.0.0.1";
    assertThat(connections.originMayTalk("http://localhost:8080", host, here)).isTrue();
    assertThat(connections.originMayTalk("http://127.0.0.1:5173", host, here)).isTrue();
    assertThat(connections.originMayTalk(null, host, here)).isTrue();
    assertThat(connections.originMayTalk(null, host, "10.0.0.7")).isFalse();
    for (String origin :
        new String[] {
          "null", "http://localhost:8081", "https://localhost:8080", "http://evil.example", "%", ""
        }) {
      assertThat(connections.originMayTalk(origin, host, here)).as(origin).isFalse();
    }
  }
}
