package sunup.codec;

import com.fasterxml.jackson.core.JsonParser;
import com.fasterxml.jackson.core.JsonToken;
import com.fasterxml.jackson.databind.DeserializationContext;
import com.fasterxml.jackson.databind.JsonMappingException;
import com.fasterxml.jackson.databind.deser.std.StdScalarDeserializer;
import com.fasterxml.jackson.databind.module.SimpleModule;
import com.fasterxml.jackson.databind.util.AccessPattern;
import java.io.IOException;

/**
 * How numbers are read that others send: as what they are. The library would cut 1.5 to a whole
 * number, take numbers in quotes, among them some that are none, and take what is too large as
 * infinite.
 */
final class Strict {
  /** Up to here a double tells all whole numbers apart. */
  private static final double WHOLE_MOST = 1L << 53;

  private Strict() {}

  /** A refusal in our own words, which need no others. */
  static final class Told extends JsonMappingException {
    private static final long serialVersionUID = 1L;

    Told(JsonParser in, String message) {
      super(in, message);
    }
  }

  static void addTo(SimpleModule module) {
    module.addDeserializer(long.class, new Whole<>(long.class, Long.class));
    module.addDeserializer(Long.class, new Whole<>(Long.class, Long.class));
    module.addDeserializer(int.class, new Whole<>(int.class, Integer.class));
    module.addDeserializer(Integer.class, new Whole<>(Integer.class, Integer.class));
    module.addDeserializer(double.class, new Finite(double.class));
    module.addDeserializer(Double.class, new Finite(Double.class));
  }

  /** A number, and of a primitive one that is there. */
  private abstract static class Numbers<T> extends StdScalarDeserializer<T> {
    private static final long serialVersionUID = 1L;

    Numbers(Class<T> type) {
      super(type);
    }

    abstract String wanted();

    @Override
    public AccessPattern getNullAccessPattern() {
      return _valueClass.isPrimitive() ? AccessPattern.DYNAMIC : AccessPattern.ALWAYS_NULL;
    }

    @Override
    public T getNullValue(DeserializationContext context) throws JsonMappingException {
      if (_valueClass.isPrimitive()) {
        boolean there = context.getParser().hasToken(JsonToken.VALUE_NULL);
        throw new Told(
            context.getParser(), (there ? "is null" : "is missing") + "; give " + wanted());
      }
      return null;
    }

    Told not(JsonParser in, String found) {
      return new Told(in, "is " + found + "; give " + wanted());
    }

    Told not(JsonParser in) throws IOException {
      return not(in, Wording.found(in.currentToken(), in.getText()));
    }
  }

  /** Also one that is written with a point or an exponent, as some languages do: 600000.0. */
  private static final class Whole<T extends Number> extends Numbers<T> {
    private static final long serialVersionUID = 1L;

    private final boolean small;

    @SuppressWarnings("unchecked")
    Whole(Class<?> type, Class<T> boxed) {
      super((Class<T>) type);
      small = boxed == Integer.class;
    }

    @Override
    String wanted() {
      return "a whole number";
    }

    @Override
    public T deserialize(JsonParser in, DeserializationContext context) throws IOException {
      long value;
      if (in.hasToken(JsonToken.VALUE_NUMBER_FLOAT)) {
        double real = in.getDoubleValue();
        if (real != Math.rint(real) || Math.abs(real) > WHOLE_MOST) {
          throw not(in);
        }
        value = (long) real;
      } else if (in.hasToken(JsonToken.VALUE_NUMBER_INT)) {
        if (in.getNumberType() == JsonParser.NumberType.BIG_INTEGER) {
          throw tooLarge(in);
        }
        value = in.getLongValue();
      } else {
        throw not(in);
      }
      if (small && value != (int) value) {
        throw tooLarge(in);
      }
      @SuppressWarnings("unchecked")
      T boxed = (T) (small ? (Number) Integer.valueOf((int) value) : (Number) value);
      return boxed;
    }

    private Told tooLarge(JsonParser in) throws IOException {
      return new Told(
          in,
          "is "
              + Wording.found(in.currentToken(), in.getText())
              + "; give a whole number, at most "
              + (small ? Integer.MAX_VALUE : Long.MAX_VALUE));
    }
  }

  /** Not infinite and not none. */
  private static final class Finite extends Numbers<Double> {
    private static final long serialVersionUID = 1L;

    Finite(Class<Double> type) {
      super(type);
    }

    @Override
    String wanted() {
      return "a number";
    }

    @Override
    public Double deserialize(JsonParser in, DeserializationContext context) throws IOException {
      if (!in.currentToken().isNumeric()) {
        throw not(in);
      }
      double read = in.getDoubleValue();
      if (!Double.isFinite(read)) {
        throw new Told(in, "must be a number, and not a larger one than fits");
      }
      return read;
    }
  }
}
