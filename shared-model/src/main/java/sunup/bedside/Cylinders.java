package sunup.bedside;

import java.util.Arrays;
import java.util.List;
import sunup.units.Numbers;
import sunup.units.Unit;

/**
 * What is left in a backup oxygen cylinder, and for how long: minutes = (gauge - residual) x factor
 * / flow. Never below 0; no figure for gases kept as a liquid.
 */
public final class Cylinders {
  /** One atmosphere: 101.325 kPa, so that a cylinder of V litres of water holds V x gauge / it. */
  private static final double ATMOSPHERE_KPA = 101.325;

  private static final String SOURCE =
      "Factors: respiratory-care texts (D 0.16, E 0.28, M 1.56, G 2.41, H and K 3.14 L/psi, 200 psi"
          + " kept); UK E: Anesthesia & Analgesia 2004;99:307 (680 L), 137 bar";
  private static final String CAUTION =
      "A gauge can stick and a cylinder can be shut: open it, read it, close it. Oxygen that drives"
          + " a ventilator is not in the flow entered and empties it much sooner.";
  private static final String LIQUID =
      " is a liquid in its cylinder: the gauge stays at the pressure of its vapour until the liquid"
          + " is gone, so it doesn't tell what is left; weigh the cylinder";

  private static final double GAUGE_PSI_MAX = 3000;

  /** Makers' manuals, at 20 C. */
  private static final double NITROUS_OXIDE_PSI = 745;

  private static final Input GAS =
      Input.choice("gas", "gas", "oxygen", "air", "nitrous oxide", "carbon dioxide");
  private static final Input FLOW = Input.number("flow", "flow", 0, 100, Unit.L_PER_MIN);
  private static final Input MARGIN =
      Input.number("margin", "margin on the time", 0, 50, Unit.PERCENT_OF).optional();
  private static final Input WATER = Input.number("water", "water volume", 0.1, 60, Unit.L);

  private Cylinders() {}

  /** Litres above the residual at the pressure of the room. */
  public static double usableLitres(CylinderSize size, Pressure gauge, Pressure residual) {
    return gauge.above(residual).psi() * size.litresPerPsi();
  }

  /**
   * Litres above the residual, by the water volume stamped on the cylinder and Boyle's law.
   *
   * @param waterLitres water volume, L
   */
  public static double usableLitres(double waterLitres, Pressure gauge, Pressure residual) {
    return Numbers.above0(waterLitres, "water volume")
        * gauge.above(residual).kPa()
        / ATMOSPHERE_KPA;
  }

  /**
   * Minutes that the litres last, with a margin taken off.
   *
   * @param marginPercent 0 to below 100
   */
  public static double minutes(double litres, Flow flow, double marginPercent) {
    return Numbers.atLeast(0, litres, "litres")
        / flow.litresPerMinute()
        * (1 - marginPercent / 100);
  }

  /** A pressure in the units of the site's gauges, up to so many psi. */
  private static Input pressure(String name, String label, double mostPsi, BedsideSettings site) {
    Unit first = site.pressureUnits().get(0);
    double most = Numbers.down(first.fromBase(mostPsi), 0);
    return Input.number(name, label, 0, most, site.pressureUnits().toArray(Unit[]::new));
  }

  static List<Figure> figures(BedsideSettings site) {
    Input gauge = pressure("pressure", "gauge", GAUGE_PSI_MAX, site);
    Input residual =
        pressure("residual", "kept in it", BedsideSettings.RESIDUAL_PSI_MAX, site).optional();
    Input size =
        Input.choice(
            "size",
            "size",
            Arrays.stream(CylinderSize.values()).map(CylinderSize::word).toArray(String[]::new));
    String range =
        "oxygen; gauge 0 to "
            + shown(GAUGE_PSI_MAX, site)
            + "; flow above 0; at or below what is kept in it: 0 minutes";
    Card bySize =
        new Card(
            "cylinder",
            "Backup cylinder: minutes left",
            1,
            "litres = (gauge - kept) x factor of the size; minutes = litres / flow, rounded down",
            SOURCE,
            range,
            CAUTION,
            false,
            List.of(GAS, size, gauge, FLOW, residual, MARGIN));
    Card byWater =
        new Card(
            "cylinder-water-volume",
            "Cylinder by its water volume: minutes left",
            1,
            "litres = water volume x (gauge - kept) / 101.325 kPa; minutes = litres / flow",
            "Boyle's law; checked by a textbook problem (14 L, 13,800 kPa, 2.1 L/min: 908 min)",
            range,
            CAUTION + " Oxygen is not quite an ideal gas: some hundredths off when full.",
            false,
            List.of(GAS, WATER, gauge, FLOW, residual, MARGIN));
    String settings = "kept in a cylinder: " + shown(site.residualPsi(), site);
    return List.of(
        new Figure(
            bySize,
            settings,
            given -> {
              CylinderSize chosen = CylinderSize.named(given.word("size")).orElseThrow();
              Pressure kept = kept(given, site);
              Pressure read = given.pressure("pressure");
              return left(
                  given, usableLitres(chosen, read, kept), kept, factor(chosen, site), site);
            }),
        new Figure(
            byWater,
            settings,
            given -> {
              double water = Unit.L.fromBase(given.number("water"));
              Pressure kept = kept(given, site);
              double litres = usableLitres(water, given.pressure("pressure"), kept);
              Unit unit = site.pressureUnits().get(0);
              double room = Numbers.exact(unit.fromBase(Unit.KPA.toBase(ATMOSPHERE_KPA)));
              String factor = Unit.L.text(water) + " / " + unit.text(room);
              return left(given, litres, kept, factor, site);
            }));
  }

  private static Pressure kept(Given given, BedsideSettings site) {
    return given.has("residual") ? given.pressure("residual") : new Pressure(site.residualPsi());
  }

  /** A pressure in the first unit of the site's gauges, to what a gauge is read to. */
  private static String shown(double psi, BedsideSettings site) {
    Unit unit = site.pressureUnits().get(0);
    return unit.text(Numbers.near(unit.fromBase(psi), unit == Unit.BAR ? 1 : 0));
  }

  private static String factor(CylinderSize size, BedsideSettings site) {
    Unit unit = site.pressureUnits().get(0);
    if (size == CylinderSize.UK_E) {
      return "680 L / " + shown(Unit.BAR.toBase(137), site);
    }
    return Numbers.text(size.litresPerPsi() * unit.toBase(1)) + " L/" + unit.word();
  }

  private static Figure.Result left(
      Given given, double litres, Pressure kept, String factor, BedsideSettings site)
      throws Outside {
    String gas = given.word("gas");
    if (gas.equals("nitrous oxide")) {
      throw new Outside(
          "gas",
          gas
              + LIQUID
              + " (about "
              + shown(NITROUS_OXIDE_PSI, site)
              + " at 20 C; some 400 L are left when it begins to fall)");
    }
    if (gas.equals("carbon dioxide")) {
      throw new Outside("gas", gas + LIQUID);
    }
    if (!gas.equals("oxygen")) {
      throw new Outside("gas", "no factor for " + gas + " has a source here");
    }
    if (!(given.number("flow") > 0)) {
      throw new Outside("flow", "the flow must be above 0: at no flow there is no time to tell");
    }
    Flow flow = new Flow(given.number("flow"));
    double margin = given.has("margin") ? given.number("margin") : 0;
    double minutes = Numbers.down(minutes(litres, flow, margin), 0);
    Pressure gauge = given.pressure("pressure");
    String worked =
        "("
            + shown(gauge.psi(), site)
            + " - "
            + shown(kept.psi(), site)
            + ") x "
            + factor
            + " / "
            + Unit.L_PER_MIN.text(flow.litresPerMinute())
            + (margin > 0 ? " x " + Numbers.text(1 - margin / 100) : "");
    Figure.Result result =
        Figure.Result.of(
            worked,
            new Line.Plain("litres to use", Unit.L.text(Numbers.down(litres, 0))),
            new Line.Plain("lasts", time(minutes)));
    return gauge.psi() <= kept.psi()
        ? result.caution("the gauge is not above what is kept in it: take another cylinder")
        : result;
  }

  private static String time(double minutes) {
    long whole = (long) minutes;
    String text = Numbers.text((double) whole) + " min";
    return whole < 60 ? text : text + " (" + whole / 60 + " h " + whole % 60 + " min)";
  }
}
