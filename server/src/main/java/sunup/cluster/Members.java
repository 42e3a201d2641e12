package sunup.cluster;

import java.util.List;

/** Who is in the cluster, as far as this node knows. May be wrong for seconds. From any thread. */
public interface Members {
  /** All nodes, this one included. */
  List<Node> nodes();

  /** The id of the node that should own what has this key, or null: a suggestion. */
  String suggested(String key);
}
