package sunup.board;

/**
 * A place away from the rooms.
 *
 * @param id its key, as the sheets name it
 * @param wall how the wall names it, at most 16 letters
 * @param opensAt when it opens, epoch milliseconds
 * @param walkMinutes one way
 */
public record PlacePlan(PlaceId id, String wall, long opensAt, double walkMinutes) {}
