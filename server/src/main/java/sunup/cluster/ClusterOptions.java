package sunup.cluster;

import java.net.InetAddress;
import java.net.UnknownHostException;
import java.nio.file.Path;
import java.util.List;

/**
 * How this node is one of several.
 *
 * @param name the cluster's; nodes of another one are left alone
 * @param host the address that members and bus listen on, a number
 * @param port the members' port; the bus has the next one
 * @param nodes all nodes' addresses, {@code host:port}, this one's too
 * @param publicLink true to listen on an address that is neither this machine's nor private
 * @param keys PKCS12 file with this node's key and the authority that the others' are signed by:
 *     the bus then speaks TLS and asks for the other side's certificate; null for none
 * @param keysPasswordFile its password, in the first line
 */
public record ClusterOptions(
    String name,
    String host,
    int port,
    List<String> nodes,
    boolean publicLink,
    Path keys,
    Path keysPasswordFile) {
  public ClusterOptions {
    nodes = List.copyOf(nodes);
  }

  /**
   * @throws IllegalArgumentException that says what to do
   */
  void check() {
    InetAddress address = address(host);
    boolean closed =
        address.isLoopbackAddress()
            || address.isSiteLocalAddress()
            || address.isLinkLocalAddress()
            || (address.getAddress().length == 16 && (address.getAddress()[0] & 0xfe) == 0xfc);
    if (!closed && !publicLink) {
      throw new IllegalArgumentException(
          host
              + " can be reached from anywhere, and what nodes tell each other is not encrypted"
              + " by the grid. Put the nodes on a private link, or say --public-link if it is one"
              + " all the same.");
    }
    if (port < 1 || port > 65_534) {
      throw new IllegalArgumentException("A node's port is 1 to 65534; the bus has the next one.");
    }
    if (!nodes.contains(host + ":" + port)) {
      throw new IllegalArgumentException(
          "The list of nodes " + nodes + " does not hold this one, " + host + ":" + port + ".");
    }
    if (keys != null && keysPasswordFile == null) {
      throw new IllegalArgumentException("The keys' file needs a file with its password.");
    }
  }

  private static InetAddress address(String host) {
    if (!host.contains(":") && !host.matches("[0-9.]+")) {
      throw new IllegalArgumentException(
          "A node's address is a number such as 10.0.0.3, not a name: " + host);
    }
    try {
      return InetAddress.getByName(host);
    } catch (UnknownHostException e) {
      throw new IllegalArgumentException(host + " is no address.", e);
    }
  }
}
