package sunup.ops.rehearsal;

import java.util.Locale;
import sunup.board.Command;
import sunup.board.CommandId;
import sunup.board.PersonId;

/**
 * One touch on a screen.
 *
 * @param at when it is touched, epoch milliseconds of the morning
 * @param page the page it is touched on: station, holding or desk
 * @param screen the screen's name
 * @param person who is signed on, or null
 * @param command what is told
 * @param shown the key of the part whose revision the decision needs, or null
 */
public record Report(
    long at, String page, String screen, PersonId person, Command command, String shown) {

  /**
   * Its id, the same whenever the same morning is played again, so that a player that starts anew
   * may send everything again. It has the form of a UUIDv7 (RFC 9562): the morning's time, then
   * bits of the seed and of its place in the script.
   */
  static CommandId id(long at, long seed, int index) {
    long mixed = seed * 0x9E3779B97F4A7C15L + index;
    mixed = (mixed ^ (mixed >>> 31)) * 0xBF58476D1CE4E5B9L;
    mixed ^= mixed >>> 29;
    return new CommandId(
        String.format(
            Locale.ROOT,
            "%08x-%04x-7%03x-%04x-%012x",
            (at >>> 16) & 0xFFFFFFFFL,
            at & 0xFFFF,
            index & 0xFFF,
            0x8000 | ((mixed >>> 48) & 0x3FFF),
            mixed & 0xFFFFFFFFFFFFL));
  }
}
