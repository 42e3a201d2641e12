package sunup.simulated;

import java.util.SplittableRandom;
import java.util.function.Consumer;
import sunup.board.MorningId;
import sunup.suites.Owner;
import sunup.suites.Standpoint;
import sunup.suites.Suites;

/** A server process on the simulated disk, from its start to its death. */
final class Node {
  final String name;
  final SimulatedTime.Loop loop;
  final SimulatedJournal journal;
  final Owner owner;

  Node(
      String name,
      World world,
      SplittableRandom random,
      MorningId morning,
      Consumer<Standpoint> watcher) {
    this.name = name;
    this.loop = world.time().loop();
    this.journal =
        new SimulatedJournal(
            world.disk(), loop, world.database(), world.faults(), world.bug(), world.coverage());
    SimulatedClock clock = new SimulatedClock(world.time(), world.faults().upTo(10_000) - 5_000L);
    Suites suites =
        new Suites(
            journal,
            new NoteTaking(),
            clock,
            loop,
            loop,
            count -> {
              byte[] bytes = new byte[count];
              for (int at = 0; at < count; at++) {
                bytes[at] = (byte) random.nextInt();
              }
              return bytes;
            });
    this.owner = suites.owner(morning);
    Runnable unused = owner.watch(watcher);
  }

  void kill() {
    journal.kill();
    loop.kill();
  }

  /** What all nodes of a history share. */
  record World(
      SimulatedTime time,
      Disk disk,
      SimulatedTime.Loop database,
      Faults faults,
      Bug bug,
      Coverage coverage) {}
}
