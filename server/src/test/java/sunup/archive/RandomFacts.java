package sunup.archive;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import sunup.board.CaseId;
import sunup.board.DelayReason;
import sunup.board.MorningId;
import sunup.board.RoomId;
import sunup.board.Step;
import sunup.board.SuiteId;
import sunup.review.facts.AsRunFact;
import sunup.review.facts.AsRunFact.Piece;
import sunup.review.facts.BoardSaid;
import sunup.review.facts.Cause;
import sunup.review.facts.FirstCaseFact;
import sunup.review.facts.FirstCaseFact.Beside;
import sunup.review.facts.FirstCaseFact.Came;
import sunup.review.facts.FirstCaseFact.Reported;
import sunup.review.facts.FirstCaseFact.Settled;
import sunup.review.facts.FirstCaseFact.Times;
import sunup.review.facts.ForecastNote;

/** Facts drawn at random, with everything in them that figures are made of. */
final class RandomFacts {
  private static final DelayReason[] REASONS = DelayReason.values();
  private static final Settled[] SETTLED = Settled.values();
  private static final String[] KINDS = {"work", "person", "arrival", "place", "equipment"};
  private static final String[] ITEMS = {
    "drugs.controlled", "machine.test", "patient.consent", "drugs.pump", null
  };
  private static final String[] SERVICES = {"bones", "eyes", null};

  private final Random random;

  RandomFacts(long seed) {
    random = new Random(seed);
  }

  /** Facts of working days from a Monday on. */
  static List<FirstCaseFact> of(long seed, int suites, int rooms, int days) {
    RandomFacts made = new RandomFacts(seed);
    List<FirstCaseFact> facts = new ArrayList<>();
    LocalDate date = LocalDate.of(2026, 3, 2);
    for (int d = 0; d < days; d++) {
      for (int s = 0; s < suites; s++) {
        double mood = made.random.nextDouble();
        for (int r = 1; r <= rooms; r++) {
          facts.add(made.fact(new MorningId(new SuiteId("s" + s), date), "R" + r, mood));
        }
      }
      date = date.plusDays(date.getDayOfWeek().getValue() == 5 ? 3 : 1);
    }
    return facts;
  }

  /** The same of another service. */
  static FirstCaseFact ofService(FirstCaseFact f, String service) {
    return new FirstCaseFact(
        f.version(),
        f.morning(),
        f.caseId(),
        f.room(),
        service,
        f.technique(),
        f.startEvent(),
        f.graceMinutes(),
        f.bookedAt(),
        f.agreedAt(),
        f.beginsAt(),
        f.cancelled(),
        f.times(),
        f.asRun(),
        f.reported(),
        f.beside(),
        f.said());
  }

  private FirstCaseFact fact(MorningId morning, String room, double mood) {
    long booked = morning.date().toEpochDay() * 86_400_000L + 27_000_000;
    Long agreed = random.nextInt(9) == 0 ? (Long) (booked + 600_000) : null;
    long target = agreed == null ? booked : agreed;
    boolean cancelled = random.nextInt(25) == 0;
    boolean untold = random.nextInt(40) == 0;
    long lateness = Math.round((random.nextGaussian() * 12 + mood * 20 - 8) * 60_000);
    Long start = untold ? null : (Long) (target + lateness);
    boolean late = !cancelled && start != null && lateness > 0;
    String service = SERVICES[random.nextInt(SERVICES.length)];
    return new FirstCaseFact(
        1,
        morning,
        new CaseId("C" + room),
        new RoomId(room),
        service,
        random.nextBoolean() ? "general" : "block",
        Step.INDUCTION,
        random.nextBoolean() ? 0 : 5,
        booked,
        agreed,
        booked - 3_600_000,
        cancelled,
        times(target, start),
        late ? pieces(target, lateness) : AsRunFact.NONE,
        reported(late),
        new Beside(
            random.nextInt(4) == 0 ? null : (Long) (long) random.nextInt(1_800_000),
            30 + random.nextInt(10),
            random.nextInt(3),
            random.nextInt(2),
            random.nextInt(9),
            random.nextInt(4),
            random.nextInt(2)),
        said(morning, room, target, cancelled ? null : start));
  }

  private Times times(long target, Long start) {
    List<Came> came =
        random.nextBoolean()
            ? List.of()
            : List.of(new Came("patient.arrived", target - 60), new Came("anaesthetist", target));
    Long ready = random.nextBoolean() ? (Long) (target - 900_000) : null;
    if (start == null || random.nextInt(10) > 0) {
      return new Times(came, ready, null, start, start, null, null);
    }
    // Of some nobody told the start, but the step after it, and of some of these the one before:
    // now and then with a later time than the step after it.
    boolean told = random.nextBoolean();
    Long in = told ? (Long) (start + 400_000 - random.nextInt(1_300_000)) : null;
    return new Times(came, ready, target - 1_200_000, in, null, start, null);
  }

  private AsRunFact pieces(long target, long lateness) {
    if (random.nextInt(10) == 0) {
      return new AsRunFact(List.of(), "nothing told");
    }
    List<Piece> pieces = new ArrayList<>();
    long left = lateness;
    while (left > 0) {
      long ms = random.nextInt(3) == 0 ? left : Math.min(left, 1 + random.nextInt(600_000));
      pieces.add(
          new Piece(
              KINDS[random.nextInt(KINDS.length)],
              ITEMS[random.nextInt(ITEMS.length)],
              null,
              null,
              target,
              target + ms,
              ms,
              false,
              random.nextInt(8) == 0,
              random.nextInt(8) == 0));
      left -= ms;
    }
    return new AsRunFact(pieces, null);
  }

  private Reported reported(boolean late) {
    return !late || random.nextInt(3) == 0
        ? null
        : new Reported(
            REASONS[random.nextInt(REASONS.length)],
            SETTLED[random.nextInt(SETTLED.length)],
            random.nextBoolean() ? null : REASONS[random.nextInt(REASONS.length)]);
  }

  private List<BoardSaid> said(MorningId morning, String room, long target, Long start) {
    List<BoardSaid> said = new ArrayList<>();
    for (int before : BoardSaid.MOMENTS) {
      long at = target - before * 60_000L;
      ForecastNote note =
          random.nextInt(8) == 0
              ? null
              : new ForecastNote(
                  1,
                  morning,
                  new RoomId(room),
                  new CaseId("C" + room),
                  at,
                  target,
                  1,
                  1,
                  "0",
                  1,
                  2_000,
                  random.nextInt(1_001) / 1_000.0,
                  target,
                  target,
                  target,
                  null,
                  List.of(
                      new ForecastNote.Named(
                          new Cause(
                              KINDS[random.nextInt(KINDS.length)],
                              ITEMS[random.nextInt(ITEMS.length)],
                              null,
                              null),
                          0.5)),
                  random.nextInt(5) == 0
                      ? ForecastNote.Origin.RECOMPUTED
                      : ForecastNote.Origin.LOGGED);
      Boolean came = start == null ? null : (Boolean) (start < target + 60_000);
      said.add(
          new BoardSaid(
              before, at, target, random.nextInt(31) / 30.0, note, random.nextBoolean(), came));
    }
    return said;
  }
}
