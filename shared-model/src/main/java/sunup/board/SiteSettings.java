package sunup.board;

import com.fasterxml.jackson.annotation.JsonInclude;
import java.util.List;
import sunup.codec.Maybe;
import sunup.drugs.ApprovedDrug;
import sunup.drugs.PackageCheck;

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
 * @param drugs the approved list; empty if the site draws up without the board
 * @param calledBack lots that are not to be used
 * @param style how its pages write; null for {@link HouseStyle#FIRST}, so that mornings of sites
 *     that say nothing of it are kept as they were before there was one
 */
public record SiteSettings(
    String hospital,
    String suiteName,
    String zone,
    Step startEvent,
    int graceMinutes,
    double personShare,
    boolean demo,
    @JsonInclude(JsonInclude.Include.NON_EMPTY) List<ApprovedDrug> drugs,
    @JsonInclude(JsonInclude.Include.NON_EMPTY) List<PackageCheck.Recall> calledBack,
    @JsonInclude(JsonInclude.Include.NON_NULL) @Maybe HouseStyle style) {
  /** Drugs of an approved list. */
  public static final int DRUGS_MAX = 100;

  public SiteSettings {
    drugs = drugs == null ? List.of() : List.copyOf(drugs);
    calledBack = calledBack == null ? List.of() : List.copyOf(calledBack);
    style = HouseStyle.FIRST.equals(style) ? null : style;
    if (drugs.size() > DRUGS_MAX) {
      throw new IllegalArgumentException("an approved list has at most " + DRUGS_MAX + " drugs");
    }
    if (graceMinutes < 0 || graceMinutes > 30) {
      throw new IllegalArgumentException("grace must be 0 to 30 minutes");
    }
    if (!(personShare >= 0 && personShare <= 0.95)) {
      throw new IllegalArgumentException("the person share must be 0 to 0.95");
    }
    java.time.ZoneId.of(zone);
  }

  /** A site without an approved list. */
  public SiteSettings(
      String hospital,
      String suiteName,
      String zone,
      Step startEvent,
      int graceMinutes,
      double personShare,
      boolean demo) {
    this(
        hospital,
        suiteName,
        zone,
        startEvent,
        graceMinutes,
        personShare,
        demo,
        List.of(),
        List.of(),
        null);
  }

  /** The drugs of a case's list, in the approved list's order. */
  public List<ApprovedDrug> drugsFor(CasePlan plan) {
    return drugs.stream().filter(drug -> drug.isFor(plan.technique(), plan.options())).toList();
  }

  public java.time.ZoneId zoneId() {
    return java.time.ZoneId.of(zone);
  }
}
