/** Every limit and interval of the live client. Milliseconds of real time unless said otherwise. */

export const SUBPROTOCOL = 'sunup.1';
export const PATH = '/live';

/** Waits before the next try to connect; the last one repeats. Each is shortened by jitter. */
export const BACK_OFF_MS = [100, 250, 500, 1_000, 2_000, 5_000] as const;
/** A wait is drawn from [JITTER_LEAST, 1] of its step, so that screens do not come all at once. */
export const JITTER_LEAST = 0.5;
/** A socket that is not open by then is given up. */
export const CONNECT_MS = 8_000;
/**
 * An open socket that brings nothing at all for so long is closed and opened again: four heartbeats
 * are missing, and another node may be well. If it is, the stale banner (5 s) need not come.
 */
export const SILENT_SOCKET_MS = 4_000;
/**
 * The same while a view is awaited: a browser tells whole messages only, a large one on a slow line
 * takes long, and no tick is answered behind it. Cut off, it would begin again and again.
 */
export const SILENT_VIEW_MS = 15_000;

/** Rule 2: a screen is stale after so long without a heartbeat. */
export const STALE_MS = 5_000;
/** How often staleness is looked at. */
export const STALE_LOOK_MS = 250;
/** A view that was asked for and did not come is asked for again. */
export const VIEW_WAIT_MS = 3_000;
/**
 * So many heartbeats of a lower epoch and none of ours: an owner beats only while the journal
 * confirms it, so this is another journal (a restored or a new one), and what we hold is void.
 */
export const LOWER_BEATS_TO_FORGET = 15;
/** Messages larger than this are not read: the socket is closed. */
export const MESSAGE_BYTES_MAX = 8 * 1024 * 1024;
/** Parts kept; a server that sends more is wrong, and the screen says so. */
export const PARTS_MAX = 20_000;

/**
 * A heartbeat proves life only if the answer to a tick of at most so long ago came before it: one
 * that lay on the line while that was cut is as old as the cut.
 */
export const ECHO_MS = 2_000;
/** How often a tick is sent, and how many comparisons of the clocks are remembered. */
export const TICK_MS = 1_000;
/** A heartbeat brings one too, if none was sent for so long. */
export const TICK_AGAIN_MS = 750;
export const TICKS_KEPT = 60;
/** A heartbeat that disagrees by more than this sets the clock at once (times the rate). */
export const CLOCK_STEP_MS = 1_500;

/** Commands kept unanswered. Beyond it nothing more is taken and the screen says so. */
export const OUTBOX_MAX = 200;
/** An unanswered command is sent again, under the same id. */
export const RESEND_MS = 5_000;
/** After "not now" the same command is sent again. */
export const LATER_MS = 2_000;
/** Commands on the way at once. */
export const IN_FLIGHT_MAX = 16;

/** How often it is looked whether what is kept for a page opened while the board is away changed. */
export const PICTURE_MS = 5_000;
/** A picture that has not changed is written anew this often: it says how long it was live. */
export const PICTURE_ANEW_MS = 60_000;
/** An older picture is of another morning. */
export const PICTURE_AGE_MAX_MS = 18 * 3_600_000;
