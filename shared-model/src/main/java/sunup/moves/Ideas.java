package sunup.moves;

import java.util.List;
import sunup.board.Move;

/**
 * What a search for moves came to. Each saving is of that move alone: savings do not add.
 *
 * @param now the moment that it is of
 * @param possible moves that the morning allows and that were thought of
 * @param screened how many of them were simulated; the others stand behind these by the late
 *     minutes of their rooms
 * @param confirmed how many of these were simulated again on the second stream
 * @param trials trials of the second stream
 * @param shown those that help, the largest saving first
 * @param talk rooms whose cases could be talked about; nothing was computed of it
 */
public record Ideas(
    long now,
    int possible,
    int screened,
    int confirmed,
    int trials,
    List<Idea> shown,
    List<Move.Talk> talk) {
  /** Before any search. */
  public static final Ideas NONE = new Ideas(0, 0, 0, 0, 0, List.of(), List.of());

  public Ideas {
    shown = List.copyOf(shown);
    talk = List.copyOf(talk);
  }
}
