package sunup.board;

/**
 * A piece of shared equipment.
 *
 * @param id its tag
 * @param kind its kind, for example {@code ultrasound}; units of a kind stand in for each other
 * @param wall how the wall names it, at most 16 letters
 */
public record UnitPlan(UnitId id, String kind, String wall) {}
