package sunup.board;

/**
 * Where one item stands.
 *
 * @param ref which item
 * @param state as last said; lapses are derived by {@link Morning#stateOf}
 * @param revision the journal sequence that last touched it
 * @param since when it came into this state, by happenedAt
 * @param begunAt when work on it was said to begin, or null
 * @param by who did it or does it, or null
 * @param witness a second person, or null
 * @param evidence what it is good by, or the reading that made it a fault, or null
 * @param what the fault, the reason for leaving it out, what was said of an expected time; or null
 * @param mender who has taken the fault, or null
 * @param expectedAt when it is expected to come, or null
 * @param together true if it was entered together with others: teaches nothing about durations
 * @param command the command that brought it here, for undo
 * @param before what it was before that command, for undo; its own {@code before} is null
 */
public record Item(
    ItemRef ref,
    ItemState state,
    long revision,
    long since,
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
  public static Item open(ItemRef ref, long revision, long since) {
    return new Item(
        ref,
        ItemState.OPEN,
        revision,
        since,
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
}
