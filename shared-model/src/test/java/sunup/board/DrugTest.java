package sunup.board;

import static org.assertj.core.api.Assertions.assertThat;

import java.math.BigDecimal;
import java.util.List;
import org.junit.jupiter.api.Test;
import sunup.board.CaseDrugs.Syringe;

class DrugTest {
  private static final String PROPOFOL = "010200000000001517270101";
  private static final ItemRef DRAWN = Fixture.of(Fixture.C1, "drugs.drawn");
  private static final ItemRef FETCHED = Fixture.of(Fixture.C1, "drugs.controlled");

  private static Day set() {
    return Day.openWithDrugs()
        .minute(2)
        .by(Fixture.ANAESTHETIST_1, new Command.Arrive(Fixture.A1, Fixture.R1))
        .minute(20);
  }

  private static Command draw(String... drugs) {
    return new Command.DrawDrugs(Fixture.C1, List.of(drugs), null, null, null, null);
  }

  private static Command scan(String code) {
    return new Command.DrawDrugs(Fixture.C1, List.of(), code, null, null, null);
  }

  private static Command vouched(String code, PersonId witness, String... drugs) {
    Private reason = Private.of("shortage");
    return new Command.DrawDrugs(Fixture.C1, List.of(drugs), code, reason, null, witness);
  }

  private static Command count(CountKind kind, Integer units, String micrograms, PersonId other) {
    BigDecimal amount = micrograms == null ? null : new BigDecimal(micrograms);
    return new Command.CountDrug(
        Fixture.C1, kind, "fentanyl", units, amount, null, null, null, other);
  }

  private static List<Syringe> syringes(Day day) {
    return day.morning().drugsOf(Fixture.C1).syringes();
  }

  @Test
  void shouldCallTheDrugsDrawnOnceAllOfTheListIsThatIsNotControlled() {
    Day day = set().by(Fixture.ANAESTHETIST_1, draw("propofol"));
    assertThat(day.state(DRAWN)).isEqualTo(ItemState.OPEN);

    day.by(Fixture.ANAESTHETIST_1, draw("ephedrine"));

    assertThat(day.state(DRAWN)).isEqualTo(ItemState.GOOD);
    assertThat(day.item(DRAWN).since()).isEqualTo(day.now());
    assertThat(syringes(day).get(0).drawn().text())
        .isEqualTo("propofol 200 mg = 20 mL of 10 mg/mL");
  }

  @Test
  void shouldNotCallThemDrawnWhileOneOfThemHasLapsed() {
    Day day =
        set()
            .by(Fixture.ANAESTHETIST_1, draw("propofol"))
            .minute(81)
            .by(Fixture.ANAESTHETIST_1, draw("ephedrine"));

    assertThat(day.state(DRAWN)).isEqualTo(ItemState.OPEN);
    assertThat(day.morning().drugsOf(Fixture.C1).has("propofol", day.now())).isFalse();
  }

  @Test
  void shouldTakeAPackageOfTheListByItsCode() {
    Day day = set().by(Fixture.ANAESTHETIST_1, scan(PROPOFOL + "10LOT7"));

    assertThat(syringes(day).get(0).drawn().name()).isEqualTo("propofol");
    assertThat(syringes(day).get(0).scanned()).isEqualTo("(01)02000000000015(17)270101(10)LOT7");
  }

  @Test
  void shouldRefuseWhatHasExpiredOrWasCalledBackWhoeverSigns() {
    Day day = set().by(Fixture.ANAESTHETIST_1, scan("010200000000001517261124"));
    assertThat(day.code()).isEqualTo(RefusalCode.PACKAGE_REFUSED);
    assertThat(day.words()).contains("expired 2026-11-24");

    day.by(Fixture.ANAESTHETIST_1, vouched("010200000000001517261124", Fixture.N1, "propofol"));
    assertThat(day.code()).isEqualTo(RefusalCode.PACKAGE_REFUSED);

    day.by(Fixture.ANAESTHETIST_1, scan(PROPOFOL + "10BAD1"));
    assertThat(day.words()).contains("called back");
    assertThat(syringes(day)).isEmpty();
  }

  @Test
  void shouldStopForAnotherProductUntilTwoSignForIt() {
    String other = "010200000000004617270101";
    Day day = set().by(Fixture.ANAESTHETIST_1, scan(other));
    assertThat(day.code()).isEqualTo(RefusalCode.PACKAGE_STOP);
    assertThat(day.words()).contains("bupivacaine is not on this case's list", "second person");

    day.by(Fixture.ANAESTHETIST_1, vouched(other, null, "bupivacaine"));
    assertThat(day.code()).isEqualTo(RefusalCode.PACKAGE_STOP);
    day.by(Fixture.ANAESTHETIST_1, vouched(other, Fixture.A1, "bupivacaine"));
    assertThat(day.code()).isEqualTo(RefusalCode.SAME_PERSON);

    day.by(Fixture.ANAESTHETIST_1, vouched(other, Fixture.N1, "bupivacaine"));
    assertThat(syringes(day).get(0).witness()).isEqualTo(Fixture.N1);
    assertThat(syringes(day).get(0).reason()).isEqualTo(Private.of("shortage"));
  }

  @Test
  void shouldStopIfThePackageIsAnotherDrugThanWasNamed() {
    Day day =
        set()
            .by(
                Fixture.ANAESTHETIST_1,
                new Command.DrawDrugs(
                    Fixture.C1, List.of("ephedrine"), PROPOFOL, null, null, null));

    assertThat(day.code()).isEqualTo(RefusalCode.PACKAGE_STOP);
    assertThat(day.words()).contains("the package is propofol");
  }

  @Test
  void shouldCountControlledDrugsOutToTheMicrogramBeforeTwo() {
    Day day = set().by(Fixture.ANAESTHETIST_1, count(CountKind.DRAWN, 2, null, null));
    assertThat(day.words()).contains("second signature");
    day.by(Fixture.ANAESTHETIST_1, count(CountKind.DRAWN, 2, null, Fixture.A1));
    assertThat(day.code()).isEqualTo(RefusalCode.SAME_PERSON);

    day.by(Fixture.ANAESTHETIST_1, count(CountKind.DRAWN, 2, null, Fixture.N1));
    assertThat(day.state(FETCHED)).isEqualTo(ItemState.GOOD);
    assertThat(day.item(FETCHED).witness()).isEqualTo(Fixture.N1);

    day.by(Fixture.ANAESTHETIST_1, count(CountKind.GIVEN, null, "75", null))
        .by(Fixture.ANAESTHETIST_1, count(CountKind.WASTED, null, "26", Fixture.N1));
    day.by(Fixture.ANAESTHETIST_1, count(CountKind.RETURNED, 1, null, Fixture.N1));
    assertThat(day.words()).contains("1 micrograms more given, wasted or returned than drawn");
    assertThat(day.morning().drugsOf(Fixture.C1).count().open())
        .containsExactly("fentaNYL: 99 micrograms drawn and neither given, wasted nor returned");

    day.by(
            Fixture.ANAESTHETIST_1,
            new Command.CountDrug(
                Fixture.C1,
                CountKind.STRUCK,
                null,
                null,
                null,
                2,
                Private.of("wrong number"),
                null,
                Fixture.N1))
        .by(Fixture.ANAESTHETIST_1, count(CountKind.WASTED, null, "25", Fixture.N1))
        .by(Fixture.ANAESTHETIST_1, count(CountKind.RETURNED, 1, null, Fixture.N1));
    assertThat(day.morning().drugsOf(Fixture.C1).count().open()).isEmpty();
  }

  @Test
  void shouldTakeASecondSignatureWherePeopleSignOnOnlyFromWhoGaveItAndMay() {
    Day day = set();
    Actor alone = Fixture.ANAESTHETIST_1;
    Command command = count(CountKind.DRAWN, 2, null, Fixture.N1);

    assertThat(signing(day, alone, command)).isEqualTo(RefusalCode.SECOND_UNSIGNED);
    assertThat(signing(day, with(alone, Fixture.A2, Role.ANAESTHETIST), command))
        .isEqualTo(RefusalCode.SECOND_UNSIGNED);
    assertThat(signing(day, with(alone, Fixture.N1, Role.PORTER), command))
        .isEqualTo(RefusalCode.NOT_ALLOWED);
    Actor nobody = new Actor(Role.CIRCULATING, null, "station-1");
    assertThat(signing(day, with(nobody, Fixture.N1, Role.CIRCULATING), command))
        .isEqualTo(RefusalCode.EVIDENCE_MISSING);
    signed(day, with(alone, Fixture.N1, Role.CIRCULATING), command);
    assertThat(day.events()).isNotEmpty();
    day.by(alone, count(CountKind.WASTED, null, "25", Fixture.N1));

    // Named at a board where nobody signs on, it is kept and told as that.
    assertThat(day.morning().drugsOf(Fixture.C1).signed()).containsExactly(0);
    assertThat(day.morning().drugsOf(Fixture.C1).count().entries()).hasSize(2);
  }

  private static Actor with(Actor actor, PersonId second, Role role) {
    return actor.with(new Actor.Second(second, role));
  }

  private static RefusalCode signing(Day day, Actor actor, Command command) {
    return signed(day, actor, command).code();
  }

  private static Day signed(Day day, Actor actor, Command command) {
    CommandId id = new CommandId("signing");
    return day.order(new Order(id, command, actor, null, day.now(), day.now()).whereSigned());
  }

  @Test
  void shouldNotLetDrawnDrugsFollowTheirCaseIntoAnotherRoom() {
    Day day = set().by(Fixture.ANAESTHETIST_1, draw("propofol", "ephedrine"));

    day.decided(Fixture.DESK, new Command.SwapCases(Fixture.C1, Fixture.C2));

    assertThat(syringes(day)).allMatch(Syringe::voided);
    assertThat(day.morning().drugsOf(Fixture.C1).has("propofol", day.now())).isFalse();
    assertThat(day.state(DRAWN)).isEqualTo(ItemState.OPEN);

    day.by(Fixture.ANAESTHETIST_1, new Command.DiscardDrug(Fixture.C1, 0, null));
    assertThat(syringes(day).get(0).discardedAt()).isEqualTo(day.now());
    day.by(Fixture.ANAESTHETIST_1, new Command.DiscardDrug(Fixture.C1, 9, null));
    assertThat(day.code()).isEqualTo(RefusalCode.UNKNOWN);
  }

  @Test
  void shouldTakeThemFromTheRoomItselfAndFromTheListOnly() {
    Day day = set().by(Fixture.ANAESTHETIST_2, draw("propofol"));
    assertThat(day.code()).isEqualTo(RefusalCode.NOT_ALLOWED);

    day.by(Fixture.ANAESTHETIST_1, draw("no such"));
    assertThat(day.words()).contains("no such");
    day.by(Fixture.ANAESTHETIST_1, draw());
    assertThat(day.code()).isEqualTo(RefusalCode.BAD_COMMAND);

    Day without = Day.open().by(Fixture.ANAESTHETIST_1, draw("propofol"));
    assertThat(without.words()).contains("no approved list of drugs");
  }
}
