package sunup.wire;

import com.fasterxml.jackson.annotation.JsonInclude;
import sunup.board.CountKind;
import sunup.codec.Maybe;

/**
 * An entry into the count.
 *
 * @param number what a command that strikes it names
 * @param words what was entered
 * @param by who signed; witness the second person
 * @param unsigned true if the second person was only named, absent if he or she signed by PIN
 * @param struck true if it does not count any more
 */
@JsonInclude(JsonInclude.Include.NON_NULL)
public record CountEntryShown(
    int number,
    CountKind kind,
    String words,
    long at,
    String by,
    @Maybe String witness,
    @Maybe Boolean unsigned,
    boolean struck) {}
