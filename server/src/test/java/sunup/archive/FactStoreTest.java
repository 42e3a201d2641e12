package sunup.archive;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Files;
import java.nio.file.Path;
import java.time.DayOfWeek;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.assertj.core.api.recursive.comparison.RecursiveComparisonConfiguration;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import sunup.archive.FactStore.Source;
import sunup.board.DelayReason;
import sunup.board.LearnedTimes;
import sunup.board.MorningId;
import sunup.board.SuiteId;
import sunup.review.CausesCompared;
import sunup.review.Comparison;
import sunup.review.ComparisonSums;
import sunup.review.Measures;
import sunup.review.Split;
import sunup.review.charts.Lateness;
import sunup.review.charts.MinutesByCause;
import sunup.review.charts.MinutesByCause.Grouping;
import sunup.review.charts.Period;
import sunup.review.charts.RoomByWeekday;
import sunup.review.facts.BoardSaid;
import sunup.review.facts.FirstCaseFact;
import sunup.review.facts.ForecastNote;
import sunup.review.learn.Lessons;
import sunup.review.trial.Trial;
import sunup.review.trial.TrialApart;

/** The archive says what the review says of the facts themselves, and keeps what it was given. */
class FactStoreTest {
  private static final List<FirstCaseFact> FACTS = RandomFacts.of(4, 2, 9, 60);
  private static final Filter SOME =
      Filter.ALL
          .inSuite("s1")
          .between(LocalDate.of(2026, 3, 10), LocalDate.of(2026, 5, 8))
          .ofServices(List.of("bones", "none"))
          .on(List.of(DayOfWeek.MONDAY, DayOfWeek.THURSDAY, DayOfWeek.FRIDAY));
  private static final List<FirstCaseFact> SOME_FACTS =
      FACTS.stream().filter(FactStoreTest::isSome).toList();
  private static final RecursiveComparisonConfiguration CLOSE =
      RecursiveComparisonConfiguration.builder()
          .withComparatorForType(close(), Double.class)
          .build();

  private static final FactStore.Taught NOTHING =
      new FactStore.Taught(
          new Lessons(List.of(), List.of(), List.of(), List.of(), 0, 0, new Lessons.Left(0, 0, 0)),
          List.of(),
          null);

  private static DuckFacts kept;

  private static Comparator<Double> close() {
    return (a, b) ->
        Math.abs(a - b) <= 1e-9 * (1 + Math.abs(a) + Math.abs(b)) ? 0 : Double.compare(a, b);
  }

  private static boolean isSome(FirstCaseFact f) {
    LocalDate date = f.morning().date();
    return f.morning().suite().value().equals("s1")
        && !date.isBefore(LocalDate.of(2026, 3, 10))
        && !date.isAfter(LocalDate.of(2026, 5, 8))
        && !"eyes".equals(f.service())
        && List.of(DayOfWeek.MONDAY, DayOfWeek.THURSDAY, DayOfWeek.FRIDAY).contains(f.weekday());
  }

  @BeforeAll
  static void keep() {
    kept = DuckFacts.inMemory();
    kept.append(Source.HISTORY, FACTS.iterator());
  }

  @AfterAll
  static void letGo() {
    kept.close();
  }

  private static FactFigures figures() {
    return kept.figures();
  }

  static void same(Object actual, Object expected) {
    assertThat(actual).usingRecursiveComparison(CLOSE).isEqualTo(expected);
  }

  @Test
  void shouldGiveTheMeasuresOfTheFactsThemselves() {
    assertThat(SOME_FACTS).hasSizeGreaterThan(100);
    same(figures().measures(Filter.ALL), Measures.of(FACTS));
    same(figures().measures(SOME), Measures.of(SOME_FACTS));
    for (Split split : Split.values()) {
      same(figures().measures(SOME, split), Measures.by(split, SOME_FACTS));
    }
  }

  @Test
  void shouldWithholdFewStartsAndSayNothingOfNone() {
    Filter few =
        Filter.ALL.inSuite("s0").between(LocalDate.of(2026, 3, 2), LocalDate.of(2026, 3, 2));
    assertThat(figures().measures(few).figures()).isNull();
    assertThat(figures().measures(few).starts()).isPositive();
    assertThat(figures().lateness(few).bins()).isNull();
    assertThat(figures().sideBySide(few)).isNull();
    assertThat(figures().measures(Filter.ALL.inSuite("other")).cases()).isZero();
  }

  /** Enough starts, and too few of which it is known whether they were on time. */
  @Test
  void shouldWithholdSharesOfFewJudgedStartsAsTheFactsDo() {
    List<FirstCaseFact> facts = new ArrayList<>();
    FACTS.stream().filter(f -> f.hasStarted() && !f.judged()).limit(8).forEach(facts::add);
    FACTS.stream().filter(FirstCaseFact::judged).limit(9).forEach(facts::add);
    assertThat(facts).hasSize(17);
    try (DuckFacts store = DuckFacts.inMemory()) {
      store.append(Source.HISTORY, facts.iterator());
      Measures measures = store.figures().measures(Filter.ALL);
      same(measures, Measures.of(facts));
      assertThat(measures.figures().onTime()).isNull();
      assertThat(measures.figures().unjudged()).isEqualTo(8);
    }
  }

  @Test
  void shouldGiveThePicturesOfTheFactsThemselves() {
    for (Period period : Period.values()) {
      List<FirstCaseFact> own = SOME_FACTS.stream().filter(FirstCaseFact::judged).toList();
      List<FirstCaseFact> ten = SOME_FACTS.stream().filter(f -> f.judged(10)).toList();
      assertThat(own).as("of some nobody knows").hasSizeLessThan(SOME_FACTS.size());
      same(period.shares(figures().days(SOME, null)), period.shares(own, FirstCaseFact::onTime));
      same(period.shares(figures().days(SOME, 10)), period.shares(ten, f -> f.onTime(10)));
      same(period.meanMinutes(figures().days(SOME)), period.minutes(SOME_FACTS));
      assertThat(figures().unjudged(SOME, null)).isEqualTo(started(SOME_FACTS) - started(own));
      assertThat(figures().unjudged(SOME, 10)).isEqualTo(started(SOME_FACTS) - started(ten));
    }
    for (Grouping grouping : Grouping.values()) {
      same(figures().causes(SOME, grouping), MinutesByCause.of(SOME_FACTS, grouping));
      Map<String, MinutesByCause> apart = new LinkedHashMap<>();
      Split.WEEKDAY
          .apart(SOME_FACTS)
          .forEach((name, facts) -> apart.put(name, MinutesByCause.of(facts, grouping)));
      same(figures().causes(SOME, grouping, Split.WEEKDAY), apart);
      same(figures().causeSums(SOME, grouping), CausesCompared.Sums.of(SOME_FACTS, grouping));
      same(figures().causeSums(Filter.ALL, grouping), CausesCompared.Sums.of(FACTS, grouping));
    }
    same(figures().sideBySide(SOME), MinutesByCause.sideBySide(SOME_FACTS));
    same(figures().roomByWeekday(SOME), RoomByWeekday.ofFacts(SOME_FACTS));
    same(figures().lateness(SOME), Lateness.of(SOME_FACTS));
  }

  private static int started(List<FirstCaseFact> facts) {
    return (int) facts.stream().filter(FirstCaseFact::hasStarted).count();
  }

  @Test
  void shouldMeasureGroupsWhateverTheyAreCalled() {
    List<FirstCaseFact> facts =
        FACTS.stream()
            .map(f -> RandomFacts.ofService(f, "it's " + f.service() + " $BY $WHERE ?, ');--"))
            .toList();
    try (DuckFacts store = DuckFacts.inMemory()) {
      store.append(Source.HISTORY, facts.iterator());
      Map<String, Measures> measures = store.figures().measures(Filter.ALL, Split.SERVICE);
      same(measures, Measures.by(Split.SERVICE, facts));
      assertThat(measures.values()).allMatch(m -> m.figures().minutes().intervals() != null);
    }
  }

  @Test
  void shouldJudgeTheBoardByTheSameForecasts() {
    for (int before : List.of(60, 20)) {
      same(figures().trial(SOME, before, 1), Trial.of(SOME_FACTS, before, 1));
      same(figures().trial(Filter.ALL, before, 1), Trial.of(FACTS, before, 1));
      for (Split split : List.of(Split.ROOM, Split.SERVICE, Split.WEEKDAY)) {
        same(figures().trial(SOME, before, split), TrialApart.of(SOME_FACTS, split, before));
        TrialApart all = figures().trial(Filter.ALL, before, split);
        same(all, TrialApart.of(FACTS, split, before));
        assertThat(all.groups()).allMatch(g -> g.overAverage().p() != null);
      }
    }
  }

  @Test
  void shouldCompareTheSameStarts() {
    same(figures().starts(SOME), Comparison.Start.of(SOME_FACTS));
    Map<String, List<Comparison.Start>> apart = new LinkedHashMap<>();
    Split.WEEKDAY
        .apart(SOME_FACTS)
        .forEach((name, facts) -> apart.put(name, Comparison.Start.of(facts)));
    assertThat(figures().starts(SOME, Split.WEEKDAY)).isEqualTo(apart);
  }

  @Test
  void shouldCompareManyMorningsByTheirSums() {
    List<FirstCaseFact> facts = RandomFacts.of(5, 1, 6, 150);
    LocalDate at = facts.get(facts.size() / 2).morning().date();
    try (DuckFacts store = DuckFacts.inMemory()) {
      store.append(Source.HISTORY, facts.iterator());
      FactFigures of = store.figures();
      assertThat(of.mornings(Filter.ALL)).isGreaterThan(ComparisonSums.DEALT_MOST);
      for (Split split : List.of(Split.ROOM, Split.SERVICE, Split.WEEKDAY)) {
        same(
            Comparison.eachOfSums(of.sums(Filter.ALL, split)),
            Comparison.eachWithTheRest(split, facts, 1));
      }
      List<FirstCaseFact> before =
          facts.stream().filter(f -> f.morning().date().isBefore(at)).toList();
      List<FirstCaseFact> from =
          facts.stream().filter(f -> !f.morning().date().isBefore(at)).toList();
      Filter first = Filter.ALL.between(null, at.minusDays(1));
      Filter second = Filter.ALL.between(at, null);
      Comparison periods = of.sums(second, first).compare("from", "before");
      same(periods, Comparison.of("from", from, "before", before, 1));
      assertThat(periods.minutes().p()).isNotNull();
    }
  }

  @Test
  void shouldExportOneRowForEachFirstCase() {
    List<FactFigures.Row> rows = new ArrayList<>();
    figures().rows(SOME, rows::add);
    assertThat(rows).hasSameSizeAs(SOME_FACTS);
    for (int i = 0; i < rows.size(); i++) {
      FactFigures.Row row = rows.get(i);
      FirstCaseFact fact =
          SOME_FACTS.stream()
              .filter(f -> f.morning().date().equals(row.date()))
              .filter(f -> f.room().value().equals(row.room()))
              .findFirst()
              .orElseThrow();
      assertThat(row.times()).isEqualTo(fact.times());
      assertThat(row.startEvent()).isEqualTo("induction");
      assertThat(row.onTime()).isEqualTo(fact.judged() ? (Boolean) fact.onTime() : null);
      DelayReason instead = fact.reported() == null ? null : fact.reported().instead();
      assertThat(row.instead()).isEqualTo(instead == null ? null : MinutesByCause.word(instead));
      List<BoardSaid> said = fact.said().stream().filter(s -> s.note() != null).toList();
      assertThat(row.said()).hasSameSizeAs(said);
      for (int s = 0; s < said.size(); s++) {
        FactFigures.SaidThen kept = row.said().get(s);
        ForecastNote note = said.get(s).note();
        assertThat(kept.minutesBefore()).isEqualTo(said.get(s).minutesBefore());
        assertThat(kept.onTime()).isEqualTo(note.onTime());
        assertThat(List.of(kept.start10(), kept.start50(), kept.start90()))
            .containsExactly(note.start10(), note.start50(), note.start90());
        assertThat(kept.holdup()).isEqualTo(FactRows.word(note.named().get(0).cause()));
        assertThat(kept.kept()).isEqualTo(note.origin() == ForecastNote.Origin.LOGGED);
        assertThat(kept.deskActed()).isEqualTo(said.get(s).deskActed());
        assertThat(kept.came()).isEqualTo(said.get(s).came());
      }
    }
  }

  @Test
  void shouldOfferWhatThereIsToChooseFrom() {
    FactFigures.Choices all = figures().choices(Filter.ALL.inSuite("s0"));
    assertThat(all.cases()).isEqualTo(FACTS.size() / 2);
    assertThat(all.rooms()).startsWith("R1", "R2").hasSize(9);
    assertThat(all.services()).containsExactly("eyes", "none", "bones");
    assertThat(all.first()).isEqualTo(LocalDate.of(2026, 3, 2));
  }

  /** Mornings went by their sheets, as when a node of an earlier version stood beside. */
  @Test
  void shouldGoOnFromWhatTheLastMorningsWentByThatWentByAnyLearnedTimes() throws Exception {
    SuiteId suite = new SuiteId("s0");
    LocalDate first = LocalDate.of(2026, 3, 2);
    LearnedTimes.Reporting by =
        new LearnedTimes.Reporting(0.1, 0.1, 0.1, 0.7, 0.1, null, 99, 400, 0);
    LearnedTimes went = new LearnedTimes(first, 30, List.of(), by);
    try (DuckFacts store = DuckFacts.inMemory()) {
      FactStore.Taught taught = new FactStore.Taught(NOTHING.lessons(), NOTHING.sheets(), went);
      store.replace(new MorningId(suite, first), 1, List.of(), taught);
      for (int day = 1; day < LessonTable.WENT_FROM; day++) {
        store.replace(new MorningId(suite, first.plusDays(day)), 1, List.of(), NOTHING);
      }
      assertThat(store.figures().closing(suite).next().reporting().never()).isEqualTo(0.7);

      LocalDate later = first.plusDays(LessonTable.WENT_FROM);
      store.replace(new MorningId(suite, later), 1, List.of(), NOTHING);
      assertThat(store.figures().closing(suite).next().reporting()).as("too long ago").isNull();
    }
  }

  @Test
  void shouldReplaceAMorningWholeWhenItIsMadeAnew(@TempDir Path folder) throws Exception {
    MorningId morning = FACTS.get(0).morning();
    List<FirstCaseFact> own = FACTS.stream().filter(f -> f.morning().equals(morning)).toList();
    try (DuckFacts store = DuckFacts.open(folder)) {
      store.append(Source.HISTORY, FACTS.iterator());
      store.replace(morning, 40, own.subList(0, 3), NOTHING);
      store.replace(morning, 41, own, NOTHING);
      same(store.figures().measures(Filter.ALL), Measures.of(FACTS));
      store.forget(Source.HISTORY);
      assertThat(store.figures().measures(Filter.ALL).cases()).isEqualTo(own.size());
    }
    try (DuckFacts again = DuckFacts.open(folder)) {
      assertThat(again.made()).containsExactly(Map.entry(morning, 41L));
      assertThat(again.figures().closing(morning.suite()).mornings()).isEqualTo(1);
      assertThat(again.figures().closing(new SuiteId("other")).mornings()).isZero();
      same(
          again.figures().causes(Filter.ALL, Grouping.KIND), MinutesByCause.of(own, Grouping.KIND));
      again.forget(Source.JOURNAL);
      assertThat(again.figures().choices(Filter.ALL).cases()).isZero();
      assertThat(again.made()).isEmpty();
    }
  }

  @Test
  void shouldMakeTheArchiveAnewWhenItsFileIsDamaged(@TempDir Path folder) throws Exception {
    Files.writeString(folder.resolve(DuckFacts.FILE), "no database at all");
    try (DuckFacts store = DuckFacts.open(folder)) {
      assertThat(store.made()).isEmpty();
      store.append(Source.HISTORY, FACTS.subList(0, 5).iterator());
      assertThat(store.figures().choices(Filter.ALL).cases()).isEqualTo(5);
    }
    assertThat(folder.resolve(DuckFacts.FILE + ".old")).exists();
  }
}
