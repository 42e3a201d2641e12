package sunup.review.learn;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.SplittableRandom;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.DoubleRange;
import net.jqwik.api.constraints.LongRange;
import org.junit.jupiter.api.Test;
import sunup.board.CaseId;
import sunup.board.Command;
import sunup.board.LearnedTimes;
import sunup.board.PersonId;
import sunup.board.Placed;
import sunup.board.Role;
import sunup.board.RoomId;
import sunup.board.Step;
import sunup.codec.BadJson;
import sunup.codec.Json;
import sunup.review.facts.PlayedMorning;
import sunup.review.learn.Learned.ItemLearned;
import sunup.review.learn.Lessons.Left;
import sunup.review.learn.Lessons.Style;
import sunup.review.learn.Lessons.Took;
import sunup.review.stats.NormalGamma;
import sunup.sheets.BadSheet;
import sunup.sheets.ComposedSheet;
import sunup.sheets.Hands;
import sunup.sheets.SheetItem;
import sunup.sheets.Sheets;
import sunup.sheets.Work;

class LearningTest {
  private static final LocalDate DAY = LocalDate.of(2026, 11, 25);
  private static final long MINUTE = 60_000;
  private static final RoomId ROOM = new RoomId("1");

  private static ComposedSheet sheet() {
    try {
      return Sheets.standard().compose("general", List.of());
    } catch (BadSheet e) {
      throw new IllegalStateException(e);
    }
  }

  private static Lessons lessons(List<Took> took) {
    return new Lessons(took, List.of(), List.of(), List.of(), 0, 0, new Left(0, 0, 0));
  }

  @Property
  void shouldKeepTheSheetsTwoNumbersBeforeAnythingIsLearned(
      @ForAll @DoubleRange(min = 0.5, max = 60) double usual,
      @ForAll @DoubleRange(min = 1.05, max = 5) double ratio) {
    Hands sheet = new Hands(usual, usual * ratio);
    NormalGamma prior = CutStudent.prior(sheet);
    assertThat(CutStudent.quantileMs(prior, 0.5)).isCloseTo(usual * MINUTE, within(1e-3 * MINUTE));
    assertThat(CutStudent.quantileMs(prior, 0.9))
        .isCloseTo(usual * ratio * MINUTE, within(1e-6 * usual * ratio * MINUTE));
    assertThat(prior.degrees()).isEqualTo(6);
    assertThat(prior.kappa()).isEqualTo(6);
  }

  /** Uncut, the mean of exp of a Student-t does not exist; cut, it is near the log-normal's. */
  @Test
  void shouldHaveAMeanOnceCut() {
    NormalGamma prior = CutStudent.prior(new Hands(10, 20));
    double sigma = Math.log(2) / 1.2816;
    double logNormal = 10 * MINUTE * Math.exp(sigma * sigma / 2);
    assertThat(CutStudent.meanMs(prior)).isBetween(0.95 * logNormal, 1.25 * logNormal);
    assertThat(CutStudent.quantileMs(prior, 1 - 1e-12))
        .isCloseTo(CutStudent.quantileMs(prior, 1), within(1.0));
  }

  @Test
  void shouldMoveFromTheSheetToWhatTheSiteTakesAsMorningsCome() {
    Work work = firstLearned().work();
    double usual = firstLearned().hands().usual();
    SplittableRandom random = new SplittableRandom(1);
    double last = usual;
    for (int n : new int[] {0, 3, 30, 300}) {
      List<Took> took = new ArrayList<>();
      for (int i = 0; i < n; i++) {
        double z = sunup.forecast.Normal.quantile(random.nextDouble());
        took.add(new Took(work, Math.round(1.8 * usual * MINUTE * Math.exp(0.2 * z)), true));
      }
      ItemLearned item =
          Learned.of(List.of(sheet()), List.of(lessons(took))).item(work).orElseThrow();
      assertThat(item.n()).isEqualTo(n);
      assertThat(item.hands().usual()).isGreaterThanOrEqualTo(last);
      last = item.hands().usual();
      if (n == 0) {
        assertThat(item.hands()).isEqualTo(firstLearned().hands());
      }
    }
    assertThat(last).isCloseTo(1.8 * usual, within(0.05 * usual));
  }

  private static SheetItem firstLearned() {
    return sheet().items().stream().filter(Learned::isLearned).findFirst().orElseThrow();
  }

  @Test
  void shouldNotBelieveForgottenTouchesNorTwoTouchesAtOnce() {
    SheetItem item = firstLearned();
    long usual = Math.round(item.hands().usual() * MINUTE);
    long tooLong = Math.round(5 * item.hands().oneInTen() * MINUTE);
    List<Took> took =
        List.of(
            new Took(item.work(), usual, true),
            new Took(item.work(), tooLong, true),
            new Took(item.work(), usual / 100, false));
    ItemLearned learned =
        Learned.of(List.of(sheet()), List.of(lessons(took))).item(item.work()).orElseThrow();
    assertThat(learned.n()).isEqualTo(1);
    assertThat(learned.unbelieved()).isEqualTo(2);
  }

  @Property(tries = 30)
  void shouldTeachTheSameInWhateverOrderMorningsCome(
      @ForAll @LongRange(min = 1, max = 100_000) long seed) throws BadJson {
    List<Lessons> mornings = new ArrayList<>();
    for (int i = 0; i < 3; i++) {
      mornings.add(
          LessonsReader.read(PlayedMorning.random(2, DAY.plusDays(i), seed + i).journal()));
    }
    Learned one = Learned.of(List.of(sheet()), mornings);
    Collections.reverse(mornings);
    Learned other = Learned.of(List.of(sheet()), mornings);
    assertThat(other).isEqualTo(one);
    assertThat(Json.read(Json.write(one), Learned.class)).isEqualTo(one);
    assertThat(Json.write(mornings)).doesNotContain("Anna", "Nora", "Rita", "Hugo", "Surgeon");
    for (Lessons lessons : mornings) {
      assertThat(lessons.took()).allMatch(t -> t.ms() > 0);
      assertThat(lessons.sums()).allMatch(s -> s.ms() > 0 && !s.keys().isEmpty());
      assertThat(lessons.styles()).hasSize(2);
    }
  }

  /** Begun 6:40 and good 6:44; then, begun by nobody's touch, good 6:50: six minutes implied. */
  @Test
  void shouldTakeABeginningThatWasTouchedAndElseTheLastFinish() {
    PlayedMorning p = new PlayedMorning(1, DAY);
    List<Placed> own = ownPlain(p);
    p.station("06:35", 1, new Command.Arrive(new PersonId("Anna1"), ROOM));
    p.station("06:40", 1, new Command.Begin(own.get(0).ref(), new PersonId("Anna1")));
    p.station("06:44", 1, PlayedMorning.good(own.get(0), new PersonId("Anna1"), 1));
    p.station("06:50", 1, PlayedMorning.good(own.get(1), new PersonId("Anna1"), 1));
    Lessons lessons = LessonsReader.read(started(p).journal());
    assertThat(lessons.took())
        .contains(
            new Took(own.get(0).sheet().work(), 4 * MINUTE, false),
            new Took(own.get(1).sheet().work(), 6 * MINUTE, true));
    assertThat(lessons.begun()).isEqualTo(1);
    assertThat(lessons.forgotten()).isZero();
  }

  @Test
  void shouldTeachNothingButTheSumOfWhatOnePersonEnteredWithinTwentySeconds() {
    PlayedMorning p = new PlayedMorning(1, DAY);
    List<Placed> own = ownPlain(p);
    p.station("06:35", 1, new Command.Arrive(new PersonId("Anna1"), ROOM));
    for (int i = 0; i < 2; i++) {
      long at = p.at("06:45") + i * 15_000L;
      Command good = PlayedMorning.good(own.get(i), new PersonId("Anna1"), 1);
      p.give(at, at, PlayedMorning.station(1), good, null);
    }
    Lessons lessons = LessonsReader.read(started(p).journal());
    assertThat(lessons.took()).isEmpty();
    assertThat(lessons.sums()).hasSize(1);
    assertThat(lessons.sums().get(0).keys())
        .containsExactlyInAnyOrder(own.get(0).sheet().key(), own.get(1).sheet().key());
    assertThat(lessons.sums().get(0).ms()).isEqualTo(10 * MINUTE + 15_000);
    assertThat(lessons.styles()).containsExactly(Style.NEVER);
  }

  @Test
  void shouldLearnNothingFromTimesThatWereEnteredLate() {
    PlayedMorning p = new PlayedMorning(1, DAY);
    Placed item = ownPlain(p).get(0);
    p.station("06:35", 1, new Command.Arrive(new PersonId("Anna1"), ROOM));
    p.give(
        p.at("06:44"),
        p.at("07:05"),
        PlayedMorning.station(1),
        PlayedMorning.good(item, new PersonId("Anna1"), 1),
        null);
    Lessons lessons = LessonsReader.read(started(p).journal());
    assertThat(lessons.took()).isEmpty();
    assertThat(lessons.left().lateEntries()).isEqualTo(1);
    assertThat(lessons.delays().get(0).ms()).isEqualTo(21 * MINUTE);
  }

  @Test
  void shouldCountWhatWasBegunAndNeverReportedDone() {
    PlayedMorning p = new PlayedMorning(1, DAY);
    p.station("06:40", 1, new Command.Begin(ownPlain(p).get(0).ref(), new PersonId("Anna1")));
    Lessons lessons = LessonsReader.read(started(p).journal());
    assertThat(lessons.begun()).isEqualTo(1);
    assertThat(lessons.forgotten()).isEqualTo(1);
    assertThat(Learned.of(List.of(), List.of(lessons)).reporting().forgotten())
        .isCloseTo(4.0 / 101, within(1e-12));
    assertThatThrownBy(() -> LessonsReader.read(new PlayedMorning(1, DAY).journal()))
        .hasMessageContaining("close main/2026-11-25 first");
  }

  /** Work of the room's anaesthetist with nothing before it, no waiting and no extra. */
  private static List<Placed> ownPlain(PlayedMorning p) {
    return p.morning().itemsOf(ROOM).stream()
        .filter(i -> i.sheet().section().isSetUp() && Learned.isLearned(i.sheet()))
        .filter(i -> i.sheet().after().isEmpty() && i.sheet().place() == null)
        .toList();
  }

  private static PlayedMorning started(PlayedMorning p) {
    p.station("08:00", 1, new Command.Reach(new CaseId("C1"), Step.INDUCTION));
    return p.desk("09:00", new Command.CloseMorning());
  }

  /** Forty durations of twice the usual in one morning. */
  private static List<Lessons> twiceAsLong(SheetItem item) {
    long twice = Math.round(2 * item.hands().usual() * MINUTE);
    return List.of(lessons(Collections.nCopies(40, new Took(item.work(), twice, false))));
  }

  @Test
  void shouldFreezeWhatWasLearnedIntoTheNextOpeningAQuarterAtATimeAndSayWhatChangedAndWhy() {
    SheetItem item = firstLearned();
    Learned learned = Learned.of(List.of(sheet()), twiceAsLong(item));
    double goal = learned.item(item.work()).orElseThrow().hands().usual();
    assertThat(goal).isCloseTo(2 * item.hands().usual(), within(0.2 * item.hands().usual()));
    LearnedTimes went = null;
    double before = item.hands().usual();
    for (int morning = 0; morning < 6; morning++) {
      went = NextOpening.after(DAY, learned, went);
      assertThat(went.items()).extracting(LearnedTimes.Time::key).containsExactly(item.key());
      double usual = went.items().get(0).hands().usual();
      assertThat(usual).isBetween(before, before * NextOpening.STEP_MOST + 0.006);
      before = usual;
    }
    assertThat(before).as("after some mornings it is there").isEqualTo(goal);
    for (SheetItem any : sheet().items()) {
      SheetItem by = went.applied(any);
      assertThat(by.hands().usual())
          .isEqualTo(any.key().equals(item.key()) ? goal : any.hands().usual());
      assertThat(went.applied(by)).as("not twice").isEqualTo(by);
    }
    List<Change> changes = Change.between(null, learned);
    assertThat(changes).extracting(Change::what).containsExactly(item.key());
    assertThat(changes.get(0).why()).startsWith("40 measured (0 with");
    assertThat(Change.between(learned, learned)).isEmpty();
  }

  @Test
  void shouldLeaveASheetAloneOfWhichTooLittleIsKnownOrThatSaysSomethingElseNow() {
    SheetItem item = firstLearned();
    List<Took> five = twiceAsLong(item).get(0).took().subList(0, 5);
    Learned few = Learned.of(List.of(sheet()), List.of(lessons(five)));
    assertThat(NextOpening.after(DAY, few, null).items()).isEmpty();

    LearnedTimes times =
        NextOpening.after(DAY, Learned.of(List.of(sheet()), twiceAsLong(item)), null);
    SheetItem decided = item.withHands(new Hands(item.hands().usual() + 3, 40));
    assertThat(times.applied(item)).isNotEqualTo(item);
    assertThat(times.applied(decided)).as("its sheet was changed since").isEqualTo(decided);

    Learned nothing = Learned.of(List.of(sheet()), List.of());
    assertThat(NextOpening.after(DAY, nothing, null).items()).isEmpty();
    assertThat(Change.between(null, nothing)).isEmpty();
    assertThat(nothing.reporting().eachItem()).isCloseTo(0.40, within(1e-12));
    assertThat(nothing.reporting().forgotten()).isCloseTo(0.03, within(1e-12));
  }

  /** The sheet with one item that is asked for otherwise. */
  private static ComposedSheet with(SheetItem other) {
    return new ComposedSheet(
        "other",
        List.of(),
        sheet().items().stream().map(i -> i.key().equals(other.key()) ? other : i).toList());
  }

  /** Of an MRI's draping that takes half as long, say: what one takes says nothing of the other. */
  @Test
  void shouldLearnApartWhatSheetsAskForUnderOneKeyWithOtherMinutesOrOfOtherPeople() {
    SheetItem item = firstLearned();
    Hands half = new Hands(item.hands().usual() / 2, item.hands().oneInTen() / 2);
    SheetItem shorter = item.withHands(half);
    List<ComposedSheet> both = List.of(sheet(), with(shorter));
    List<Took> took = new ArrayList<>(twiceAsLong(item).get(0).took());
    took.addAll(twiceAsLong(shorter).get(0).took());
    List<Lessons> lessons = List.of(lessons(took));
    Learned learned = Learned.of(both, lessons);
    assertThat(learned.item(item.work()).orElseThrow().n()).isEqualTo(40);
    assertThat(learned.item(shorter.work()).orElseThrow().n()).isEqualTo(40);
    assertThat(learned.item(shorter.work()).orElseThrow().hands().usual())
        .isCloseTo(2 * half.usual(), within(0.2 * half.usual()));
    List<ComposedSheet> turned = List.of(both.get(1), both.get(0));
    assertThat(Learned.of(turned, lessons)).as("in whatever order they stood").isEqualTo(learned);

    LearnedTimes next = NextOpening.after(DAY, learned, null);
    assertThat(next.items()).hasSize(2);
    assertThat(next.applied(item).hands().usual()).isGreaterThan(item.hands().usual());
    assertThat(next.applied(shorter).hands().usual())
        .isBetween(half.usual() + 0.01, half.usual() * NextOpening.STEP_MOST + 0.006);
    double before = next.applied(shorter).hands().usual();
    LearnedTimes after = NextOpening.after(DAY, Learned.of(turned, lessons), next);
    assertThat(after.applied(shorter).hands().usual())
        .as("it goes on from where it was")
        .isGreaterThan(before);

    Work ofOthers = new Work(item.key(), List.of(List.of(Role.SCRUB)), item.hands());
    assertThat(next.of(ofOthers)).isNull();
    LearnedTimes old =
        new LearnedTimes(
            DAY, 1, List.of(new LearnedTimes.Time(item.key(), null, item.hands(), half, 9)));
    assertThat(old.applied(item).hands()).as("of a journal without people").isEqualTo(half);
  }

  /** A technique of Tuesdays does not begin anew each week. */
  @Test
  void shouldKeepWhatASheetTaughtThatTheLastMorningDidNotHave() {
    SheetItem item = firstLearned();
    SheetItem shorter =
        item.withHands(new Hands(item.hands().usual() / 2, item.hands().oneInTen() / 2));
    List<Lessons> mornings = new ArrayList<>(twiceAsLong(shorter));
    mornings.add(lessons(List.of()));
    Closing closing = Closing.of(DAY, List.of(sheet()), mornings, null);
    assertThat(closing.next().of(shorter.work())).isNotNull();
    Closing.Row row = closing.items().get(0);
    assertThat(row.sheet()).isEqualTo(shorter.hands());
    assertThat(row.name()).isEqualTo(item.desk());
    assertThat(row.next()).isEqualTo(closing.next().of(shorter.work()).hands());
    assertThat(closing.items().stream().filter(r -> r.key().equals(item.key()))).hasSize(2);
    mornings.addAll(Collections.nCopies(Closing.REMEMBERED, lessons(List.of())));
    assertThat(Closing.of(DAY, List.of(sheet()), mornings, null).items())
        .noneMatch(r -> r.sheet().equals(shorter.hands()) && r.key().equals(item.key()));
  }

  private static Lessons told(int rooms, Style style, int begun, int forgotten, long delayMs) {
    return new Lessons(
        List.of(),
        List.of(),
        Collections.nCopies(rooms, style),
        Collections.nCopies(50, new Lessons.Delay("machine.bag", delayMs)),
        begun,
        forgotten,
        new Left(0, 0, 0));
  }

  @Test
  void shouldFreezeHowPeopleReportAQuarterAtATimeOnceEnoughWasSeen() throws BadJson {
    Learned few = Learned.of(List.of(), List.of(told(19, Style.NEVER, 99, 50, 100)));
    assertThat(NextOpening.after(DAY, few, null).reporting()).as("first settings hold").isNull();

    Learned much = Learned.of(List.of(), List.of(told(200, Style.AT_END, 1000, 200, 300_000)));
    LearnedTimes next = NextOpening.after(DAY, much, null);
    LearnedTimes.Reporting by = next.reporting();
    assertThat(by.atEnd()).isGreaterThan(0.20).isLessThanOrEqualTo(0.20 * 1.25 * 1.25);
    assertThat(by.eachItem() + by.eachSection() + by.atEnd() + by.never())
        .isCloseTo(1, within(1e-9));
    assertThat(by.forgotten()).isCloseTo(0.03 * 1.25, within(1e-9));
    assertThat(by.delayOneInTenMs()).isEqualTo(NextOpening.FIRST_DELAY_MS);
    assertThat(Json.read(Json.write(next), LearnedTimes.class)).isEqualTo(next);
    for (int morning = 0; morning < 30; morning++) {
      next = NextOpening.after(DAY, much, next);
    }
    assertThat(next.reporting().atEnd()).isCloseTo(much.reporting().atEnd(), within(0.01));
    assertThat(next.reporting().forgotten()).isCloseTo(much.reporting().forgotten(), within(1e-4));
    assertThat(next.reporting().delayOneInTenMs()).isEqualTo(300_000);
    assertThat(Change.between(null, much))
        .extracting(Change::what)
        .contains("reporting", "forgotten touches", "delay of words");
    // Words that come at once again: after some mornings nothing is said of a delay.
    Learned quick = Learned.of(List.of(), List.of(told(200, Style.AT_END, 1000, 200, 50)));
    for (int morning = 0; morning < 30; morning++) {
      next = NextOpening.after(DAY, quick, next);
    }
    assertThat(next.reporting().delayOneInTenMs()).isNull();
  }

  @Test
  void shouldSayWhatTheLastClosingMovedAndOfWhatTooLittleIsKnown() throws BadJson {
    SheetItem item = firstLearned();
    long slow = Math.round(2 * item.hands().usual() * MINUTE);
    List<Lessons> mornings =
        Collections.nCopies(7, lessons(List.of(new Took(item.work(), slow, true))));
    Closing closing = Closing.of(DAY, List.of(sheet()), mornings, null);
    Closing.Row first = closing.items().get(0);
    assertThat(first.key()).isEqualTo(item.key());
    assertThat(first.name()).isEqualTo(item.desk());
    assertThat(first.measured()).isEqualTo(7);
    assertThat(first.taught()).isEqualTo(1);
    assertThat(first.mornings()).isEqualTo(7);
    assertThat(first.weight()).isEqualTo(Closing.Weight.ENOUGH);
    assertThat(first.before().usual()).isGreaterThan(first.sheet().usual());
    assertThat(first.now().usual()).isGreaterThan(first.before().usual());
    Closing.Row other = closing.items().get(1);
    assertThat(other.weight()).isEqualTo(Closing.Weight.NOTHING);
    assertThat(other.now()).isEqualTo(other.sheet());
    Closing few = Closing.of(DAY, List.of(sheet()), mornings.subList(0, 5), null);
    assertThat(few.items().get(0).weight()).isEqualTo(Closing.Weight.FEW);
    assertThat(Json.read(Json.write(closing), Closing.class)).isEqualTo(closing);
    assertThat(Closing.of(null, List.of(), List.of(), null).items()).isEmpty();
  }
}
