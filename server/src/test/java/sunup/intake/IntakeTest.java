package sunup.intake;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import net.jqwik.api.Arbitraries;
import net.jqwik.api.Arbitrary;
import net.jqwik.api.Combinators;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.Provide;
import org.junit.jupiter.api.Test;
import sunup.board.Command;
import sunup.board.Morning;
import sunup.board.Morning.Phase;
import sunup.board.Step;

/** Previews of a list against a morning, and what takes it. */
class IntakeTest {
  private static final String HEADER = "case,room,start,technique,options,surgeon\n";

  private static Intake.Taken compare(String csv, Morning now) {
    return Intake.compare(Lists.read(csv), Lists.SITE, Lists.DAY, now, 0);
  }

  private static Morning morning(String csv, Phase phase) {
    return Mornings.of(Planner.plan(Lists.SITE, Lists.cases(csv), Lists.DAY).plan(), phase);
  }

  @Test
  void shouldPlanADraftWhereThereIsNoMorningYet() {
    Intake.Taken taken = compare("room,start,technique\n1,07:30,ga\n2,07:30,ga\n", Morning.NONE);
    assertThat(taken.preview().added())
        .extracting(r -> r.caseId().value())
        .containsExactly("c1", "c2");
    assertThat(taken.commands()).singleElement().isInstanceOf(Command.Plan.class);
  }

  @Test
  void shouldNoteCasesThatAreBookedBeforeNowAndTakeThemAllTheSame() {
    CaseListResult list = Lists.read("room,start,technique\n1,07:30,ga\n2,09:30,ga\n");
    long late = list.cases().get(0).bookedAt() + 60_000;
    Intake.Taken taken = Intake.compare(list, Lists.SITE, Lists.DAY, Morning.NONE, late);
    assertThat(taken.preview().notes())
        .filteredOn(note -> note.field().equals("start"))
        .singleElement()
        .satisfies(note -> assertThat(note.line()).isEqualTo(2))
        .satisfies(
            note ->
                assertThat(note.message())
                    .startsWith("1 of 2 cases is booked at a time that is past"));
    assertThat(taken.commands()).hasSize(1);
    CaseListResult one = Lists.read("room,start,technique\n1,07:30,ga\n");
    assertThat(Intake.compare(one, Lists.SITE, Lists.DAY, Morning.NONE, late).preview().notes())
        .anySatisfy(note -> assertThat(note.message()).startsWith("the only case is booked at a"));
    long early = list.cases().get(0).bookedAt();
    taken = Intake.compare(list, Lists.SITE, Lists.DAY, Morning.NONE, early);
    assertThat(taken.preview().notes()).noneMatch(note -> note.field().equals("start"));
  }

  @Test
  void shouldPlanADraftAnewWithTheCasesThatAreKept() {
    Morning draft = morning(HEADER + "a,1,07:30,ga,,s-1\nb,2,07:30,ga,,s-2\n", Phase.DRAFT);
    Intake.Taken taken = compare(HEADER + "a,1,08:00,ga,,s-1\n", draft);
    assertThat(taken.preview().changed()).hasSize(1);
    assertThat(taken.preview().removed()).extracting(r -> r.caseId().value()).containsExactly("b");
    Command.Plan plan = (Command.Plan) taken.commands().get(0);
    assertThat(plan.plan().cases()).extracting(c -> c.id().value()).containsExactly("a");
  }

  @Test
  void shouldSayWhatWouldChangeInWords() {
    Morning open = morning(HEADER + "a,1,07:30,ga,,s-1\nb,2,07:30,ga,,s-2\n", Phase.OPEN);
    Intake.Taken taken = compare(HEADER + "a,3,08:00,spinal,block,s-1\nb,2,07:30,ga,,s-2\n", open);
    assertThat(taken.preview().unchanged()).isEqualTo(1);
    assertThat(taken.preview().changed().get(0).changes())
        .containsExactly(
            "room 1, now 3",
            "start 07:30, now 08:00",
            "technique general, now spinal",
            "options none, now block");
    assertThat(taken.commands()).singleElement().isInstanceOf(Command.ChangeCase.class);
  }

  @Test
  void shouldKeepTheCaseOfARoomIfTheListHasNoIds() {
    Morning open = morning("room,start,technique\n1,07:30,ga\n2,07:30,ga\n", Phase.OPEN);
    Intake.Taken taken = compare("room,start,technique\n1,07:45,ga\n2,07:30,ga\n", open);
    assertThat(taken.preview().changed()).extracting(r -> r.caseId().value()).containsExactly("c1");
    assertThat(taken.preview().added()).isEmpty();
    assertThat(taken.preview().removed()).isEmpty();
  }

  @Test
  void shouldSwapCasesThatChangePlaces() {
    Morning open = morning(HEADER + "a,1,07:30,ga,,s-1\nb,2,07:30,ga,,s-2\n", Phase.OPEN);
    String csv = HEADER + "a,2,07:30,ga,,s-1\nb,1,07:30,ga,,s-2\n";
    Intake.Taken taken = compare(csv, open);
    assertThat(taken.commands()).singleElement().isInstanceOf(Command.SwapCases.class);
    Morning after = Mornings.after(open, taken.commands());
    assertThat(compare(csv, after).preview().unchanged()).isEqualTo(2);
  }

  @Test
  void shouldGiveANewIdInTheRoomOfACancelledCase() {
    String csv = "room,start,technique\n1,07:30,ga\n2,07:30,ga\n";
    Morning open = morning(csv, Phase.OPEN);
    Morning without =
        Mornings.after(open, List.of(new Command.CancelCase(new sunup.board.CaseId("c1"), null)));
    Intake.Taken taken = compare(csv, without);
    assertThat(taken.preview().added()).extracting(r -> r.caseId().value()).containsExactly("c1-2");
    Mornings.after(without, taken.commands());
  }

  @Test
  void shouldRefuseToChangeOrCancelACaseThatHasBegun() {
    Morning open = morning(HEADER + "a,1,07:30,ga,,s-1\nb,2,07:30,ga,,s-2\n", Phase.OPEN);
    Morning begun = Mornings.reached(open, "a", Step.SENT_FOR);
    Intake.Taken changed = compare(HEADER + "a,1,08:00,ga,,s-1\nb,2,07:30,ga,,s-2\n", begun);
    assertThat(Lists.words(changed.preview().problems()))
        .containsExactly(
            "case list, line 2, case: 'a' in room 1 has begun (patient sent for or later) and would"
                + " be changed (start 07:30, now 08:00); do that at the desk if it is meant");
    assertThat(changed.commands()).isEmpty();
    assertThat(compare(HEADER + "b,2,07:30,ga,,s-2\n", begun).preview().canBeTaken()).isFalse();
    assertThat(
            compare(HEADER + "a,1,07:30,ga,,s-1\nb,2,08:00,ga,,s-2\n", begun)
                .preview()
                .canBeTaken())
        .isTrue();
  }

  @Test
  void shouldTakeNothingIfTheMorningIsClosedOrTheListIsWrongOrNothingChanges() {
    String csv = HEADER + "a,1,07:30,ga,,s-1\n";
    Intake.Taken closed = compare(HEADER + "a,2,07:30,ga,,s-1\n", morning(csv, Phase.CLOSED));
    assertThat(closed.commands()).isEmpty();
    assertThat(Lists.words(closed.preview().problems())).anyMatch(p -> p.contains("is closed"));
    Intake.Taken wrong = compare(HEADER + "a,1,never,ga,,s-1\n", morning(csv, Phase.OPEN));
    assertThat(wrong.commands()).isEmpty();
    assertThat(wrong.preview().removed()).isEmpty();
    assertThat(compare(csv, morning(csv, Phase.OPEN)).commands()).isEmpty();
  }

  @Test
  void shouldCancelNothingForRowsThatWereLeftOut() {
    Morning open = morning(HEADER + "a,1,07:30,ga,,s-1\nb,2,07:30,ga,,s-2\n", Phase.OPEN);
    CaseListResult some = some(HEADER + "a,1,never,ga,,s-1\nb,2,08:00,ga,,s-2\n");
    Intake.Taken taken = Intake.compare(some, Lists.SITE, Lists.DAY, open, 0);
    assertThat(taken.preview().removed()).isEmpty();
    assertThat(taken.commands()).hasSize(1);
    Intake.Taken into =
        Intake.compare(
            some(HEADER + "a,1,never,ga,,s-1\nb,1,08:00,ga,,s-2\n"),
            Lists.SITE,
            Lists.DAY,
            open,
            0);
    assertThat(Lists.words(into.preview().problems()))
        .anyMatch(p -> p.contains("room 1 still has case 'a'"));
  }

  private static CaseListResult some(String csv) {
    return CaseList.read(
        "list",
        csv.getBytes(java.nio.charset.StandardCharsets.UTF_8),
        Lists.SITE,
        Lists.DAY,
        Lists.SHEETS,
        CaseList.Take.ROWS_THAT_ARE_RIGHT);
  }

  @Test
  void shouldNoteASurgeonWhomAnOpenMorningDoesNotKnow() {
    Morning open = morning(HEADER + "a,1,07:30,ga,,s-1\n", Phase.OPEN);
    Intake.Taken taken = compare(HEADER + "a,1,07:30,ga,,s-9\n", open);
    assertThat(Lists.words(taken.preview().notes()))
        .singleElement()
        .asString()
        .contains("'s-9' is not among this morning's people");
    assertThat(taken.preview().canBeTaken()).isTrue();
  }

  @Test
  void shouldHashWhatWouldChangeAndFromWhere() {
    String csv = HEADER + "a,1,08:00,ga,,s-1\n";
    Morning open = morning(HEADER + "a,1,07:30,ga,,s-1\n", Phase.OPEN);
    String hash = compare(csv, open).preview().hash();
    assertThat(hash).matches("[0-9a-f]{64}");
    assertThat(compare(csv.replace("\n", "\r\n"), open).preview().hash()).isEqualTo(hash);
    assertThat(compare(csv.replace("ga", "spinal"), open).preview().hash()).isNotEqualTo(hash);
    Morning other = morning(HEADER + "a,1,07:15,ga,,s-1\n", Phase.OPEN);
    assertThat(compare(csv, other).preview().hash()).isNotEqualTo(hash);
  }

  /** Six cases spread over twelve rooms, in any way. */
  @Provide
  Arbitrary<String> lists() {
    return Combinators.combine(
            Arbitraries.shuffle(1, 2, 3, 4, 5, 6, 7),
            Arbitraries.integers().between(1, 6),
            Arbitraries.of("07:30", "08:00").list().ofSize(6))
        .as(
            (rooms, count, starts) -> {
              StringBuilder csv = new StringBuilder(HEADER);
              for (int i = 0; i < count; i++) {
                csv.append("k" + i + "," + rooms.get(i) + "," + starts.get(i) + ",ga,,s-" + i);
                csv.append('\n');
              }
              return csv.toString();
            });
  }

  @Property(tries = 80)
  void shouldBringAnyMorningToAnyListWithOneCaseARoomAtEveryMoment(
      @ForAll("lists") String from, @ForAll("lists") String to) {
    Morning open = morning(from, Phase.OPEN);
    Intake.Taken taken = compare(to, open);
    assertThat(taken.preview().problems()).isEmpty();
    Morning after = Mornings.after(open, taken.commands());
    Preview again = compare(to, after).preview();
    assertThat(again.unchanged()).isEqualTo((int) to.lines().count() - 1);
    assertThat(again.canBeTaken()).isFalse();
  }
}
