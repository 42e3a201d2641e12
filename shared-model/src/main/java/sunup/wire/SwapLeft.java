package sunup.wire;

import sunup.board.Section;

/**
 * What was made ready in a room for a case that was swapped away, and counts for nobody.
 *
 * @param key on the sheet
 */
public record SwapLeft(String key, Section section) {}
