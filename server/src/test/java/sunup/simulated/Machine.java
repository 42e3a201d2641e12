package sunup.simulated;

import java.time.ZoneId;
import java.util.List;
import java.util.SplittableRandom;
import java.util.function.Consumer;
import java.util.function.LongSupplier;
import sunup.board.MorningId;
import sunup.cluster.Routing;
import sunup.journal.EventTypes;
import sunup.live.Mornings;
import sunup.live.MorningsBySuite;
import sunup.live.Nudges;
import sunup.live.Pace;
import sunup.live.Place;
import sunup.live.fake.Unkept;
import sunup.suites.Company;
import sunup.suites.Standpoint;
import sunup.suites.Suites;

/**
 * One node of several, from its start to its death: the real owner, placement, routing and
 * channels, each on a loop of its own where the real one has a thread.
 */
final class Machine {
  /** How long a thread waits for its turn, and on a machine that is busy. */
  private static final long LAG_MS = 3;

  private static final long BUSY_MS = 80;
  private static final long BUSY_ONE_IN = 60;
  private static final long MONOTONIC_MOST = 1_000_000_000L;

  final int index;
  final String id;
  final long bornAt;
  final SimulatedTime.Program process;
  final SimulatedTime.Loop net;
  final SimulatedClock clock;
  final SimulatedJournal journal;
  final Routing routing;
  final Mornings mornings;
  long diedAt;
  boolean leaving;

  /** The last that its own owner said, or null. */
  Standpoint last;

  private final SplittableRandom secrets;
  private long lags;
  private Runnable unwatch = () -> {};

  Machine(int index, int born, World world, MorningId morning, Consumer<Standpoint> watcher) {
    this.index = index;
    this.id = (char) ('A' + index) + Integer.toString(born);
    this.secrets = new SplittableRandom(world.weather.draw(id + " secrets", 0));
    this.bornAt = world.time.now();
    this.process = world.time.program();
    LongSupplier lag =
        () -> {
          boolean busy = world.weather.draw(id + " busy", ++lags, BUSY_ONE_IN) == 0;
          return world.weather.draw(id + " lag", lags, busy ? BUSY_MS : LAG_MS);
        };
    this.net = process.loop();
    SimulatedTime.Loop owners = process.loop(lag);
    SimulatedTime.Loop placing = process.loop(lag);
    SimulatedTime.Loop live = process.loop(lag);
    SimulatedTime.Loop disk = process.loop();
    long began = world.weather.draw(id + " began", 0, MONOTONIC_MOST);
    this.clock = new SimulatedClock(world.time, world.clockOff(index), began);
    this.journal =
        new SimulatedJournal(
            world.disk,
            disk,
            world.database,
            new PlannedDiskFaults(world.weather, world.time, index, id),
            world.bug,
            world.coverage);
    EventTypes types = EventTypes.ofProgram();
    Suites suites =
        new Suites(
            journal,
            new NoteTaking(),
            clock,
            owners,
            owners,
            this::random,
            types,
            new Others(),
            suite -> null);
    world.net.add(this);
    this.routing =
        new Routing(
            id,
            Script.NODES,
            suites,
            types,
            clock,
            placing,
            world.net.membersOf(this),
            world.net.busOf(this));
    this.mornings =
        new Mornings(
            morning.suite(),
            ZoneId.of("UTC"),
            routing,
            clock,
            live,
            new NoteSight(),
            live::execute,
            live,
            Pace.DEFAULT,
            Unkept.LOG,
            Nudges.NONE);
    routing.serve(new MorningsBySuite(List.of(mornings)), () -> 1);
    routing.start();
    mornings.open();
    Runnable unused =
        routing.follow(
            morning,
            place -> {
              unwatch.run();
              unwatch = () -> {};
              last = null;
              if (place instanceof Place.Here here) {
                unwatch =
                    here.owner()
                        .watch(
                            at -> {
                              last = at;
                              watcher.accept(at);
                            });
              }
            });
  }

  private byte[] random(int count) {
    byte[] bytes = new byte[count];
    for (int at = 0; at < count; at++) {
      bytes[at] = (byte) secrets.nextInt();
    }
    return bytes;
  }

  /** As its suites see the other nodes. */
  private final class Others implements Company {
    @Override
    public void gone(MorningId morning) {
      routing.gone(morning);
    }

    @Override
    public boolean reads(String type) {
      return routing.reads(type);
    }
  }

  void kill(long now) {
    if (process.alive()) {
      journal.kill();
      process.kill();
      diedAt = now;
    }
  }

  /** True if it holds this epoch and says so. */
  boolean owns(long epoch) {
    return process.alive() && last != null && last.owned() && last.epoch() == epoch;
  }

  /** What it does with the morning that it owns, in words. */
  String state() {
    if (leaving) {
      return "handing over";
    } else if (last.readOnly()) {
      return "read-only";
    }
    return journal.phase() == SimulatedJournal.Phase.IDLE ? "still" : "writing";
  }
}
