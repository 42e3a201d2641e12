package sunup.live;

import static org.assertj.core.api.Assertions.assertThat;

import org.junit.jupiter.api.Test;
import sunup.codec.BadJson;
import sunup.codec.Json;
import sunup.wire.ClientMessage;

final class CompleteTest {
  private static ClientMessage read(String command) throws BadJson {
    return Json.read(
        "{\"m\":\"send\",\"id\":\"a\",\"touchedAt\":1,\"offset\":0,\"command\":" + command + "}",
        ClientMessage.class);
  }

  @Test
  void shouldNotLookForFieldsInAnItemThatIsWrittenAsOneWord() throws BadJson {
    assertThat(
            Complete.missing(
                read(
                    "{\"type\":\"good\",\"item\":\"case:C4/patient.arrived\","
                        + "\"evidence\":{\"kind\":\"touch\"}}")))
        .isEmpty();
    assertThat(
            Complete.missing(
                read(
                    "{\"type\":\"sweep\",\"room\":\"4\",\"section\":\"airway\","
                        + "\"except\":[\"room:4/machine.bag\"]}")))
        .isEmpty();
  }

  @Test
  void shouldNameTheFieldThatIsMissing() throws BadJson {
    assertThat(Complete.missing(read("{\"type\":\"good\",\"item\":\"room:4/machine.bag\"}")))
        .contains("command.evidence");
  }
}
