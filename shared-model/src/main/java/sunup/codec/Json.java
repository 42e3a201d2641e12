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
import com.fasterxml.jackson.databind.JsonMappingException;
import com.fasterxml.jackson.databind.JsonSerializer;
import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.databind.SerializerProvider;
import com.fasterxml.jackson.databind.deser.std.NumberDeserializers;
import com.fasterxml.jackson.databind.json.JsonMapper;
import com.fasterxml.jackson.databind.module.SimpleModule;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.time.LocalDate;
import sunup.board.Private;

/** JSON as it goes over the wire and into files: strict in, no nulls out. Thread-safe. */
public final class Json {
  private static final ObjectMapper MAPPER = mapper(plainPrivates());
  private static final ObjectMapper SENT = mapper(sent());

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
            return LocalDate.parse(in.getValueAsString());
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
   * What others send: with no number that is none. JSON has no such numbers, but the library takes
   * them in quotes, and what is too large as infinite. What the board itself has kept is read
   * without this and stays readable.
   */
  private static SimpleModule sent() {
    SimpleModule module = plainPrivates();
    module.addDeserializer(double.class, new Finite(double.class, 0d));
    module.addDeserializer(Double.class, new Finite(Double.class, null));
    return module;
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

  private static final class Finite extends NumberDeserializers.DoubleDeserializer {
    private static final long serialVersionUID = 1L;

    Finite(Class<Double> type, Double absent) {
      super(type, absent);
    }

    @Override
    public Double deserialize(JsonParser in, DeserializationContext c) throws IOException {
      Double read = super.deserialize(in, c);
      if (read != null && !Double.isFinite(read)) {
        throw JsonMappingException.from(in, "must be a number, and not a larger one than fits");
      }
      return read;
    }
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
   * @throws BadJson if the text is not JSON of this type; the message says where and what
   */
  public static <T> T read(String text, Class<T> type) throws BadJson {
    try {
      return SENT.readValue(text, type);
    } catch (JsonProcessingException e) {
      throw new BadJson(BadJson.explain(e));
    }
  }

  /**
   * @throws BadJson if the bytes are not JSON of this type; the message says where and what
   */
  public static <T> T read(byte[] bytes, Class<T> type) throws BadJson {
    try {
      return SENT.readValue(bytes, type);
    } catch (JsonProcessingException e) {
      throw new BadJson(BadJson.explain(e));
    } catch (IOException e) {
      throw new BadJson(e.getMessage());
    }
  }
}
