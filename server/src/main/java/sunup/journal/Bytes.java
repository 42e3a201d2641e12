package sunup.journal;

import java.util.Arrays;
import java.util.HexFormat;

/** Bytes as a value. Neither copied in nor out: whoever makes or reads one leaves them alone. */
public final class Bytes {
  private final byte[] value;

  private Bytes(byte[] value) {
    this.value = value;
  }

  public static Bytes of(byte[] value) {
    return new Bytes(value);
  }

  public byte[] raw() {
    return value;
  }

  public int length() {
    return value.length;
  }

  @Override
  public boolean equals(Object other) {
    return other instanceof Bytes b && Arrays.equals(value, b.value);
  }

  @Override
  public int hashCode() {
    return Arrays.hashCode(value);
  }

  /** In lower-case hex. */
  @Override
  public String toString() {
    return HexFormat.of().formatHex(value);
  }
}
