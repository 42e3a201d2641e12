package sunup.forecast;

import com.fasterxml.jackson.annotation.JsonInclude;
import java.util.List;

/**
 * What comes out of a forecast. Equal (model, input, seed, trials) give equal bits.
 *
 * @param model version of the model
 * @param inputs names the input but for its seed and trials: 32 hexadecimal digits of a hash
 * @param seed the seed used
 * @param trials the trials run
 * @param now the moment it was computed for
 * @param rooms in the input's order
 * @param holdups the suite's shares: the same sums over all rooms
 * @param components rooms that depend on each other, each list in the input's order
 * @param warnings what the input asks for that can't be had, by field; of inputs that somebody sent
 */
public record Forecast(
    int model,
    String inputs,
    long seed,
    int trials,
    long now,
    List<RoomOut> rooms,
    List<Share> holdups,
    List<List<String>> components,
    @JsonInclude(JsonInclude.Include.NON_EMPTY) List<String> warnings) {

  public Forecast {
    warnings = warnings == null ? List.of() : List.copyOf(warnings);
  }

  /** Without warnings. */
  public Forecast(
      int model,
      String inputs,
      long seed,
      int trials,
      long now,
      List<RoomOut> rooms,
      List<Share> holdups,
      List<List<String>> components) {
    this(model, inputs, seed, trials, now, rooms, holdups, components, List.of());
  }

  /** The same figures with warnings. */
  Forecast with(List<String> told) {
    return new Forecast(model, inputs, seed, trials, now, rooms, holdups, components, told);
  }

  /**
   * One room.
   *
   * @param id the room
   * @param onTime P(start, cut to whole minutes, by target + grace)
   * @param start10 10 % point of the start, never before the booked time
   * @param start50 median of the start
   * @param start90 90 % point of the start
   * @param could10 10 % point of when the start could be if nothing held it to its booked time
   * @param could50 median of that
   * @param could90 90 % point of that
   * @param meanLateMs mean of max(0, start - target), trials cut off at the cap counting the cap
   * @param capped trials that had not started by target + cap
   * @param kept for a silent room, the histories kept by rule 3 of those tried; else the trials
   * @param tried histories tried
   * @param holdups shares, largest first; empty if the mean is under 0.1 min
   * @param alreadyLost the share of what ended before now; with the holdups it adds to one
   * @param items per item of the room, in the input's order
   */
  public record RoomOut(
      String id,
      double onTime,
      long start10,
      long start50,
      long start90,
      long could10,
      long could50,
      long could90,
      double meanLateMs,
      int capped,
      int kept,
      int tried,
      List<Share> holdups,
      double alreadyLost,
      List<ItemOut> items) {}

  /**
   * What the start waits for, with its share of the late minutes.
   *
   * @param room the room whose start is held up
   * @param kind plan (too little time), work, waits (unattended), mend (of a fault, or the rare
   *     extra of an item that nobody called faulty), arrival, occupied, lapse, booked, person,
   *     place, equipment or not-begun
   * @param item the item of that room that waits or is worked on, or null
   * @param thing the person, place or kind, or null
   * @param where the room where that thing was meanwhile, or null
   * @param share of the late minutes, 0 to 1
   * @param until median moment at which it ends, over the trials in which it carries late minutes
   */
  @JsonInclude(JsonInclude.Include.NON_NULL)
  public record Share(
      String room, String kind, String item, String thing, String where, double share, long until) {

    /** The same as a share of more. */
    Share as(double ofMore) {
      return new Share(room, kind, item, thing, where, ofMore, until);
    }
  }

  /**
   * One item.
   *
   * @param key the item
   * @param criticality share of trials in which it is on the chain and the start is late
   * @param done10 10 % point of its being good by the start of its room, or the moment it became
   *     good; null if in so many trials it is not good by then
   * @param done50 median
   * @param done90 90 % point
   * @param last50 last moment to begin it, 50 %; null if it is begun or does not matter for a start
   * @param last90 last moment to begin it, 90 %
   */
  @JsonInclude(JsonInclude.Include.NON_NULL)
  public record ItemOut(
      String key,
      double criticality,
      Long done10,
      Long done50,
      Long done90,
      Long last50,
      Long last90) {}
}
