package sunup.outlook;

import java.util.HashMap;
import java.util.Map;
import sunup.forecast.ForecastInput;
import sunup.forecast.ForecastInput.ItemIn;
import sunup.forecast.ForecastInput.PlaceIn;
import sunup.forecast.ForecastInput.RoomIn;

/**
 * When each item of a room begins and ends at the earliest: by usual minutes, if nobody has to wait
 * for anybody or anything shared. Says when things are wanted, not when they are had.
 */
final class Earliest {
  /** From, and to. */
  record Span(long from, long to) {}

  private final RoomIn room;
  private final Map<String, Long> opens = new HashMap<>();
  private final Map<String, ItemIn> items = new HashMap<>();
  private final Map<String, Span> spans = new HashMap<>();

  Earliest(ForecastInput in, RoomIn room) {
    this.room = room;
    for (PlaceIn place : in.places()) {
      opens.put(place.id(), place.opensAt());
    }
    for (ItemIn item : room.items()) {
      items.put(item.key(), item);
    }
  }

  /** Of one item; prerequisites that are not on the list count as done. */
  Span of(String key) {
    Span known = spans.get(key);
    if (known != null) {
      return known;
    }
    // A circle, which sheets do not have, ends here.
    spans.put(key, new Span(room.begins(), room.begins()));
    Span span = of(items.get(key));
    spans.put(key, span);
    return span;
  }

  private Span of(ItemIn item) {
    if (item.arrival() != null) {
      long at = item.arrival().from() + item.arrival().late().usual();
      return new Span(at, at);
    }
    long from = Math.max(room.begins(), opens.getOrDefault(item.place(), room.begins()));
    for (String before : item.after()) {
      if (items.containsKey(before)) {
        from = Math.max(from, of(before).to());
      }
    }
    boolean isStep = item.marks() != null;
    if (item.notBefore() != null && !isStep) {
      from = Math.max(from, item.notBefore());
    }
    long waits = item.waits() == null ? 0 : item.waits().usual();
    long to = from + item.hands().usual() + waits;
    return new Span(from, item.notBefore() != null && isStep ? Math.max(to, item.notBefore()) : to);
  }
}
