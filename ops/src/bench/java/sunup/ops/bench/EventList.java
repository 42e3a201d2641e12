package sunup.ops.bench;

import java.util.SplittableRandom;
import java.util.concurrent.CountDownLatch;
import nl.tudelft.simulation.dsol.SimRuntimeException;
import nl.tudelft.simulation.dsol.experiment.SingleReplication;
import nl.tudelft.simulation.dsol.formalisms.eventscheduling.Executable;
import nl.tudelft.simulation.dsol.model.AbstractDsolModel;
import nl.tudelft.simulation.dsol.simulators.DevsSimulator;
import nl.tudelft.simulation.dsol.simulators.DevsSimulatorInterface;

/** {@link SharedRooms} on the event list of DSOL: all trials one after the other in one run. */
final class EventList extends AbstractDsolModel<Double, DevsSimulatorInterface<Double>> {
  private static final long serialVersionUID = 1;
  private static final double LONG = 1e300;

  private final transient SplittableRandom random;
  private final int rooms;
  private final int trials;
  private final double[][] starts;
  private final transient CountDownLatch done = new CountDownLatch(1);
  private int trial = -1;
  private double began;
  private long events;
  private int idle;
  private long passed;
  private long taken;

  private final int[] anaesthetistDid;
  private final int[] nurseDid;
  private final int[] left;
  private final int[] wantsHelp;
  private final boolean[] wantsMachine;
  private boolean technicianBusy;
  private boolean machineInUse;
  private int toStart;

  private EventList(DevsSimulator<Double> simulator, int rooms, int trials, long seed) {
    super(simulator);
    this.rooms = rooms;
    this.trials = trials;
    random = new SplittableRandom(seed);
    starts = new double[rooms][trials];
    anaesthetistDid = new int[rooms];
    nurseDid = new int[rooms];
    left = new int[rooms];
    wantsHelp = new int[rooms];
    wantsMachine = new boolean[rooms];
  }

  static Played play(int rooms, int trials, long seed) {
    return run(new EventList(new DevsSimulator<>("shared rooms"), rooms, trials, seed));
  }

  /** So many events that do nothing but enter the next, with one waiting: the library alone. */
  static Played idle(int events) {
    EventList model = new EventList(new DevsSimulator<>("nothing"), 0, 0, 0);
    model.idle = events;
    return run(model);
  }

  private static Played run(EventList model) {
    try {
      DevsSimulatorInterface<Double> simulator = model.simulator;
      simulator.initialize(model, new SingleReplication<>("one", 0.0, 0.0, LONG));
      simulator.start();
      model.done.await();
      simulator.cleanUp();
      return new Played(model.starts, model.events, model.passed, model.taken);
    } catch (SimRuntimeException e) {
      throw new IllegalStateException(e);
    } catch (InterruptedException e) {
      Thread.currentThread().interrupt();
      throw new IllegalStateException(e);
    }
  }

  @Override
  public void constructModel() {
    after(0, this::begin);
  }

  /** The library runs all events on a thread of its own. */
  private void begin() {
    passed = -System.nanoTime();
    taken = -LibrariesBench.ofThisThread();
    if (idle > 0) {
      nothing();
    } else {
      morning();
    }
  }

  private void end() {
    passed += System.nanoTime();
    taken += LibrariesBench.ofThisThread();
    done.countDown();
  }

  private void nothing() {
    if (events < idle) {
      after(1, this::nothing);
    } else {
      end();
    }
  }

  private void after(double delay, Executable what) {
    try {
      events++;
      simulator.scheduleEventRel(delay, what);
    } catch (SimRuntimeException e) {
      throw new IllegalStateException(e);
    }
  }

  private void morning() {
    trial++;
    if (trial == trials) {
      end();
      return;
    }
    began = simulator.getSimulatorTime();
    toStart = rooms;
    for (int r = 0; r < rooms; r++) {
      anaesthetistDid[r] = 0;
      nurseDid[r] = 0;
      left[r] = SharedRooms.ITEMS;
      int room = r;
      after(SharedRooms.hands(random), () -> anaesthetist(room));
      after(SharedRooms.hands(random), () -> nurse(room));
    }
  }

  private void anaesthetist(int r) {
    good(r);
    int did = ++anaesthetistDid[r];
    for (int k = 0; k < SharedRooms.BY_TECHNICIAN; k++) {
      if (did == SharedRooms.before(k)) {
        wantsHelp[r]++;
        help();
      }
    }
    if (did < SharedRooms.BY_ANAESTHETIST) {
      after(SharedRooms.hands(random), () -> anaesthetist(r));
    }
  }

  private void nurse(int r) {
    good(r);
    int did = ++nurseDid[r];
    if (did < SharedRooms.BY_NURSE - 1) {
      after(SharedRooms.hands(random), () -> nurse(r));
    } else if (did == SharedRooms.BY_NURSE - 1) {
      wantsMachine[r] = true;
      machine();
    } else {
      machineInUse = false;
      machine();
    }
  }

  private void machine() {
    for (int r = 0; r < rooms && !machineInUse; r++) {
      if (wantsMachine[r]) {
        wantsMachine[r] = false;
        machineInUse = true;
        int room = r;
        after(SharedRooms.machine(random), () -> nurse(room));
      }
    }
  }

  private void help() {
    for (int r = 0; r < rooms && !technicianBusy; r++) {
      if (wantsHelp[r] > 0) {
        wantsHelp[r]--;
        technicianBusy = true;
        int room = r;
        after(
            SharedRooms.help(random),
            () -> {
              technicianBusy = false;
              good(room);
              help();
            });
      }
    }
  }

  private void good(int r) {
    if (--left[r] == 0) {
      starts[r][trial] = simulator.getSimulatorTime() - began;
      if (--toStart == 0) {
        after(0, this::morning);
      }
    }
  }
}
