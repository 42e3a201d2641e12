package sunup.review.facts;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import sunup.board.CaseId;
import sunup.board.Item;
import sunup.board.ItemState;
import sunup.board.Morning;
import sunup.board.Morning.CaseDay;
import sunup.board.Morning.PersonDay;
import sunup.board.Placed;
import sunup.board.Recorded;
import sunup.board.Role;
import sunup.board.RoomId;
import sunup.board.Step;
import sunup.review.facts.FirstCaseFact.Beside;
import sunup.review.facts.FirstCaseFact.Came;
import sunup.review.facts.FirstCaseFact.Reported;
import sunup.review.facts.FirstCaseFact.Settled;
import sunup.review.facts.FirstCaseFact.Times;
import sunup.review.facts.Replayed.Told;

/**
 * Makes the facts of a closed morning. Pure: the same journal and log give the same facts, so that
 * they can be thrown away and made again at will.
 */
public final class FactsBuilder {
  private final Replayed played;
  private final Morning end;
  private final Explain explain;
  private final List<ForecastNote> log;
  private final PercentDone done;

  private FactsBuilder(List<Recorded> journal, List<ForecastNote> log) {
    this.played = Replayed.of(journal);
    this.end = played.end();
    if (end.phase() != Morning.Phase.CLOSED) {
      throw new IllegalArgumentException(
          "facts are made of a closed morning; close " + end.id() + " first");
    }
    this.log = log;
    this.explain = new Explain(played);
    this.done = new PercentDone(played);
  }

  /**
   * One fact for each first case that was on the list when the morning closed, in the order of the
   * list.
   *
   * @param journal all events in order of their sequence
   * @param log what the board said of this morning, or nothing
   * @throws IllegalArgumentException if the morning is not closed
   */
  public static List<FirstCaseFact> build(List<Recorded> journal, List<ForecastNote> log) {
    FactsBuilder builder = new FactsBuilder(journal, log);
    return builder.end.cases().values().stream().map(builder::fact).toList();
  }

  /** Whether the morning of this journal is closed, so that facts can be made of it. */
  public static boolean isClosed(List<Recorded> journal) {
    return Replayed.end(journal).phase() == Morning.Phase.CLOSED;
  }

  private FirstCaseFact fact(CaseDay day) {
    CaseId id = day.plan().id();
    boolean here = id.equals(caseInRoom(day));
    Times times = times(day, here);
    boolean started = !day.cancelled() && day.startedAt(end.settings().startEvent()) != null;
    FirstCaseFact fact =
        new FirstCaseFact(
            1,
            end.id(),
            id,
            day.plan().room(),
            day.plan().service(),
            day.plan().technique(),
            end.settings().startEvent(),
            end.settings().graceMinutes(),
            day.plan().bookedAt(),
            day.agreedAt(),
            end.beginsAt(),
            day.cancelled(),
            times,
            started && here ? explain.of(id) : AsRunFact.NONE,
            reported(day),
            beside(day, here, times),
            List.of());
    return fact.with(said(day, fact));
  }

  private CaseId caseInRoom(CaseDay day) {
    Morning.RoomDay room = end.rooms().get(day.plan().room());
    return room == null ? null : room.caseId();
  }

  private Times times(CaseDay day, boolean here) {
    Map<Step, Long> steps = new EnumMap<>(Step.class);
    steps.putAll(day.steps());
    RoomId room = day.plan().room();
    return new Times(
        here ? arrivals(room) : List.of(),
        here ? end.rooms().get(room).readyAt() : null,
        steps.get(Step.SENT_FOR),
        steps.get(Step.WHEELS_IN),
        steps.get(Step.INDUCTION),
        steps.get(Step.RELEASE),
        steps.get(Step.INCISION));
  }

  private List<Came> arrivals(RoomId room) {
    List<Came> came = new ArrayList<>();
    for (Placed placed : end.itemsOf(room)) {
      if (placed.sheet().isArrival() && placed.item().state() == ItemState.GOOD) {
        came.add(new Came(placed.sheet().key(), placed.item().since()));
      }
    }
    Map<Role, Long> first = new EnumMap<>(Role.class);
    for (PersonDay person : end.people().values()) {
      if (room.equals(person.plan().room()) && person.arrivedAt() != null) {
        first.merge(person.plan().role(), person.arrivedAt(), Math::min);
      }
    }
    first.forEach((role, at) -> came.add(new Came(role.word(), at)));
    came.sort(Comparator.comparingLong(Came::at));
    return came;
  }

  private static Reported reported(CaseDay day) {
    Morning.Reason reason = day.reason();
    if (reason == null) {
      return null;
    }
    boolean disputed = !reason.agreed() && reason.instead() != null;
    return new Reported(
        reason.reason(),
        reason.agreed() ? Settled.AGREED : disputed ? Settled.DISPUTED : Settled.OPEN,
        reason.instead());
  }

  private Beside beside(CaseDay day, boolean here, Times times) {
    int asked = 0;
    int left = 0;
    int together = 0;
    int late = 0;
    int faults = 0;
    for (Placed placed : here ? end.itemsOf(day.plan().room()) : List.<Placed>of()) {
      Item item = placed.item();
      asked++;
      left += item.state() == ItemState.LEFT_OUT ? 1 : 0;
      together += item.state() == ItemState.GOOD && item.together() ? 1 : 0;
      Told told = played.toldGood(item);
      late += told != null && told.late() ? 1 : 0;
      faults += played.faults().getOrDefault(item.ref(), 0);
    }
    Long in = times.wheelsIn();
    Long induced = times.induction();
    Long took = in == null || induced == null || induced < in ? null : (Long) (induced - in);
    return new Beside(took, asked, left, day.flagged().size(), together, late, faults);
  }

  private List<BoardSaid> said(CaseDay day, FirstCaseFact fact) {
    CaseId id = day.plan().id();
    Long start = fact.startedAt();
    List<BoardSaid> said = new ArrayList<>();
    for (int before : BoardSaid.MOMENTS) {
      ForecastNote note = note(id, before);
      long target = note != null ? note.target() : day.target();
      long at = note != null ? note.at() : target - before * FirstCaseFact.MINUTE;
      said.add(
          new BoardSaid(
              before,
              at,
              target,
              done.at(id, at),
              note,
              DeskActs.between(
                  played.journal(),
                  end,
                  note != null ? note.room() : day.plan().room(),
                  id,
                  at,
                  start != null ? start : Long.MAX_VALUE),
              fact.cameBy(target, end.settings().graceMinutes())));
    }
    return said;
  }

  /** How far from its moment a note may lie. */
  private static final long NEAR = FirstCaseFact.MINUTE;

  /** The note for the latest target that the case had; of these the one nearest to its moment. */
  private ForecastNote note(CaseId id, int before) {
    return log.stream()
        .filter(n -> n.caseId().equals(id) && n.morning().equals(end.id()))
        .filter(n -> off(n, before) <= NEAR)
        .max(
            Comparator.<ForecastNote>comparingLong(ForecastNote::target)
                .thenComparingLong(n -> -off(n, before)))
        .orElse(null);
  }

  private static long off(ForecastNote n, int before) {
    return Math.abs(n.at() - (n.target() - before * FirstCaseFact.MINUTE));
  }
}
