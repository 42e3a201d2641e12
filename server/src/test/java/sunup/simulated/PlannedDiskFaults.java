package sunup.simulated;

/** The journal's troubles of one process as its script has them. */
final class PlannedDiskFaults implements DiskFaults {
  private static final long REFUSED_MS = 40;
  private static final long LONG_COMMIT_MS = 2_500;

  private final Weather weather;
  private final SimulatedTime time;
  private final int node;
  private final String name;
  private long steps;

  PlannedDiskFaults(Weather weather, SimulatedTime time, int node, String name) {
    this.weather = weather;
    this.time = time;
    this.node = node;
    this.name = name;
  }

  @Override
  public boolean takeOverFails() {
    return weather.now(Fault.Kind.NO_DISK, node) != null
        || weather.strikes(Fault.Kind.TAKE_FAILS, node);
  }

  @Override
  public boolean takeOverInDoubt() {
    return weather.strikes(Fault.Kind.TAKE_IN_DOUBT, node);
  }

  @Override
  public boolean writeFails() {
    return weather.now(Fault.Kind.NO_DISK, node) != null
        || weather.strikes(Fault.Kind.WRITE_FAILS, node);
  }

  @Override
  public Doubt commit() {
    if (weather.strikes(Fault.Kind.COMMIT_WRITTEN, node)) {
      return Doubt.WRITTEN;
    }
    if (weather.strikes(Fault.Kind.COMMIT_LOST, node)) {
      return Doubt.LOST;
    }
    return weather.strikes(Fault.Kind.COMMIT_LATER, node) ? Doubt.WRITTEN_LATER : null;
  }

  @Override
  public long laterMs() {
    return 1 + weather.draw(name + " later", steps, 1_500);
  }

  @Override
  public boolean commitOutlivesDeath() {
    return weather.draw(name + " torn", steps, 2) == 0;
  }

  @Override
  public boolean readFails() {
    return weather.now(Fault.Kind.NO_DISK, node) != null;
  }

  @Override
  public long delay(Step step, long usual, long longest) {
    long number = ++steps;
    Fault silent = weather.now(Fault.Kind.SILENT_DISK, node);
    if (silent != null) {
      // What was sent into the silence comes through when it is over.
      return silent.ends() - time.now() + weather.draw(name, number, usual + 1);
    }
    if (weather.now(Fault.Kind.SLOW_DISK, node) != null) {
      long most = step == Step.COMMIT ? LONG_COMMIT_MS : longest;
      return weather.draw(name, number, most);
    }
    if (step == Step.READ_ANSWER && weather.now(Fault.Kind.NO_DISK, node) != null) {
      return REFUSED_MS;
    }
    return weather.draw(name, number, usual + 1);
  }
}
