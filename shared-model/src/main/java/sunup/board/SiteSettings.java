package sunup.board;

/**
 * What a site decides for its mornings.
 *
 * @param hospital the site's name as the wall shows it
 * @param suiteName the suite's name as the wall shows it
 * @param zone IANA time zone, for example {@code Europe/Lisbon}
 * @param startEvent the step that counts as the start
 * @param graceMinutes minutes after the target that still count as on time, 0 to 30
 * @param personShare rule 4's rho, 0 to 0.95: how much one person's items go together
 * @param demo true if all of it is invented: the screens then say so
 */
public record SiteSettings(
    String hospital,
    String suiteName,
    String zone,
    Step startEvent,
    int graceMinutes,
    double personShare,
    boolean demo) {
  public SiteSettings {
    if (graceMinutes < 0 || graceMinutes > 30) {
      throw new IllegalArgumentException("grace must be 0 to 30 minutes");
    }
    if (!(personShare >= 0 && personShare <= 0.95)) {
      throw new IllegalArgumentException("the person share must be 0 to 0.95");
    }
    java.time.ZoneId.of(zone);
  }

  public java.time.ZoneId zoneId() {
    return java.time.ZoneId.of(zone);
  }
}
