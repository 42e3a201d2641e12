package sunup.cluster;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.TimeUnit;

/**
 * A network of this machine's kernel that can be cut: places with a namespace and an address each,
 * on one bridge whose packets are dropped by rules, and on a second one that nobody ever cuts. It
 * is made inside a namespace of its own ({@link #APART}), and all of it ends with that.
 */
final class Network {
  /**
   * What a process begins with that makes networks: what it starts and makes ends with it. The
   * shell is there to reap what was orphaned: a killed database that nobody reaps can't be started
   * again.
   */
  static final List<String> APART =
      List.of(
          "unshare",
          "--net",
          "--mount",
          "--pid",
          "--fork",
          "--kill-child",
          "--mount-proc",
          "sh",
          "-c",
          "\"$@\"; exit $?",
          "sh");

  /** What must be there. */
  static final String NEEDS =
      "Real faults are tried in network namespaces: that takes root and the programs unshare,"
          + " nsenter, ip, tc, nft and haproxy (Debian: apt-get install util-linux iproute2"
          + " nftables haproxy)";

  /**
   * Where it can be had: a kernel that is set to bbr lets a line on which little goes pass one
   * packet in three seconds for a minute after it was cut some times, which hides what is to be
   * seen.
   */
  private static final String[] CONGESTION = {
    "sysctl", "-w", "net.ipv4.tcp_congestion_control=reno"
  };

  private static final long LIMIT_S = 60;
  private static final String DELAY = "90ms";
  private static final String LOSS = "10%";

  private final List<Process> holders = new ArrayList<>();
  private final boolean netem;

  /** The first thing in a namespace of one's own: its loopback. */
  static void begin() throws Exception {
    run("ip", "link", "set", "lo", "up");
    tries(CONGESTION);
  }

  /**
   * @param places how many; they are numbered from 0
   */
  Network(int places) throws Exception {
    bridge("br0", "10.77.0.1/24");
    bridge("br1", "10.78.0.1/24");
    for (int place = 0; place < places; place++) {
      Process holder = new ProcessBuilder("unshare", "--net", "sleep", "infinity").start();
      holders.add(holder);
      Path its = Path.of("/proc/" + holder.pid() + "/ns/net");
      Path ours = Path.of("/proc/self/ns/net");
      Nodes.until(() -> !same(its, ours), "a namespace");
      join(place, "v", "eth0", "br0", "10.77.0." + (10 + place));
      join(place, "c", "eth1", "br1", "10.78.0." + (10 + place));
      within(place, "ip", "link", "set", "lo", "up");
      List<String> congestion = new ArrayList<>(at(place));
      congestion.addAll(List.of(CONGESTION));
      tries(congestion.toArray(String[]::new));
    }
    run("nft", "add", "table", "bridge", "cut");
    for (String hook : List.of("forward", "input", "output")) {
      run("nft", "add chain bridge cut " + hook + " { type filter hook " + hook + " priority 0; }");
    }
    this.netem = tries("tc", "qdisc", "add", "dev", "lo", "root", "netem", "delay", "1ms");
    if (netem) {
      run("tc", "qdisc", "del", "dev", "lo", "root");
    }
  }

  private static boolean same(Path one, Path other) {
    try {
      return Files.readSymbolicLink(one).equals(Files.readSymbolicLink(other));
    } catch (IOException e) {
      return true;
    }
  }

  private static void bridge(String name, String address) throws Exception {
    run("ip", "link", "add", name, "type", "bridge");
    run("ip", "addr", "add", address, "dev", name);
    run("ip", "link", "set", name, "up");
  }

  private void join(int place, String side, String inside, String bridge, String address)
      throws Exception {
    String pid = Long.toString(holders.get(place).pid());
    run("ip", "link", "add", side + place, "type", "veth", "peer", "name", inside, "netns", pid);
    run("ip", "link", "set", side + place, "master", bridge, "up");
    within(place, "ip", "addr", "add", address + "/24", "dev", inside);
    within(place, "ip", "link", "set", inside, "up");
  }

  /** The place's address where it can be cut off. */
  static String address(int place) {
    return "10.77.0." + (10 + place);
  }

  /** The place's address for whoever stands beside it. */
  static String beside(int place) {
    return "10.78.0." + (10 + place);
  }

  /** What a command line begins with to run there. */
  List<String> at(int place) {
    return List.of("nsenter", "--target", Long.toString(holders.get(place).pid()), "--net");
  }

  private void within(int place, String... command) throws Exception {
    List<String> line = new ArrayList<>(at(place));
    line.addAll(List.of(command));
    run(line.toArray(String[]::new));
  }

  /** Drops silently whatever goes out of the place, comes in, or both. */
  void cut(int place, boolean out, boolean in) throws Exception {
    if (out) {
      rule("forward iifname v" + place + " drop");
      rule("input iifname v" + place + " drop");
    }
    if (in) {
      rule("forward oifname v" + place + " drop");
      rule("output oifname v" + place + " drop");
    }
  }

  /** Drops silently what goes from one place to the other. */
  void cut(int from, int to) throws Exception {
    rule("forward iifname v" + from + " oifname v" + to + " drop");
  }

  /** Delays what comes and goes there, and loses some of it. */
  void hamper(int place) throws Exception {
    String share = LOSS.substring(0, LOSS.length() - 1);
    rule("forward iifname v" + place + " numgen random mod 100 < " + share + " drop");
    rule("forward oifname v" + place + " numgen random mod 100 < " + share + " drop");
    if (netem) {
      run("tc", "qdisc", "add", "dev", "v" + place, "root", "netem", "delay", DELAY, "20ms");
      within(place, "tc", "qdisc", "add", "dev", "eth0", "root", "netem", "delay", DELAY, "20ms");
    } else {
      // A kernel without netem: a narrow line delays by what waits before it.
      String[] narrow = "root tbf rate 400kbit burst 3kb latency 250ms".split(" ");
      within(place, concat(new String[] {"tc", "qdisc", "add", "dev", "eth0"}, narrow));
      run(concat(new String[] {"tc", "qdisc", "add", "dev", "v" + place}, narrow));
    }
  }

  private static String[] concat(String[] one, String[] other) {
    List<String> all = new ArrayList<>(List.of(one));
    all.addAll(List.of(other));
    return all.toArray(String[]::new);
  }

  /** How {@link #hamper} delays. */
  String delayedBy() {
    return netem
        ? "netem, " + DELAY + " each way"
        : "a line of 400 kbit/s, up to 250 ms of queue (this kernel has no netem)";
  }

  /** All is whole again. */
  void heal() throws Exception {
    for (String hook : List.of("forward", "input", "output")) {
      run("nft", "flush", "chain", "bridge", "cut", hook);
    }
    for (int place = 0; place < holders.size(); place++) {
      tries("tc", "qdisc", "del", "dev", "v" + place, "root");
      List<String> line = new ArrayList<>(at(place));
      line.addAll(List.of("tc", "qdisc", "del", "dev", "eth0", "root"));
      tries(line.toArray(String[]::new));
    }
  }

  private static void rule(String rule) throws Exception {
    run("nft", "add rule bridge cut " + rule);
  }

  /** Runs a program to its end. */
  static void run(String... command) throws Exception {
    Process process = new ProcessBuilder(command).redirectErrorStream(true).start();
    String said = new String(process.getInputStream().readAllBytes(), StandardCharsets.UTF_8);
    if (!process.waitFor(LIMIT_S, TimeUnit.SECONDS) || process.exitValue() != 0) {
      throw new IOException(String.join(" ", command) + " failed: " + said.strip());
    }
  }

  private static boolean tries(String... command) throws InterruptedException {
    try {
      run(command);
      return true;
    } catch (InterruptedException e) {
      throw e;
    } catch (Exception e) {
      return false;
    }
  }
}
