package sunup.editions;

import java.util.List;
import sunup.codec.Maybe;

/**
 * An edition as the list of them tells it.
 *
 * @param edition its number
 * @param at when it was published, epoch milliseconds of real time
 * @param role of whom it was published
 * @param person the post of whoever it was, if somebody was signed on with one
 * @param screen where it was done
 * @param note what was said of it, if anything
 * @param changes what it changed, one line each
 */
public record Published(
    int edition,
    long at,
    String role,
    @Maybe String person,
    String screen,
    @Maybe String note,
    List<String> changes) {
  public Published {
    changes = List.copyOf(changes);
  }
}
