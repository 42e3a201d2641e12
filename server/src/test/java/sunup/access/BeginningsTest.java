package sunup.access;

import static org.assertj.core.api.Assertions.assertThat;

import org.junit.jupiter.api.Test;

/** Whoever begins sign-ons without end uses up nobody's but those from where he or she sits. */
class BeginningsTest {
  private static final int MANY = 2_000;

  private final Beginnings<String> begun = new Beginnings<>();

  @Test
  void shouldKeepWhatOthersBeganHoweverManyAStrangerBegins() {
    begun.keep("station", "station-key", null, "s", 0);
    begun.keep("phone", "phone-key", "198.51.100.7", "p", 0);
    for (int i = 0; i < MANY; i++) {
      begun.keep("flood-" + i, "key-" + i, "203.0.113.9", "f", 1);
      // Of many networks, each of which has more than the phone's.
      begun.keep("wide-" + i, "wide-" + i, "2001:db8:" + i % 100, "w", 1);
    }
    assertThat(begun.take("station", "station-key", 2)).isEqualTo("s");
    assertThat(begun.take("phone", "phone-key", 2)).isEqualTo("p");
    assertThat(begun.look("flood-0")).isEmpty();
  }

  @Test
  void shouldCountOnceInTheBrowserThatBeganAndForTenMinutes() {
    begun.keep("a", "key", "198.51.100.7", "p", 0);
    assertThat(begun.take("a", "another", 1)).isNull();
    assertThat(begun.take("a", "key", 1)).isEqualTo("p");
    assertThat(begun.take("a", "key", 1)).isNull();
    begun.keep("b", "key", null, "p", 0);
    assertThat(begun.take("b", "key", Beginnings.LONGEST_MS)).isNull();
  }

  @Test
  void shouldLetNobodyBeginMoreThanSoManyAMinute() {
    for (int i = 0; i < Beginnings.A_MINUTE_MAX; i++) {
      assertThat(begun.mayBegin("203.0.113.9", "key-" + i, 0)).isTrue();
    }
    assertThat(begun.mayBegin("203.0.113.9", "new", 59_999)).isFalse();
    assertThat(begun.mayBegin("198.51.100.7", "new", 59_999)).isTrue();
    assertThat(begun.mayBegin("203.0.113.9", "new", 60_000)).isTrue();
  }

  @Test
  void shouldHoldOneBrowserWithoutHoldingOthersOfItsNetwork() {
    for (int i = 0; i < Beginnings.OF_KEY_A_MINUTE_MAX; i++) {
      assertThat(begun.mayBegin("203.0.113.9", "busy", i)).isTrue();
    }
    assertThat(begun.mayBegin("203.0.113.9", "busy", 59_999)).isFalse();
    assertThat(begun.mayBegin("203.0.113.9", "other", 59_999)).isTrue();
    assertThat(begun.mayBegin("203.0.113.9", "busy", 60_000)).isTrue();
  }

  @Test
  void shouldLetANewNetworkBeginWhileManyOthersDo() {
    for (int i = 0; i < 2 * Beginnings.SOURCES_MAX; i++) {
      assertThat(begun.mayBegin("2001:db8:" + i, "key-" + i, 1)).isTrue();
    }
    assertThat(begun.mayBegin("198.51.100.7", "phone", 2)).isTrue();
  }

  @Test
  void shouldCountOneCustomersAddressesAsOne() {
    assertThat(Sources.of("2001:db8:1:2::7")).isEqualTo(Sources.of("2001:db8:1:2:ffff::9%eth0"));
    assertThat(Sources.of("2001:db8:1:2::7")).isNotEqualTo(Sources.of("2001:db8:1:3::7"));
    assertThat(Sources.of("198.51.100.7")).isEqualTo("198.51.100.7");
    assertThat(Sources.of("::ffff:198.51.100.7")).isEqualTo("198.51.100.7");
  }
}
