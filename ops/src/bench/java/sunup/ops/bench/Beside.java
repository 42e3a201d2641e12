package sunup.ops.bench;

import java.util.Arrays;
import sunup.forecast.KernelJmh;

/**
 * {@code libraries}, {@code jmh} or {@code wire} with its options: what {@code ops/bench} runs
 * beside the rest.
 */
public final class Beside {
  private Beside() {}

  /** What to run, then its arguments. */
  public static void main(String[] args) throws Exception {
    String[] rest = Arrays.copyOfRange(args, 1, args.length);
    if (args[0].equals("jmh")) {
      KernelJmh.main(rest);
    } else if (args[0].equals("wire")) {
      WireBench.main(rest);
    } else {
      LibrariesBench.main(rest);
    }
  }
}
