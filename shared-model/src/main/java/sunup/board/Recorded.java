package sunup.board;

/**
 * An event as the journal keeps it.
 *
 * @param event what happened
 * @param actor who said so
 * @param command the command that it came of
 * @param happenedAt when it happened, epoch milliseconds; durations, lapses and attribution use it
 * @param recordedAt when the owner recorded it, never before the event before it; order uses the
 *     journal's sequence
 */
public record Recorded(
    Event event, Actor actor, CommandId command, long happenedAt, long recordedAt) {}
