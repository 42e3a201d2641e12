package sunup.wire;

/** Minutes that a move saves in a room. */
public record RoomGain(String room, double minutes) {}
