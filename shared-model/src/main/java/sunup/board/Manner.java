package sunup.board;

/** How a command stands to what happened meanwhile. */
public enum Manner {
  /**
   * Tells what happened. Accepted whatever happened meanwhile: at most it is kept without effect.
   */
  OBSERVATION,
  /** Chooses on what the screen showed: needs that to be current, by {@link Order#seen()}. */
  DECISION,
  /** Says how things stand now: the last word stands, whatever was seen. */
  ENTRY
}
