package sunup.suites;

import sunup.board.MorningId;

/**
 * Shows a morning's owner on another node that a command comes from a node of the same board, as it
 * was when that node saw whose it is: the actor, the page and what is asked.
 */
public interface Seal {
  /** Of boards where nobody is known: there is nothing to show. */
  Seal NONE =
      new Seal() {
        @Override
        public String of(MorningId morning, Submission given) {
          return null;
        }

        @Override
        public boolean holds(MorningId morning, Submission given, String seal) {
          return true;
        }
      };

  /** The seal of a command for a morning, or null if there is none. */
  String of(MorningId morning, Submission given);

  /**
   * Whether a command is as it was when it was sealed.
   *
   * @param seal that came with it, or null
   */
  boolean holds(MorningId morning, Submission given, String seal);
}
