package sunup.access;

import java.nio.file.Path;
import sunup.push.PushWay;

/**
 * How screens are paired and people sign on.
 *
 * @param pepper file with what goes into every PIN's hash; null for one that is made in the data
 *     folder
 * @param pepperLost whether PINs that were made with another pepper are given up
 * @param provider file that names the site's identity provider; null if people sign on by PIN only
 * @param push how phones' push services are reached, where a site's file asks for it
 */
public record PairingOptions(Path pepper, boolean pepperLost, Path provider, PushWay push) {
  public PairingOptions(Path pepper, boolean pepperLost, Path provider) {
    this(pepper, pepperLost, provider, PushWay.PUBLIC);
  }

  public PairingOptions(Path pepper) {
    this(pepper, false, null);
  }
}
