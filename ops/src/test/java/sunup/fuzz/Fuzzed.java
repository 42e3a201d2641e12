package sunup.fuzz;

import java.util.concurrent.atomic.AtomicLong;

/** What the fuzzer calls, in a process of its own: one decoder, named by a property. */
public final class Fuzzed {
  /** The decoder's name. */
  static final String DECODER = "sunup.fuzz.decoder";

  /** How many inputs the decoder took, on the process's last lines. */
  static final String TOOK = "sunup.fuzz.took: ";

  private static final Decoder ON = Decoders.named(System.getProperty(DECODER, ""));
  private static final AtomicLong TAKEN = new AtomicLong();

  private Fuzzed() {}

  /** Before the first input, which has its time for itself. */
  public static void fuzzerInitialize() throws Exception {
    for (byte[] seed : ON.seeds()) {
      ON.holds().of(seed);
    }
  }

  /** One input. */
  public static void fuzzerTestOneInput(byte[] bytes) throws Exception {
    if (ON.holds().of(bytes)) {
      TAKEN.incrementAndGet();
    }
  }

  /** The end. */
  public static void fuzzerTearDown() {
    System.err.println(TOOK + TAKEN);
  }
}
