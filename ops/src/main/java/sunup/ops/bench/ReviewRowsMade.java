package sunup.ops.bench;

import java.time.DayOfWeek;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Iterator;
import java.util.List;
import java.util.SplittableRandom;
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

/**
 * First cases of working days, suites of 40 rooms each: about as wide as real ones (two pieces a
 * late start, four forecasts a case), made up for their number only.
 */
final class ReviewRowsMade implements Iterator<FirstCaseFact> {
  private static final DelayReason[] REASONS = DelayReason.values();
  private static final int ROOMS_A_SUITE = 40;
  private static final String[] SERVICES = {"bones", "eyes", "hearts", "skin", "teeth", "children"};
  private static final String[] ITEMS = {
    "drugs.controlled", "machine.test", "patient.consent", "airway.tube", "surgeon.seen"
  };
  private static final String[] KINDS = {"work", "person", "arrival", "equipment", "place"};

  private final int rooms;
  private final SplittableRandom random = new SplittableRandom(7);
  private LocalDate date = LocalDate.of(2016, 1, 4);
  private long left;
  private int room;

  ReviewRowsMade(int rooms, int days) {
    this.rooms = rooms;
    this.left = (long) rooms * days;
  }

  @Override
  public boolean hasNext() {
    return left > 0;
  }

  @Override
  public FirstCaseFact next() {
    FirstCaseFact made = fact(room);
    left--;
    room++;
    if (room == rooms) {
      room = 0;
      date = date.plusDays(date.getDayOfWeek() == DayOfWeek.FRIDAY ? 3 : 1);
    }
    return made;
  }

  private FirstCaseFact fact(int at) {
    MorningId morning = new MorningId(new SuiteId("suite" + at / ROOMS_A_SUITE), date);
    RoomId where = new RoomId(String.valueOf(at % ROOMS_A_SUITE + 1));
    CaseId id = new CaseId("C" + where.value());
    long target = date.toEpochDay() * 86_400_000L + 27_000_000;
    long lateness = Math.round((random.nextDouble() + random.nextDouble() - 0.8) * 2_400_000);
    long start = target + lateness;
    boolean late = lateness >= 60_000;
    return new FirstCaseFact(
        1,
        morning,
        id,
        where,
        SERVICES[at % SERVICES.length],
        random.nextInt(5) == 0 ? "block" : "general",
        Step.INDUCTION,
        0,
        target,
        null,
        target - 3_600_000,
        random.nextInt(40) == 0,
        times(start),
        lateness > 0 ? new AsRunFact(pieces(target, lateness), null) : AsRunFact.NONE,
        late ? new Reported(REASONS[random.nextInt(REASONS.length)], Settled.AGREED, null) : null,
        new Beside(600_000L, 40, random.nextInt(2), 0, random.nextInt(6), random.nextInt(3), 0),
        said(morning, where, id, target, late));
  }

  private static Times times(long start) {
    List<Came> came =
        List.of(
            new Came("anaesthetist", start - 3_600_000),
            new Came("patient.arrived", start - 3_000_000),
            new Came("surgeon.seen", start - 1_800_000));
    return new Times(
        came,
        start - 1_500_000,
        start - 1_200_000,
        start - 600_000,
        start,
        start + 600_000,
        start + 1_800_000);
  }

  private List<Piece> pieces(long target, long lateness) {
    long first = lateness / 3;
    return List.of(piece(target, first), piece(target + first, lateness - first));
  }

  private Piece piece(long from, long ms) {
    return new Piece(
        KINDS[random.nextInt(KINDS.length)],
        ITEMS[random.nextInt(ITEMS.length)],
        null,
        null,
        from,
        from + ms,
        ms,
        false,
        random.nextInt(9) == 0,
        false);
  }

  private List<BoardSaid> said(
      MorningId morning, RoomId where, CaseId id, long target, boolean late) {
    List<BoardSaid> said = new ArrayList<>();
    for (int before : BoardSaid.MOMENTS) {
      long at = target - before * FirstCaseFact.MINUTE;
      double chance = (late ? random.nextInt(160) : 40 + random.nextInt(160)) / 200.0;
      ForecastNote note =
          new ForecastNote(
              1,
              morning,
              where,
              id,
              at,
              target,
              1,
              1,
              "0",
              1,
              2_000,
              chance,
              target - 60_000L * random.nextInt(10),
              target + 60_000L * random.nextInt(10),
              target + 600_000L + 60_000L * random.nextInt(20),
              null,
              List.of(
                  new ForecastNote.Named(
                      new Cause("work", ITEMS[random.nextInt(ITEMS.length)], null, null), 0.5)),
              ForecastNote.Origin.LOGGED);
      said.add(
          new BoardSaid(
              before, at, target, random.nextInt(40) / 40.0, note, random.nextInt(5) == 0, !late));
    }
    return said;
  }
}
