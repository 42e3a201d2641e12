package sunup.journal;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.nio.charset.StandardCharsets;
import java.util.HashMap;
import java.util.Map;
import org.junit.jupiter.api.Test;
import sunup.board.Actor;
import sunup.board.CommandId;
import sunup.board.Event;
import sunup.board.PersonId;
import sunup.board.Private;
import sunup.board.Recorded;
import sunup.board.Role;
import sunup.board.RoomId;

class EventCodecTest {
  private static final Recorded NOTED =
      new Recorded(
          new Event.Noted(new RoomId("3"), Private.of("tube 4.5")),
          new Actor(Role.DESK, new PersonId("k1"), "desk-1"),
          new CommandId("c1"),
          1_000,
          2_000);

  /** An event as the first edition wrote it: it is read for ever. */
  private static final String FIRST_EDITION =
      "{\"v\":1,\"event\":{\"type\":\"noted\",\"room\":\"3\",\"text\":{"
          + "\"ref\":\"00010203040506070809101112131415\","
          + "\"mac\":\"3pjNw3u7rwmRJCXOmsh_CS7-3mYpfDeU5o4F9U4JRwM\"}},"
          + "\"actor\":{\"role\":\"desk\",\"person\":\"k1\",\"screen\":\"desk-1\"},"
          + "\"command\":\"c1\",\"happenedAt\":1000,\"recordedAt\":2000}";

  private int drawn;

  private final EventCodec codec =
      new EventCodec(
          count -> {
            byte[] bytes = new byte[count];
            bytes[0] = (byte) ++drawn;
            return bytes;
          });

  private static Bytes bytes(String text) {
    return Bytes.of(text.getBytes(StandardCharsets.UTF_8));
  }

  private static String text(Bytes bytes) {
    return new String(bytes.raw(), StandardCharsets.UTF_8);
  }

  private static Map<String, PrivateValue> byRef(EventCodec.Encoded encoded) {
    Map<String, PrivateValue> map = new HashMap<>();
    encoded.privates().forEach(value -> map.put(value.ref(), value));
    return map;
  }

  @Test
  void shouldGiveBackWhatWasWritten() throws Exception {
    EventCodec.Encoded encoded = codec.encode(NOTED, 9_000);
    assertThat(codec.decode(encoded.bytes(), byRef(encoded))).isEqualTo(NOTED);
    assertThat(encoded.privates()).singleElement().extracting("eraseAfter").isEqualTo(9_000L);
  }

  @Test
  void shouldKeepNoPrivateTextInTheEvent() throws Exception {
    EventCodec.Encoded encoded = codec.encode(NOTED, 9_000);
    assertThat(text(encoded.bytes())).doesNotContain("tube").contains("\"ref\"", "\"mac\"");
    Recorded erased = codec.decode(encoded.bytes(), Map.of());
    assertThat(((Event.Noted) erased.event()).text()).isEqualTo(Private.ERASED);
  }

  @Test
  void shouldSealTheSameTextDifferentlyEachTime() {
    String one = text(codec.encode(NOTED, 9_000).bytes());
    String other = text(codec.encode(NOTED, 9_000).bytes());
    assertThat(one).isNotEqualTo(other);
  }

  @Test
  void shouldNotTakeAPrivateValueThatWasExchanged() {
    EventCodec.Encoded encoded = codec.encode(NOTED, 9_000);
    PrivateValue value = encoded.privates().get(0);
    PrivateValue other = new PrivateValue(value.ref(), value.key(), bytes("tube 5.5"), 9_000);
    assertThatThrownBy(() -> codec.decode(encoded.bytes(), Map.of(value.ref(), other)))
        .isInstanceOf(UnreadableEvent.class)
        .hasMessageContaining("not the one that was sealed");
  }

  @Test
  void shouldReadTheFirstEdition() throws Exception {
    String ref = "00010203040506070809101112131415";
    PrivateValue value = new PrivateValue(ref, bytes("golden key"), bytes("tube 4.5"), 0);
    assertThat(codec.decode(bytes(FIRST_EDITION), Map.of(ref, value))).isEqualTo(NOTED);
  }

  @Test
  void shouldRefuseAnotherFormatAndAnUnknownTypeWithWordsThatSayWhatToDo() {
    for (String text :
        new String[] {
          FIRST_EDITION.replace("\"v\":1", "\"v\":2"),
          FIRST_EDITION.replace("noted", "from-later"),
          FIRST_EDITION.replace("\"room\"", "\"ward\"")
        }) {
      assertThatThrownBy(() -> codec.decode(bytes(text), Map.of()))
          .isInstanceOf(UnreadableEvent.class)
          .hasMessageContaining("or a newer one");
    }
  }

  @Test
  void shouldSayThatDamagedBytesCantBeRead() {
    assertThatThrownBy(() -> codec.decode(bytes("{\"v\":1,"), Map.of()))
        .isInstanceOf(UnreadableEvent.class)
        .hasMessageContaining("can't read it");
  }
}
