package sunup.forecast.again;

import sunup.forecast.ForecastInput.PersonIn;
import sunup.forecast.ForecastInput.Stretch;

/** A person in one trial. */
final class Somebody {
  final PersonIn is;

  /** When he or she came or will come. */
  long comes;

  /** Shared by all that this person does. */
  double factor;

  boolean busy;

  /** Kept at this instant for a step of two or more. */
  boolean kept;

  /** Room or place of the last work. */
  String where;

  long idleSince;

  /** Called away until then. */
  long backAt = Long.MIN_VALUE;

  /** A call that may still come: when the usual minutes done reach this. */
  double calledAfter = Double.POSITIVE_INFINITY;

  double usualDone;

  Somebody(PersonIn is) {
    this.is = is;
    where = is.room();
  }

  boolean free(long t) {
    return !busy && !kept && t >= comes && t >= backAt && !left(t) && !away(t);
  }

  boolean left(long t) {
    return is.leavesAt() != null && t >= is.leavesAt();
  }

  boolean away(long t) {
    for (Stretch s : is.away()) {
      if (s.from() <= t && t < s.to()) {
        return true;
      }
    }
    return false;
  }

  /** End of the stretch that t lies in. */
  long awayUntil(long t) {
    return is.away().stream()
        .filter(s -> s.from() <= t && t < s.to())
        .mapToLong(Stretch::to)
        .max()
        .orElse(t);
  }

  boolean own(Task task) {
    return task.room.id().equals(is.room());
  }

  boolean serves(String room) {
    return is.room() == null
        ? is.covers().isEmpty() || is.covers().contains(room)
        : is.room().equals(room);
  }
}
