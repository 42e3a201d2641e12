package sunup.review.facts;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.time.DayOfWeek;
import java.time.LocalDate;
import java.util.List;
import java.util.Set;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.LongRange;
import org.junit.jupiter.api.Test;
import sunup.board.Actor;
import sunup.board.CaseId;
import sunup.board.Command;
import sunup.board.DelayReason;
import sunup.board.PersonId;
import sunup.board.Placed;
import sunup.board.Recorded;
import sunup.board.Role;
import sunup.board.RoomId;
import sunup.board.Step;
import sunup.codec.BadJson;
import sunup.codec.Json;
import sunup.review.Measures;
import sunup.review.facts.AsRunFact.Piece;
import sunup.review.facts.FirstCaseFact.Came;
import sunup.review.facts.FirstCaseFact.Settled;

class FactsTest {
  private static final LocalDate WEDNESDAY = LocalDate.of(2026, 11, 25);
  private static final CaseId CASE = new CaseId("C1");
  private static final long MINUTE = 60_000;

  /** All of room 1's work is done by 07:20; one step after the other then. */
  private static PlayedMorning quiet() {
    PlayedMorning p = new PlayedMorning(1, WEDNESDAY);
    p.station("06:35", 1, new Command.Arrive(new PersonId("Anna1"), new RoomId("1")));
    int i = 0;
    for (Placed placed : p.morning().itemsOf(new RoomId("1"))) {
      if (placed.sheet().section() != sunup.board.Section.START) {
        Actor by = PlayedMorning.reporter(placed, 1);
        long at = p.at("06:36") + i++ * MINUTE;
        p.give(at, at, by, PlayedMorning.good(placed, by.person(), 1), null);
      }
    }
    assertThat(i).isLessThan(50);
    return p;
  }

  private static FirstCaseFact fact(PlayedMorning p) {
    return FactsBuilder.build(p.journal(), List.of()).get(0);
  }

  @Test
  void shouldTellWhatHappenedOfACaseThatStartedLate() {
    PlayedMorning p = quiet();
    p.station("07:29", 1, new Command.ReportReady(new RoomId("1")));
    p.station("07:31", 1, new Command.Reach(CASE, Step.WHEELS_IN));
    p.station("07:42", 1, new Command.Reach(CASE, Step.INDUCTION));
    p.station("08:15", 1, new Command.Reach(CASE, Step.INCISION));
    p.desk("08:20", new Command.GiveReason(CASE, DelayReason.PATIENT, null));
    p.decides("08:30", new Command.CloseMorning());
    FirstCaseFact fact = fact(p);
    assertThat(fact.room()).isEqualTo(new RoomId("1"));
    assertThat(fact.service()).isEqualTo("general surgery");
    assertThat(fact.technique()).isEqualTo("general");
    assertThat(fact.weekday()).isEqualTo(DayOfWeek.WEDNESDAY);
    assertThat(fact.target()).isEqualTo(p.at("07:30"));
    assertThat(fact.startedAt()).isEqualTo(p.at("07:42"));
    assertThat(fact.lateMinutes()).isEqualTo(12);
    assertThat(fact.onTime()).isFalse();
    assertThat(fact.onTime(10)).isFalse();
    assertThat(fact.onTime(15)).isTrue();
    assertThat(fact.times().readyAt()).isEqualTo(p.at("07:29"));
    assertThat(fact.times().wheelsIn()).isEqualTo(p.at("07:31"));
    assertThat(fact.times().release()).isNull();
    assertThat(fact.times().arrivals())
        .extracting(Came::what)
        .contains("anaesthetist", "patient.arrived", "surgeon.seen");
    assertThat(fact.beside().wheelsInToInductionMs()).isEqualTo(11 * MINUTE);
    assertThat(fact.reported().reason()).isEqualTo(DelayReason.PATIENT);
    assertThat(fact.reported().settled()).isEqualTo(Settled.OPEN);
    assertThat(fact.asRun().lateMs()).isEqualTo(12 * MINUTE);
    assertThat(fact.asRun().weakShare()).isEqualTo(0.0);
    assertThat(fact.asRun().largest()).isPresent();
    assertThat(fact.said()).extracting(BoardSaid::minutesBefore).containsExactly(60, 40, 20, 10);
    assertThat(fact.said()).extracting(BoardSaid::came).containsOnly(false);
    assertThat(fact.said()).extracting(BoardSaid::done).isSorted();
    assertThat(fact.said().get(0).done()).isZero();
    assertThat(fact.said().get(3).done()).isGreaterThan(0.8);
  }

  @Test
  void shouldCountAStartWithinItsMinuteAsOnTimeThoughItCarriesLateSeconds() {
    PlayedMorning p = quiet();
    long at = p.at("07:30") + 59_000;
    p.give(at, at, PlayedMorning.station(1), new Command.Reach(CASE, Step.INDUCTION), null);
    p.desk("08:30", new Command.CloseMorning());
    assertThat(fact(p).onTime(0)).isTrue();
    assertThat(fact(p).lateMs()).isEqualTo(59_000);
    assertThat(fact(p).asRun().lateMs()).isEqualTo(59_000);
  }

  @Test
  void shouldMeasureAgainstAnAgreedLaterStart() {
    PlayedMorning p = quiet();
    p.decides("07:00", new Command.AgreeLater(CASE, p.at("08:00")));
    p.station("08:05", 1, new Command.Reach(CASE, Step.INDUCTION));
    p.desk("09:00", new Command.CloseMorning());
    FirstCaseFact fact = fact(p);
    assertThat(fact.agreedAt()).isEqualTo(p.at("08:00"));
    assertThat(fact.lateMinutes()).isEqualTo(5);
    assertThat(fact.said().get(3).target()).isEqualTo(p.at("08:00"));
  }

  @Test
  void shouldSayWhichMinutesRestOnAStartThatWasEnteredLate() {
    PlayedMorning p = quiet();
    p.give(
        p.at("07:50"),
        p.at("08:10"),
        PlayedMorning.station(1),
        new Command.Reach(CASE, Step.INDUCTION),
        null);
    p.desk("08:30", new Command.CloseMorning());
    AsRunFact asRun = fact(p).asRun();
    assertThat(asRun.lateMs()).isEqualTo(20 * MINUTE);
    assertThat(asRun.weakMs()).isPositive();
    assertThat(asRun.weakShare()).isGreaterThan(0.5);
  }

  @Test
  void shouldMakeNoStartOfACaseThatWasCancelledOrNeverToldOf() {
    PlayedMorning p = quiet();
    p.decides("07:25", new Command.CancelCase(CASE, sunup.board.Private.of("fever")));
    p.desk("08:30", new Command.CloseMorning());
    assertThat(fact(p).cancelled()).isTrue();
    assertThat(fact(p).hasStarted()).isFalse();
    assertThat(fact(p).lateMs()).isZero();
    assertThat(fact(p).said()).extracting(BoardSaid::came).containsOnlyNulls();
    PlayedMorning untold = quiet().desk("08:30", new Command.CloseMorning());
    assertThat(fact(untold).hasStarted()).isFalse();
    assertThat(fact(untold).asRun()).isEqualTo(AsRunFact.NONE);
  }

  /** In at 07:25 and cut at 08:10; at which minute between them it was induced nobody told. */
  @Test
  void shouldTakeAStartThatNobodyToldForTheStepAfterItAndSaySoAndJudgeNoForecastByIt() {
    PlayedMorning p = quiet();
    p.station("07:25", 1, new Command.Reach(CASE, Step.WHEELS_IN));
    p.station("08:10", 1, new Command.Reach(CASE, Step.INCISION));
    p.desk("08:30", new Command.CloseMorning());
    FirstCaseFact fact = fact(p);
    assertThat(fact.startInferred()).isTrue();
    assertThat(fact.startedAt()).isEqualTo(p.at("08:10"));
    assertThat(fact.lateMinutes()).isEqualTo(40);
    assertThat(fact.asRun().lateMs()).isEqualTo(40 * MINUTE);
    assertThat(fact.asRun().weakMs()).as("rests on what nobody told").isPositive();
    assertThat(fact.said()).extracting(BoardSaid::came).containsOnlyNulls();
    Measures measures = Measures.of(List.of(fact));
    assertThat(measures.starts()).isEqualTo(1);
    assertThat(measures.inferred()).isEqualTo(1);

    PlayedMorning late = quiet();
    late.station("07:35", 1, new Command.Reach(CASE, Step.WHEELS_IN));
    late.station("08:10", 1, new Command.Reach(CASE, Step.INCISION));
    late.desk("08:30", new Command.CloseMorning());
    assertThat(fact(late).said()).extracting(BoardSaid::came).containsOnly(false);
    PlayedMorning early = quiet();
    early.station("07:29", 1, new Command.Reach(CASE, Step.INCISION));
    early.desk("08:30", new Command.CloseMorning());
    assertThat(fact(early).said()).extracting(BoardSaid::came).containsOnly(true);
  }

  @Test
  void shouldAskForTheMorningToBeClosedFirst() {
    assertThatThrownBy(() -> fact(quiet()))
        .isInstanceOf(IllegalArgumentException.class)
        .hasMessageContaining("close main/2026-11-25 first");
  }

  @Test
  void shouldFollowACaseThatWasSwappedIntoAnotherRoom() {
    PlayedMorning p = new PlayedMorning(2, WEDNESDAY);
    p.decides("06:40", new Command.SwapCases(CASE, new CaseId("C2")));
    p.station("07:36", 2, new Command.Reach(CASE, Step.INDUCTION));
    p.station("07:51", 1, new Command.Reach(new CaseId("C2"), Step.INDUCTION));
    p.desk("09:00", new Command.CloseMorning());
    List<FirstCaseFact> facts = FactsBuilder.build(p.journal(), List.of());
    assertThat(facts).extracting(f -> f.room().value()).containsExactly("2", "1");
    assertThat(facts).extracting(FirstCaseFact::lateMinutes).containsExactly(6.0, 21.0);
    assertThat(facts).allMatch(f -> f.asRun().lateMs() == f.lateMs());
    assertThat(facts.get(0).said())
        .extracting(BoardSaid::deskActed)
        .containsExactly(true, false, false, false);
  }

  @Property(tries = 60)
  void shouldExplainEveryLateMillisecondAndNameNobody(
      @ForAll @LongRange(min = 1, max = 1_000_000) long seed) throws BadJson {
    PlayedMorning p = PlayedMorning.random(3, WEDNESDAY, seed);
    List<FirstCaseFact> facts = FactsBuilder.build(p.journal(), List.of());
    assertThat(facts).hasSize(3);
    for (FirstCaseFact fact : facts) {
      assertThat(fact.hasStarted()).isTrue();
      assertThat(fact.asRun().why()).isNull();
      assertThat(fact.asRun().lateMs()).isEqualTo(fact.lateMs());
      assertThat(fact.asRun().weakMs()).isBetween(0L, fact.lateMs());
      assertThat(fact.asRun().pieces()).allMatch(piece -> piece.lateMs() >= 0);
      List<Piece> pieces = fact.asRun().pieces();
      assertThat(pieces.get(pieces.size() - 1).to()).isEqualTo(fact.startedAt());
      String json = Json.write(fact);
      assertThat(json).doesNotContain("Anna", "Nora", "Rita", "Surgeon", "Hugo", "Tom", "hernia");
      assertThat(Json.read(json, FirstCaseFact.class)).isEqualTo(fact);
    }
    assertThat(FactsBuilder.build(p.journal(), List.of())).isEqualTo(facts);
  }

  @Test
  void shouldKnowNothingLaterWhenItSaysWhatTheBoardWouldHaveSaid() {
    PlayedMorning p = PlayedMorning.random(2, WEDNESDAY, 7);
    List<ForecastNote> notes = ForecastReplay.notes(p.journal(), 64, Set.of());
    assertThat(notes).hasSize(8);
    ForecastNote note =
        notes.stream().filter(n -> n.at() == p.at("07:10")).findFirst().orElseThrow();
    List<Recorded> byThen =
        p.journal().stream().filter(r -> r.recordedAt() <= p.at("07:11")).toList();
    List<ForecastNote> again = ForecastReplay.notes(byThen, 64, Set.of());
    assertThat(again).contains(note);
    assertThat(note.onTime()).isBetween(0.0, 1.0);
    assertThat(note.trials()).isEqualTo(64);
    assertThat(Json.write(notes)).doesNotContain("Anna", "Nora", "Rita", "Surgeon", "Hugo");
    Set<NotesDue.Key> kept = Set.of(NotesDue.Key.of(note));
    assertThat(ForecastReplay.notes(p.journal(), 64, kept))
        .hasSize(7)
        .doesNotContain(note)
        .isSubsetOf(notes);
    List<FirstCaseFact> facts = FactsBuilder.build(p.journal(), notes);
    assertThat(facts.get(0).said()).allMatch(s -> s.note() != null);
    assertThat(facts.get(0).said().get(2).note().at()).isEqualTo(p.at("07:10"));
  }

  @Test
  void shouldSayWhetherTheDeskActedAfterAForecast() {
    PlayedMorning p = quiet();
    RoomId room = new RoomId("1");
    p.desk("07:00", new Command.TakeHoldup(room, "drugs", null, null));
    p.station("07:15", 1, new Command.AskHelp(room, null));
    p.station("07:40", 1, new Command.Reach(CASE, Step.INDUCTION));
    p.desk("08:00", new Command.TakeHoldup(room, "drugs", null, null));
    p.desk("08:30", new Command.CloseMorning());
    assertThat(fact(p).said())
        .extracting(BoardSaid::deskActed)
        .containsExactly(true, true, false, false);
  }

  @Test
  void shouldKeepWhoseWordTheReasonIsOutAndWhetherItWasAgreed() {
    PlayedMorning p = quiet();
    p.station("07:42", 1, new Command.Reach(CASE, Step.INDUCTION));
    p.station("07:50", 1, new Command.GiveReason(CASE, DelayReason.SURGEON, null));
    p.give(
        p.at("07:55"),
        p.at("07:55"),
        new Actor(Role.CIRCULATING, new PersonId("Nora1"), "station-1"),
        new Command.DisputeReason(CASE, DelayReason.EQUIPMENT, null),
        p.morning().seq());
    p.desk("08:30", new Command.CloseMorning());
    assertThat(fact(p).reported().settled()).isEqualTo(Settled.DISPUTED);
    assertThat(fact(p).reported().instead()).isEqualTo(DelayReason.EQUIPMENT);
  }
}
