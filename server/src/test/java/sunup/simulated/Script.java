package sunup.simulated;

import java.util.ArrayList;
import java.util.List;
import java.util.SplittableRandom;

/**
 * All that is to happen in a history of several nodes. What is drawn while it runs is drawn from
 * the seed, the line and the message's number: leaving out a fault leaves the rest as it is, as far
 * as that can be.
 */
record Script(long seed, List<Fault> faults, List<Touch> touches) {
  static final int NODES = 3;

  /** After this nothing goes wrong. */
  static final long FAULTS_END_MS = 12_000;

  /** What is drawn from: what nodes can do least about comes twice. */
  private static final List<Fault.Kind> KINDS = new ArrayList<>(List.of(Fault.Kind.values()));

  static {
    KINDS.addAll(List.of(Fault.Kind.SPLIT, Fault.Kind.ONE_WAY, Fault.Kind.PAUSE, Fault.Kind.CRASH));
  }

  private static final int TOUCHES = 16;
  private static final int NEAR_MS = 400;
  private static final int FLAPS_ONE_IN = 4;
  private static final int HEELS_MS = 120;
  private static final int FAULTS_LEAST = 2;
  private static final int FAULTS_MOST = 8;
  private static final long BEGINS_MS = 400;
  private static final int CLOCK_OFF_MS = 31_000;

  Script {
    faults = List.copyOf(faults);
    touches = List.copyOf(touches);
  }

  /**
   * A command that somebody gives.
   *
   * @param kind as {@link Client} has it
   * @param again when it is sent once more though it may be answered, or 0
   * @param other when something else is sent under its id, or 0
   */
  record Touch(int number, int kind, long at, long before, long again, long other) {}

  static Script of(long seed) {
    SplittableRandom random = new SplittableRandom(seed);
    List<Fault> faults = new ArrayList<>();
    int count = FAULTS_LEAST + random.nextInt(FAULTS_MOST - FAULTS_LEAST + 1);
    for (int n = 0; n < count; n++) {
      Fault fault = fault(random);
      if (n > 0 && random.nextInt(3) == 0) {
        // On the heels of another: what is short is hit so.
        Fault before = faults.get(random.nextInt(n));
        long at = Math.min(before.at() + random.nextInt(HEELS_MS), FAULTS_END_MS - 100);
        fault = fault.beginning(at, Math.min(fault.lasts(), FAULTS_END_MS - at));
      }
      faults.add(fault);
    }
    faults.sort((a, b) -> Long.compare(a.at(), b.at()));
    List<Touch> touches = new ArrayList<>();
    for (int number = 1; number <= TOUCHES; number++) {
      long at = random.nextLong(FAULTS_END_MS);
      if (random.nextBoolean()) {
        // Around a fault is where it hurts.
        long near = faults.get(random.nextInt(count)).at();
        at = Math.max(0, near - NEAR_MS + random.nextInt(2 * NEAR_MS));
      }
      long before = random.nextLong(20_000);
      long again = random.nextInt(4) == 0 ? at + random.nextLong(15_000) : 0;
      long other = random.nextInt(12) == 0 ? at + 3_000 + random.nextLong(12_000) : 0;
      touches.add(new Touch(number, random.nextInt(10), at, before, again, other));
    }
    return new Script(seed, flapping(faults), touches);
  }

  /** One split in four comes and goes until it would have ended. */
  private static List<Fault> flapping(List<Fault> faults) {
    List<Fault> all = new ArrayList<>();
    for (Fault fault : faults) {
      boolean flaps = fault.kind() == Fault.Kind.SPLIT && fault.at() % FLAPS_ONE_IN == 0;
      long cut = flaps ? 200 + fault.at() % 900 : fault.lasts();
      long whole = 150 + fault.lasts() % 600;
      long at = fault.at();
      do {
        all.add(fault.beginning(at, Math.min(cut, fault.ends() - at)));
        at += cut + whole;
      } while (flaps && at < fault.ends());
    }
    all.sort((a, b) -> Long.compare(a.at(), b.at()));
    return all;
  }

  private static Fault fault(SplittableRandom random) {
    Fault.Kind kind = KINDS.get(random.nextInt(KINDS.size()));
    long at = BEGINS_MS + random.nextLong(FAULTS_END_MS - 1_000);
    int any = random.nextInt(NODES);
    int node = random.nextBoolean() ? Fault.OWNER : any;
    int other = (any + 1 + random.nextInt(NODES - 1)) % NODES;
    long longest = FAULTS_END_MS - at;
    long lasts =
        switch (kind) {
          case CRASH, POWER -> 50 + random.nextLong(2_500);
          case PAUSE -> 100 + random.nextLong(6_000);
          case LEAVE -> 300 + random.nextLong(1_500);
          default -> kind.once() ? longest : 200 + random.nextLong(9_000);
        };
    int how =
        switch (kind) {
          case CRASH -> random.nextInt(SimulatedJournal.Phase.values().length);
          case CLOCK -> (random.nextInt(2) == 0 ? 1 : -1) * (CLOCK_OFF_MS + random.nextInt(60_000));
          default -> random.nextInt(2);
        };
    return new Fault(kind, at, Math.min(lasts, longest), node, other, how);
  }

  Script with(List<Fault> otherFaults, List<Touch> otherTouches) {
    return new Script(seed, otherFaults, otherTouches);
  }
}
