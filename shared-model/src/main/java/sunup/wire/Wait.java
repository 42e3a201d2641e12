package sunup.wire;

import com.fasterxml.jackson.annotation.JsonInclude;
import sunup.board.Role;
import sunup.codec.Maybe;

/** One thing that a start waits for. {@code own} if it is this room's own work. */
@JsonInclude(JsonInclude.Include.NON_NULL)
public record Wait(
    String holdup, String words, boolean own, @Maybe Role takenBy, @Maybe Long until) {}
