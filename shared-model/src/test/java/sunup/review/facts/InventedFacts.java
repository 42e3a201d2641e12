package sunup.review.facts;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import sunup.board.CaseId;
import sunup.board.DelayReason;
import sunup.board.MorningId;
import sunup.board.RoomId;
import sunup.board.Step;
import sunup.board.SuiteId;
import sunup.review.facts.AsRunFact.Piece;
import sunup.review.facts.FirstCaseFact.Beside;
import sunup.review.facts.FirstCaseFact.Reported;
import sunup.review.facts.FirstCaseFact.Settled;
import sunup.review.facts.FirstCaseFact.Times;

/** Facts made up for one purpose, with all else plain. */
public final class InventedFacts {
  public static final LocalDate MONDAY = LocalDate.of(2026, 3, 2);
  private static final long TARGET = 1_800_000_000_000L - 1_800_000_000_000L % 60_000;

  private final LocalDate date;
  private final String room;
  private String service = "general";
  private long lateMs;
  private boolean cancelled;
  private boolean inferred;
  private Long before;
  private boolean untold;
  private final List<Piece> pieces = new ArrayList<>();
  private Reported reported;
  private final List<BoardSaid> said = new ArrayList<>();
  private Beside beside = new Beside(600_000L, 40, 1, 0, 4, 2, 0);

  private InventedFacts(LocalDate date, String room) {
    this.date = date;
    this.room = room;
  }

  public static InventedFacts on(LocalDate date, String room) {
    return new InventedFacts(date, room);
  }

  public InventedFacts of(String ofService) {
    service = ofService;
    return this;
  }

  public InventedFacts late(double minutes) {
    lateMs = Math.round(minutes * 60_000);
    return this;
  }

  public InventedFacts cancelled() {
    cancelled = true;
    return this;
  }

  public InventedFacts untold() {
    untold = true;
    return this;
  }

  /**
   * Nobody told its start: only that the step after it happened when it would have started.
   *
   * @param wheelsIn minutes after the target at which the step before it was told, or null
   */
  public InventedFacts inferred(Integer wheelsIn) {
    inferred = true;
    before = wheelsIn == null ? null : (Long) (TARGET + wheelsIn * 60_000L);
    return this;
  }

  /** Carries so many minutes; they should add up to the lateness. */
  public InventedFacts piece(String kind, String item, double minutes, boolean together) {
    long ms = Math.round(minutes * 60_000);
    pieces.add(new Piece(kind, item, null, null, TARGET, TARGET + ms, ms, false, false, together));
    return this;
  }

  public InventedFacts reported(DelayReason reason, Settled settled) {
    reported = new Reported(reason, settled, null);
    return this;
  }

  public InventedFacts said(
      int before, double onTime, double done, boolean acted, String kind, String item) {
    ForecastNote note =
        new ForecastNote(
            1,
            morning(),
            new RoomId(room),
            new CaseId("C" + room),
            TARGET - before * 60_000L,
            TARGET,
            1,
            1,
            "0",
            1,
            2_000,
            onTime,
            TARGET,
            TARGET,
            TARGET,
            null,
            kind == null
                ? List.of()
                : List.of(new ForecastNote.Named(new Cause(kind, item, null, null), 0.8)),
            ForecastNote.Origin.LOGGED);
    Boolean came = (untold || cancelled) ? null : (Boolean) (lateMs < 60_000);
    said.add(new BoardSaid(before, TARGET - before * 60_000L, TARGET, done, note, acted, came));
    return this;
  }

  public InventedFacts beside(Beside other) {
    beside = other;
    return this;
  }

  private MorningId morning() {
    return new MorningId(new SuiteId("main"), date);
  }

  public FirstCaseFact fact() {
    Long start = (untold || cancelled) ? null : (Long) (TARGET + lateMs);
    return new FirstCaseFact(
        1,
        morning(),
        new CaseId("C" + room),
        new RoomId(room),
        service,
        "general",
        Step.INDUCTION,
        0,
        TARGET,
        null,
        TARGET - 3_600_000,
        cancelled,
        inferred
            ? new Times(List.of(), null, null, before, null, start, null)
            : new Times(List.of(), null, null, start, start, null, null),
        start == null ? AsRunFact.NONE : new AsRunFact(pieces, null),
        reported,
        beside,
        said);
  }

  /** Facts of working days from Monday on: late minutes by day and room. */
  public static List<FirstCaseFact> days(LocalDate from, Map<String, double[]> lateByRoom) {
    List<FirstCaseFact> facts = new ArrayList<>();
    lateByRoom.forEach(
        (room, late) -> {
          LocalDate day = from;
          for (double minutes : late) {
            facts.add(on(day, room).late(minutes).fact());
            day = day.plusDays(day.getDayOfWeek().getValue() == 5 ? 3 : 1);
          }
        });
    return facts;
  }
}
