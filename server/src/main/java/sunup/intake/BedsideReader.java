package sunup.intake;

import java.time.DateTimeException;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.stream.Collectors;
import sunup.bedside.BedsideFigures;
import sunup.bedside.BedsideSettings;
import sunup.bedside.Ceiling;
import sunup.bedside.Release;
import sunup.board.HouseStyle;
import sunup.codec.Fields;
import sunup.codec.Lined;
import sunup.units.Unit;

/**
 * Reads what a site's file says of bedside figures. A release of a figure that has changed since is
 * no mistake here: the figure is off, and says so.
 */
final class BedsideReader {
  static final String FIELD = "bedside";

  private static final int RELEASES_MAX = 200;
  private static final int CEILINGS_MAX = 60;
  private static final int TEXT_MAX = 200;
  private static final int NAME_MAX = 80;
  private static final double MG_PER_KG_MAX = 50;
  private static final double FIXED_MG_MAX = 5000;

  static final Map<String, Unit> PRESSURES =
      BedsideSettings.GAUGES.stream()
          .collect(Collectors.toMap(Unit::word, u -> u, (a, b) -> a, LinkedHashMap::new));
  private static final Map<String, Ceiling.Family> FAMILIES =
      Map.of("amide", Ceiling.Family.AMIDE, "ester", Ceiling.Family.ESTER);

  private BedsideReader() {}

  /**
   * The settings, those that come with the program where the file says nothing.
   *
   * @param style how the site writes: its unit of pressure is then that of its gauges; or null
   */
  static BedsideSettings read(Fields site, HouseStyle style) {
    Unit pressure = style == null ? null : PRESSURES.get(style.pressure());
    Fields f = site.object(FIELD);
    if (f == null) {
      return pressure == null
          ? BedsideSettings.first()
          : BedsideSettings.first().gauges(List.of(pressure));
    }
    f.get("note");
    List<Unit> units = units(f, pressure);
    Double residual = f.number("residualPsi", 0, BedsideSettings.RESIDUAL_PSI_MAX);
    List<Ceiling> ceilings = f.get("ceilings") == null ? Ceiling.PUBLISHED : ceilings(f);
    BedsideSettings settings =
        new BedsideSettings(
            List.of(),
            ceilings,
            residual == null ? BedsideSettings.RESIDUAL_PSI : residual,
            units.isEmpty() ? BedsideSettings.GAUGES : units);
    List<Release> releases = releases(f, new BedsideFigures(settings));
    f.done();
    return settings.released(releases);
  }

  /** With the site's own first, if it has one: sums are shown in the first. */
  private static List<Unit> units(Fields f, Unit pressure) {
    List<Unit> units = new ArrayList<>();
    for (String word : f.texts("pressureUnits", BedsideSettings.GAUGES.size())) {
      Unit unit = PRESSURES.get(word);
      if (unit == null) {
        f.problem("pressureUnits", Fields.unknown(word, PRESSURES.keySet()));
      } else if (!units.contains(unit)) {
        units.add(unit);
      }
    }
    if (pressure != null && !units.remove(pressure) && !units.isEmpty()) {
      f.problem(
          "pressureUnits",
          "leaves out "
              + pressure.word()
              + ", in which the site reads pressures (field pressure); add it, or leave"
              + " pressureUnits out");
    }
    if (pressure != null) {
      units.add(0, pressure);
    }
    return units;
  }

  private static List<Ceiling> ceilings(Fields f) {
    List<Ceiling> read = new ArrayList<>();
    for (Lined entry : f.list("ceilings", CEILINGS_MAX)) {
      Fields c = f.entry("ceilings", entry);
      String drug = c.text("drug", NAME_MAX);
      Ceiling.Family family = c.oneOf("family", FAMILIES);
      if (c.get("family") == null) {
        c.problem("family", "is missing; write amide or ester");
      }
      boolean with = c.flag("withVasoconstrictor");
      Double mgPerKg = c.number("mgPerKg", 0.1, MG_PER_KG_MAX);
      Double fixed = c.number("fixedMg", 1, FIXED_MG_MAX);
      String source = c.text("source", TEXT_MAX);
      c.done();
      if (drug != null && family != null && source != null) {
        read.add(new Ceiling(drug, family, with, mgPerKg, fixed, source));
      }
    }
    return read;
  }

  private static List<Release> releases(Fields f, BedsideFigures figures) {
    List<String> known =
        figures.list(LocalDate.EPOCH).stream().map(listed -> listed.card().name()).toList();
    List<Release> read = new ArrayList<>();
    for (Lined entry : f.list("releases", RELEASES_MAX)) {
      Fields r = f.entry("releases", entry);
      String figure = r.text("figure", NAME_MAX);
      String fingerprint = r.text("fingerprint", NAME_MAX);
      String by = r.text("by", NAME_MAX);
      LocalDate on = date(r, r.text("on", NAME_MAX));
      r.done();
      if (figure != null && !known.contains(figure)) {
        r.problem("figure", Fields.unknown(figure, known));
      } else if (figure != null && fingerprint != null && by != null && on != null) {
        read.add(new Release(figure, fingerprint, by, on));
      }
    }
    return read;
  }

  private static LocalDate date(Fields r, String text) {
    if (text == null) {
      return null;
    }
    try {
      return LocalDate.parse(text);
    } catch (DateTimeException e) {
      r.problem("on", "'" + LocalTimes.shortened(text) + "' is no date, write it like 2026-11-25");
      return null;
    }
  }
}
