package sunup.archive;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.LocalDate;
import java.util.List;
import java.util.Set;
import org.junit.jupiter.api.Test;
import sunup.board.CaseId;
import sunup.board.MorningId;
import sunup.board.RoomId;
import sunup.board.SuiteId;
import sunup.forecast.Forecaster;
import sunup.review.facts.ForecastNote;
import sunup.review.facts.ForecastNote.Origin;
import sunup.review.facts.NotesDue;

class RemadeTest {
  private static final MorningId MORNING =
      new MorningId(new SuiteId("main"), LocalDate.of(2026, 3, 2));
  private static final long TARGET = 1_772_436_600_000L;

  private static ForecastNote note(int minutesBefore, int model, Origin origin) {
    return new ForecastNote(
        1,
        MORNING,
        new RoomId("1"),
        new CaseId("C1"),
        TARGET - minutesBefore * 60_000L,
        TARGET,
        40,
        model,
        "inputs",
        7,
        256,
        0.8,
        TARGET,
        TARGET + 60_000,
        TARGET + 300_000,
        null,
        List.of(),
        origin);
  }

  @Test
  void shouldMakeAForecastAgainOnceAndAnewForAnotherModel() {
    int now = Forecaster.MODEL;
    List<ForecastNote> kept = List.of(note(60, now, Origin.LOGGED));
    ForecastNote forty = note(40, now, Origin.RECOMPUTED);
    ForecastNote twenty = note(20, now, Origin.RECOMPUTED);
    try (DuckFacts facts = DuckFacts.inMemory()) {
      Remade remade = new Remade(facts);
      facts.remade(MORNING, List.of(note(40, now - 1, Origin.RECOMPUTED)));
      assertThat(
              remade.with(
                  MORNING,
                  kept,
                  known -> {
                    assertThat(known).isEqualTo(keys(kept.get(0)));
                    return List.of(forty, twenty);
                  }))
          .containsExactly(kept.get(0), forty, twenty);
      assertThat(
              remade.with(
                  MORNING,
                  kept,
                  known -> {
                    assertThat(known).isEqualTo(keys(kept.get(0), forty, twenty));
                    return List.of();
                  }))
          .containsExactly(kept.get(0), forty, twenty);
      facts.forget(FactStore.Source.JOURNAL);
      assertThat(facts.remade(MORNING)).as("a remake throws it away").isEmpty();
    }
  }

  private static Set<NotesDue.Key> keys(ForecastNote... notes) {
    return Set.copyOf(List.of(notes).stream().map(NotesDue.Key::of).toList());
  }
}
