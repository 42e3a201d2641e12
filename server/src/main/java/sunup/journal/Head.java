package sunup.journal;

/**
 * Where a morning's journal ends.
 *
 * @param epoch the epoch of the one who may append
 * @param seq the sequence of the last event; 0 before the first
 * @param chain the hash chain up to it
 */
public record Head(long epoch, long seq, Bytes chain) {
  /** Before anybody took the morning over. */
  public static final Head NONE = new Head(0, 0, Chain.START);

  /** The head after one more event. */
  public Head after(Bytes event) {
    return new Head(epoch, seq + 1, Chain.next(chain, event));
  }
}
