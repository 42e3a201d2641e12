package sunup.drugs;

import java.util.List;

/**
 * How long something prepared stays usable. Each is a first setting of a named rule that a site
 * replaces; texts and products disagree, and the shortest that applies goes first.
 *
 * @param name its key
 * @param minutes from preparation on; at exactly this many it has lapsed, as texts leave the moment
 *     itself open
 * @param source organisation, title, year
 * @param caution what else is printed
 */
public record UseLimit(String name, long minutes, String source, String caution) {
  private static final long HOUR = 60;
  private static final long DAY = 24 * HOUR;
  private static final long MINUTE_MS = 60_000;

  /** First settings. */
  public static final List<UseLimit> PUBLISHED =
      List.of(
          new UseLimit(
              "immediate-use",
              4 * HOUR,
              "USP <797>, revision of 2022, official 1 November 2023: from start of preparation",
              "before: 1 h; giving itself is out of scope"),
          new UseLimit(
              "propofol-with-edta",
              12 * HOUR,
              "propofol (EDTA) US label: single patient, discard within 12 h",
              "product-dependent: read the label in hand"),
          new UseLimit(
              "propofol-syringe",
              6 * HOUR,
              "older and generic propofol labels, syringe",
              "product-dependent: read the label in hand"),
          new UseLimit(
              "spiked-bag",
              DAY,
              "ASA Statement on Intravenous Fluid Bag Spiking, 18 October 2023",
              "APIC position (2016): 1 h"),
          new UseLimit(
              "drawn-syringe",
              DAY,
              "safety foundations' suggestion quoted in reviews: 24 h",
              "local policy wins; immediate use is shorter"),
          new UseLimit("dantrolene", 6 * HOUR, "children's hospital handout: 6 h made up", ""),
          new UseLimit(
              "rocuronium-diluted", DAY, "UK specialist pharmacy service: diluted 24 h", ""),
          new UseLimit(
              "rocuronium-room",
              60 * DAY,
              "US label text quoted: 60 days out of the fridge",
              "UK: 12 weeks up to 30 C; another handbook: 6 months"),
          new UseLimit(
              "succinylcholine-room",
              14 * DAY,
              "ASHP Handbook on Injectable Drugs, 25th edition: 14 days at room temperature",
              "a study allows 4 weeks, others print 3 months"),
          new UseLimit(
              "multi-dose-vial",
              28 * DAY,
              "USP <797>: 28 days after first puncture unless the maker says otherwise",
              "vaccines excepted"));

  public UseLimit {
    if (name == null || name.isBlank() || minutes <= 0 || source == null || source.isBlank()) {
      throw new IllegalArgumentException(
          "a limit needs a name, minutes above 0 and a source; no source, no limit");
    }
  }

  /** When it lapses, ms of the clock that preparation was told by. */
  public long lapsesAt(long preparedAtMs) {
    return preparedAtMs + minutes * MINUTE_MS;
  }

  /**
   * When the first of several limits ends it.
   *
   * @throws IllegalArgumentException without a limit
   */
  public static long lapsesAt(long preparedAtMs, List<UseLimit> limits) {
    return limits.stream()
        .mapToLong(limit -> limit.lapsesAt(preparedAtMs))
        .min()
        .orElseThrow(() -> new IllegalArgumentException("no limit is named"));
  }
}
