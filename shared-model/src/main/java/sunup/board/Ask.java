package sunup.board;

import java.time.Instant;
import java.time.format.DateTimeFormatter;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import sunup.board.Outcome.Refused;

/** One order with the morning that it meets: what every rule starts from. */
final class Ask {
  /** Times that people give must lie this near to the morning's beginning. */
  static final long PLAUSIBLE_MS = 48L * 60 * 60_000;

  private static final DateTimeFormatter CLOCK = DateTimeFormatter.ofPattern("HH:mm", Locale.ROOT);

  final Morning morning;
  final Order order;

  /** When it is recorded: never before the event before it. */
  final long now;

  /** When it happened, within the morning so far. */
  final long at;

  Ask(Morning morning, Order order) {
    this.morning = morning;
    this.order = order;
    now = Math.max(order.now(), morning.lastRecordedAt());
    at =
        morning.openedAt() == null
            ? now
            : Math.max(morning.openedAt(), Math.min(order.happenedAt(), now));
  }

  Role role() {
    return order.actor().role();
  }

  /**
   * Who did it: the person named, or else the one who signed; or null. Somebody who is signed on
   * and has no post in this morning's plan speaks by role: the event keeps who gave it.
   */
  PersonId doer(PersonId named) {
    PersonId signer = order.actor().person();
    boolean planned = signer != null && morning.people().containsKey(signer);
    return named != null ? named : planned ? signer : null;
  }

  Recorded recorded(Event event) {
    return new Recorded(event, order.actor(), order.id(), at, now);
  }

  Outcome accept(Event... events) {
    return accept(Arrays.asList(events));
  }

  Outcome accept(List<Event> events) {
    List<Recorded> list = new ArrayList<>(events.size());
    for (Event event : events) {
      list.add(recorded(event));
    }
    return new Outcome.Accepted(list);
  }

  static Refused refuse(RefusalCode code, String detail) {
    return new Refused(code, detail);
  }

  /** UNKNOWN if there is no such thing, else null. */
  static Refused unknownUnless(boolean there, String what, Object id) {
    return there ? null : refuse(RefusalCode.UNKNOWN, what + " " + id);
  }

  Refused unknown(PersonId person) {
    return unknownUnless(person == null || morning.people().containsKey(person), "person", person);
  }

  Refused unknown(RoomId room) {
    return unknownUnless(room == null || morning.rooms().containsKey(room), "room", room);
  }

  Refused unknown(CaseId caseId) {
    return unknownUnless(morning.cases().containsKey(caseId), "case", caseId);
  }

  Refused unknown(ItemRef item) {
    return unknownUnless(morning.item(item) != null, "item", item);
  }

  /** OUT_OF_RANGE if a time that somebody gave cannot be meant, else null. */
  Refused implausible(Long time) {
    if (time == null
        || (time >= morning.beginsAt() - PLAUSIBLE_MS
            && time <= morning.beginsAt() + PLAUSIBLE_MS)) {
      return null;
    }
    return refuse(
        RefusalCode.OUT_OF_RANGE,
        "A time must lie within two days of this morning. Give the time again.");
  }

  /** The first refusal that is not null, or null. */
  static Refused first(Refused... refusals) {
    for (Refused refusal : refusals) {
      if (refusal != null) {
        return refusal;
      }
    }
    return null;
  }

  /** A moment as people say it, in the site's time. */
  String clock(long time) {
    return morning.settings() == null
        ? Long.toString(time)
        : CLOCK.format(Instant.ofEpochMilli(time).atZone(morning.settings().zoneId()));
  }
}
