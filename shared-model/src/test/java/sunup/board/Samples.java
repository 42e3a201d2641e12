package sunup.board;

import java.util.List;

/** One well-formed command of each kind, on things that the fixture's morning has. */
final class Samples {
  private Samples() {}

  static List<Command> oneOfEach() {
    ItemRef bag = Fixture.in(Fixture.R1, "machine.bag");
    Private said = Private.of("said");
    long soon = Fixture.BEGIN + 10 * Fixture.MINUTE;
    return List.of(
        new Command.Plan(Fixture.plan()),
        new Command.OpenMorning(),
        new Command.CloseMorning(),
        new Command.AddCase(
            Fixture.casePlan(new CaseId("C9"), Fixture.R1, Fixture.PLAIN), Fixture.PLAIN),
        new Command.ChangeCase(
            Fixture.casePlan(Fixture.C1, Fixture.R1, Fixture.BLOCK), Fixture.BLOCK),
        new Command.SwapCases(Fixture.C1, Fixture.C2),
        new Command.ConfirmSwap(Fixture.R1),
        new Command.CancelCase(Fixture.C1, said),
        new Command.AgreeLater(Fixture.C1, Fixture.BOOKED + 15 * Fixture.MINUTE),
        new Command.SayRoom(Fixture.R1, RoomUse.CLEANING, soon),
        new Command.AddPerson(
            new PersonPlan(new PersonId("A9"), Role.ANAESTHETIST, Fixture.R1, List.of(), soon)),
        new Command.Arrive(Fixture.A1, Fixture.R1),
        new Command.ExpectPerson(Fixture.A1, soon, said),
        new Command.Join(Fixture.A1, Fixture.R1),
        new Command.Leave(Fixture.A1, null),
        new Command.HandOver(Fixture.A1, Fixture.A2, Fixture.R1),
        new Command.Begin(bag, Fixture.A1),
        new Command.Good(bag, new Evidence.Touch(), Fixture.A1, null),
        new Command.Sweep(Fixture.R1, Section.MACHINE, List.of(), null),
        new Command.Fault(bag, said),
        new Command.TakeFault(bag, Fixture.T1),
        new Command.Mend(bag),
        new Command.Reopen(bag, said),
        new Command.LeaveOut(Fixture.of(Fixture.C1, "airway.planb"), said),
        new Command.ExpectItem(Fixture.of(Fixture.C1, "surgeon.seen"), soon, said),
        new Command.Undo(new CommandId("c1")),
        new Command.Claim(Fixture.US1, Fixture.R1),
        new Command.Release(Fixture.US1),
        new Command.PromiseUnit(Fixture.US1, Fixture.R1),
        new Command.PlaceOpens(Fixture.PHARMACY, soon),
        new Command.TakeHoldup(Fixture.R1, "item:drugs", said, soon),
        new Command.AskHelp(Fixture.R1, said),
        new Command.AnswerHelp(Fixture.R1, Fixture.T1),
        new Command.AskMove(new Move.SendTo(Fixture.T1, Fixture.R1), null, Fixture.T1),
        new Command.AnswerMove("send.T1.1", MoveAnswer.ACCEPT),
        new Command.DoneMove("send.T1.1"),
        new Command.WithdrawMove("send.T1.1"),
        new Command.ReportReady(Fixture.R1),
        new Command.Reach(Fixture.C1, Step.SENT_FOR),
        new Command.GiveReason(Fixture.C1, DelayReason.STAFF, said),
        new Command.AgreeReason(Fixture.C1),
        new Command.DisputeReason(Fixture.C1, DelayReason.PATIENT, said),
        new Command.AddNote(Fixture.R1, said),
        new Command.DrawDrugs(Fixture.C1, List.of("propofol"), null, null, null, null),
        new Command.DiscardDrug(Fixture.C1, 0, null),
        new Command.CountDrug(
            Fixture.C1, CountKind.DRAWN, "fentanyl", 1, null, null, null, Fixture.A1, Fixture.N1),
        new Command.SetUpNext(Fixture.R1, Fixture.C1, null));
  }
}
