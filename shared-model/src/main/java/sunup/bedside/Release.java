package sunup.bedside;

import java.time.LocalDate;
import java.util.Objects;

/**
 * The site's pharmacy has released a figure. It holds for the figure as it stood: an edition or a
 * setting that changes its results changes its fingerprint, and the figure is off until it is
 * released again.
 *
 * @param figure the figure's name
 * @param fingerprint of the figure as the pharmacy saw it, from its page
 * @param by who released it, by name
 * @param on the day
 */
public record Release(String figure, String fingerprint, String by, LocalDate on) {
  private static final int NAME_MAX = 80;

  public Release {
    Objects.requireNonNull(figure, "figure");
    Objects.requireNonNull(fingerprint, "fingerprint");
    Objects.requireNonNull(on, "on");
    if (by == null || by.isBlank() || by.length() > NAME_MAX) {
      throw new IllegalArgumentException(
          "a release needs the name of who released it, at most " + NAME_MAX + " letters");
    }
  }
}
