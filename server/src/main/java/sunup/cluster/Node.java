package sunup.cluster;

/**
 * A process of the cluster.
 *
 * @param id new at each start: a node that was started again is another one
 * @param host where its bus listens
 * @param port its bus's port
 */
public record Node(String id, String host, int port) {}
