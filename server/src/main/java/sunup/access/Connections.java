package sunup.access;

import java.net.InetAddress;
import java.net.URI;
import java.net.UnknownHostException;
import java.util.List;
import java.util.Locale;
import java.util.Set;

/**
 * Which connections are taken: by the server's own names, from its own pages.
 *
 * @param origins origins besides the server's own that pages may come from, for example {@code
 *     http://127.0.0.1:5173}
 * @param names host names of the server besides this machine's own, in lower case
 * @param tls true if pages come by https and by nothing else
 */
public record Connections(List<String> origins, Set<String> names, boolean tls) {
  private static final Set<String> NAMES = Set.of("localhost", "127.0.0.1", "[::1]");

  public Connections {
    origins = List.copyOf(origins);
    names = Set.copyOf(names);
  }

  /** Without TLS, by this machine's own names. */
  public Connections(List<String> origins) {
    this(origins, Set.of(), false);
  }

  /**
   * Refuses to listen where others could connect.
   *
   * @throws IllegalArgumentException that says so
   */
  public static void checkLoopback(String host) {
    if (!isLoopback(host)) {
      throw new IllegalArgumentException(
          "Without pairing and TLS Sunup takes connections from this machine only: start it on"
              + " 127.0.0.1, ::1 or localhost, not on "
              + host);
    }
  }

  /** True for an address of this machine only. Names other than localhost are not looked up. */
  public static boolean isLoopback(String host) {
    if (host == null) {
      return false;
    }
    if (host.equals("localhost")) {
      return true;
    }
    boolean literal = host.contains(":") || host.matches("[0-9.]+");
    if (!literal) {
      return false;
    }
    try {
      return InetAddress.getByName(host).isLoopbackAddress();
    } catch (UnknownHostException e) {
      return false;
    }
  }

  /**
   * True if a request named this machine, or one of the server's names, as its host. Another name
   * that was made to point here (DNS rebinding) is refused.
   */
  public boolean hostIsOurs(String hostHeader) {
    if (hostHeader == null) {
      return false;
    }
    String host = hostHeader.toLowerCase(Locale.ROOT);
    int colon = host.lastIndexOf(':');
    boolean hasPort = colon > host.lastIndexOf(']') && colon >= 0;
    String name = hasPort ? host.substring(0, colon) : host;
    return NAMES.contains(name) || names.contains(name);
  }

  /** True if the host of a request is a name of this machine that every machine has. */
  public static boolean hostIsLoopback(String hostHeader) {
    return hostHeader != null && new Connections(List.of()).hostIsOurs(hostHeader);
  }

  /**
   * True if a page of this origin may talk to the server: the server's own origin, or a listed one.
   *
   * @param origin the Origin header, or null if there is none: then it is not a browser's page, and
   *     taken only from this machine
   * @param remote the peer's address
   */
  public boolean originMayTalk(String origin, String hostHeader, String remote) {
    if (origin == null) {
      return isLoopback(remote);
    }
    if (origins.contains(origin)) {
      return true;
    }
    try {
      URI uri = URI.create(origin);
      return (tls ? "https" : "http").equals(uri.getScheme())
          && uri.getAuthority() != null
          && uri.getAuthority().equalsIgnoreCase(hostHeader);
    } catch (IllegalArgumentException e) {
      return false;
    }
  }
}
