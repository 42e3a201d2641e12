package sunup.wire;

import sunup.board.Section;
import sunup.codec.Maybe;

/**
 * What was made ready in a room for a case that went, and counts for nobody. The other way round,
 * {@link Part.SwapPart#lacks} are keys of what was made ready elsewhere for the case that came, and
 * is open here.
 *
 * @param key on the sheet
 * @param section where it stood
 * @param to the room in which that case is now, which is this one if it came back; left out if the
 *     case is cancelled
 */
public record SwapLeft(String key, Section section, @Maybe String to) {}
