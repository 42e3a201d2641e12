package sunup.push;

import java.net.InetAddress;
import java.net.UnknownHostException;
import java.util.function.Predicate;

/**
 * How this machine reaches push services.
 *
 * @param may whether a message may go to an address
 * @param anyPort true if a service may listen elsewhere than browsers' do
 * @param roots file of the roots that services must have, PEM; null for those of the Java program
 * @param afterMs real time that an ask has to be answered before a phone is told
 */
public record PushWay(Predicate<InetAddress> may, boolean anyPort, String roots, long afterMs) {
  /** Whoever looks at the page answers within it, and no message goes. */
  static final long AFTER_MS = 10_000;

  /** To the browser makers' servers, and to nothing that only this site reaches. */
  public static final PushWay PUBLIC = new PushWay(PushWay::isPublic, false, null, AFTER_MS);

  /**
   * The address of a host, if a message may go there. It is connected to this address and to no
   * other, so that a name which leads elsewhere a moment later (DNS rebinding) leads nowhere.
   *
   * @throws UnknownHostException also if one of its addresses is not allowed
   */
  InetAddress address(String host) throws UnknownHostException {
    InetAddress[] all = InetAddress.getAllByName(host);
    for (InetAddress one : all) {
      if (!may.test(one)) {
        throw new UnknownHostException(host + " leads to " + one.getHostAddress() + ", not public");
      }
    }
    return all[0];
  }

  /** False for every address that is this machine's, a private network's or nobody's. */
  static boolean isPublic(InetAddress at) {
    if (at.isAnyLocalAddress()
        || at.isLoopbackAddress()
        || at.isLinkLocalAddress()
        || at.isSiteLocalAddress()
        || at.isMulticastAddress()) {
      return false;
    }
    byte[] b = at.getAddress();
    int first = b[0] & 0xff;
    int second = b[1] & 0xff;
    return b.length == 4 ? isPublic4(first, second, b[2] & 0xff) : isPublic6(first, second, b);
  }

  private static boolean isPublic4(int first, int second, int third) {
    boolean carriers = first == 100 && (second & 0xc0) == 64;
    boolean special = first == 192 && second == 0 && (third == 0 || third == 2);
    boolean relays = first == 192 && second == 88 && third == 99;
    boolean bench = first == 198 && (second & 0xfe) == 18;
    boolean examples =
        (first == 198 && second == 51 && third == 100)
            || (first == 203 && second == 0 && third == 113);
    return first != 0 && first < 224 && !carriers && !special && !relays && !bench && !examples;
  }

  /** Global unicast only, without what carries an address of version 4 in it. */
  private static boolean isPublic6(int first, int second, byte[] b) {
    boolean global = (first & 0xe0) == 0x20;
    boolean sixToFour = first == 0x20 && second == 0x02;
    boolean special = first == 0x20 && second == 0x01 && (b[2] & 0xfe) == 0;
    boolean examples =
        first == 0x20 && second == 0x01 && (b[2] & 0xff) == 0x0d && b[3] == (byte) 0xb8;
    return global && !sixToFour && !special && !examples;
  }
}
