package sunup.codec;

import com.fasterxml.jackson.annotation.JsonInclude;
import com.fasterxml.jackson.core.JsonFactory;
import com.fasterxml.jackson.core.JsonGenerator;
import com.fasterxml.jackson.core.JsonParser;
import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.core.StreamReadConstraints;
import com.fasterxml.jackson.databind.DeserializationContext;
import com.fasterxml.jackson.databind.DeserializationFeature;
import com.fasterxml.jackson.databind.JsonDeserializer;
import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.JsonSerializer;
import com.fasterxml.jackson.databind.MapperFeature;
import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.databind.SerializerProvider;
import com.fasterxml.jackson.databind.cfg.CoercionAction;
import com.fasterxml.jackson.databind.cfg.CoercionInputShape;
import com.fasterxml.jackson.databind.json.JsonMapper;
import com.fasterxml.jackson.databind.module.SimpleModule;
import com.fasterxml.jackson.databind.type.LogicalType;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.time.LocalDate;
import java.time.format.DateTimeParseException;
import sunup.board.Private;

/** JSON as it goes over the wire and into files: strict in, no nulls out. Thread-safe. */
public final class Json {
  private static final ObjectMapper MAPPER = mapper(plainPrivates());
  private static final ObjectMapper SENT = sent();

  private Json() {}

  /** A mapper with the project's settings and another way to write private values. */
  public static ObjectMapper mapper(SimpleModule privates) {
    SimpleModule dates = new SimpleModule("dates");
    dates.addSerializer(
        LocalDate.class,
        new JsonSerializer<>() {
          @Override
          public void serialize(LocalDate value, JsonGenerator out, SerializerProvider p)
              throws IOException {
            out.writeString(value.toString());
          }
        });
    dates.addDeserializer(
        LocalDate.class,
        new JsonDeserializer<>() {
          @Override
          public LocalDate deserialize(JsonParser in, DeserializationContext c) throws IOException {
            try {
              return LocalDate.parse(in.getValueAsString(""));
            } catch (DateTimeParseException e) {
              String found = Wording.found(in.currentToken(), in.getText());
              throw new Strict.Told(in, "is " + found + "; give " + Wording.DATE);
            }
          }
        });
    JsonFactory factory =
        JsonFactory.builder()
            .streamReadConstraints(StreamReadConstraints.builder().maxNestingDepth(64).build())
            .build();
    return JsonMapper.builder(factory)
        .addModule(dates)
        .addModule(privates)
        .defaultPropertyInclusion(
            JsonInclude.Value.construct(JsonInclude.Include.NON_NULL, JsonInclude.Include.NON_NULL))
        .enable(DeserializationFeature.FAIL_ON_UNKNOWN_PROPERTIES)
        .enable(DeserializationFeature.FAIL_ON_NULL_FOR_PRIMITIVES)
        .enable(DeserializationFeature.FAIL_ON_TRAILING_TOKENS)
        .build();
  }

  /**
   * What others send: numbers as numbers and texts as texts, nothing made fit, no field twice. What
   * the board itself has kept is read without this and stays readable.
   */
  private static ObjectMapper sent() {
    SimpleModule module = plainPrivates();
    Strict.addTo(module);
    JsonMapper mapper = (JsonMapper) mapper(module);
    mapper.getFactory().enable(JsonParser.Feature.STRICT_DUPLICATE_DETECTION);
    JsonMapper.Builder strict =
        mapper
            .rebuild()
            .disable(MapperFeature.ALLOW_COERCION_OF_SCALARS)
            .disable(DeserializationFeature.ACCEPT_FLOAT_AS_INT)
            .enable(DeserializationFeature.FAIL_ON_NUMBERS_FOR_ENUMS);
    strict.withCoercionConfig(
        LogicalType.Textual,
        text ->
            text.setCoercion(CoercionInputShape.Integer, CoercionAction.Fail)
                .setCoercion(CoercionInputShape.Float, CoercionAction.Fail)
                .setCoercion(CoercionInputShape.Boolean, CoercionAction.Fail));
    return strict.build();
  }

  private static SimpleModule plainPrivates() {
    SimpleModule module = new SimpleModule("plain-privates");
    module.addSerializer(
        Private.class,
        new JsonSerializer<>() {
          @Override
          public void serialize(Private value, JsonGenerator out, SerializerProvider p)
              throws IOException {
            out.writeString(value.shown());
          }
        });
    module.addDeserializer(
        Private.class,
        new JsonDeserializer<>() {
          @Override
          public Private deserialize(JsonParser in, DeserializationContext c) throws IOException {
            return Private.of(in.getValueAsString());
          }
        });
    return module;
  }

  /** The shared mapper. Do not configure it. */
  public static ObjectMapper mapper() {
    return MAPPER;
  }

  public static String write(Object value) {
    try {
      return MAPPER.writeValueAsString(value);
    } catch (JsonProcessingException e) {
      throw new UncheckedIOException(e);
    }
  }

  public static byte[] bytes(Object value) {
    try {
      return MAPPER.writeValueAsBytes(value);
    } catch (JsonProcessingException e) {
      throw new UncheckedIOException(e);
    }
  }

  /**
   * Reads what others send.
   *
   * @throws BadJson if the text is not JSON of this type, or null; the message says where and what
   */
  public static <T> T read(String text, Class<T> type) throws BadJson {
    try {
      return there(SENT.readValue(text, type));
    } catch (JsonProcessingException e) {
      String wrong = Syntax.wrongWith(text);
      throw new BadJson(wrong != null ? wrong : Wording.of(e, tree(text)));
    }
  }

  /**
   * @throws BadJson if the bytes are not JSON of this type, or null; the message says where and
   *     what
   */
  public static <T> T read(byte[] bytes, Class<T> type) throws BadJson {
    try {
      return there(SENT.readValue(bytes, type));
    } catch (IOException e) {
      String wrong = Syntax.wrongWith(bytes);
      if (wrong == null && e instanceof JsonProcessingException known) {
        wrong = Wording.of(known, tree(new String(bytes, StandardCharsets.UTF_8)));
      }
      throw new BadJson(wrong != null ? wrong : "can't be read");
    }
  }

  private static <T> T there(T read) throws BadJson {
    if (read == null) {
      throw new BadJson("is null; give an object { }");
    }
    return read;
  }

  /** For words about what was found; null if there is none. */
  private static JsonNode tree(String text) {
    try {
      return MAPPER.readTree(text);
    } catch (JsonProcessingException e) {
      return null;
    }
  }
}
