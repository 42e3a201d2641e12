package sunup.access;

import java.net.InetAddress;
import java.net.UnknownHostException;
import java.util.HexFormat;

/** Where strangers come from, for limits that one of them shall not use up for all. */
final class Sources {
  /**
   * The part of an IPv6 address that a provider gives one customer: the rest is theirs to choose.
   */
  private static final int NETWORK_BYTES = 8;

  private static final int V6_BYTES = 16;

  private Sources() {}

  /** An IPv4 address as it is; of an IPv6 address its /64 network; of what is neither itself. */
  static String of(String address) {
    if (address.indexOf(':') < 0) {
      return address;
    }
    try {
      int zone = address.indexOf('%');
      // A literal with a colon is never looked up by name.
      byte[] bytes =
          InetAddress.getByName(zone < 0 ? address : address.substring(0, zone)).getAddress();
      return bytes.length == V6_BYTES
          ? HexFormat.of().formatHex(bytes, 0, NETWORK_BYTES) + "/64"
          : InetAddress.getByAddress(bytes).getHostAddress();
    } catch (UnknownHostException e) {
      return address;
    }
  }
}
