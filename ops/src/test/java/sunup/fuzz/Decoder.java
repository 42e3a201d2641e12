package sunup.fuzz;

import java.nio.charset.StandardCharsets;
import java.util.List;

/**
 * A decoder of bytes that come from outside, and what must hold of any bytes whatever.
 *
 * @param name as {@code ops/fuzz NAME} calls it
 * @param seeds right inputs to begin from
 */
public record Decoder(String name, List<byte[]> seeds, Holds holds) {
  public Decoder {
    seeds = List.copyOf(seeds);
  }

  /** What must hold. */
  public interface Holds {
    /**
     * Decodes, and compares where there is something to compare with.
     *
     * @return true if the bytes were taken, false if they were refused as the decoder's own page
     *     says
     * @throws Exception whatever else comes of it, and is a mistake in the program
     */
    boolean of(byte[] bytes) throws Exception;
  }

  /** The same for what is given to the decoder as text. */
  public interface HoldsOfText {
    boolean of(String text) throws Exception;
  }

  public static Decoder ofText(String name, List<String> seeds, HoldsOfText holds) {
    return new Decoder(
        name,
        seeds.stream().map(seed -> seed.getBytes(StandardCharsets.UTF_8)).toList(),
        bytes -> holds.of(new String(bytes, StandardCharsets.UTF_8)));
  }
}
