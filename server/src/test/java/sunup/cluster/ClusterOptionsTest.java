package sunup.cluster;

import static org.assertj.core.api.Assertions.assertThatCode;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class ClusterOptionsTest {
  private static ClusterOptions at(String host, boolean publicLink) {
    List<String> nodes = List.of(host + ":7461");
    return new ClusterOptions("test", host, 7461, nodes, publicLink, null, null);
  }

  @ParameterizedTest
  @ValueSource(strings = {"127.0.0.1", "10.1.2.3", "192.168.7.1", "172.20.0.9", "fd00::7"})
  void shouldTakeThisMachinesAndPrivateAddresses(String host) {
    assertThatCode(() -> at(host, false).check()).doesNotThrowAnyException();
  }

  @ParameterizedTest
  @ValueSource(strings = {"203.0.113.7", "0.0.0.0", "2001:db8::1"})
  void shouldNotListenWhereEverybodyCouldConnectUnlessToldTo(String host) {
    assertThatThrownBy(() -> at(host, false).check())
        .isInstanceOf(IllegalArgumentException.class)
        .hasMessageContaining("private link")
        .hasMessageContaining("--public-link");
    assertThatCode(() -> at(host, true).check()).doesNotThrowAnyException();
  }

  @Test
  void shouldSayWhatIsWrongWithAnAddress() {
    assertThatThrownBy(() -> at("node-1", false).check()).hasMessageContaining("not a name");
    ClusterOptions other =
        new ClusterOptions("test", "127.0.0.1", 7461, List.of("127.0.0.1:7463"), false, null, null);
    assertThatThrownBy(other::check).hasMessageContaining("does not hold this one");
  }
}
