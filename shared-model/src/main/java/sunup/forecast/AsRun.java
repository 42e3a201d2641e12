package sunup.forecast;

import com.fasterxml.jackson.annotation.JsonInclude;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.IntStream;

/**
 * Where the minutes of a morning went, by the same function as a trial's chain (rule 6): for each
 * room that has started the elements from its planned beginning to its start, and the late minutes
 * that each carries. All whole milliseconds; a room's pieces add up to its late minutes exactly.
 *
 * @param rooms those that have started, in the input's order
 */
public record AsRun(List<RoomRun> rooms) {
  /**
   * One room.
   *
   * @param id the room
   * @param target the time that the start is measured against
   * @param start when it started
   * @param lateMs max(0, start - target)
   * @param pieces first "plan" (what was planned too tight), then the elements in order of time
   */
  public record RoomRun(String id, long target, long start, long lateMs, List<Piece> pieces) {}

  /**
   * An element and what of the late minutes it carries.
   *
   * @param kind as in {@link Forecast.Share}
   * @param item the item that was worked on or waited, or null
   * @param thing the person, place or kind of equipment, or null
   * @param where the room where that was meanwhile, or null
   * @param from when it began
   * @param to when it ended
   * @param allowedMs what was allowed for it
   * @param lateMs late minutes that it carries, never negative
   * @param implied true if nobody said when the item was begun: the beginning follows from what
   *     went before (rule 3), and so does this piece's length
   */
  @JsonInclude(JsonInclude.Include.NON_NULL)
  public record Piece(
      String kind,
      String item,
      String thing,
      String where,
      long from,
      long to,
      long allowedMs,
      long lateMs,
      boolean implied) {}

  /**
   * Explains the rooms that have started.
   *
   * @throws BadInput if the input can't be read; the message names the field and what to do
   */
  public static AsRun of(ForecastInput in) {
    return of(in, Past.UNTOLD);
  }

  /**
   * The same where the record tells more.
   *
   * @throws BadInput as above
   */
  public static AsRun of(ForecastInput in, Past past) {
    Checks.check(in);
    Model m = Compiler.compile(in, IntStream.range(0, in.rooms().size()).boxed().toList());
    Course course = Known.asRun(m, in.now(), past).course;
    Chain chain = new Chain(m);
    List<RoomRun> rooms = new ArrayList<>();
    for (int r = 0; r < m.rooms; r++) {
      if (m.started[r] < Model.NEVER) {
        chain.walk(course, r, m.started[r]);
        rooms.add(room(in.now(), m, r, chain));
      }
    }
    return new AsRun(List.copyOf(rooms));
  }

  private static RoomRun room(long now, Model m, int r, Chain chain) {
    long start = m.started[r];
    long begins = Math.min(start, m.begins[r]);
    long[] pieces = new long[chain.count + 1];
    Pieces.split(begins, m.target[r], chain.count, chain.length, chain.allowed, pieces);
    List<Piece> list = new ArrayList<>();
    String plan = Chain.KINDS[Chain.PLAN];
    list.add(new Piece(plan, null, null, null, now + begins, now + begins, 0, pieces[0], false));
    for (int k = 0; k < chain.count; k++) {
      int i = chain.item[k];
      int kind = chain.kind[k];
      boolean worked = kind == Chain.WORK || kind == Chain.WAITS || kind == Chain.MEND;
      list.add(
          new Piece(
              Chain.KINDS[kind],
              i < 0 ? null : m.key[i],
              Chain.nameOf(m, kind, chain.thing[k]),
              chain.where[k] < 0 ? null : m.roomId[chain.where[k]],
              now + chain.end[k] - chain.length[k],
              now + chain.end[k],
              chain.allowed[k],
              pieces[k + 1],
              worked && i >= 0 && m.began[i] == Model.EVER));
    }
    long late = Math.max(0, start - m.target[r]);
    return new RoomRun(m.roomId[r], now + m.target[r], now + start, late, List.copyOf(list));
  }
}
