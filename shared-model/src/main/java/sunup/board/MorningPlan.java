package sunup.board;

import java.util.List;
import sunup.sheets.ComposedSheet;

/**
 * All that a draft morning begins with.
 *
 * @param id suite and date
 * @param settings the site's decisions, frozen for this morning
 * @param rooms in the order of the wall
 * @param cases first cases, at most one a room
 * @param people who is planned
 * @param units shared equipment
 * @param places places that open
 * @param sheets the composed sheets that the cases name, by content
 * @param beginsAt when the rooms' set-up is planned to begin, epoch milliseconds
 */
public record MorningPlan(
    MorningId id,
    SiteSettings settings,
    List<RoomId> rooms,
    List<CasePlan> cases,
    List<PersonPlan> people,
    List<UnitPlan> units,
    List<PlacePlan> places,
    List<ComposedSheet> sheets,
    long beginsAt) {
  public MorningPlan {
    rooms = List.copyOf(rooms);
    cases = List.copyOf(cases);
    people = List.copyOf(people);
    units = List.copyOf(units);
    places = List.copyOf(places);
    sheets = List.copyOf(sheets);
  }
}
