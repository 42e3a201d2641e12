package sunup.wire;

import java.util.Map;

/** Who may see which part, in one table. A part that stands nowhere here is the desk's. */
final class LeastAudience {
  private static final Map<Class<? extends Part>, Audience> TABLE =
      Map.ofEntries(
          Map.entry(Part.SuitePart.class, Audience.WALL),
          Map.entry(Part.RoomPart.class, Audience.WALL),
          Map.entry(Part.NeedPart.class, Audience.WALL),
          Map.entry(Part.PersonPart.class, Audience.POCKET),
          Map.entry(Part.MovePart.class, Audience.POCKET),
          Map.entry(Part.CasePart.class, Audience.STAFF),
          Map.entry(Part.ItemPart.class, Audience.STAFF),
          Map.entry(Part.WaitPart.class, Audience.STAFF),
          Map.entry(Part.UnitPart.class, Audience.STAFF),
          Map.entry(Part.PlacePart.class, Audience.STAFF),
          Map.entry(Part.SwapPart.class, Audience.STAFF),
          Map.entry(Part.DrugListPart.class, Audience.STAFF),
          Map.entry(Part.DrugsPart.class, Audience.STAFF),
          Map.entry(Part.NextPart.class, Audience.STAFF),
          Map.entry(Part.NextItemPart.class, Audience.STAFF));

  private LeastAudience() {}

  static Audience of(Class<? extends Part> part) {
    return TABLE.getOrDefault(part, Audience.DESK);
  }
}
