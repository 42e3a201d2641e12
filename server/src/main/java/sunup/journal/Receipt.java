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
  /**
   * A refusal as it was told.
   *
   * @param by role, person and screen of whoever asked, or null in journals from before it was kept
   * @param at when it was refused, epoch milliseconds of morning time
   */
  public record Refusal(RefusalCode code, String words, String by, long at) {}
}
