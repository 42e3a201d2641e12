package sunup.ops.bench;

import java.util.SplittableRandom;
import umontreal.iro.lecuyer.simprocs.SimProcess;
import umontreal.iro.lecuyer.simprocs.ThreadProcessSimulator;

/**
 * {@link SharedRooms} on the processes of SSJ: each person is one, made once and used for all
 * trials, and is a thread that the library stops and lets go on.
 */
final class Processes {
  private final ThreadProcessSimulator simulator = new ThreadProcessSimulator();
  private final SplittableRandom random;
  private final int rooms;
  private final int trials;
  private final double[][] starts;
  private final SimProcess[] people;
  private final SimProcess technician = new Technician();
  private final SimProcess mornings = new Mornings();
  private final int[] left;
  private final int[] wantsHelp;
  private final boolean[] wantsMachine;
  private boolean technicianWaits;
  private boolean machineInUse;
  private int toStart;
  private int trial;
  private double began;
  private long events;

  private Processes(int rooms, int trials, long seed) {
    this.rooms = rooms;
    this.trials = trials;
    random = new SplittableRandom(seed);
    starts = new double[rooms][trials];
    people = new SimProcess[2 * rooms];
    left = new int[rooms];
    wantsHelp = new int[rooms];
    wantsMachine = new boolean[rooms];
    for (int r = 0; r < rooms; r++) {
      people[2 * r] = new Anaesthetist(r);
      people[2 * r + 1] = new Nurse(r);
    }
  }

  static Played play(int rooms, int trials, long seed) {
    Processes all = new Processes(rooms, trials, seed);
    all.simulator.init();
    all.technician.schedule(0);
    for (SimProcess person : all.people) {
      person.schedule(0);
    }
    all.mornings.schedule(1);
    return all.run();
  }

  /** Two processes that do nothing but wait in turns, so many times: the library alone. */
  static Played idle(int events) {
    Processes all = new Processes(0, 0, 0);
    all.simulator.init();
    for (int n = 0; n < 2; n++) {
      all.new Idle(events).schedule(0);
    }
    return all.run();
  }

  private Played run() {
    long passed = -System.nanoTime();
    long taken = -LibrariesBench.ofAllThreads();
    simulator.start();
    passed += System.nanoTime();
    taken += LibrariesBench.ofAllThreads();
    simulator.killAll();
    return new Played(starts, events, passed, taken);
  }

  private void good(int r) {
    if (--left[r] == 0) {
      starts[r][trial] = simulator.time() - began;
      if (--toStart == 0) {
        mornings.resume();
      }
    }
  }

  private int first(boolean[] of) {
    int r = 0;
    while (r < rooms && !of[r]) {
      r++;
    }
    return r;
  }

  private abstract class One extends SimProcess {
    One() {
      super(simulator);
    }

    void work(double time) {
      events++;
      delay(time);
    }

    void rest() {
      events++;
      suspend();
    }
  }

  /** Begins a trial when the one before is over; a process that ended would end the library's. */
  private final class Mornings extends One {
    @Override
    public void actions() {
      for (trial = 0; trial < trials; trial++) {
        began = simulator.time();
        toStart = rooms;
        java.util.Arrays.fill(left, SharedRooms.ITEMS);
        for (SimProcess person : people) {
          person.resume();
        }
        rest();
      }
      simulator.stop();
      suspend();
    }
  }

  private final class Idle extends One {
    private final int until;

    Idle(int until) {
      this.until = until;
    }

    @Override
    public void actions() {
      while (events < until) {
        work(1);
      }
      simulator.stop();
      suspend();
    }
  }

  private final class Anaesthetist extends One {
    private final int room;

    Anaesthetist(int room) {
      this.room = room;
    }

    @Override
    public void actions() {
      while (true) {
        rest();
        for (int i = 1; i <= SharedRooms.BY_ANAESTHETIST; i++) {
          work(SharedRooms.hands(random));
          good(room);
          for (int k = 0; k < SharedRooms.BY_TECHNICIAN; k++) {
            if (i == SharedRooms.before(k)) {
              wantsHelp[room]++;
              if (technicianWaits) {
                technicianWaits = false;
                technician.resume();
              }
            }
          }
        }
      }
    }
  }

  private final class Nurse extends One {
    private final int room;

    Nurse(int room) {
      this.room = room;
    }

    @Override
    public void actions() {
      while (true) {
        rest();
        for (int i = 1; i < SharedRooms.BY_NURSE; i++) {
          work(SharedRooms.hands(random));
          good(room);
        }
        if (machineInUse) {
          wantsMachine[room] = true;
          rest();
        }
        machineInUse = true;
        work(SharedRooms.machine(random));
        good(room);
        int next = first(wantsMachine);
        machineInUse = next < rooms;
        if (machineInUse) {
          wantsMachine[next] = false;
          people[2 * next + 1].resume();
        }
      }
    }
  }

  private final class Technician extends One {
    @Override
    public void actions() {
      while (true) {
        int r = 0;
        while (r < rooms && wantsHelp[r] == 0) {
          r++;
        }
        if (r == rooms) {
          technicianWaits = true;
          rest();
        } else {
          wantsHelp[r]--;
          work(SharedRooms.help(random));
          good(r);
        }
      }
    }
  }
}
