package sunup.journal;

import com.fasterxml.jackson.annotation.JsonProperty;
import com.fasterxml.jackson.core.JsonGenerator;
import com.fasterxml.jackson.core.JsonParser;
import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.databind.DeserializationContext;
import com.fasterxml.jackson.databind.JsonDeserializer;
import com.fasterxml.jackson.databind.JsonSerializer;
import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.databind.ObjectReader;
import com.fasterxml.jackson.databind.ObjectWriter;
import com.fasterxml.jackson.databind.SerializerProvider;
import com.fasterxml.jackson.databind.exc.InvalidTypeIdException;
import com.fasterxml.jackson.databind.module.SimpleModule;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.Base64;
import java.util.HexFormat;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.function.IntFunction;
import sunup.board.Actor;
import sunup.board.CommandId;
import sunup.board.Event;
import sunup.board.Private;
import sunup.board.Recorded;
import sunup.codec.Json;

/**
 * Events to bytes and back. An event is JSON with a format version; a private value in it is {@code
 * {"ref", "mac"}} and lives apart as a {@link PrivateValue}. Thread-safe.
 */
public final class EventCodec {
  /** The format that is written. Older ones are read for ever, newer ones are refused. */
  public static final int FORMAT = 1;

  private static final int REF_BYTES = 16;
  private static final int KEY_BYTES = 32;
  private static final String SEALER = "sealer";
  private static final String KNOWN = "known";

  private static final ObjectMapper MAPPER = Json.mapper(sealedPrivates());
  private static final ObjectWriter WRITER = MAPPER.writerFor(Kept.class);
  private static final ObjectReader READER = MAPPER.readerFor(Kept.class);

  private final IntFunction<byte[]> random;
  private final Set<String> reads;

  /**
   * Reads all types of this program.
   *
   * @param random gives as many random bytes as asked for; they keep erased values from being
   *     guessed, so outside a simulation they come from a secure source
   */
  public EventCodec(IntFunction<byte[]> random) {
    this(random, EventTypes.ofProgram());
  }

  /**
   * @param types what it reads; others are refused
   */
  public EventCodec(IntFunction<byte[]> random, EventTypes types) {
    this.random = random;
    this.reads = types.reads();
  }

  /**
   * An event as written.
   *
   * @param bytes to be stored as they are
   * @param privates the values that they refer to
   */
  public record Encoded(Bytes bytes, List<PrivateValue> privates) {
    public Encoded {
      privates = List.copyOf(privates);
    }
  }

  /** The JSON of an event. The names are a format that old journals are read by. */
  record Kept(
      @JsonProperty("v") int format,
      Event event,
      Actor actor,
      CommandId command,
      long happenedAt,
      long recordedAt) {}

  /** What an event holds in place of a private value. */
  record Seal(String ref, String mac) {}

  /**
   * @param eraseAfter when its private values are due for erasing, epoch milliseconds of morning
   *     time
   */
  public Encoded encode(Recorded recorded, long eraseAfter) {
    Sealer sealer = new Sealer(eraseAfter);
    Kept kept =
        new Kept(
            FORMAT,
            recorded.event(),
            recorded.actor(),
            recorded.command(),
            recorded.happenedAt(),
            recorded.recordedAt());
    try {
      byte[] bytes = WRITER.withAttribute(SEALER, sealer).writeValueAsBytes(kept);
      return new Encoded(Bytes.of(bytes), sealer.sealed);
    } catch (JsonProcessingException e) {
      throw new IllegalStateException("an event could not be written: " + e.getMessage(), e);
    }
  }

  /**
   * @param privates what is not erased, by ref; what is missing reads {@link Private#ERASED}
   * @throws UnreadableEvent if it is of a newer format or an unknown type, or damaged
   */
  public Recorded decode(Bytes bytes, Map<String, PrivateValue> privates) throws UnreadableEvent {
    try {
      int format = Json.mapper().readTree(bytes.raw()).path("v").asInt(0);
      if (format < 1 || format > FORMAT) {
        throw new UnreadableEvent(
            "it has format "
                + format
                + " and this Sunup reads formats 1 to "
                + FORMAT
                + "; run the Sunup that wrote it, or a newer one");
      }
      Kept kept = READER.withAttribute(KNOWN, privates).readValue(bytes.raw());
      if (kept == null || kept.event() == null) {
        throw new UnreadableEvent("it is damaged: it has no event", null);
      }
      if (!reads.contains(EventTypes.of(kept.event()))) {
        throw unknown(EventTypes.of(kept.event()), null);
      }
      return new Recorded(
          kept.event(), kept.actor(), kept.command(), kept.happenedAt(), kept.recordedAt());
    } catch (InvalidTypeIdException e) {
      throw unknown(e.getTypeId(), e);
    } catch (JsonProcessingException e) {
      throw new UnreadableEvent(
          "this Sunup can't read it ("
              + e.getOriginalMessage()
              + "); run the Sunup that wrote it, or a newer one",
          e);
    } catch (IOException e) {
      throw new UnreadableEvent("it can't be read: " + e.getMessage(), e);
    }
  }

  private static UnreadableEvent unknown(String type, Exception why) {
    return new UnreadableEvent(
        "this Sunup does not know the type '"
            + type
            + "'; run the Sunup that wrote it, or a newer one",
        why);
  }

  private final class Sealer {
    final List<PrivateValue> sealed = new ArrayList<>();
    final long eraseAfter;

    Sealer(long eraseAfter) {
      this.eraseAfter = eraseAfter;
    }

    Seal seal(String text) {
      String ref = HexFormat.of().formatHex(random.apply(REF_BYTES));
      Bytes key = Bytes.of(random.apply(KEY_BYTES));
      Bytes value = Bytes.of(text.getBytes(StandardCharsets.UTF_8));
      sealed.add(new PrivateValue(ref, key, value, eraseAfter));
      return new Seal(ref, mac(key, value));
    }
  }

  private static String mac(Bytes key, Bytes value) {
    return Base64.getUrlEncoder().withoutPadding().encodeToString(Mac256.of(key, value).raw());
  }

  private static SimpleModule sealedPrivates() {
    SimpleModule module = new SimpleModule("sealed-privates");
    module.addSerializer(
        Private.class,
        new JsonSerializer<>() {
          @Override
          public void serialize(Private value, JsonGenerator out, SerializerProvider p)
              throws IOException {
            // An event never takes over a value that was erased meanwhile; if one does, it stays
            // so.
            String text = value.text() == null ? "" : value.text();
            p.defaultSerializeValue(((Sealer) p.getAttribute(SEALER)).seal(text), out);
          }
        });
    module.addDeserializer(
        Private.class,
        new JsonDeserializer<>() {
          @Override
          public Private deserialize(JsonParser in, DeserializationContext c) throws IOException {
            Seal seal = c.readValue(in, Seal.class);
            @SuppressWarnings("unchecked")
            Map<String, PrivateValue> known = (Map<String, PrivateValue>) c.getAttribute(KNOWN);
            PrivateValue value = known.get(seal.ref());
            if (value == null) {
              return Private.ERASED;
            }
            if (!mac(value.key(), value.value()).equals(seal.mac())) {
              return c.reportInputMismatch(
                  Private.class, "the private value %s is not the one that was sealed", seal.ref());
            }
            String text = new String(value.value().raw(), StandardCharsets.UTF_8);
            return text.isEmpty() ? Private.ERASED : new Private(text);
          }
        });
    return module;
  }
}
