package sunup.bedside;

import java.util.List;

/**
 * What stands on a figure's page before anything is entered.
 *
 * @param name its key
 * @param title what the screen calls it
 * @param edition counted up whenever a result would change; a release names it by its fingerprint
 * @param formula in words and signs
 * @param source organisation or authors, title, year, table
 * @param range where it holds; outside it refuses
 * @param caution what it does not know
 * @param dose true if a result is an amount of a drug or fluid: a second person for children
 * @param inputs what it asks for
 */
public record Card(
    String name,
    String title,
    int edition,
    String formula,
    String source,
    String range,
    String caution,
    boolean dose,
    List<Input> inputs) {
  public Card {
    inputs = List.copyOf(inputs);
  }
}
