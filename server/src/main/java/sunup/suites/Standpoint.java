package sunup.suites;

import sunup.board.Morning;
import sunup.board.MorningId;

/**
 * What the owner of a morning knows, all of it durable.
 *
 * @param morning which morning
 * @param epoch the owner's epoch in the journal
 * @param state after the last durable event; its {@code seq} is the journal sequence
 * @param confirmedAt when the journal last confirmed the epoch, by {@link Clock#monotonicMs}
 * @param readOnly true while the journal does not answer, and for one who is not the owner
 * @param owned false once the morning went to another node, can't be read, or was let go: what is
 *     told then is old, and nothing may pass for a proof of life
 */
public record Standpoint(
    MorningId morning,
    long epoch,
    Morning state,
    long confirmedAt,
    boolean readOnly,
    boolean owned) {}
