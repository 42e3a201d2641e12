package sunup.board;

import java.util.Locale;

/** Why a word that was accepted changes nothing: the codes of {@link Event.WordKept}. */
public enum Kept {
  /** The item was left out. */
  LEFT_OUT,
  /** It happened before a reopening, a mend, a fault or a void that is known already. */
  OLDER,
  /** The case is cancelled. */
  CASE_CANCELLED,
  /** The sheet that counts now does not ask for the item. */
  NOT_ASKED,
  /** It was begun already. */
  IN_HAND,
  /** It was good already. */
  GOOD,
  /** It is a fault; beginning again does not hide that. */
  FAULT,
  /** There is no fault to mend. */
  NO_FAULT;

  /** The code as events hold it. */
  public String code() {
    return name().toLowerCase(Locale.ROOT).replace('_', '-');
  }
}
