package sunup.review;

import java.math.BigDecimal;
import java.math.RoundingMode;

/**
 * Minutes times the site's own figure. Never shown without its source, and never as a saving: a
 * minute less of late starts was found to be worth about a staffed minute in rooms with over eight
 * hours of cases (Dexter and Epstein 2009), and by others not to reach the end of the day at all
 * (repub.eur.nl 85875, 2015).
 *
 * @param minutes late
 * @param amount minutes times the price, to two decimals
 * @param price the site's own
 */
public record Cost(double minutes, BigDecimal amount, Price price) {
  /**
   * The site's own figure.
   *
   * @param perMinute in the currency
   * @param currency for example {@code EUR}
   * @param source where it is from and what it holds ("finance office 2026, staff only")
   */
  public record Price(BigDecimal perMinute, String currency, String source) {
    public Price {
      if (perMinute == null || perMinute.signum() <= 0) {
        throw new IllegalArgumentException("a minute's price must be over 0; or give none at all");
      }
      if (currency == null || currency.isBlank()) {
        throw new IllegalArgumentException("a price needs its currency, for example EUR");
      }
      if (source == null || source.isBlank()) {
        throw new IllegalArgumentException(
            "a price needs its source: who found it, when, and what it holds");
      }
    }
  }

  /**
   * What these minutes come to.
   *
   * @param price null if the site has none
   * @return null if the site has no price
   */
  public static Cost of(double minutes, Price price) {
    return price == null
        ? null
        : new Cost(
            minutes,
            price
                .perMinute()
                .multiply(BigDecimal.valueOf(minutes))
                .setScale(2, RoundingMode.HALF_EVEN),
            price);
  }
}
