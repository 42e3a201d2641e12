package sunup.intake;

import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import sunup.board.SiteSettings;
import sunup.codec.Fields;
import sunup.codec.Lined;
import sunup.drugs.ApprovedDrug;
import sunup.drugs.ControlledDrug;
import sunup.drugs.DrugClass;
import sunup.drugs.PackageCheck;
import sunup.drugs.UseLimit;
import sunup.units.Concentration;
import sunup.units.Unit;
import sunup.units.Volume;

/** Reads a site's approved list of drugs and the lots that were called back. */
final class DrugReader {
  private static final int CALLED_BACK_MAX = 500;
  private static final int PRODUCTS_MAX = 40;
  private static final int CASES_MAX = 40;
  private static final int NAME_MAX = 40;
  private static final int TEXT_MAX = 200;
  private static final int MINUTES_MAX = 60 * 24 * 60;
  private static final double ML_MAX = 1000;

  private static final Pattern AMOUNT = Pattern.compile("(\\d{1,6}(?:\\.\\d{1,4})?) ?(\\S+)");
  private static final Map<String, DrugClass> CLASSES =
      Arrays.stream(DrugClass.values())
          .collect(Collectors.toMap(DrugClass::word, c -> c, (a, b) -> a, LinkedHashMap::new));
  private static final Map<String, UseLimit> LIMITS =
      UseLimit.PUBLISHED.stream()
          .collect(Collectors.toMap(UseLimit::name, l -> l, (a, b) -> a, LinkedHashMap::new));

  private DrugReader() {}

  /** The approved list; empty if the file has none. */
  static List<ApprovedDrug> drugs(Fields site) {
    List<ApprovedDrug> read = new ArrayList<>();
    Map<String, Lined> names = new HashMap<>();
    Map<String, Lined> products = new HashMap<>();
    for (Lined entry : site.list("drugs", SiteSettings.DRUGS_MAX)) {
      ApprovedDrug drug = drug(site.entry("drugs", entry), entry, names, products);
      if (drug != null) {
        read.add(drug);
      }
    }
    return read;
  }

  private static ApprovedDrug drug(
      Fields d, Lined entry, Map<String, Lined> names, Map<String, Lined> products) {
    String name = d.text("name", NAME_MAX);
    Lined first = name == null ? null : names.putIfAbsent(name, entry);
    if (first != null) {
      d.problem("name", "is there already, in line " + first.line());
    }
    DrugClass drugClass = d.oneOf("class", CLASSES);
    if (d.get("class") == null) {
      d.problem("class", "is missing; use " + String.join(", ", CLASSES.keySet()));
    }
    BigDecimal perMl =
        amount(d, "concentration", "10 mg/mL", Unit.MG_PER_ML, Unit.MICROGRAMS_PER_ML);
    BigDecimal ml = amount(d, "syringe", "20 mL", Unit.ML);
    if (ml != null && ml.doubleValue() > ML_MAX) {
      d.problem("syringe", "must be above 0 and at most 1000 mL");
    }
    UseLimit limit = limit(d);
    List<String> cases = d.texts("cases", CASES_MAX);
    boolean controlled = d.get("ampoule") != null;
    BigDecimal ampoule =
        controlled ? amount(d, "ampoule", "100 micrograms", Unit.MICROGRAMS, Unit.MG) : null;
    List<String> gtins = products(d, entry, products);
    d.get("note");
    d.done();
    if (name == null || drugClass == null || perMl == null || ml == null || limit == null) {
      return null;
    }
    return new ApprovedDrug(
        name,
        drugClass,
        new Concentration(perMl.doubleValue()),
        new Volume(ml.doubleValue()),
        limit,
        cases,
        // Read in mg; the count is kept in micrograms.
        ampoule == null ? null : new ControlledDrug(name, ampoule.movePointRight(3)),
        gtins);
  }

  /** Lots that are not to be used. */
  static List<PackageCheck.Recall> calledBack(Fields site) {
    List<PackageCheck.Recall> read = new ArrayList<>();
    for (Lined entry : site.list("calledBack", CALLED_BACK_MAX)) {
      Fields r = site.entry("calledBack", entry);
      String product = r.text("product", 14);
      String lot = r.text("lot", 20);
      r.get("note");
      r.done();
      if (product != null && isProduct(r, "product", product) && lot != null) {
        read.add(new PackageCheck.Recall(product, lot));
      }
    }
    return read;
  }

  private static List<String> products(Fields d, Lined entry, Map<String, Lined> seen) {
    List<String> read = new ArrayList<>();
    for (String gtin : d.texts("products", PRODUCTS_MAX)) {
      if (isProduct(d, "products", gtin)) {
        Lined first = seen.putIfAbsent(gtin, entry);
        if (first != null) {
          d.problem("products", gtin + " is a product of line " + first.line() + " already");
        }
        read.add(gtin);
      }
    }
    return read;
  }

  private static boolean isProduct(Fields f, String name, String gtin) {
    if (PackageCheck.isProduct(gtin)) {
      return true;
    }
    f.problem(
        name,
        "'"
            + LocalTimes.shortened(gtin)
            + "' is no product number; write its 14 digits, the check digit last");
    return false;
  }

  /** In mL, mg or mg/mL. */
  private static BigDecimal amount(Fields d, String name, String example, Unit... units) {
    String text = d.text(name, NAME_MAX);
    if (text == null) {
      return null;
    }
    Matcher m = AMOUNT.matcher(text);
    for (Unit unit : units) {
      if (m.matches() && m.group(2).equals(unit.word())) {
        BigDecimal value = new BigDecimal(m.group(1));
        if (value.signum() > 0) {
          boolean micrograms = unit == Unit.MICROGRAMS || unit == Unit.MICROGRAMS_PER_ML;
          return micrograms ? value.movePointLeft(3) : value;
        }
      }
    }
    d.problem(
        name,
        "'"
            + LocalTimes.shortened(text)
            + "' can't be read; write a number above 0 and its unit in full, like "
            + example);
    return null;
  }

  /** A published limit by its name, or the site's own minutes and where they come from. */
  private static UseLimit limit(Fields d) {
    if (d.get("minutes") == null) {
      UseLimit limit = d.oneOf("limit", LIMITS);
      if (d.get("limit") == null) {
        d.problem(
            "limit",
            "is missing; name one of "
                + String.join(", ", LIMITS.keySet())
                + ", or write minutes and their source");
      }
      return limit;
    }
    Integer minutes = d.whole("minutes", 1, MINUTES_MAX);
    String source = d.text("source", TEXT_MAX);
    return minutes == null || source == null ? null : new UseLimit("site", minutes, source, "");
  }
}
