package sunup.http;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.concurrent.ConcurrentHashMap;
import sunup.board.Morning;
import sunup.board.MorningId;
import sunup.review.readings.Readings;
import sunup.suites.Suites;

/**
 * What was read at the machines on mornings that are over, from the journal. A morning is read once
 * in {@link #KEPT_MS}: entries may still come for some days after it. May be called from any thread
 * that may wait.
 */
final class PastReadings {
  /** Days that are looked back. */
  static final int DAYS_BACK_MAX = 28;

  /** Mornings that are read at most. */
  static final int MORNINGS_MAX = 15;

  static final long KEPT_MS = 3_600_000;

  private static final String AWAY = "The journal does not answer. Ask again.";

  private final Suites suites;
  private final Map<MorningId, Kept> kept = new ConcurrentHashMap<>();

  private record Kept(long at, List<Readings.Reading> readings) {}

  PastReadings(Suites suites) {
    this.suites = suites;
  }

  /**
   * All readings of the mornings before this one that are closed, or over for two days.
   *
   * @param nowMs monotonic
   */
  List<Readings.Reading> before(MorningId today, long nowMs) throws Answers.Wrong {
    kept.entrySet().removeIf(e -> nowMs - e.getValue().at() > KEPT_MS);
    List<Readings.Reading> all = new ArrayList<>();
    for (MorningId morning : mornings(today)) {
      Kept one = kept.get(morning);
      if (one == null) {
        Morning state = OwnerCalls.look(suites, morning, AWAY).orElse(null);
        if (state == null) {
          continue;
        }
        boolean over =
            state.phase() == Morning.Phase.CLOSED
                || morning.date().isBefore(today.date().minusDays(1));
        if (!over) {
          continue;
        }
        one = new Kept(nowMs, Readings.of(state));
        kept.put(morning, one);
      }
      all.addAll(one.readings());
    }
    return all;
  }

  private List<MorningId> mornings(MorningId today) throws Answers.Wrong {
    LocalDate first = today.date().minusDays(DAYS_BACK_MAX);
    return OwnerCalls.mornings(suites, AWAY).stream()
        .filter(m -> m.suite().equals(today.suite()))
        .filter(m -> m.date().isBefore(today.date()) && !m.date().isBefore(first))
        .sorted(Comparator.comparing(MorningId::date).reversed())
        .limit(MORNINGS_MAX)
        .toList();
  }
}
