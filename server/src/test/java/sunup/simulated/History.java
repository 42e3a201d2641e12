package sunup.simulated;

import java.util.ArrayList;
import java.util.List;
import java.util.SplittableRandom;
import java.util.function.Consumer;
import sunup.board.MorningId;
import sunup.suites.Reply;
import sunup.suites.Standpoint;
import sunup.suites.Submission;

/**
 * One morning of a seed: two nodes that both want to own it, clients that send until they are
 * answered, a network that loses, doubles and reorders, nodes that pause and die. After a while all
 * faults end, and everybody must get an answer.
 */
public final class History {
  /** Commands of a history. */
  static final int CLIENTS = 40;

  private static final long FAULTS_END_MS = 15_000;
  private static final long END_MS = 60_000;
  private static final int NODES = 2;
  private static final MorningId MORNING = MorningId.parse("east/2026-11-30");

  private final long seed;
  private final boolean telling;
  private final Coverage coverage;
  private final List<String> story = new ArrayList<>();
  private final SimulatedTime time = new SimulatedTime();
  private final SimulatedTime.Loop outside = time.loop();
  private final SplittableRandom random;
  private final Faults network;
  private final Node.World world;
  private final Node[] nodes = new Node[NODES];
  private final List<Client> clients = new ArrayList<>();
  private final Oracle oracle = new Oracle();
  private int born;

  public History(long seed, Bug bug, Coverage coverage, boolean telling) {
    this.seed = seed;
    this.telling = telling;
    this.coverage = coverage;
    this.random = new SplittableRandom(seed);
    this.network = Faults.of(random.split());
    this.world =
        new Node.World(time, new Disk(bug), outside, Faults.of(random.split()), bug, coverage);
  }

  /** Runs it; answers what was wrong, nothing if all was right. */
  public List<String> run() {
    for (int at = 0; at < NODES; at++) {
      begin(at);
      plan(at);
    }
    for (int number = 1; number <= CLIENTS; number++) {
      long at = random.nextLong(FAULTS_END_MS);
      long touchedAt = SimulatedClock.START + at - random.nextLong(20_000);
      Client client = new Client(number, random.nextInt(10), touchedAt, outside, this::carry);
      clients.add(client);
      outside.after(at, client::send);
      if (random.nextInt(4) == 0) {
        outside.after(at + random.nextLong(30_000), client::sendAgain);
      }
      if (random.nextInt(12) == 0) {
        outside.after(at + random.nextLong(30_000), () -> reuse(client));
      }
    }
    time.runUntil(FAULTS_END_MS);
    network.stop();
    world.faults().stop();
    tell("all faults end");
    time.runUntil(END_MS);
    oracle.end(clients, world.disk().load(MORNING), world.disk().violations());
    return oracle.problems();
  }

  private void reuse(Client client) {
    if (client.settled()) {
      coverage.saw("id reused");
      client.sendOther();
    }
  }

  private void begin(int at) {
    String name = "node " + (char) ('A' + at) + ++born;
    tell(name + " starts");
    Consumer<Standpoint> watcher =
        standpoint -> {
          coverage.saw(standpoint.readOnly() ? "told read-only" : "told live");
          oracle.told(name, standpoint, world.disk().load(MORNING));
        };
    nodes[at] = new Node(name, world, random.split(), MORNING, watcher);
  }

  /** Draws when a node pauses and when it dies. */
  private void plan(int at) {
    for (int pauses = random.nextInt(3); pauses > 0; pauses--) {
      long pause = 100 + random.nextLong(5_000);
      outside.after(
          random.nextLong(FAULTS_END_MS),
          () -> {
            coverage.saw("paused");
            tell(nodes[at].name + " pauses for " + pause + " ms");
            nodes[at].loop.pauseUntil(time.now() + pause);
          });
    }
    for (int deaths = random.nextInt(4); deaths > 0; deaths--) {
      SimulatedJournal.Phase[] phases = SimulatedJournal.Phase.values();
      SimulatedJournal.Phase where = phases[random.nextInt(phases.length)];
      long back = 50 + random.nextLong(2_000);
      outside.after(random.nextLong(FAULTS_END_MS), () -> kill(at, where, back, 500));
    }
  }

  /** Kills a node once its journal is at this point, or after some tries wherever it is. */
  private void kill(int at, SimulatedJournal.Phase where, long back, int tries) {
    Node node = nodes[at];
    if (!node.loop.alive()) {
      return;
    }
    if (node.journal.phase() != where && tries > 0) {
      outside.after(1, () -> kill(at, where, back, tries - 1));
      return;
    }
    tell(node.name + " dies " + node.journal.phase());
    node.kill();
    outside.after(back, () -> begin(at));
  }

  /** The network: loses, doubles and delays on both ways. */
  private void carry(Submission submission, Consumer<Reply> answer) {
    int copies = network.strikes(80) ? 2 : 1;
    coverage.saw(copies == 2 ? "message doubled" : "message sent");
    for (int copy = 0; copy < copies; copy++) {
      int to = random.nextInt(NODES);
      if (network.strikes(60)) {
        coverage.saw("message lost");
        continue;
      }
      outside.after(network.delay(40, 6_000), () -> arrive(to, submission, answer));
    }
  }

  private void arrive(int to, Submission submission, Consumer<Reply> answer) {
    Node node = nodes[to];
    if (!node.loop.alive()) {
      coverage.saw("message to a dead node");
      return;
    }
    tell(submission.id() + " reaches " + node.name);
    node.owner.submit(
        submission,
        reply -> {
          tell(node.name + " answers " + submission.id() + ": " + reply);
          coverage.saw("answered " + reply.getClass().getSimpleName());
          if (network.strikes(60)) {
            coverage.saw("answer lost");
          } else {
            outside.after(network.delay(40, 6_000), () -> answer.accept(reply));
          }
        });
  }

  private void tell(String what) {
    if (telling) {
      story.add(String.format("%6d ms  %s", time.now(), what));
    }
  }

  /** What happened, if it was asked for. */
  public String story() {
    return "seed " + seed + "\n" + String.join("\n", story);
  }
}
