package sunup.cluster;

import com.hazelcast.cluster.Member;
import com.hazelcast.config.Config;
import com.hazelcast.config.JavaSerializationFilterConfig;
import com.hazelcast.config.JoinConfig;
import com.hazelcast.config.NetworkConfig;
import com.hazelcast.core.Hazelcast;
import com.hazelcast.core.HazelcastInstance;
import com.hazelcast.core.HazelcastInstanceNotActiveException;
import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import sunup.suites.Clock;

/**
 * Who is there and who should own what, by Hazelcast: its list of members and its table of
 * partitions. Nothing is stored in it and no message goes through it.
 */
final class HazelcastMembers implements Members, AutoCloseable {
  private static final String ID = "sunup.node";
  private static final String BUS = "sunup.bus";
  private static final String READS = "sunup.reads";

  private final Node self;
  private final Clock clock;
  private final KnownNodes known = new KnownNodes();
  private final HazelcastInstance grid;

  /** Joins the cluster; takes a second or more. */
  HazelcastMembers(ClusterOptions options, Node self, Clock clock) {
    this.self = self;
    this.clock = clock;
    this.grid = Hazelcast.newHazelcastInstance(config(options, self));
  }

  private static Config config(ClusterOptions options, Node self) {
    Config config = new Config();
    config.setClusterName(options.name());
    config.setInstanceName("sunup-" + self.id());
    config.setProperty("hazelcast.logging.type", "slf4j");
    config.setProperty("hazelcast.phone.home.enabled", "false");
    config.setProperty("hazelcast.shutdownhook.enabled", "false");
    config.setProperty("hazelcast.socket.bind.any", "false");
    config.setProperty("hazelcast.wait.seconds.before.join", "1");
    config.setProperty("hazelcast.heartbeat.interval.seconds", "1");
    config.setProperty("hazelcast.max.no.heartbeat.seconds", "5");
    config.setProperty("hazelcast.merge.first.run.delay.seconds", "5");
    config.setProperty("hazelcast.merge.next.run.delay.seconds", "5");
    config.setProperty("hazelcast.partial.member.disconnection.resolution.heartbeat.count", "3");
    config.setProperty("hazelcast.graceful.shutdown.max.wait", "5");
    config.setProperty("hazelcast.operation.thread.count", "2");
    config.setProperty("hazelcast.operation.generic.thread.count", "2");
    config.setProperty("hazelcast.event.thread.count", "1");
    config.setProperty("hazelcast.io.thread.count", "1");
    config.getJetConfig().setEnabled(false);
    config.getMetricsConfig().setEnabled(false);
    config.getManagementCenterConfig().setConsoleEnabled(false).setScriptingEnabled(false);
    config.getManagementCenterConfig().setDataAccessEnabled(false);
    // Only the grid's own and the plain classes of Java: nothing of ours is ever sent through it.
    JavaSerializationFilterConfig filter = new JavaSerializationFilterConfig();
    filter.getWhitelist().addPrefixes("com.hazelcast.", "java.", "[");
    config.getSerializationConfig().setJavaSerializationFilterConfig(filter);
    config.getMemberAttributeConfig().setAttribute(ID, self.id());
    config.getMemberAttributeConfig().setAttribute(BUS, self.host() + " " + self.port());
    config.getMemberAttributeConfig().setAttribute(READS, String.join(" ", self.reads()));
    NetworkConfig network = config.getNetworkConfig();
    network.setPort(options.port()).setPortAutoIncrement(false).setReuseAddress(true);
    network.getInterfaces().setEnabled(true).addInterface(options.host());
    network.setPublicAddress(options.host() + ":" + options.port());
    JoinConfig join = network.getJoin();
    join.getMulticastConfig().setEnabled(false);
    join.getAutoDetectionConfig().setEnabled(false);
    join.getTcpIpConfig().setEnabled(true).setMembers(options.nodes());
    return config;
  }

  @Override
  public List<Node> nodes() {
    List<Node> named = new ArrayList<>();
    named.add(self);
    try {
      for (Member member : grid.getCluster().getMembers()) {
        Node node = node(member);
        if (node != null && !node.id().equals(self.id())) {
          named.add(node);
        }
      }
    } catch (HazelcastInstanceNotActiveException e) {
      return named; // It ends; whoever is left is this node.
    }
    return known.all(named, clock.monotonicMs());
  }

  @Override
  public String suggested(String key) {
    try {
      Member owner = grid.getPartitionService().getPartition(key).getOwner();
      return owner == null ? null : owner.getAttribute(ID);
    } catch (HazelcastInstanceNotActiveException e) {
      return null;
    }
  }

  private static Node node(Member member) {
    String id = member.getAttribute(ID);
    String bus = member.getAttribute(BUS);
    if (id == null || bus == null) {
      return null;
    }
    int blank = bus.indexOf(' ');
    String reads = member.getAttribute(READS);
    return new Node(
        id,
        bus.substring(0, blank),
        Integer.parseInt(bus.substring(blank + 1)),
        reads == null ? Set.of() : Set.of(reads.split(" ")));
  }

  @Override
  public void close() {
    // Nothing is stored in it: there is nothing to wait for.
    grid.getLifecycleService().terminate();
  }
}
