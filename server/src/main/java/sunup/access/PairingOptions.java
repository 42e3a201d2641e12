package sunup.access;

import java.nio.file.Path;

/**
 * How screens are paired and people sign on.
 *
 * @param pepper file with what goes into every PIN's hash; null for one that is made in the data
 *     folder
 * @param pepperLost whether PINs that were made with another pepper are given up
 * @param provider file that names the site's identity provider; null if people sign on by PIN only
 */
public record PairingOptions(Path pepper, boolean pepperLost, Path provider) {
  public PairingOptions(Path pepper) {
    this(pepper, false, null);
  }
}
