package sunup.ops;

import java.nio.file.Path;
import java.util.List;
import picocli.CommandLine.Option;
import sunup.cluster.ClusterOptions;

/** How a board is one of several nodes: options, or the environment for services. */
final class NodeOptions {
  private static final String NONE = Option.NULL_VALUE;

  @Option(
      names = "--node",
      paramLabel = "HOST:PORT",
      description =
          "One of several nodes, at this address of a private link; the next port is taken, too"
              + " (SUNUP_NODE). Goes with --nodes and --database.",
      defaultValue = "${env:SUNUP_NODE:-" + NONE + "}")
  private String node;

  @Option(
      names = "--nodes",
      paramLabel = "HOST:PORT",
      split = ",",
      description = "The addresses of all nodes, by commas, this one's too (SUNUP_NODES).",
      defaultValue = "${env:SUNUP_NODES:-" + NONE + "}")
  private List<String> nodes;

  @Option(
      names = "--cluster",
      paramLabel = "NAME",
      description = "The cluster's name (SUNUP_CLUSTER; ${DEFAULT-VALUE}).",
      defaultValue = "${env:SUNUP_CLUSTER:-sunup}")
  private String cluster;

  @Option(
      names = "--public-link",
      description = "Let nodes speak on an address that is not private. Read server/CLUSTER.md.")
  private boolean publicLink;

  @Option(
      names = "--node-keys",
      paramLabel = "FILE",
      description =
          "PKCS12 with this node's key and the authority of the others: commands and frames go"
              + " between nodes by TLS, certificates asked for on both sides (SUNUP_NODE_KEYS).",
      defaultValue = "${env:SUNUP_NODE_KEYS:-" + NONE + "}")
  private Path keys;

  @Option(
      names = "--node-keys-password-file",
      paramLabel = "FILE",
      description = "A file with its password (SUNUP_NODE_KEYS_PASSWORD_FILE).",
      defaultValue = "${env:SUNUP_NODE_KEYS_PASSWORD_FILE:-" + NONE + "}")
  private Path keysPassword;

  /** The cluster's options, or null for one node alone. */
  ClusterOptions cluster() throws Wrong {
    if (node == null) {
      if (nodes != null && !nodes.isEmpty()) {
        throw Wrong.input("--nodes goes with --node, this one's own address.");
      }
      return null;
    }
    int colon = node.lastIndexOf(':');
    if (nodes == null || colon < 1 || !node.substring(colon + 1).matches("[0-9]{1,5}")) {
      throw Wrong.input("--node is HOST:PORT, such as 10.0.0.3:7460, and goes with --nodes.");
    }
    int port = Integer.parseInt(node.substring(colon + 1));
    String host = node.substring(0, colon);
    return new ClusterOptions(cluster, host, port, nodes, publicLink, keys, keysPassword);
  }
}
