package sunup.simulated;

import java.util.ArrayList;
import java.util.List;
import java.util.function.Consumer;
import sunup.board.MorningId;
import sunup.live.PageScreen;
import sunup.suites.Reply;
import sunup.suites.Standpoint;
import sunup.suites.Submission;
import sunup.wire.Audience;

/**
 * One morning of a script on three nodes: clients that send until they are answered, screens that
 * come back, faults of network, disk, clock and process. Then all faults end, and within a bound
 * every node must take commands again and every screen be live.
 */
final class ClusterHistory {
  /** After the last fault all must be well within this. */
  static final long BACK_MS = 15_000;

  static final MorningId MORNING = MorningId.parse("east/2026-11-30");

  private static final long PROBE_MS = 500;
  private static final long SETTLE_MS = 2_000;
  private static final int PROBES_FROM = 1_000;
  private static final int KILL_TRIES = 800;
  private static final long WAY_MS = 30;

  private static final List<SimulatedJournal.Phase> PHASES =
      List.of(SimulatedJournal.Phase.values());

  /** Sent so often without an answer, a client goes to the next node. */
  private static final int TRIES = 2;

  private final Script script;
  private final Coverage coverage;
  private final boolean telling;
  private final List<String> story = new ArrayList<>();
  private final World world;
  private final SimulatedTime time;
  private final SimulatedTime.Loop outside;
  private final Machine[] nodes = new Machine[Script.NODES];
  private final long[] backAt = new long[Script.NODES];
  private final List<Client> clients = new ArrayList<>();
  private final List<PageScreen> screens = new ArrayList<>();

  /** By screen, which node it is at. */
  private final int[] servedBy = new int[Script.NODES + 1];

  private final Oracle oracle = new Oracle();
  private final LiveJudge judge;
  private int born;
  private int probes = PROBES_FROM;
  private long messages;

  ClusterHistory(Script script, Bug bug, Coverage coverage, boolean telling) {
    this.script = script;
    this.coverage = coverage;
    this.telling = telling;
    this.world = new World(script, bug, coverage, this::struck);
    this.time = world.time;
    this.outside = world.outside;
    this.judge = new LiveJudge(world, MORNING, oracle, this::tell);
  }

  /** Runs it; answers what was wrong, nothing if all was right. */
  List<String> run() {
    for (int at = 0; at < nodes.length; at++) {
      int node = at;
      outside.after(150L * at, () -> begin(node));
    }
    for (Fault fault : script.faults()) {
      outside.after(fault.at(), () -> begins(resolved(fault)));
    }
    for (Script.Touch touch : script.touches()) {
      plan(touch);
    }
    for (int at = 0; at <= Script.NODES; at++) {
      show(at);
    }
    time.runUntil(Script.FAULTS_END_MS);
    tell("all faults are over");
    for (int at = 0; at < nodes.length; at++) {
      probe(at);
    }
    boolean well = false;
    while (time.now() < Script.FAULTS_END_MS + BACK_MS && !well) {
      time.runUntil(time.now() + PROBE_MS);
      if (well()) {
        // And stays so, whatever is late on the lines.
        time.runUntil(time.now() + SETTLE_MS);
        well = well();
      }
    }
    end();
    return oracle.problems();
  }

  private boolean well() {
    for (long at : backAt) {
      if (at == 0) {
        return false;
      }
    }
    return clients.stream().allMatch(Client::settled)
        && screens.stream().allMatch(PageScreen::live);
  }

  private void end() {
    for (int at = 0; at < nodes.length; at++) {
      if (backAt[at] == 0) {
        oracle.problem("node " + nodes[at].id + " took no command for " + BACK_MS + " ms");
      }
    }
    for (PageScreen screen : screens) {
      if (!screen.live()) {
        oracle.problem(screen + " was not live again within " + BACK_MS + " ms");
      }
    }
    oracle.end(clients, world.disk.load(MORNING), world.disk.violations());
  }

  /** How long after the faults all nodes took commands again. */
  long backMs() {
    long last = 0;
    for (long at : backAt) {
      last = Math.max(last, at == 0 ? BACK_MS : at - Script.FAULTS_END_MS);
    }
    return last;
  }

  private void begin(int at) {
    Consumer<Standpoint> watcher =
        standpoint -> {
          coverage.saw(standpoint.readOnly() ? "told read-only" : "told live");
          oracle.told(nodes[at].id, standpoint, world.disk.load(MORNING));
        };
    nodes[at] = new Machine(at, ++born, world, MORNING, watcher);
    tell("node " + nodes[at].id + " starts");
  }

  /** Screens come to a node, and to the next one when it is gone or silent. */
  private void show(int at) {
    Audience audience = at == 0 ? Audience.WALL : Audience.DESK;
    String name = "screen " + at;
    PageScreen screen =
        new PageScreen(name, audience, outside, time::now, new ScreenLine(name, at), judge);
    screens.add(screen);
    outside.after(600, () -> look(screen, at, null));
  }

  private final class ScreenLine implements PageScreen.Line {
    private final String name;
    private final int screen;
    private long echoes;

    ScreenLine(String name, int screen) {
      this.name = name;
      this.screen = screen;
    }

    private long way(String line, long number) {
      return 1
          + world.weather.draw(line, number, WAY_MS)
          + world.weather.screenLate(servedBy[screen], line, number);
    }

    @Override
    public long way() {
      return way(name, ++messages);
    }

    @Override
    public long echoWay() {
      return way(name + " echo", ++echoes);
    }

    @Override
    public boolean trusted() {
      return world.bug == Bug.TRUST_THE_LINE;
    }
  }

  private void look(PageScreen screen, int at, Machine on) {
    boolean silent = time.now() - screen.heardAt() > 10_000;
    Machine now = on;
    int node = at;
    if (on == null || !on.process.alive() || (silent && screen.connected())) {
      screen.close();
      node = (at + (on == null ? 0 : 1)) % Script.NODES;
      now = nodes[node];
      if (now != null && now.process.alive() && !now.leaving) {
        tell(screen + " comes to " + now.id);
        servedBy[screens.indexOf(screen)] = node;
        screen.connect(now.mornings, now.net::execute);
      }
    }
    int next = node;
    Machine there = now;
    outside.after(300, () -> look(screen, next, there));
  }

  private void plan(Script.Touch touch) {
    int[] node = {touch.number() % Script.NODES};
    int[] tries = new int[1];
    Client[] made = new Client[1];
    Client client =
        new Client(
            touch.number(),
            touch.kind(),
            SimulatedClock.START + touch.at() - touch.before(),
            outside,
            (submission, answer) -> {
              if (++tries[0] > TRIES && !made[0].settled()) {
                tries[0] = 0;
                node[0] = (node[0] + 1) % Script.NODES;
              }
              carry(node[0], submission, answer);
            });
    made[0] = client;
    clients.add(client);
    outside.after(touch.at(), client::send);
    if (touch.again() > 0) {
      outside.after(touch.again(), client::sendAgain);
    }
    if (touch.other() > 0) {
      outside.after(
          touch.other(),
          () -> {
            if (client.settled()) {
              coverage.saw("id reused");
              client.sendOther();
            }
          });
    }
  }

  /** After the faults, at every node: a command each half second until one is taken. */
  private void probe(int at) {
    if (backAt[at] > 0) {
      return;
    }
    int number = ++probes;
    Client client =
        new Client(
            number,
            9,
            SimulatedClock.START + time.now(),
            outside,
            (submission, answer) ->
                carry(
                    at,
                    submission,
                    reply -> {
                      if (reply instanceof Reply.Done && backAt[at] == 0) {
                        backAt[at] = time.now();
                      }
                      answer.accept(reply);
                    }));
    clients.add(client);
    client.send();
    outside.after(PROBE_MS, () -> probe(at));
  }

  /** From a screen to its node and back: loses, doubles and delays. */
  private void carry(int to, Submission submission, Consumer<Reply> answer) {
    long number = ++messages;
    boolean calm = time.now() >= Script.FAULTS_END_MS;
    int copies = !calm && world.weather.draw("doubled", number, 12) == 0 ? 2 : 1;
    for (int copy = 0; copy < copies; copy++) {
      if (!calm && world.weather.draw("lost", number + copy, 16) == 0) {
        coverage.saw("message lost");
        continue;
      }
      boolean late = !calm && world.weather.draw("late", number + copy, 30) == 0;
      long delay = 1 + world.weather.draw("way", number + copy, late ? 6_000 : 40);
      outside.after(delay, () -> arrive(to, submission, answer));
    }
  }

  private void arrive(int to, Submission submission, Consumer<Reply> answer) {
    Machine node = nodes[to];
    if (node == null || !node.process.alive()) {
      coverage.saw("message to a dead node");
      return;
    }
    tell(submission.id() + " reaches " + node.id);
    SimulatedTime.Loop there = node.net;
    there.execute(
        () ->
            node.routing
                .owner(MORNING)
                .submit(
                    submission,
                    reply -> {
                      tell(node.id + " answers " + submission.id() + ": " + reply);
                      long number = ++messages;
                      coverage.saw("answered " + reply.getClass().getSimpleName());
                      boolean calm = time.now() >= Script.FAULTS_END_MS;
                      if (!calm && world.weather.draw("answer lost", number, 16) == 0) {
                        coverage.saw("answer lost");
                      } else {
                        long delay = 1 + world.weather.draw("back", number, 40);
                        outside.after(delay, () -> answer.accept(reply));
                      }
                    }));
  }

  /** Whom a fault of the owner hits now. */
  private Fault resolved(Fault fault) {
    if (fault.node() != Fault.OWNER) {
      return fault;
    }
    Machine owner = owner();
    return fault.at(owner == null ? (fault.other() + 1) % Script.NODES : owner.index);
  }

  /** Who holds the journal's epoch and says so, or null. */
  private Machine owner() {
    long epoch = world.disk.load(MORNING).head().epoch();
    for (Machine node : nodes) {
      if (node != null && node.owns(epoch)) {
        return node;
      }
    }
    return null;
  }

  private void begins(Fault fault) {
    world.weather.begin(fault);
    Machine node = nodes[fault.node()];
    if (fault.kind().once()) {
      // Told when it strikes.
      return;
    }
    switch (fault.kind()) {
      case CRASH -> crash(fault, KILL_TRIES);
      case POWER -> {
        struck(fault);
        for (int at = 0; at < nodes.length; at++) {
          die(at, fault.lasts() + 200L * at);
        }
      }
      case PAUSE -> {
        struck(fault);
        node.process.pauseUntil(fault.ends());
      }
      case CLOCK -> {
        struck(fault);
        jump(fault.node(), fault.how());
        outside.after(fault.lasts(), () -> jump(fault.node(), -fault.how()));
      }
      case LEAVE -> {
        if (node != null && node.process.alive() && !node.leaving) {
          struck(fault);
          leave(fault, node);
        }
      }
      default -> {
        struck(fault);
        outside.after(fault.lasts(), () -> tell("over: " + fault));
      }
    }
  }

  private void jump(int machine, long by) {
    tell("the clock of machine " + machine + " jumps by " + by + " ms");
    world.clockJumps(machine, by);
    nodes[machine].clock.jump(by);
  }

  /** Kills a node once its journal's writer is where the fault says, or wherever it is. */
  private void crash(Fault fault, int tries) {
    Machine node = nodes[fault.node()];
    if (!node.process.alive()) {
      return;
    }
    SimulatedJournal.Phase where = PHASES.get(fault.how());
    boolean waits = node.journal.phase() != where && tries > 0;
    if (waits && time.now() < Script.FAULTS_END_MS - fault.lasts()) {
      outside.after(1, () -> crash(fault, tries - 1));
      return;
    }
    struck(fault);
    die(fault.node(), fault.lasts());
  }

  private void die(int at, long back) {
    Machine node = nodes[at];
    if (node != null && node.process.alive()) {
      tell(node.id + " dies, its writer is " + node.journal.phase());
      node.kill(time.now());
      world.net.ended(node);
      outside.after(back, () -> begin(at));
    }
  }

  /** As a shut-down does: gives all away, then ends. */
  private void leave(Fault fault, Machine node) {
    node.leaving = true;
    boolean[] gone = new boolean[1];
    Runnable ends =
        () -> {
          if (!gone[0] && node.process.alive()) {
            gone[0] = true;
            die(fault.node(), fault.lasts());
          }
        };
    node.net.execute(() -> node.routing.leave(() -> outside.execute(ends)));
    outside.after(5_000, ends);
  }

  /** What was the morning in when it struck? */
  private void struck(Fault fault) {
    Machine owner = owner();
    boolean taking = false;
    for (Machine node : nodes) {
      taking |= node != null && node.journal.takes();
    }
    String phase;
    if (taking) {
      phase = "taking";
    } else if (owner == null) {
      phase = "nobody";
    } else {
      String whom = owner.index == fault.node() ? "owner " : "other ";
      phase = whom + owner.state();
    }
    coverage.saw(fault.kind().words() + " x " + phase);
    tell("FAULT " + fault + " (" + phase + ")");
  }

  private void tell(String what) {
    if (telling) {
      story.add(String.format("%6d ms  %s", time.now(), what));
    }
  }

  /** What happened, if it was asked for. */
  String story() {
    return String.join("\n", story);
  }
}
