package sunup.board;

/**
 * Where one item stands.
 *
 * @param ref which item
 * @param state as last said; lapses are derived by {@link Morning#stateOf}
 * @param last what last touched it
 * @param since when it came into this state, by happenedAt
 * @param notBefore an observation that happened before this has no effect: the last reopening,
 *     mend, fault or void; or null
 * @param begunAt when work on it was said to begin, or null
 * @param by who did it or does it, or null
 * @param witness a second person, or null
 * @param evidence what it is good by, or the reading that made it a fault, or null
 * @param what the fault, the reason for leaving it out, what was said of an expected time; or null
 * @param mender who has taken the fault, or null
 * @param expectedAt when it is expected to come, or null
 * @param together true if it was entered together with others: teaches nothing about durations
 * @param command the command that brought it here, for undo, or null
 * @param before what it was before that command, for undo; its own {@code before} is null
 */
public record Item(
    ItemRef ref,
    ItemState state,
    Touch last,
    long since,
    Long notBefore,
    Long begunAt,
    PersonId by,
    PersonId witness,
    Evidence evidence,
    Private what,
    PersonId mender,
    Long expectedAt,
    boolean together,
    CommandId command,
    Item before) {
  /** An item that nobody has touched yet. */
  public static Item open(ItemRef ref, Touch last) {
    return new Item(
        ref,
        ItemState.OPEN,
        last,
        last.at(),
        null,
        null,
        null,
        null,
        null,
        null,
        null,
        null,
        false,
        null,
        null);
  }

  /** The journal sequence that last touched it. */
  public long revision() {
    return last.revision();
  }

  /** True if somebody made something of it that a swap or a change can make void. */
  public boolean isMade() {
    return state == ItemState.GOOD || state == ItemState.IN_HAND || state == ItemState.FAULT;
  }
}
