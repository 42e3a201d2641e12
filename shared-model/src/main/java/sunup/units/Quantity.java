package sunup.units;

/** What a unit measures. Values are kept in one base unit each. */
public enum Quantity {
  /** Base unit kg. */
  WEIGHT,
  /** Base unit cm. */
  HEIGHT,
  /** Base unit year. */
  AGE,
  /** Gauge pressure, base unit psi. */
  PRESSURE,
  /** Base unit L/min. */
  FLOW,
  /** Base unit mL. */
  VOLUME,
  /** Amount of a drug, base unit mg. */
  MASS,
  /** Base unit mg/mL. */
  CONCENTRATION,
  /** Inner width of a tube, base unit mm. */
  BORE,
  /** Share of a gas at the end of a breath, base unit % of one atmosphere. */
  GAS_SHARE,
  /** A share of a whole, base unit %. */
  SHARE
}
