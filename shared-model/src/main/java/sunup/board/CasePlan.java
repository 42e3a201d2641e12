package sunup.board;

import java.util.List;
import sunup.codec.Maybe;

/**
 * A first case as the case list gives it.
 *
 * @param id stays with the case when it moves
 * @param room where it is booked
 * @param bookedAt the booked time of the site's start event, epoch milliseconds
 * @param procedure what is done, or null; private
 * @param service the surgical service, for example {@code orthopaedics}
 * @param technique the base sheet's technique, for example {@code general}
 * @param options additions asked for, for example {@code block}, {@code child}
 * @param surgeon the surgeon's pseudonym, or null
 * @param sheet hash of its composed sheet
 */
public record CasePlan(
    CaseId id,
    RoomId room,
    long bookedAt,
    @Maybe Private procedure,
    @Maybe String service,
    String technique,
    List<String> options,
    @Maybe PersonId surgeon,
    @Maybe String sheet) {
  public CasePlan {
    options = options == null ? List.of() : List.copyOf(options);
  }

  /** The same case in another room. */
  public CasePlan in(RoomId other) {
    return new CasePlan(
        id, other, bookedAt, procedure, service, technique, options, surgeon, sheet);
  }

  /** The same case, booked at another time in epoch milliseconds. */
  public CasePlan at(long other) {
    return new CasePlan(id, room, other, procedure, service, technique, options, surgeon, sheet);
  }

  /** The same case by another composed sheet, given by its hash. */
  public CasePlan by(String other) {
    return new CasePlan(id, room, bookedAt, procedure, service, technique, options, surgeon, other);
  }
}
