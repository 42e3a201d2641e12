package sunup.http.protocol;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.io.IOException;
import java.io.InputStream;
import java.lang.reflect.RecordComponent;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Set;
import java.util.TreeSet;
import org.junit.jupiter.api.Test;
import sunup.codec.Json;
import sunup.forecast.AsRun;
import sunup.forecast.Forecast;
import sunup.forecast.ForecastInput;
import sunup.http.ApiTypes;
import sunup.intake.Preview;
import sunup.live.Limits;
import sunup.live.Pace;
import sunup.wire.ClientMessage;
import sunup.wire.ServerMessage;

/**
 * The documents say what the code says. After a change of the wire records run this test with
 * {@code -Dsunup.protocol.write=true} and look at what changed.
 */
class ProtocolDocumentsTest {
  private static final Path RESOURCES = Path.of("src/main/resources/protocol");
  private static final Path PAGE = Path.of("PROTOCOL.md");

  @Test
  void shouldDescribeTheLiveMessagesAsTheRecordsAre() throws IOException {
    ObjectNode document = frame("asyncapi.json");
    Schemas schemas = new Schemas();
    ObjectNode components = document.putObject("components");
    ObjectNode messages = components.putObject("messages");
    ObjectNode channel = (ObjectNode) document.path("channels").path("live");
    ObjectNode carried = channel.putObject("messages");
    send(document, "receive", ClientMessage.class, schemas, messages, carried);
    send(document, "send", ServerMessage.class, schemas, messages, carried);
    components.set("schemas", schemas.all());
    compare("asyncapi.json", document);
  }

  private static void send(
      ObjectNode document,
      String action,
      Class<?> type,
      Schemas schemas,
      ObjectNode messages,
      ObjectNode carried) {
    ObjectNode operation = ((ObjectNode) document.get("operations")).putObject(action);
    operation.put("action", action).putObject("channel").put("$ref", "#/channels/live");
    ArrayNode list = operation.putArray("messages");
    schemas.of(type);
    Schemas.kinds(type)
        .forEach(
            (name, kind) -> {
              ObjectNode message = messages.putObject(name).put("name", name);
              message.put("contentType", "application/json");
              message.set("payload", schemas.of(kind));
              carried.putObject(name).put("$ref", "#/components/messages/" + name);
              list.addObject().put("$ref", "#/channels/live/messages/" + name);
            });
  }

  @Test
  void shouldDescribeTheApiAsTheRecordsAre() throws IOException {
    ObjectNode document = frame("openapi.json");
    Schemas schemas = new Schemas();
    schemas.of(ForecastInput.class);
    schemas.of(Forecast.class);
    schemas.of(AsRun.class);
    schemas.of(Preview.class);
    ApiTypes.all().forEach(schemas::of);
    document.putObject("components").set("schemas", schemas.all());
    compare("openapi.json", document);
  }

  @Test
  void shouldNameOnlySchemasThatExist() throws IOException {
    for (String name : new String[] {"asyncapi.json", "openapi.json"}) {
      JsonNode document = Json.mapper().readTree(Files.readString(RESOURCES.resolve(name)));
      Set<String> references = new TreeSet<>();
      references(document, references);
      assertThat(references).isNotEmpty();
      for (String reference : references) {
        JsonNode found = document.at(reference.substring(1));
        assertThat(found.isMissingNode()).as(name + " " + reference).isFalse();
      }
    }
  }

  @Test
  void shouldListEachLimitWithItsValueOnThePage() throws IOException {
    String page = Files.readString(PAGE);
    for (Record limits : new Record[] {Limits.DEFAULT, Pace.DEFAULT}) {
      for (RecordComponent limit : limits.getClass().getRecordComponents()) {
        String row = "| `" + limit.getName() + "` | " + value(limit, limits) + " |";
        assertThat(page).contains(row);
      }
    }
  }

  @Test
  void shouldNameEachMessageOnThePage() throws IOException {
    String page = Files.readString(PAGE);
    for (Class<?> type : new Class<?>[] {ClientMessage.class, ServerMessage.class}) {
      for (String name : Schemas.kinds(type).keySet()) {
        assertThat(page).contains("`" + name + "`");
      }
    }
  }

  private static Object value(RecordComponent component, Record record) {
    try {
      return component.getAccessor().invoke(record);
    } catch (ReflectiveOperationException e) {
      throw new IllegalStateException(e);
    }
  }

  private static void references(JsonNode node, Set<String> into) {
    if (node.has("$ref")) {
      into.add(node.get("$ref").asText());
    }
    node.forEach(child -> references(child, into));
  }

  private static ObjectNode frame(String name) throws IOException {
    try (InputStream in =
        ProtocolDocumentsTest.class.getResourceAsStream("/protocol/frame-" + name)) {
      return (ObjectNode) Json.mapper().readTree(in);
    }
  }

  private static void compare(String name, ObjectNode made) throws IOException {
    String text = made.toPrettyString() + "\n";
    Path file = RESOURCES.resolve(name);
    if (Boolean.getBoolean("sunup.protocol.write")) {
      Files.write(file, text.getBytes(StandardCharsets.UTF_8));
    }
    assertThat(Files.readString(file)).isEqualTo(text);
  }
}
