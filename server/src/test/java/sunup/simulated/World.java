package sunup.simulated;

/** What all nodes of a history share. */
final class World {
  final SimulatedTime time = new SimulatedTime();
  final SimulatedTime.Loop outside = time.loop();
  final SimulatedTime.Loop database = time.loop();
  final Bug bug;
  final Coverage coverage;
  final Disk disk;
  final Weather weather;
  final Net net;
  private final long[] clocksOff = new long[Script.NODES];

  World(Script script, Bug bug, Coverage coverage, Striking struck) {
    this.bug = bug;
    this.coverage = coverage;
    this.disk = new Disk(bug);
    this.weather = new Weather(script, time, struck::by);
    this.net = new Net(time, weather, bug);
    for (int at = 0; at < clocksOff.length; at++) {
      clocksOff[at] = weather.draw("clock", at, 4_000) - 2_000;
    }
  }

  /** Told of each fault when it strikes. */
  interface Striking {
    void by(Fault fault);
  }

  /** How far the hands of a machine's clock are off, whatever process runs on it. */
  long clockOff(int machine) {
    return clocksOff[machine];
  }

  void clockJumps(int machine, long by) {
    clocksOff[machine] += by;
  }
}
