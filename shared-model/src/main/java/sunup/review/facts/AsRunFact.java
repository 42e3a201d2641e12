package sunup.review.facts;

import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import sunup.codec.Maybe;

/**
 * Where the minutes of one start went, by the as-run chain of rule 6. The pieces' late milliseconds
 * add up to those of the start exactly.
 *
 * @param pieces from the planned beginning to the start, in order of time; empty if it has not
 *     started or could not be explained
 * @param why if it could not be explained: what stood in the way
 */
public record AsRunFact(List<Piece> pieces, @Maybe String why) {
  /** Of a case that has no start. */
  public static final AsRunFact NONE = new AsRunFact(List.of(), null);

  public AsRunFact {
    pieces = List.copyOf(pieces);
  }

  /**
   * An element of the chain.
   *
   * @param kind plan (too little time), work, waits (unattended), mend, arrival, occupied, lapse,
   *     booked, person, place, equipment or not-begun
   * @param item key of the item that was worked on or waited, or null
   * @param thing the role, place or kind of equipment that it waited for, or null
   * @param where the room where that was meanwhile, or null
   * @param from when it began
   * @param to when it ended
   * @param lateMs late milliseconds that it carries, never negative
   * @param implied true if nobody said when its work began
   * @param lateEntry true if it rests on a touch that was entered late, or ends at a start that
   *     nobody told
   * @param together true if it rests on touches that were entered together
   */
  public record Piece(
      String kind,
      @Maybe String item,
      @Maybe String thing,
      @Maybe String where,
      long from,
      long to,
      long lateMs,
      boolean implied,
      boolean lateEntry,
      boolean together) {
    Cause cause() {
      return new Cause(kind, item, thing, where);
    }
  }

  /** All late milliseconds of the pieces: those of the start. */
  public long lateMs() {
    return pieces.stream().mapToLong(Piece::lateMs).sum();
  }

  /** Those of pieces that rest on late or entered-together touches. */
  public long weakMs() {
    return pieces.stream()
        .filter(p -> p.lateEntry() || p.together())
        .mapToLong(Piece::lateMs)
        .sum();
  }

  /** The share of the late milliseconds that rests on such touches, or null if none are late. */
  public Double weakShare() {
    long late = lateMs();
    return late == 0 ? null : Double.valueOf((double) weakMs() / late);
  }

  /**
   * The cause that carries the most late milliseconds, all of its pieces taken together; the
   * earlier of equal ones. Empty if nothing was late.
   */
  public Optional<Cause> largest() {
    return pieces.stream()
        .filter(p -> p.lateMs() > 0)
        .map(Piece::cause)
        .distinct()
        .max(Comparator.<Cause>comparingLong(c -> lateMs(c)).thenComparingLong(c -> -first(c)));
  }

  private long lateMs(Cause cause) {
    return pieces.stream().filter(p -> p.cause().equals(cause)).mapToLong(Piece::lateMs).sum();
  }

  private long first(Cause cause) {
    return pieces.stream().filter(p -> p.cause().equals(cause)).findFirst().orElseThrow().from();
  }
}
