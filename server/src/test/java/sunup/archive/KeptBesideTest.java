package sunup.archive;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Path;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.concurrent.CompletableFuture;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;
import sunup.board.CaseId;
import sunup.board.DelayReason;
import sunup.board.MorningId;
import sunup.board.RoomId;
import sunup.board.Step;
import sunup.board.SuiteId;
import sunup.journal.Backup;
import sunup.journal.EventCodec;
import sunup.journal.Journal;
import sunup.journal.Kept;
import sunup.journal.PostgresServer;
import sunup.journal.SideDatabase;
import sunup.review.facts.FirstCaseFact;
import sunup.review.facts.ForecastNote;

/** What the board said, and the time before Sunup: on both kinds of store, and through a backup. */
class KeptBesideTest {
  private static final SuiteId SUITE = new SuiteId("main");
  private static final MorningId MORNING = new MorningId(SUITE, LocalDate.of(2026, 3, 2));
  private static final long TARGET = 1_772_436_600_000L;

  @TempDir Path folder;

  private static ForecastLog.Opening beside(Kept.Store store, String part) {
    return () -> {
      try {
        return store.kind() == Kept.IN_A_FOLDER
            ? SideDatabase.sqlite(store.folder(), part)
            : SideDatabase.postgres(PostgresServer.shared().address(store.schema()), part);
      } catch (RuntimeException e) {
        throw e;
      } catch (Exception e) {
        throw new java.io.IOException(e);
      }
    };
  }

  private static ForecastNote note(String room, int minutesBefore, double onTime) {
    return new ForecastNote(
        1,
        MORNING,
        new RoomId(room),
        new CaseId("C" + room),
        TARGET - minutesBefore * 60_000L,
        TARGET,
        40,
        3,
        "inputs",
        7,
        2_000,
        onTime,
        TARGET,
        TARGET + 60_000,
        TARGET + 300_000,
        null,
        List.of(),
        ForecastNote.Origin.LOGGED);
  }

  private static boolean kept(ForecastLog log, long epoch, ForecastNote... notes) throws Exception {
    CompletableFuture<Boolean> done = new CompletableFuture<>();
    log.keep(List.of(notes), epoch, done::complete);
    return done.get();
  }

  /** Room 1 is late on each fifth morning. */
  private static List<FirstCaseFact> history(int days) {
    return LocalDate.of(2025, 9, 1)
        .datesUntil(LocalDate.of(2025, 9, 1).plusDays(days))
        .map(
            date -> {
              long booked = date.toEpochDay() * 86_400_000L + 27_000_000;
              boolean late = date.getDayOfMonth() % 5 == 0;
              return new BroughtCase(
                      date,
                      "1",
                      late ? "eyes" : null,
                      "general",
                      Step.INDUCTION,
                      5,
                      booked,
                      booked + (late ? 1_320_000 : 0),
                      false,
                      late
                          ? new FirstCaseFact.Reported(
                              DelayReason.SURGEON, FirstCaseFact.Settled.OPEN, null)
                          : null)
                  .fact(SUITE);
            })
        .toList();
  }

  private static List<FactFigures.Row> rows(FactStore facts) {
    List<FactFigures.Row> rows = new ArrayList<>();
    facts.figures().rows(Filter.ALL, rows::add);
    return rows;
  }

  /** Of an archive that has the history from the one who brought it. */
  private static List<FactFigures.Row> rows(List<FirstCaseFact> history) {
    try (DuckFacts facts = DuckFacts.inMemory()) {
      facts.history(SUITE, 1, history);
      return rows(facts);
    }
  }

  @ParameterizedTest
  @EnumSource
  void shouldKeepWhatWasSaidOnceAndBringItBackWithTheTimeBefore(Kept kind) throws Exception {
    Kept.Store store = kind.make(folder.resolve("data"));
    store.open().close();
    Path backup = folder.resolve("all.backup");
    List<FirstCaseFact> history = history(70);
    List<ForecastNote> said;
    try (ForecastLog log = new ForecastLog(beside(store, ForecastLog.PART));
        Brought brought = new Brought(beside(store, Brought.PART))) {
      assertThat(log.of(MORNING)).isEmpty();
      assertThat(kept(log, 1, note("1", 60, .8), note("2", 60, .3))).isTrue();
      assertThat(kept(log, 2, note("1", 60, .1), note("1", 40, .7)))
          .as("a new owner says what was said again")
          .isTrue();
      said = log.of(MORNING);
      assertThat(said).containsExactly(note("1", 60, .8), note("2", 60, .3), note("1", 40, .7));

      assertThat(brought.replace(SUITE, history(90))).isEqualTo(1);
      assertThat(brought.replace(SUITE, history)).isEqualTo(2);
      assertThat(brought.of(SUITE)).isEqualTo(history);
      // The board runs on meanwhile.
      assertThat(Backup.write(store.place(), backup, Map.of(), true))
          .containsEntry("forecasts_note", 3L)
          .containsEntry("brought_suite", 1L)
          .containsEntry("brought_month", 3L);
    }
    for (Kept other : Kept.values()) {
      Kept.Store target = other.make(folder.resolve("to-" + other));
      Backup.restore(backup, target.place(), TARGET, Backup.Look.NONE);
      DuckFacts facts = DuckFacts.inMemory();
      EventCodec codec = new EventCodec(count -> new byte[count]);
      try (Journal journal = target.open();
          ForecastLog log = new ForecastLog(beside(target, ForecastLog.PART));
          Archivist archivist =
              new Archivist(
                  journal, codec, facts, log, new Brought(beside(target, Brought.PART)))) {
        assertThat(log.of(MORNING)).isEqualTo(said);
        archivist.bring();
        assertThat(facts.brought()).containsExactly(Map.entry(SUITE, 2));
        assertThat(rows(facts)).isEqualTo(rows(history));
        archivist.history(SUITE, history(90));
        assertThat(facts.figures().choices(Filter.ALL).cases()).isEqualTo(90);
      }
    }
  }
}
