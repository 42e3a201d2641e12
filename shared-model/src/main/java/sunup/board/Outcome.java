package sunup.board;

import java.util.List;

/** What {@code decide} answers: events, possibly none, or a refusal. Never an exception. */
public sealed interface Outcome {
  /** The command is accepted; it yields these events, in order. */
  record Accepted(List<Recorded> events) implements Outcome {
    public Accepted {
      events = List.copyOf(events);
    }
  }

  /**
   * The command is refused.
   *
   * @param code from the one registry
   * @param detail fills the code's sentence: what to do about it
   */
  record Refused(RefusalCode code, String detail) implements Outcome {}
}
