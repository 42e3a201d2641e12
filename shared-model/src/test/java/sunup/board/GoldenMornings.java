package sunup.board;

import java.util.List;
import sunup.sheets.Hands;
import sunup.sheets.SheetItem;

/** The mornings that golden journals were written from. */
final class GoldenMornings {
  private static final Actor SUPERVISOR = new Actor(Role.SUPERVISOR, Fixture.V1, "pocket-V1");
  private static final Actor NURSE = Fixture.at(Fixture.R1, Role.CIRCULATING, Fixture.N1);
  private static final Evidence TOUCH = new Evidence.Touch();

  private GoldenMornings() {}

  static Day play(String name) {
    return switch (name) {
      case "set-up" -> setUp();
      case "trouble" -> trouble();
      case "desk" -> desk();
      case "stand-in" -> standIn();
      case "moves" -> moves();
      case "drugs" -> drugs();
      case "taught" -> taught();
      case "next-case" -> nextCase();
      case "swap" -> swap();
      default -> throw new IllegalArgumentException("add the morning " + name + " here first");
    };
  }

  /**
   * A morning that is opened on what closed ones taught. ("learned" is one of a time when that was
   * durations alone.)
   */
  private static Day taught() {
    SheetItem item = Fixture.plan().sheets().get(0).items().get(0);
    Hands sheet = item.hands();
    Hands hands = new Hands(sheet.usual() + 1, sheet.oneInTen() + 2);
    LearnedTimes times =
        new LearnedTimes(
            Fixture.plan().id().date().minusDays(1),
            12,
            List.of(new LearnedTimes.Time(item.work(), hands, 31)),
            new LearnedTimes.Reporting(0.45, 0.33, 0.18, 0.04, 0.025, 45_000L, 120, 310, 4100));
    CommandId open = new CommandId("open");
    return Day.draft()
        .at(Fixture.BEGIN)
        .order(
            new Order(
                    open,
                    new Command.OpenMorning(),
                    Fixture.DESK,
                    null,
                    Fixture.BEGIN,
                    Fixture.BEGIN)
                .taught(times))
        .minute(2)
        .by(Fixture.ANAESTHETIST_1, new Command.Arrive(Fixture.A1, Fixture.R1));
  }

  /** A room's second case is set up after its first has started, then taken over by a third. */
  private static Day nextCase() {
    Command begin = new Command.SetUpNext(Fixture.R1, Fixture.C1, null);
    Command third = new Command.SetUpNext(Fixture.R1, Fixture.C1, NextCases.SECOND);
    ItemRef cylinder = ItemRef.of(NextCases.SECOND, "machine.cylinder");
    return NextCases.started()
        .minute(90)
        .by(Fixture.ANAESTHETIST_1, begin)
        .by(
            Fixture.ANAESTHETIST_1,
            new Command.Sweep(Fixture.R1, Section.MACHINE, null, null, NextCases.SECOND))
        .by(Fixture.ANAESTHETIST_1, new Command.Fault(cylinder, Private.of("empty")))
        .minute(200)
        .by(Fixture.ANAESTHETIST_1, third);
  }

  /** Two cases change rooms; one room confirms, the other is swapped once more before it does. */
  private static Day swap() {
    return Day.open()
        .minute(4)
        .by(Fixture.ANAESTHETIST_1, good(Fixture.of(Fixture.C1, "drugs.drawn")))
        .by(Fixture.ANAESTHETIST_2, good(Fixture.of(Fixture.C2, "airway.tube")))
        .minute(9)
        .decided(Fixture.DESK, new Command.SwapCases(Fixture.C1, Fixture.C2))
        .minute(11)
        .decided(Fixture.ANAESTHETIST_1, new Command.ConfirmSwap(Fixture.R1))
        .minute(12)
        .decided(Fixture.DESK, new Command.SwapCases(Fixture.C1, Fixture.C3));
  }

  /** A list drawn and scanned, a controlled drug counted out, a syringe thrown away. */
  private static Day drugs() {
    return Day.openWithDrugs()
        .minute(2)
        .by(Fixture.ANAESTHETIST_1, new Command.Arrive(Fixture.A1, Fixture.R1))
        .minute(20)
        .by(Fixture.ANAESTHETIST_1, drawn(List.of(), "010200000000001517270101", null))
        .by(Fixture.ANAESTHETIST_1, drawn(List.of("ephedrine"), null, null))
        .by(Fixture.ANAESTHETIST_1, drawn(List.of("bupivacaine"), null, Fixture.N1))
        .by(Fixture.ANAESTHETIST_1, new Command.DiscardDrug(Fixture.C1, 2, null))
        .by(Fixture.ANAESTHETIST_1, count(CountKind.DRAWN, 2, null))
        .minute(90)
        .by(Fixture.ANAESTHETIST_1, count(CountKind.GIVEN, null, "60"))
        .by(Fixture.ANAESTHETIST_1, count(CountKind.WASTED, null, "40"))
        .by(Fixture.ANAESTHETIST_1, count(CountKind.RETURNED, 1, null));
  }

  private static Command drawn(List<String> drugs, String scan, PersonId witness) {
    Private reason = witness == null ? null : Private.of("asked for by the surgeon");
    return new Command.DrawDrugs(Fixture.C1, drugs, scan, reason, null, witness);
  }

  private static Command count(CountKind kind, Integer units, String micrograms) {
    java.math.BigDecimal amount = micrograms == null ? null : new java.math.BigDecimal(micrograms);
    return new Command.CountDrug(
        Fixture.C1, kind, "fentanyl", units, amount, null, null, null, Fixture.N1);
  }

  private static Command good(ItemRef item) {
    return new Command.Good(item, TOUCH, null, null);
  }

  /** One room from arrival to incision, with nothing odd. */
  private static Day setUp() {
    ItemRef cylinder = Fixture.in(Fixture.R1, "machine.cylinder");
    return Day.open()
        .minute(2)
        .by(Fixture.ANAESTHETIST_1, new Command.Arrive(Fixture.A1, Fixture.R1))
        .minute(3)
        .by(Fixture.ANAESTHETIST_1, new Command.Begin(cylinder, null))
        .minute(4)
        .by(
            Fixture.ANAESTHETIST_1,
            new Command.Good(cylinder, new Evidence.Reading(180, "bar", true), null, null))
        .by(
            Fixture.ANAESTHETIST_1,
            new Command.Good(
                Fixture.in(Fixture.R1, "machine.absorbent"),
                new Evidence.Choice("fine"),
                null,
                null))
        .minute(6)
        .by(
            Fixture.ANAESTHETIST_1,
            new Command.Sweep(
                Fixture.R1,
                Section.MACHINE,
                List.of(Fixture.in(Fixture.R1, "machine.alarms")),
                null))
        .minute(9)
        .by(
            Fixture.ANAESTHETIST_1,
            new Command.Good(
                Fixture.of(Fixture.C1, "drugs.controlled"), TOUCH, Fixture.A1, Fixture.N1))
        .minute(10)
        .by(NURSE, good(cylinder))
        .by(NURSE, new Command.Good(cylinder, new Evidence.Reading(175, "bar", true), null, null))
        .minute(40)
        .by(Fixture.HOLDING, good(Fixture.of(Fixture.C1, "patient.identity")))
        .by(Fixture.ANAESTHETIST_1, new Command.ReportReady(Fixture.R1))
        .minute(50)
        .by(Fixture.HOLDING, new Command.Reach(Fixture.C1, Step.SENT_FOR))
        .minute(56)
        .by(NURSE, new Command.Reach(Fixture.C1, Step.WHEELS_IN))
        .minute(61)
        .by(Fixture.ANAESTHETIST_1, new Command.Reach(Fixture.C1, Step.INDUCTION))
        .minute(90)
        .by(NURSE, new Command.Reach(Fixture.C1, Step.INCISION))
        .minute(200)
        .by(Fixture.DESK, new Command.CloseMorning());
  }

  /** Faults, mends, words that come late, things left out and taken back. */
  private static Day trouble() {
    ItemRef suction = Fixture.in(Fixture.R1, "suction.strong");
    ItemRef planB = Fixture.of(Fixture.C1, "airway.planb");
    ItemRef here = Fixture.of(Fixture.C2, "special.ultrasound");
    ItemRef seen = Fixture.of(Fixture.C2, "surgeon.seen");
    Day day =
        Day.open()
            .minute(5)
            .by(Fixture.ANAESTHETIST_1, new Command.Fault(suction, Private.of("weak")))
            .by(Fixture.ANAESTHETIST_1, new Command.AskHelp(Fixture.R1, Private.of("hands")))
            .minute(6)
            .by(Fixture.DESK, new Command.TakeFault(suction, Fixture.T1))
            .by(Fixture.DESK, new Command.AnswerHelp(Fixture.R1, Fixture.T1))
            .by(Fixture.DESK, new Command.Arrive(Fixture.T1, null))
            .by(Fixture.DESK, new Command.Join(Fixture.T1, Fixture.R1))
            .minute(12)
            .by(Fixture.DESK, new Command.Mend(suction))
            .touched(4, Fixture.ANAESTHETIST_1, good(suction))
            .minute(13)
            .by(Fixture.ANAESTHETIST_1, good(suction))
            .minute(20)
            .decided(Fixture.ANAESTHETIST_1, new Command.Reopen(suction, Private.of("gone")))
            .decided(Fixture.ANAESTHETIST_1, new Command.LeaveOut(planB, Private.of("awake")))
            .by(
                Fixture.ANAESTHETIST_2,
                new Command.Good(here, new Evidence.Scan(Fixture.US1), null, null))
            .by(Fixture.ANAESTHETIST_2, new Command.Arrive(Fixture.A2, Fixture.R2))
            .by(Fixture.DESK, new Command.ExpectItem(seen, Fixture.BOOKED, Private.of("phoned")))
            .by(Fixture.ANAESTHETIST_2, good(Fixture.in(Fixture.R2, "machine.bag")));
    CommandId slip = day.lastId();
    return day.by(Fixture.ANAESTHETIST_2, new Command.Undo(slip))
        .minute(21)
        .by(
            Fixture.ANAESTHETIST_2,
            new Command.Good(
                Fixture.in(Fixture.R2, "machine.cylinder"),
                new Evidence.Reading(20, "bar", true),
                null,
                null))
        .minute(22)
        .decided(Fixture.DESK, new Command.Claim(Fixture.US1, Fixture.R3))
        .decided(Fixture.DESK, new Command.Release(Fixture.US1))
        .by(Fixture.DESK, new Command.HandOver(Fixture.A2, Fixture.A1, Fixture.R2))
        .by(Fixture.DESK, new Command.Leave(Fixture.A2, null));
  }

  /** What the desk does: cases, agreed times, places, promises, reasons, notes. */
  private static Day desk() {
    return Day.draft()
        .decided(Fixture.DESK, new Command.PromiseUnit(Fixture.US1, Fixture.R2))
        .by(Fixture.DESK, new Command.ExpectPerson(Fixture.A2, Fixture.BEGIN, null))
        .minute(0)
        .by(Fixture.DESK, new Command.OpenMorning())
        .minute(3)
        .by(Fixture.ANAESTHETIST_1, good(Fixture.of(Fixture.C1, "drugs.drawn")))
        .by(Fixture.DESK, new Command.SayRoom(Fixture.R3, RoomUse.CLEANING, Fixture.BOOKED))
        .by(
            Fixture.DESK,
            new Command.PlaceOpens(Fixture.PHARMACY, Fixture.BEGIN + 25 * Fixture.MINUTE))
        .minute(8)
        .decided(Fixture.DESK, new Command.SwapCases(Fixture.C1, Fixture.C2))
        .decided(
            Fixture.DESK,
            new Command.ChangeCase(
                Fixture.casePlan(Fixture.C3, Fixture.R3, Fixture.BLOCK), Fixture.BLOCK))
        .decided(SUPERVISOR, new Command.AgreeLater(Fixture.C1, Fixture.BOOKED + 900_000))
        .by(
            Fixture.DESK,
            new Command.TakeHoldup(Fixture.R2, "item:drugs", Private.of("paged"), Fixture.BOOKED))
        .by(Fixture.DESK, new Command.AddNote(null, Private.of("lift out of order")))
        .minute(30)
        .decided(Fixture.DESK, new Command.CancelCase(Fixture.C3, Private.of("fever")))
        .by(
            Fixture.DESK,
            new Command.AddCase(
                Fixture.casePlan(new CaseId("C9"), Fixture.R3, Fixture.PLAIN), Fixture.PLAIN))
        .minute(80)
        .by(Fixture.ANAESTHETIST_1, new Command.Reach(Fixture.C2, Step.INDUCTION))
        .by(NURSE, new Command.GiveReason(Fixture.C2, DelayReason.SURGEON, null))
        .decided(Fixture.DESK, new Command.DisputeReason(Fixture.C2, DelayReason.STAFF, null))
        .decided(Fixture.DESK, new Command.AgreeReason(Fixture.C2));
  }

  /** Moves asked, accepted, declined, called not safe, done and taken back. */
  private static Day moves() {
    Actor technician = new Actor(Role.TECHNICIAN, Fixture.T1, "pocket-T1");
    ItemRef suction = Fixture.in(Fixture.R2, "suction.strong");
    long later = Fixture.BOOKED + 15 * Fixture.MINUTE;
    long early = Fixture.BEGIN + 10 * Fixture.MINUTE;
    Move send = new Move.SendTo(Fixture.T1, Fixture.R2);
    Move first = new Move.First(Fixture.R1, List.of("drugs.drawn"));
    return Day.open()
        .minute(2)
        .by(Fixture.DESK, new Command.Arrive(Fixture.T1, null))
        .by(Fixture.ANAESTHETIST_2, new Command.Fault(suction, null))
        .minute(3)
        .by(Fixture.DESK, new Command.AskMove(send, null, Fixture.T1))
        .by(
            Fixture.DESK,
            new Command.AskMove(new Move.Unit("ultrasound", Fixture.R2), Role.TECHNICIAN, null))
        .by(
            Fixture.DESK,
            new Command.AskMove(
                new Move.OpenEarlier(Fixture.PHARMACY, early, Fixture.R1), Role.PHARMACY, null))
        .by(SUPERVISOR, new Command.AskMove(first, null, Fixture.A1))
        .by(
            Fixture.DESK,
            new Command.AskMove(
                new Move.Later(Fixture.R3, Fixture.C3, later), Role.SUPERVISOR, null))
        .by(
            Fixture.DESK,
            new Command.AskMove(new Move.Attend(Fixture.R2, Fixture.V1), null, Fixture.V1))
        .by(
            Fixture.DESK,
            new Command.AskMove(new Move.Talk(Fixture.R1, Fixture.R3), Role.SUPERVISOR, null))
        .minute(4)
        .by(technician, new Command.AnswerMove(send.key(), MoveAnswer.ACCEPT))
        .by(technician, new Command.AnswerMove("unit.ultrasound.2", MoveAnswer.ACCEPT))
        .by(Fixture.DESK, new Command.AnswerMove("open.pharmacy", MoveAnswer.ACCEPT))
        .by(Fixture.ANAESTHETIST_1, new Command.AnswerMove(first.key(), MoveAnswer.CANNOT))
        .by(SUPERVISOR, new Command.AnswerMove("later.C3", MoveAnswer.ACCEPT))
        .by(SUPERVISOR, new Command.AnswerMove("attend.2", MoveAnswer.NOT_SAFE))
        .by(Fixture.DESK, new Command.WithdrawMove("talk.1.3"))
        .minute(9)
        .by(technician, new Command.DoneMove(send.key()));
  }

  /** One who does not come, and the one who stands in. */
  private static Day standIn() {
    PersonId other = new PersonId("A9");
    PersonId floats = new PersonId("T9");
    return Day.draft()
        .by(
            Fixture.DESK,
            new Command.AddPerson(
                new PersonPlan(floats, Role.TECHNICIAN, null, List.of(Fixture.R1), Fixture.BEGIN)))
        .minute(0)
        .by(Fixture.DESK, new Command.OpenMorning())
        .minute(4)
        .by(Fixture.DESK, new Command.Leave(Fixture.A1, null))
        .by(
            Fixture.DESK,
            new Command.AddPerson(
                new PersonPlan(
                    other,
                    Role.ANAESTHETIST,
                    Fixture.R1,
                    List.of(),
                    Fixture.BEGIN + 20 * Fixture.MINUTE)))
        .minute(19)
        .by(Fixture.at(Fixture.R1, Role.ANAESTHETIST, other), new Command.Arrive(other, Fixture.R1))
        .by(
            Fixture.at(Fixture.R1, Role.ANAESTHETIST, other),
            good(Fixture.in(Fixture.R1, "machine.bag")));
  }
}
