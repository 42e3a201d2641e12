package sunup.archive;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import java.util.concurrent.CompletableFuture;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.atomic.AtomicBoolean;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import sunup.archive.FactStore.Source;
import sunup.board.MorningId;
import sunup.review.Measures;
import sunup.review.Split;
import sunup.review.charts.Lateness;
import sunup.review.charts.MinutesByCause;
import sunup.review.charts.MinutesByCause.Grouping;
import sunup.review.facts.FirstCaseFact;
import sunup.review.learn.Lessons;

/** What takes several questions sees one archive, though mornings are made anew meanwhile. */
class AskedWhileWrittenTest {
  private static final int ASKED = 60;

  private static final FactStore.Taught NOTHING =
      new FactStore.Taught(
          new Lessons(List.of(), List.of(), List.of(), List.of(), 0, 0, new Lessons.Left(0, 0, 0)),
          List.of(),
          null);

  /** One morning of 80 rooms, made again and again with all of its first cases or with a few. */
  @Test
  @Timeout(value = 120, unit = TimeUnit.SECONDS)
  void shouldAnswerOfOneStateOfAMorningThatIsMadeAnew() {
    List<FirstCaseFact> before = RandomFacts.of(7, 1, 40, 3);
    List<FirstCaseFact> all = RandomFacts.of(8, 1, 80, 1);
    List<FirstCaseFact> few = all.subList(0, 14);
    MorningId morning = all.get(0).morning();
    List<FirstCaseFact> others = before.stream().filter(f -> !f.morning().equals(morning)).toList();
    List<FirstCaseFact> much = both(others, all);
    List<FirstCaseFact> little = both(others, few);
    List<Measures> measures = List.of(Measures.of(much), Measures.of(little));
    try (DuckFacts store = DuckFacts.inMemory()) {
      store.append(Source.HISTORY, others.iterator());
      store.replace(morning, 1, all, NOTHING);
      AtomicBoolean over = new AtomicBoolean();
      CompletableFuture<Void> writing =
          CompletableFuture.runAsync(
              () -> {
                for (long seq = 2; !over.get(); seq++) {
                  store.replace(morning, seq, seq % 2 == 0 ? few : all, NOTHING);
                }
              });
      try {
        for (int i = 0; i < ASKED; i++) {
          isOneOf(store.figures(), measures, much, little);
        }
      } finally {
        over.set(true);
        writing.join();
      }
    }
  }

  private static void isOneOf(
      FactFigures figures,
      List<Measures> measures,
      List<FirstCaseFact> much,
      List<FirstCaseFact> little) {
    Measures got = figures.measures(Filter.ALL);
    Measures due = measures.stream().filter(m -> m.starts() == got.starts()).findFirst().get();
    FactStoreTest.same(got, due);
    Lateness lateness = figures.lateness(Filter.ALL);
    FactStoreTest.same(
        lateness,
        lateness.starts() == Lateness.of(much).starts() ? Lateness.of(much) : Lateness.of(little));
    MinutesByCause causes = figures.causes(Filter.ALL, Grouping.KIND);
    List<FirstCaseFact> whose =
        causes.starts() == MinutesByCause.of(much, Grouping.KIND).starts() ? much : little;
    FactStoreTest.same(causes, MinutesByCause.of(whose, Grouping.KIND));
    assertThat(figures.measures(Filter.ALL.inSuite("s0"), Split.WEEKDAY)).isNotEmpty();
  }

  private static List<FirstCaseFact> both(List<FirstCaseFact> one, List<FirstCaseFact> other) {
    return Stream.concat(one.stream(), other.stream()).toList();
  }
}
