package sunup.bedside;

import java.util.List;
import sunup.units.Numbers;
import sunup.units.Unit;

/**
 * What a site decides about bedside figures.
 *
 * @param releases figures released by the pharmacy; none at first
 * @param ceilings of local anaesthetics, each with its source
 * @param residualPsi gauge pressure below which a cylinder counts as empty
 * @param pressureUnits units of pressure that the site's gauges have, in the order in which they
 *     are offered; none is chosen beforehand. Sums are shown in the first
 */
public record BedsideSettings(
    List<Release> releases, List<Ceiling> ceilings, double residualPsi, List<Unit> pressureUnits) {
  /** Units that gauges of cylinders have. */
  public static final List<Unit> GAUGES = List.of(Unit.PSI, Unit.BAR, Unit.KPA);

  /** 200 psi: common in published worked examples of cylinder duration. */
  public static final double RESIDUAL_PSI = 200;

  public static final double RESIDUAL_PSI_MAX = 1000;

  public BedsideSettings {
    releases = List.copyOf(releases);
    ceilings = List.copyOf(ceilings);
    pressureUnits = List.copyOf(pressureUnits);
    if (pressureUnits.isEmpty() || !GAUGES.containsAll(pressureUnits)) {
      throw new IllegalArgumentException("units of pressure must be one or more of " + GAUGES);
    }
    Numbers.atLeast(0, residualPsi, "residual pressure");
    if (residualPsi > RESIDUAL_PSI_MAX) {
      throw new IllegalArgumentException(
          "residual pressure must be at most " + Unit.PSI.text(RESIDUAL_PSI_MAX));
    }
  }

  /** Nothing released; published ceilings of one table. */
  public static BedsideSettings first() {
    return new BedsideSettings(List.of(), Ceiling.PUBLISHED, RESIDUAL_PSI, GAUGES);
  }

  /** With gauges in these units. */
  public BedsideSettings gauges(List<Unit> units) {
    return new BedsideSettings(releases, ceilings, residualPsi, units);
  }

  public BedsideSettings released(List<Release> by) {
    return new BedsideSettings(by, ceilings, residualPsi, pressureUnits);
  }
}
