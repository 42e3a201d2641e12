package sunup.board;

import java.util.ArrayList;
import java.util.EnumSet;
import java.util.List;
import java.util.Set;
import sunup.board.Morning.CaseDay;
import sunup.board.Morning.MoveDay;
import sunup.board.Morning.MoveState;
import sunup.board.Morning.PersonDay;
import sunup.board.Morning.UnitDay;
import sunup.board.Outcome.Refused;

/** Moves asked, answered, done and taken back. */
final class MoveRules {
  /** Different moves of one morning. */
  static final int MOVES_AT_MOST = 200;

  /** Items that one move may name. */
  static final int ITEMS_AT_MOST = 10;

  private static final Set<Role> CARERS =
      EnumSet.of(Role.ANAESTHETIST, Role.SUPERVISOR, Role.TRAINEE, Role.CIRCULATING, Role.SCRUB);

  private MoveRules() {}

  static Outcome ask(Ask ask, Command.AskMove c) {
    Refused refused =
        Ask.first(
            ask.unknown(c.person()),
            c.person() == null && c.role() == null
                ? Ask.refuse(RefusalCode.EVIDENCE_MISSING, "Say who is asked for it.")
                : null,
            impossible(ask, c.move()));
    if (refused != null) {
      return refused;
    }
    MoveDay before = ask.morning.moves().get(c.move().key());
    if (before == null && ask.morning.moves().size() >= MOVES_AT_MOST) {
      return Ask.refuse(
          RefusalCode.OUT_OF_RANGE,
          "More than " + MOVES_AT_MOST + " moves were asked this morning. Use the telephone.");
    }
    if (before != null && before.state() == MoveState.NOT_SAFE) {
      return Ask.refuse(RefusalCode.NOT_SAFE, null);
    }
    boolean stands = before != null && (before.isAsked() || before.state() == MoveState.ACCEPTED);
    boolean same = stands && before.move().equals(c.move()) && before.isAskedOf(c);
    return same ? ask.accept() : ask.accept(new Event.MoveAsked(c.move(), c.role(), c.person()));
  }

  static Outcome answer(Ask ask, Command.AnswerMove c) {
    MoveDay day = ask.morning.moves().get(c.move());
    Refused refused =
        Ask.first(unknown(day, c.move()), mayAnswer(ask, day, c.answer() == MoveAnswer.NOT_SAFE));
    if (refused != null) {
      return refused;
    }
    if (day.state() == MoveState.NOT_SAFE) {
      return c.answer() == MoveAnswer.NOT_SAFE
          ? ask.accept()
          : Ask.refuse(RefusalCode.NOT_SAFE, null);
    }
    if (c.answer() == MoveAnswer.NOT_SAFE) {
      return ask.accept(new Event.MoveDeclined(c.move(), true));
    }
    if (!day.isAsked() && day.state() != MoveState.ACCEPTED) {
      return notAsked();
    }
    if (c.answer() == MoveAnswer.CANNOT) {
      return ask.accept(new Event.MoveDeclined(c.move(), false));
    }
    return day.state() == MoveState.ACCEPTED ? ask.accept() : accept(ask, day);
  }

  /** What was agreed by it is said beside it, in the words that the board has for it. */
  private static Outcome accept(Ask ask, MoveDay day) {
    Refused refused = impossible(ask, day.move());
    if (refused != null) {
      return refused;
    }
    List<Event> events = new ArrayList<>();
    events.add(new Event.MoveAccepted(day.move().key()));
    if (day.move() instanceof Move.Unit unit) {
      UnitDay free = unit(ask.morning, unit);
      if (free != null) {
        events.add(new Event.UnitPromised(free.plan().id(), unit.room()));
      }
    } else if (day.move() instanceof Move.OpenEarlier open) {
      events.add(new Event.PlaceOpening(open.place(), open.at()));
    } else if (day.move() instanceof Move.Later later) {
      events.add(new Event.LaterAgreed(later.caseId(), later.at()));
    } else if (day.move() instanceof Move.SendTo send) {
      events.addAll(faultTaken(ask.morning, send));
    }
    return ask.accept(events);
  }

  /** A unit that can be promised, or null if the room has one or is promised one. */
  private static UnitDay unit(Morning morning, Move.Unit move) {
    UnitDay free = null;
    for (UnitDay unit : morning.units().values()) {
      if (unit.plan().kind().equals(move.kind())) {
        if (move.room().equals(unit.promised())) {
          return null;
        }
        free = free == null && unit.promised() == null ? unit : free;
      }
    }
    return free;
  }

  /** A technician who goes to a room with a fault of the set-up is on it. */
  private static List<Event> faultTaken(Morning morning, Move.SendTo send) {
    if (morning.people().get(send.person()).plan().role() != Role.TECHNICIAN) {
      return List.of();
    }
    for (Placed placed : morning.itemsOf(send.room())) {
      boolean fault = placed.item().state() == ItemState.FAULT && placed.item().mender() == null;
      if (fault && placed.sheet().section().isSetUp()) {
        return List.of(new Event.FaultTaken(placed.ref(), send.person()));
      }
    }
    return List.of();
  }

  static Outcome done(Ask ask, Command.DoneMove c) {
    MoveDay day = ask.morning.moves().get(c.move());
    Refused refused = Ask.first(unknown(day, c.move()), mayAnswer(ask, day, false));
    if (refused != null) {
      return refused;
    }
    if (day.state() == MoveState.DONE) {
      return ask.accept();
    }
    return day.isAsked() || day.state() == MoveState.ACCEPTED
        ? ask.accept(new Event.MoveDone(c.move()))
        : notAsked();
  }

  static Outcome withdraw(Ask ask, Command.WithdrawMove c) {
    MoveDay day = ask.morning.moves().get(c.move());
    Refused refused = unknown(day, c.move());
    if (refused != null) {
      return refused;
    }
    return day.isAsked() || day.state() == MoveState.ACCEPTED
        ? ask.accept(new Event.MoveWithdrawn(c.move()))
        : ask.accept();
  }

  private static Outcome notAsked() {
    return Ask.refuse(RefusalCode.TOO_LATE, "Nobody asks for this any more. Look at the board.");
  }

  private static Refused unknown(MoveDay day, String key) {
    return Ask.unknownUnless(day != null, "move", key);
  }

  /**
   * The one who was asked, one of the role, people of its room, and whoever telephones. A place, or
   * another start, is not the room's to promise; "not safe" any of its people may say.
   */
  private static Refused mayAnswer(Ask ask, MoveDay day, boolean notSafe) {
    if (day == null) {
      return null;
    }
    Actor actor = ask.order.actor();
    boolean coordinates =
        actor.role() == Role.DESK || actor.role() == Role.ADMIN || actor.role() == Role.SUPERVISOR;
    boolean asked =
        day.person() != null ? day.person().equals(actor.person()) : actor.role() == day.role();
    RoomId room = day.move().room();
    boolean elsewhere = day.move() instanceof Move.OpenEarlier || day.move() instanceof Move.Later;
    boolean ofRoom =
        room != null
            && (notSafe || !elsewhere)
            && Rights.ROOM_TEAM.contains(actor.role())
            && Rights.isOf(ask.morning, actor, room);
    return coordinates || asked || ofRoom
        ? null
        : Ask.refuse(RefusalCode.NOT_ALLOWED, "whoever was asked, or the desk");
  }

  /** Why a move can't be: what it names is not there, or it is one that there never is. */
  private static Refused impossible(Ask ask, Move move) {
    Refused unknown = move.room() == null ? null : noCase(ask, move.room());
    if (unknown != null) {
      return unknown;
    }
    if (move instanceof Move.SendTo send) {
      return cannotSend(ask, send);
    }
    if (move instanceof Move.Unit unit) {
      boolean known =
          ask.morning.units().values().stream().anyMatch(u -> u.plan().kind().equals(unit.kind()));
      return Ask.unknownUnless(known, "equipment", unit.kind());
    }
    if (move instanceof Move.First first) {
      return cannotBeFirst(ask, first);
    }
    if (move instanceof Move.OpenEarlier open) {
      return cannotOpen(ask, open);
    }
    if (move instanceof Move.Attend attend) {
      return ask.unknown(attend.person());
    }
    if (move instanceof Move.Later later) {
      return CaseRules.cannotBeLater(ask, later.caseId(), later.at());
    }
    Move.Talk talk = (Move.Talk) move;
    return talk.room().equals(talk.other())
        ? Ask.refuse(RefusalCode.BAD_COMMAND, "'other' must be another room")
        : noCase(ask, talk.other());
  }

  private static Refused noCase(Ask ask, RoomId room) {
    Refused unknown = ask.unknown(room);
    if (unknown != null) {
      return unknown;
    }
    CaseDay day = ask.morning.caseIn(room);
    return day == null || day.cancelled()
        ? Ask.refuse(RefusalCode.CASE_CANCELLED, "Room " + room + " has none.")
        : null;
  }

  private static Refused cannotSend(Ask ask, Move.SendTo send) {
    Refused unknown = ask.unknown(send.person());
    if (unknown != null) {
      return unknown;
    }
    PersonDay person = ask.morning.people().get(send.person());
    if (!isThere(ask, person)) {
      return Ask.refuse(
          RefusalCode.TOO_LATE, "Person " + send.person() + " is not here. Ask somebody else.");
    }
    RoomId from = person.room() != null ? person.room() : person.plan().room();
    return from != null && !from.equals(send.room()) && isOnlyCarer(ask.morning, person, from)
        ? Ask.refuse(
            RefusalCode.TOO_LATE,
            "Room " + from + " has a patient and nobody else of that role. Ask somebody else.")
        : null;
  }

  /** Nobody touches a screen to say that a technician came: who serves several is as planned. */
  private static boolean isThere(Ask ask, PersonDay person) {
    boolean asPlanned =
        person.plan().room() == null
            && person.expectedAt() == null
            && person.plan().plannedAt() <= ask.now;
    return person.leftAt() == null && (person.arrivedAt() != null || asPlanned);
  }

  /** After wheels in nobody leaves a room who is the only one of a carer's role there. */
  private static boolean isOnlyCarer(Morning morning, PersonDay person, RoomId room) {
    CaseDay day = morning.caseIn(room);
    boolean patient = day != null && !day.cancelled() && day.hasPassed(Step.WHEELS_IN);
    if (!patient || !CARERS.contains(person.plan().role())) {
      return false;
    }
    for (PersonDay other : morning.people().values()) {
      RoomId at = other.room() != null ? other.room() : other.plan().room();
      boolean sameCare = other.plan().role() == person.plan().role();
      boolean another = !other.plan().id().equals(person.plan().id());
      if (another && other.isHere() && sameCare && room.equals(at)) {
        return false;
      }
    }
    return true;
  }

  private static Refused cannotBeFirst(Ask ask, Move.First first) {
    if (first.items().isEmpty() || first.items().size() > ITEMS_AT_MOST) {
      return Ask.refuse(
          RefusalCode.BAD_COMMAND, "'items' must be 1 to " + ITEMS_AT_MOST + " items");
    }
    List<String> keys =
        ask.morning.itemsOf(first.room()).stream().map(p -> p.sheet().key()).toList();
    for (String key : first.items()) {
      if (!keys.contains(key)) {
        return Ask.refuse(RefusalCode.UNKNOWN, "item " + key + " in room " + first.room());
      }
    }
    return null;
  }

  private static Refused cannotOpen(Ask ask, Move.OpenEarlier open) {
    Morning.PlaceDay place = ask.morning.places().get(open.place());
    Refused refused =
        Ask.first(
            Ask.unknownUnless(place != null, "place", open.place()), ask.implausible(open.at()));
    if (refused != null) {
      return refused;
    }
    return open.at() >= place.opensAt()
        ? Ask.refuse(
            RefusalCode.TOO_LATE,
            "It opens at " + ask.clock(place.opensAt()) + " already: ask for an earlier time.")
        : null;
  }
}
