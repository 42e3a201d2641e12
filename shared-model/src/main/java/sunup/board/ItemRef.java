package sunup.board;

import com.fasterxml.jackson.annotation.JsonCreator;
import com.fasterxml.jackson.annotation.JsonValue;
import java.util.Objects;

/**
 * One item of one morning. An item belongs to the room-day (machine checks: a swap leaves them) or
 * to the case (drugs, consent: they go with it). Written {@code room:7/machine.self-test} or {@code
 * case:C7/drugs.drawn}.
 *
 * @param room set if the item belongs to the room-day, else null
 * @param caseId set if the item belongs to the case, else null
 * @param key the item's key on its sheet
 */
public record ItemRef(RoomId room, CaseId caseId, String key) implements Comparable<ItemRef> {
  public ItemRef {
    if ((room == null) == (caseId == null)) {
      throw new IllegalArgumentException("an item belongs to a room or to a case");
    }
    Objects.requireNonNull(key, "key");
  }

  public static ItemRef of(RoomId room, String key) {
    return new ItemRef(room, null, key);
  }

  public static ItemRef of(CaseId caseId, String key) {
    return new ItemRef(null, caseId, key);
  }

  /**
   * @throws IllegalArgumentException if the text is not of the written form
   */
  @JsonCreator
  public static ItemRef parse(String text) {
    int colon = text.indexOf(':');
    int slash = text.indexOf('/');
    if (colon > 0 && slash > colon + 1) {
      String owner = text.substring(colon + 1, slash);
      String key = text.substring(slash + 1);
      String kind = text.substring(0, colon);
      if (kind.equals("room")) {
        return of(new RoomId(owner), key);
      }
      if (kind.equals("case")) {
        return of(new CaseId(owner), key);
      }
    }
    throw new IllegalArgumentException(
        "an item is written room:<room>/<key> or case:<case>/<key>, not " + text);
  }

  @Override
  public int compareTo(ItemRef other) {
    return toString().compareTo(other.toString());
  }

  @JsonValue
  @Override
  public String toString() {
    return (room != null ? "room:" + room : "case:" + caseId) + "/" + key;
  }
}
