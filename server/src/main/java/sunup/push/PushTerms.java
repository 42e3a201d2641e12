package sunup.push;

import java.net.URI;
import java.net.URISyntaxException;
import java.util.List;
import java.util.Locale;

/**
 * On which terms a site lets phones be told through the browser makers' servers.
 *
 * @param contact whom they write to when something is wrong: {@code mailto:} or {@code https:}
 * @param hosts of push services that may be sent to, each with what stands below it; empty means
 *     any that everybody can reach
 */
public record PushTerms(String contact, List<String> hosts) {
  /** Letters of an endpoint; those of browsers have some hundred. */
  static final int ENDPOINT_MAX = 2_048;

  private static final int HTTPS_PORT = 443;

  public PushTerms {
    hosts = hosts.stream().map(host -> host.toLowerCase(Locale.ROOT)).toList();
  }

  /**
   * Looks at an address that a page named. Where its name leads to is looked at before each
   * message.
   *
   * @throws IllegalArgumentException that says why it is not taken
   */
  public URI endpoint(String text, PushWay way) {
    URI at;
    try {
      at = new URI(text);
    } catch (URISyntaxException e) {
      throw new IllegalArgumentException("The browser named no address.", e);
    }
    String host = at.getHost() == null ? "" : at.getHost().toLowerCase(Locale.ROOT);
    boolean port = at.getPort() == -1 || at.getPort() == HTTPS_PORT || way.anyPort();
    boolean whole = text.length() <= ENDPOINT_MAX && at.getFragment() == null;
    if (!"https".equals(at.getScheme()) || at.getRawUserInfo() != null || !port || !whole) {
      throw new IllegalArgumentException("The browser's push service is not at an https address.");
    }
    // A name, not an address by numbers: those are of machines that somebody chose.
    boolean named = host.matches("[a-z0-9.-]*[a-z][a-z0-9-]*");
    boolean listed =
        hosts.isEmpty()
            || hosts.stream().anyMatch(one -> host.equals(one) || host.endsWith("." + one));
    if (!named || !listed) {
      throw new IllegalArgumentException(
          "This browser's push service is not on this site's list. The site's file names them.");
    }
    return at;
  }
}
