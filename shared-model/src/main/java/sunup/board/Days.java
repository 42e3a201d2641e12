package sunup.board;

import java.util.List;
import java.util.Map;
import sunup.board.Morning.CaseDay;
import sunup.board.Morning.Entered;
import sunup.board.Morning.Help;
import sunup.board.Morning.PersonDay;
import sunup.board.Morning.Reason;
import sunup.board.Morning.RoomDay;
import sunup.board.Morning.Said;
import sunup.board.Morning.Taken;

/** Copies of the parts of a morning with one thing changed. */
final class Days {
  private Days() {}

  /** Said again, a use goes on; its end may be another. */
  static RoomDay withUse(RoomDay r, RoomUse use, Long until, long at, Touch last) {
    Long since = use == RoomUse.FREE ? null : (Long) at;
    if (since != null && use == r.use() && r.useSince() != null) {
      since = Math.min(r.useSince(), at);
    }
    return new RoomDay(
        r.id(),
        r.caseId(),
        use,
        until,
        since,
        last,
        r.lastWordAt(),
        r.readyAt(),
        r.readyBy(),
        r.readyOpen(),
        r.taken(),
        r.help(),
        r.entered());
  }

  /** Another case in the room: what was reported of its being ready was about the one before. */
  static RoomDay withCase(RoomDay r, CaseId caseId, Touch last) {
    return new RoomDay(
        r.id(),
        caseId,
        r.use(),
        r.useUntil(),
        r.useSince(),
        last,
        r.lastWordAt(),
        null,
        null,
        List.of(),
        r.taken(),
        r.help(),
        r.entered());
  }

  static RoomDay withReady(RoomDay r, long at, Role by, List<ItemRef> open, Touch last) {
    return new RoomDay(
        r.id(),
        r.caseId(),
        r.use(),
        r.useUntil(),
        r.useSince(),
        last,
        r.lastWordAt(),
        at,
        by,
        List.copyOf(open),
        r.taken(),
        r.help(),
        r.entered());
  }

  static RoomDay withTaken(RoomDay r, Taken taken, Touch last) {
    return new RoomDay(
        r.id(),
        r.caseId(),
        r.use(),
        r.useUntil(),
        r.useSince(),
        last,
        r.lastWordAt(),
        r.readyAt(),
        r.readyBy(),
        r.readyOpen(),
        taken,
        r.help(),
        r.entered());
  }

  static RoomDay withHelp(RoomDay r, Help help, Touch last) {
    return new RoomDay(
        r.id(),
        r.caseId(),
        r.use(),
        r.useUntil(),
        r.useSince(),
        last,
        r.lastWordAt(),
        r.readyAt(),
        r.readyBy(),
        r.readyOpen(),
        r.taken(),
        help,
        r.entered());
  }

  /** A word from the room touches nothing that anybody decides on. */
  static RoomDay withWord(RoomDay r, long at) {
    Long word = r.lastWordAt() == null ? at : Math.max(r.lastWordAt(), at);
    return new RoomDay(
        r.id(),
        r.caseId(),
        r.use(),
        r.useUntil(),
        r.useSince(),
        r.last(),
        word,
        r.readyAt(),
        r.readyBy(),
        r.readyOpen(),
        r.taken(),
        r.help(),
        r.entered());
  }

  static RoomDay withEntered(RoomDay r, List<Entered> entered) {
    return new RoomDay(
        r.id(),
        r.caseId(),
        r.use(),
        r.useUntil(),
        r.useSince(),
        r.last(),
        r.lastWordAt(),
        r.readyAt(),
        r.readyBy(),
        r.readyOpen(),
        r.taken(),
        r.help(),
        entered);
  }

  static CaseDay withPlan(CaseDay c, CasePlan plan, Long agreedAt, Touch last) {
    return new CaseDay(
        plan, agreedAt, c.cancelled(), last, c.steps(), c.saidBy(), c.flagged(), c.reason());
  }

  static CaseDay withCancelled(CaseDay c, Touch last) {
    return new CaseDay(
        c.plan(), c.agreedAt(), true, last, c.steps(), c.saidBy(), c.flagged(), c.reason());
  }

  static CaseDay withSteps(
      CaseDay c, Map<Step, Long> steps, Map<Step, Said> by, List<ItemRef> flagged, Touch last) {
    return new CaseDay(
        c.plan(), c.agreedAt(), c.cancelled(), last, steps, by, List.copyOf(flagged), c.reason());
  }

  static CaseDay withReason(CaseDay c, Reason reason, Touch last) {
    return new CaseDay(
        c.plan(), c.agreedAt(), c.cancelled(), last, c.steps(), c.saidBy(), c.flagged(), reason);
  }

  static PersonDay withWord(PersonDay p, long at) {
    Long word = p.lastWordAt() == null ? at : Math.max(p.lastWordAt(), at);
    return new PersonDay(
        p.plan(), p.arrivedAt(), p.expectedAt(), p.room(), p.leftAt(), word, p.last());
  }

  static PersonDay withArrival(PersonDay p, long at, RoomId room, Touch last) {
    return new PersonDay(p.plan(), at, null, room, null, p.lastWordAt(), last);
  }

  static PersonDay withRoom(PersonDay p, RoomId room, Touch last) {
    return new PersonDay(
        p.plan(), p.arrivedAt(), p.expectedAt(), room, p.leftAt(), p.lastWordAt(), last);
  }

  static PersonDay withExpected(PersonDay p, Long expectedAt, Touch last) {
    return new PersonDay(
        p.plan(), p.arrivedAt(), expectedAt, p.room(), p.leftAt(), p.lastWordAt(), last);
  }

  static PersonDay withLeft(PersonDay p, long at, Touch last) {
    return new PersonDay(p.plan(), p.arrivedAt(), p.expectedAt(), null, at, p.lastWordAt(), last);
  }
}
