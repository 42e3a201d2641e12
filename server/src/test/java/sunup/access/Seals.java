package sunup.access;

import java.util.Arrays;
import sunup.suites.Seal;

/** Seals of boards with a key of the test's. */
public final class Seals {
  private Seals() {}

  /** One whose key is made of this byte. */
  public static Seal with(byte key) {
    byte[] all = new byte[32];
    Arrays.fill(all, key);
    return new CommandSeal(all);
  }
}
