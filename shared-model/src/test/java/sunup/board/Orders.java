package sunup.board;

import java.util.ArrayList;
import java.util.List;
import net.jqwik.api.Arbitraries;
import net.jqwik.api.Arbitrary;
import net.jqwik.api.Combinators;
import net.jqwik.api.Tuple;

/** Orders by chance: sensible ones, stale ones, nonsense and holes. */
final class Orders {
  private static final List<RoomId> ROOMS =
      List.of(Fixture.R1, Fixture.R2, Fixture.R3, new RoomId("9"));
  private static final List<CaseId> CASES =
      List.of(Fixture.C1, Fixture.C2, Fixture.C3, new CaseId("C9"));
  private static final List<PersonId> PEOPLE =
      List.of(Fixture.A1, Fixture.A2, Fixture.V1, Fixture.T1, Fixture.N1, new PersonId("Q9"));
  private static final List<UnitId> UNITS =
      List.of(Fixture.US1, Fixture.US2, Fixture.MIC, new UnitId("X"));

  private Orders() {}

  /** Orders in the sequence in which they reach the owner, whose clock runs on by their gaps. */
  static Arbitrary<List<Order>> some(int atMost) {
    return one().list().ofMinSize(1).ofMaxSize(atMost).map(Orders::numbered);
  }

  private static List<Order> numbered(List<Order> orders) {
    List<Order> list = new ArrayList<>();
    long now = Fixture.BEGIN;
    for (Order o : orders) {
      now += o.now();
      list.add(
          new Order(
              new CommandId("p" + list.size() / 2),
              o.command(),
              o.actor(),
              o.seen(),
              now + o.happenedAt(),
              now));
    }
    return list;
  }

  /** An order whose times are still offsets: from the one before, and from now. */
  static Arbitrary<Order> one() {
    return Combinators.combine(
            command(),
            actor(),
            Arbitraries.frequencyOf(
                Tuple.of(6, Arbitraries.just(1_000_000L)),
                Tuple.of(1, Arbitraries.longs().between(0, 60)),
                Tuple.of(1, Arbitraries.just((Long) null))),
            Arbitraries.longs().between(-20 * 60_000L, 60_000L),
            Arbitraries.longs().between(-5_000, 5 * 60_000L))
        .as(
            (c, a, seen, happened, gap) ->
                new Order(new CommandId("p"), c, a, seen, happened, gap));
  }

  private static Arbitrary<Actor> actor() {
    Arbitrary<Actor> sensible =
        Arbitraries.of(
            Fixture.DESK,
            Fixture.HOLDING,
            Fixture.ANAESTHETIST_1,
            Fixture.ANAESTHETIST_2,
            Fixture.at(Fixture.R3, Role.CIRCULATING, null),
            Fixture.at(Fixture.R1, Role.CIRCULATING, Fixture.N1),
            new Actor(Role.TECHNICIAN, Fixture.T1, "pocket-T1"));
    Arbitrary<Actor> any =
        Combinators.combine(
                Arbitraries.of(Role.values()),
                Arbitraries.of(PEOPLE).injectNull(0.3),
                Arbitraries.of("station-1", "station-9", "", "desk").injectNull(0.1))
            .as(Actor::new);
    return Arbitraries.frequencyOf(Tuple.of(9, sensible), Tuple.of(1, any.injectNull(0.05)));
  }

  private static Arbitrary<RoomId> room() {
    return Arbitraries.of(ROOMS).injectNull(0.02);
  }

  private static Arbitrary<CaseId> caseId() {
    return Arbitraries.of(CASES).injectNull(0.02);
  }

  private static Arbitrary<PersonId> person() {
    return Arbitraries.of(PEOPLE).injectNull(0.2);
  }

  private static Arbitrary<UnitId> unit() {
    return Arbitraries.of(UNITS).injectNull(0.02);
  }

  private static Arbitrary<Private> text() {
    return Arbitraries.of(Private.of("some text"), Private.ERASED).injectNull(0.3);
  }

  private static Arbitrary<Long> time() {
    return Arbitraries.of(
            Fixture.BEGIN,
            Fixture.BOOKED,
            Fixture.BOOKED + 20 * Fixture.MINUTE,
            0L,
            Long.MIN_VALUE,
            Long.MAX_VALUE)
        .injectNull(0.1);
  }

  private static Arbitrary<Long> timeGiven() {
    return time().map(t -> t == null ? (Long) Fixture.BOOKED : t);
  }

  private static Arbitrary<ItemRef> item() {
    List<ItemRef> refs = new ArrayList<>();
    for (var item : Fixture.BLOCK.items()) {
      boolean ofRoom = item.belongs() == sunup.sheets.SheetItem.Belongs.ROOM;
      for (int i = 0; i < ROOMS.size(); i++) {
        refs.add(
            ofRoom ? ItemRef.of(ROOMS.get(i), item.key()) : ItemRef.of(CASES.get(i), item.key()));
      }
    }
    refs.add(ItemRef.of(Fixture.R1, "no.such"));
    for (String key : List.of("machine.cylinder", "machine.alarms", "drugs.controlled")) {
      refs.add(ItemRef.of(NextCases.SECOND, key));
    }
    return Arbitraries.of(refs).injectNull(0.01);
  }

  private static Arbitrary<Evidence> evidence() {
    return Arbitraries.<Evidence>of(
            new Evidence.Touch(),
            new Evidence.Touch(),
            new Evidence.Touch(),
            new Evidence.Swept(),
            new Evidence.Reading(180, "bar", true),
            new Evidence.Reading(10, "bar", true),
            new Evidence.Reading(180, "bar", false),
            new Evidence.Reading(Double.NaN, "bar", true),
            new Evidence.Reading(1e300, "bar", true),
            new Evidence.Reading(1, null, true),
            new Evidence.Choice("fine"),
            new Evidence.Choice("!spent"),
            new Evidence.Choice("spent"),
            new Evidence.Choice("blue"),
            new Evidence.Choice(null),
            new Evidence.Scan(Fixture.US1),
            new Evidence.Scan(Fixture.MIC),
            new Evidence.Scan(new UnitId("X")))
        .injectNull(0.02);
  }

  private static Arbitrary<CasePlan> casePlan() {
    return Combinators.combine(
            Arbitraries.of(CASES), Arbitraries.of(ROOMS), Arbitraries.of(true, false))
        .as((c, r, block) -> Fixture.casePlan(c, r, block ? Fixture.BLOCK : Fixture.PLAIN));
  }

  private static Arbitrary<Command> command() {
    return Arbitraries.frequencyOf(
        Tuple.of(12, ofItems()),
        Tuple.of(4, ofPeople()),
        Tuple.of(4, ofCases()),
        Tuple.of(4, ofThings()),
        Tuple.of(3, ofMoves()),
        Tuple.of(4, ofDrugs()),
        Tuple.of(1, Arbitraries.of(Samples.oneOfEach())),
        Tuple.of(1, Arbitraries.just((Command) null)));
  }

  private static Arbitrary<Command> ofItems() {
    return Arbitraries.oneOf(
        Combinators.combine(item(), person()).as(Command.Begin::new),
        Combinators.combine(item(), evidence(), person(), person()).as(Command.Good::new),
        Combinators.combine(item(), evidence(), person(), person()).as(Command.Good::new),
        Combinators.combine(
                room(),
                Arbitraries.of(Section.values()).injectNull(0.02),
                item().list().ofMaxSize(2).map(Orders::withoutHoles),
                person())
            .as(Command.Sweep::new),
        Combinators.combine(room(), caseId(), nextId()).as(Command.SetUpNext::new),
        Combinators.combine(room(), Arbitraries.of(Section.values()), nextId())
            .as((room, section, next) -> new Command.Sweep(room, section, null, null, next)),
        Combinators.combine(item(), text()).as(Command.Fault::new),
        Combinators.combine(item(), person()).as(Command.TakeFault::new),
        item().map(Command.Mend::new),
        Combinators.combine(item(), text()).as(Command.Reopen::new),
        Combinators.combine(item(), text()).as(Command.LeaveOut::new),
        Combinators.combine(item(), timeGiven(), text()).as(Command.ExpectItem::new),
        Arbitraries.integers().between(0, 20).map(i -> new Command.Undo(new CommandId("p" + i))));
  }

  private static Arbitrary<CaseId> nextId() {
    return Arbitraries.of("1.2", "1.3", "2.2", "3.2", "C1").map(CaseId::new);
  }

  private static List<ItemRef> withoutHoles(List<ItemRef> refs) {
    return refs.stream().filter(java.util.Objects::nonNull).toList();
  }

  private static Arbitrary<Command> ofPeople() {
    return Arbitraries.oneOf(
        Combinators.combine(person(), room()).as(Command.Arrive::new),
        Combinators.combine(person(), timeGiven(), text()).as(Command.ExpectPerson::new),
        Combinators.combine(
                Arbitraries.of("A1", "Z1", "Z2").map(PersonId::new),
                Arbitraries.of(Role.values()).injectNull(0.02),
                room(),
                Arbitraries.longs().between(-60, 120))
            .as(
                (id, role, room, minute) ->
                    new Command.AddPerson(
                        new PersonPlan(
                            id, role, room, List.of(), Fixture.BEGIN + minute * Fixture.MINUTE))),
        Combinators.combine(person(), room()).as(Command.Join::new),
        Combinators.combine(person(), room()).as(Command.Leave::new),
        Combinators.combine(person(), person(), room()).as(Command.HandOver::new),
        Combinators.combine(room(), text()).as(Command.AskHelp::new),
        Combinators.combine(room(), person()).as(Command.AnswerHelp::new));
  }

  private static Arbitrary<Command> ofCases() {
    Arbitrary<DelayReason> reason = Arbitraries.of(DelayReason.values()).injectNull(0.02);
    return Arbitraries.oneOf(
        casePlan()
            .map(
                p ->
                    new Command.AddCase(
                        p, p.sheet().equals("plain") ? Fixture.PLAIN : Fixture.BLOCK)),
        casePlan()
            .map(
                p ->
                    new Command.ChangeCase(
                        p, p.sheet().equals("plain") ? Fixture.PLAIN : Fixture.BLOCK)),
        Combinators.combine(caseId(), caseId()).as(Command.SwapCases::new),
        room().map(Command.ConfirmSwap::new),
        Combinators.combine(caseId(), text()).as(Command.CancelCase::new),
        Combinators.combine(caseId(), time()).as(Command.AgreeLater::new),
        Combinators.combine(caseId(), Arbitraries.of(Step.values()).injectNull(0.02))
            .as(Command.Reach::new),
        Combinators.combine(caseId(), reason, text()).as(Command.GiveReason::new),
        caseId().map(Command.AgreeReason::new),
        Combinators.combine(caseId(), reason, text()).as(Command.DisputeReason::new));
  }

  private static Arbitrary<Command> ofMoves() {
    Arbitrary<Move> move =
        Arbitraries.oneOf(
            Combinators.combine(person(), room()).as(Move.SendTo::new),
            Combinators.combine(Arbitraries.of("ultrasound", "x").injectNull(0.02), room())
                .as(Move.Unit::new),
            Combinators.combine(
                    room(),
                    Arbitraries.of(List.of("machine.bag"), List.of("no.such"), List.<String>of()))
                .as(Move.First::new),
            Combinators.combine(timeGiven(), room())
                .as((t, r) -> new Move.OpenEarlier(Fixture.PHARMACY, t, r)),
            Combinators.combine(room(), person()).as(Move.Attend::new),
            Combinators.combine(room(), caseId(), timeGiven()).as(Move.Later::new),
            Combinators.combine(room(), room()).as(Move.Talk::new));
    Arbitrary<String> key =
        Arbitraries.of("send.T1.1", "unit.ultrasound.2", "open.pharmacy", "later.C1", "x")
            .injectNull(0.02);
    return Arbitraries.oneOf(
        Combinators.combine(
                move.injectNull(0.02), Arbitraries.of(Role.values()).injectNull(0.5), person())
            .as(Command.AskMove::new),
        Combinators.combine(key, Arbitraries.of(MoveAnswer.values()).injectNull(0.02))
            .as(Command.AnswerMove::new),
        key.map(Command.DoneMove::new),
        key.map(Command.WithdrawMove::new));
  }

  private static Arbitrary<Command> ofDrugs() {
    Arbitrary<String> drug =
        Arbitraries.of("propofol", "ephedrine", "fentanyl", "bupivacaine", "no such");
    Arbitrary<String> scan =
        Arbitraries.of(
                "010200000000001517270101",
                "010200000000001517200101",
                "010200000000004617270101",
                "17",
                "")
            .injectNull(0.6);
    return Arbitraries.oneOf(
        Combinators.combine(caseId(), drug.list().ofMaxSize(3), scan, text(), person(), person())
            .as(Command.DrawDrugs::new),
        Combinators.combine(caseId(), Arbitraries.integers().between(-1, 3), person())
            .as(Command.DiscardDrug::new),
        Combinators.combine(
                caseId(),
                Arbitraries.of(CountKind.values()).injectNull(0.02),
                drug.injectNull(0.1),
                Arbitraries.integers().between(-1, 5).injectNull(0.3),
                Arbitraries.of("-1", "0", "20", "50", "100", "1e30")
                    .map(java.math.BigDecimal::new)
                    .injectNull(0.3),
                Arbitraries.integers().between(-1, 5).injectNull(0.5),
                person(),
                person())
            .as(
                (c, kind, name, units, micrograms, entry, by, witness) ->
                    new Command.CountDrug(
                        c, kind, name, units, micrograms, entry, null, by, witness)));
  }

  private static Arbitrary<Command> ofThings() {
    return Arbitraries.oneOf(
        Combinators.combine(unit(), room()).as(Command.Claim::new),
        unit().map(Command.Release::new),
        Combinators.combine(unit(), room()).as(Command.PromiseUnit::new),
        Combinators.combine(room(), Arbitraries.of(RoomUse.values()), time())
            .as(Command.SayRoom::new),
        timeGiven().map(t -> new Command.PlaceOpens(Fixture.PHARMACY, t)),
        Combinators.combine(room(), Arbitraries.of("item:x", "", " "), text(), time())
            .as(Command.TakeHoldup::new),
        room().map(Command.ReportReady::new),
        Combinators.combine(room(), text()).as(Command.AddNote::new));
  }
}
