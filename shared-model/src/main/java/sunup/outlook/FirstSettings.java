package sunup.outlook;

import sunup.forecast.Draw;

/**
 * First settings of the outlook: expert guesses that a site replaces by what its own mornings
 * teach. Times in milliseconds.
 */
final class FirstSettings {
  static final long MINUTE = 60_000;

  /** How much later than planned a person comes: usually 3 minutes, one in ten over 10. */
  static final Draw.LogNormal PERSON_LATE = new Draw.LogNormal(3 * MINUTE, 10 * MINUTE);

  /** Around an announced time ("says 07:20"), from 5 minutes before it on. */
  static final long ANNOUNCED_EARLY = 5 * MINUTE;

  static final Draw ANNOUNCED = new Draw.LogNormal(5 * MINUTE, 14 * MINUTE);

  /** A room in use or being cleaned with no end said. */
  static final Draw.LogNormal IN_USE = new Draw.LogNormal(25 * MINUTE, 50 * MINUTE);

  static final Draw.LogNormal CLEANING = new Draw.LogNormal(20 * MINUTE, 35 * MINUTE);

  /** By how much a use goes on past the end that was said, once it does. */
  static final Draw.LogNormal OVERRUN = new Draw.LogNormal(10 * MINUTE, 30 * MINUTE);

  /** So long past the said end, with nothing said since, somebody should ask. */
  static final long OVERRUN_NOTED = 3 * MINUTE;

  /** Mending a reported fault when the sheet names no extra. */
  static final Draw MEND = new Draw.LogNormal(8 * MINUTE, 20 * MINUTE);

  /** The patient is sent for so many times the usual chain before the start. */
  static final double SENT_FOR_LEAD = 1.8;

  /** A room not heard from for so long while its set-up is open has gone quiet. */
  static final long QUIET_AFTER = 15 * MINUTE;

  /** After its planned beginning a room gets so long before silence is remarkable. */
  static final long FIRST_WORD_WITHIN = 10 * MINUTE;

  /** From so long before the target on, every unheard room is asked and tight rooms are listed. */
  static final long ASK_FROM = 45 * MINUTE;

  /** An unheard room is asked at least so long before its last moment to act. */
  static final long ASK_BEFORE_LAST = 10 * MINUTE;

  /** Standing thresholds on P(on time), with the dead band that keeps them from flickering. */
  static final double TIGHT_ENTER = 0.60;

  static final double TIGHT_LEAVE = 0.66;

  static final double LATE_ENTER = 0.35;

  static final double LATE_LEAVE = 0.43;

  /** A shown figure changes by so many minutes for so long, or at once by an event. */
  static final int SHOWN_CHANGE = 3;

  static final long SHOWN_FOR = MINUTE;

  /** Needs are sorted no more than once a minute of the morning. */
  static final long SORT_EVERY = MINUTE;

  /** The same in real time, for a morning that runs faster. */
  static final long SORT_LEAST_REAL = 5_000;

  static final int NEEDS_AT_MOST = 5;

  /**
   * A room waits for somebody from this share of its late minutes on, until it is below the other.
   */
  static final double WAITS_ENTER = 0.2;

  static final double WAITS_LEAVE = 0.12;

  /** Share of known causes in the late minutes from which a quiet room may be called late. */
  static final double KNOWN_CAUSE = 0.5;

  /** The same for a room that nobody was ever heard from: nearly all of it must be known. */
  static final double ONLY_CAUSE = 0.9;

  /** So long after a step what gates it may be told, and still have been good when it happened. */
  static final long TOLD_AFTER = 5 * MINUTE;

  /** A reported fault should be taken within so long. */
  static final long FAULT_ANSWERED = 2 * MINUTE;

  /** After a person is later than nine in ten, so long until somebody else is to be sent. */
  static final long FLOAT_TOLD = 5 * MINUTE;

  /** What is fetched at a place takes somebody this long there: a way, a queue. */
  static final long AT_THE_PLACE = 5 * MINUTE;

  /** A place is asked to open so long before the last moment to fetch something there. */
  static final long OPENED_EARLIER = 45 * MINUTE;

  /** Before the target, the order of what two rooms want is to be agreed by then, or it is late. */
  static final long ORDER_AGREED = 60 * MINUTE;

  static final long ORDER_LATEST = 35 * MINUTE;

  /** Expected minutes of waiting for another room's equipment that are worth a word. */
  static final long WAIT_NOTED = MINUTE;

  /** From this share of the late minutes on, the wall names it before the steps of the start. */
  static final double TOLD_SHARE = 0.08;

  private FirstSettings() {}
}
