package sunup.board;

import sunup.board.Morning.PersonDay;
import sunup.board.Outcome.Refused;

/** People come, go to rooms, leave and hand over. */
final class PeopleRules {
  private PeopleRules() {}

  static Outcome add(Ask ask, Command.AddPerson c) {
    PersonPlan plan = c.plan();
    Refused refused = Ask.first(ask.unknown(plan.room()), ask.implausible(plan.plannedAt()));
    for (RoomId room : plan.covers()) {
      refused = Ask.first(refused, ask.unknown(room));
    }
    if (refused != null) {
      return refused;
    }
    String problem = PlanCheck.problem(ask.morning, plan);
    return problem != null
        ? Ask.refuse(RefusalCode.BAD_PLAN, problem)
        : ask.accept(new Event.PersonAdded(plan));
  }

  static Outcome arrive(Ask ask, Command.Arrive c) {
    Refused refused = Ask.first(ask.unknown(c.person()), ask.unknown(c.room()));
    if (refused != null) {
      return refused;
    }
    PersonDay person = ask.morning.people().get(c.person());
    if (!person.isHere()) {
      return ask.accept(new Event.PersonArrived(c.person(), c.room()));
    }
    return c.room() == null || c.room().equals(person.room())
        ? ask.accept()
        : ask.accept(new Event.PersonJoined(c.person(), c.room()));
  }

  static Outcome expect(Ask ask, Command.ExpectPerson c) {
    Refused refused = Ask.first(ask.unknown(c.person()), ask.implausible(c.at()));
    if (refused != null) {
      return refused;
    }
    return ask.morning.people().get(c.person()).isHere()
        ? Ask.refuse(
            RefusalCode.TOO_LATE, "Person " + c.person() + " is here already. Look at the board.")
        : ask.accept(new Event.PersonExpected(c.person(), c.at(), c.said()));
  }

  static Outcome join(Ask ask, Command.Join c) {
    Refused refused = Ask.first(ask.unknown(c.person()), ask.unknown(c.room()));
    if (refused != null) {
      return refused;
    }
    PersonDay person = ask.morning.people().get(c.person());
    if (!person.isHere()) {
      // Whoever joins a room has come.
      return ask.accept(new Event.PersonArrived(c.person(), c.room()));
    }
    return c.room().equals(person.room())
        ? ask.accept()
        : ask.accept(new Event.PersonJoined(c.person(), c.room()));
  }

  static Outcome leave(Ask ask, Command.Leave c) {
    Refused refused = Ask.first(ask.unknown(c.person()), ask.unknown(c.room()));
    if (refused != null) {
      return refused;
    }
    PersonDay person = ask.morning.people().get(c.person());
    boolean gone = c.room() == null ? person.leftAt() != null : !c.room().equals(person.room());
    return gone ? ask.accept() : ask.accept(new Event.PersonLeft(c.person(), c.room()));
  }

  static Outcome handOver(Ask ask, Command.HandOver c) {
    Refused refused = Ask.first(ask.unknown(c.from()), ask.unknown(c.to()), ask.unknown(c.room()));
    if (refused != null) {
      return refused;
    }
    if (c.from().equals(c.to())) {
      return Ask.refuse(RefusalCode.SAME_PERSON, "choose who takes over from " + c.from().value());
    }
    // What happened is kept also if nobody signs; a signature must be of one of the two.
    Actor.Second second = ask.order.actor().second();
    if (second != null) {
      PersonId named = second.person().equals(c.from()) ? c.from() : c.to();
      Refused unsigned = Rights.checkSecond(ask, CommandKind.HAND_OVER, null, named);
      if (unsigned != null) {
        return unsigned;
      }
    }
    return ask.accept(new Event.HandedOver(c.from(), c.to(), c.room()));
  }
}
