package sunup.journal;

import sunup.board.CommandId;
import sunup.board.RefusalCode;

/**
 * What a command was answered, kept so that the same command is answered the same again.
 *
 * @param command the screen's id for it
 * @param payload a keyed hash of what was asked and by whom
 * @param fromSeq the sequence before its first event
 * @param toSeq the sequence of its last event; equal to {@code fromSeq} if it yielded none
 * @param refusal why it was refused, or null
 */
public record Receipt(CommandId command, Bytes payload, long fromSeq, long toSeq, Refusal refusal) {
  /** A refusal as it was told. */
  public record Refusal(RefusalCode code, String words) {}
}
