package sunup.bedside;

import java.util.List;
import java.util.Map;
import sunup.units.Numbers;
import sunup.units.Unit;

/** The pages of {@link AirwaySizes}. */
final class AirwayFigures {
  private static final String LAY_OUT =
      "It says what to lay out, not what will fit; the look at the patient goes first.";

  private static final Input CUFF = Input.choice("cuff", "tube", "cuffed", "uncuffed");

  /** Oral airways, mm; CAUTION: charts of number, length and colour conflict. */
  private static final Map<String, String> ORAL =
      Map.of(
          "infant", "55 mm",
          "child", "60 to 70 mm",
          "small adult", "80 mm",
          "medium adult", "100 mm (90 in other tables)",
          "large adult", "110 mm (100 in other tables)",
          "extra large adult", "120 mm");

  private AirwayFigures() {}

  static List<Figure> figures() {
    return List.of(tube(), depth(), blade(), mask(), oral(), suction());
  }

  private static Outside between(String what) {
    return new Outside(
        "age",
        "no " + what + " between 12 and 16 years has a source here: lay out by look, both ways");
  }

  private static Figure tube() {
    Card card =
        new Card(
            "tube",
            "Tube size",
            1,
            "cuffed: 3 below 1 year, 3.5 below 2, then age / 4 + 3.5; uncuffed: age / 4 + 4; to the"
                + " nearest half mm, the smaller at a tie. Adults by sex",
            "Uncuffed: Cole, in Anesth Pain Med 2022;17:352. Cuffed: Motoyama (300 children: 64.7 %"
                + " exact). Have ready half a mm either side. Adult ranges: teaching texts, which"
                + " differ for men (7.5 to 8 or 8 to 8.5)",
            "cuffed from birth at term, uncuffed from 2 years, both to 12; adults from 16 (ends:"
                + " common practice)",
            LAY_OUT + " Not for the preterm.",
            false,
            List.of(Input.AGE, CUFF, Input.SEX.optional()));
    return new Figure(card, "", AirwayFigures::tube);
  }

  private static Figure.Result tube(Given given) throws Outside {
    Age age = given.age();
    boolean cuffed = given.word("cuff").equals("cuffed");
    if (age.years() >= AirwaySizes.ADULT_YEARS) {
      if (!cuffed) {
        throw new Outside("cuff", "adults have cuffed tubes; no uncuffed size has a source here");
      }
      if (!given.has("sex")) {
        throw new Outside("sex", "an adult's size goes by sex; enter it");
      }
      return given.female()
          ? Figure.Result.of(
              "range for women", new Line.Sizes("tube", "6.5 mm", "7 to 7.5 mm", "8 mm"))
          : Figure.Result.of(
              "range for men, both texts", new Line.Sizes("tube", "7 mm", "7.5 to 8.5 mm", null));
    }
    if (age.years() > AirwaySizes.FORMULA_TO_YEARS) {
      throw between("tube size");
    }
    if (!cuffed && age.years() < AirwaySizes.FORMULA_FROM_YEARS) {
      throw new Outside("age", "no uncuffed size below 2 years has a source here");
    }
    double mm = cuffed ? AirwaySizes.cuffedMm(age) : AirwaySizes.uncuffedMm(age);
    double made = AirwaySizes.made(mm).mm();
    String worked =
        age.years() < AirwaySizes.FORMULA_FROM_YEARS
            ? "by age, without a formula"
            : Numbers.text(age.years())
                + " / 4 + "
                + (cuffed ? "3.5" : "4")
                + " = "
                + Unit.MM.text(Numbers.near(mm, 2));
    return Figure.Result.of(
        worked,
        new Line.Sizes(
            given.word("cuff") + " tube",
            Unit.MM.text(made - 0.5),
            Unit.MM.text(made),
            Unit.MM.text(made + 0.5)));
  }

  private static Figure depth() {
    Card card =
        new Card(
            "tube-depth",
            "Tube depth at the lips",
            1,
            "child: age / 2 + 12 cm, and 3 x inner width; adult: 21 cm women, 23 cm men, and height"
                + " / 7 - 2.5 cm",
            "Child: paediatric teaching texts (depth rule right in 85 % of 300 children). Adult:"
                + " teaching texts; measured at the corner of the mouth 18.52 and 20.65 cm (Nafisi"
                + " 2014), so rules differ",
            "age rule 2 to 12 years; 3 x width below 12; adults from 16",
            "Listen and look: with 21 and 23 cm, 58.5 % of tips were within 3 cm of the carina.",
            false,
            List.of(
                Input.AGE,
                Input.number("bore", "tube, inner width", 2, 10, Unit.MM).optional(),
                Input.SEX.optional(),
                Input.HEIGHT.optional()));
    return new Figure(card, "", AirwayFigures::depth);
  }

  private static Figure.Result depth(Given given) throws Outside {
    Age age = given.age();
    if (age.years() >= AirwaySizes.ADULT_YEARS) {
      if (!given.has("sex")) {
        throw new Outside("sex", "an adult's depth goes by sex; enter it");
      }
      Line rule = new Line.Plain("by sex", given.female() ? "21 cm" : "23 cm");
      return given.has("height")
          ? Figure.Result.of(
              Numbers.text(given.height().cm()) + " / 7 - 2.5",
              rule,
              cm("by height", AirwaySizes.depthCm(given.height())))
          : Figure.Result.of("by sex, without a formula", rule);
    }
    if (age.years() > AirwaySizes.FORMULA_TO_YEARS) {
      throw between("depth");
    }
    boolean byAge = age.years() >= AirwaySizes.FORMULA_FROM_YEARS;
    if (!given.has("bore")) {
      if (!byAge) {
        throw new Outside("bore", "below 2 years the depth goes by the tube; enter its width");
      }
      return Figure.Result.of(
          Numbers.text(age.years()) + " / 2 + 12", cm("by age", AirwaySizes.depthCm(age)));
    }
    Bore bore = new Bore(given.number("bore"));
    Line byTube = cm("by tube", AirwaySizes.depthCm(bore));
    String worked = "3 x " + Numbers.text(bore.mm());
    return byAge
        ? Figure.Result.of(
            Numbers.text(age.years()) + " / 2 + 12; " + worked,
            cm("by age", AirwaySizes.depthCm(age)),
            byTube)
        : Figure.Result.of(worked, byTube);
  }

  private static Line cm(String label, double cm) {
    return new Line.Plain(label, Unit.CM.text(Numbers.near(cm, 1)));
  }

  private static Figure blade() {
    Card card =
        new Card(
            "blade",
            "Laryngoscope blade",
            1,
            "straight 1 below 1 year; curved 1 to 2 up to 6 years; curved 2 to 3 up to 12; curved 3"
                + " to 4 above. An end of a range belongs to the smaller size",
            "Princess Margaret Hospital (Perth), paediatric acute-care guideline",
            "born at term; preterm: straight 0",
            LAY_OUT + " Other texts take a straight blade up to 2 years.",
            false,
            List.of(Input.AGE));
    return new Figure(
        card,
        "",
        given -> {
          double years = given.age().years();
          Line line =
              years < 1
                  ? new Line.Sizes("blade", "straight 0", "straight 1", "curved 1")
                  : years <= 6
                      ? new Line.Sizes("blade", "straight 1", "curved 1 to 2", "curved 3")
                      : years <= 12
                          ? new Line.Sizes("blade", "curved 1", "curved 2 to 3", "curved 4")
                          : new Line.Sizes("blade", "curved 2", "curved 3 to 4", null);
          return Figure.Result.of("by age, without a formula", line);
        });
  }

  private static Figure mask() {
    Card card =
        new Card(
            "laryngeal-mask",
            "Laryngeal mask size",
            1,
            "by weight: 1 to 5 kg, 1.5 to 10, 2 to 20, 2.5 to 30, 3 to 50, 4 to 70, 5 to 100, 6"
                + " above; the end of a range belongs to the smaller size",
            "Teaching tables of laryngeal masks by weight with largest cuff volumes",
            "any weight; printed ranges overlap at their ends",
            LAY_OUT + " The maker's table for the device in hand goes first.",
            false,
            List.of(Input.AGE, Input.WEIGHT));
    return new Figure(
        card,
        "",
        given -> {
          int i = AirwaySizes.mask(given.weight());
          List<AirwaySizes.Mask> masks = AirwaySizes.MASKS;
          AirwaySizes.Mask mask = masks.get(i);
          Figure.Result result =
              Figure.Result.of(
                  "by weight, without a formula",
                  new Line.Sizes(
                      "laryngeal mask",
                      i == 0 ? null : masks.get(i - 1).size(),
                      mask.size(),
                      i == masks.size() - 1 ? null : masks.get(i + 1).size()),
                  new Line.Plain("cuff at most", Unit.ML.text(mask.cuffMl())));
          return given.weight().kg() == mask.toKg()
              ? result.caution("the weight is the end of two ranges: the larger one may fit too")
              : result;
        });
  }

  private static Figure oral() {
    Card card =
        new Card(
            "oral-airway",
            "Oral airway",
            1,
            "length by build",
            "Textbook table of oropharyngeal airways, lengths in mm; other tables print 10 mm less"
                + " for medium and large",
            "six builds",
            "Numbers and colours of makers conflict: hold it against the cheek, corner of the mouth"
                + " to the angle of the jaw.",
            false,
            List.of(
                Input.choice(
                    "build",
                    "build",
                    "infant",
                    "child",
                    "small adult",
                    "medium adult",
                    "large adult",
                    "extra large adult")));
    return new Figure(
        card,
        "",
        given ->
            Figure.Result.of(
                "by build, without a formula",
                new Line.Plain("oral airway", ORAL.get(given.word("build")))));
  }

  private static Figure suction() {
    Card card =
        new Card(
            "suction-catheter",
            "Suction catheter for a tube",
            1,
            "at most half the inner width of the tube (1 Fr = 1/3 mm); other rule: next below 2 x"
                + " inner width in Fr",
            "Half: Russian and others, Respir Care 2014;59:32 (8 mm tube: 12 Fr). Twice: bedside"
                + " teaching rule (8 mm: 14 Fr). They differ; the smaller goes first here",
            "tubes of 2.5 to 10 mm; catheters 5 to 16 Fr",
            "A catheter that fills the tube empties the lung.",
            false,
            List.of(Input.number("bore", "tube, inner width", 2.5, 10, Unit.MM)));
    return new Figure(card, "", AirwayFigures::suction);
  }

  private static Figure.Result suction(Given given) throws Outside {
    Bore bore = new Bore(given.number("bore"));
    int half = AirwaySizes.catheterByHalf(bore);
    int twice = AirwaySizes.catheterByDouble(bore);
    String worked =
        Unit.MM.text(bore.mm())
            + " / 2 x 3 = "
            + Numbers.text(Numbers.near(bore.mm() * 1.5, 2))
            + " Fr; 2 x "
            + Numbers.text(bore.mm())
            + " = "
            + Numbers.text(2 * bore.mm())
            + " Fr";
    if (half == 0) {
      throw new Outside("bore", "no catheter made is at most half as wide as this tube: " + worked);
    }
    Figure.Result result =
        Figure.Result.of(
            worked,
            new Line.Plain("at most half the width", half + " Fr"),
            new Line.Plain("by the other rule", twice + " Fr"));
    return half == twice ? result : result.caution("the two rules differ here; begin with " + half);
  }
}
