package sunup.drugs;

import com.fasterxml.jackson.annotation.JsonValue;

/**
 * Classes of drugs and how their labels look, {@link LabelStandard#EDITION}. Never the colour
 * alone: the name is read.
 */
public enum DrugClass {
  INDUCTION("induction agent", LabelColour.YELLOW, false, false, false),
  BENZODIAZEPINE("benzodiazepine", LabelColour.ORANGE, false, false, false),
  BENZODIAZEPINE_ANTAGONIST("benzodiazepine antagonist", LabelColour.ORANGE, true, false, false),
  RELAXANT("muscle relaxant", LabelColour.RED, false, false, false),
  SUXAMETHONIUM("suxamethonium", LabelColour.RED, false, true, false),
  RELAXANT_ANTAGONIST("relaxant antagonist", LabelColour.RED, true, false, true),
  OPIOID("opioid", LabelColour.BLUE, false, false, false),
  OPIOID_ANTAGONIST("opioid antagonist", LabelColour.BLUE, true, false, false),
  VASOPRESSOR("vasopressor", LabelColour.VIOLET, false, false, false),
  ADRENALINE("adrenaline", LabelColour.VIOLET, false, true, false),
  HYPOTENSIVE("hypotensive", LabelColour.VIOLET, true, false, false),
  LOCAL_ANAESTHETIC("local anaesthetic", LabelColour.GREY, false, false, false),
  ANTICHOLINERGIC("anticholinergic", LabelColour.GREEN, false, false, false),
  ANTIEMETIC("anti-emetic", LabelColour.SALMON, false, false, false),
  MISCELLANEOUS("miscellaneous", LabelColour.WHITE, false, false, false);

  private final String word;
  private final LabelColour colour;
  private final boolean striped;
  private final boolean reversed;
  private final boolean lineBelowName;

  DrugClass(
      String word, LabelColour colour, boolean striped, boolean reversed, boolean lineBelowName) {
    this.word = word;
    this.colour = colour;
    this.striped = striped;
    this.reversed = reversed;
    this.lineBelowName = lineBelowName;
  }

  @JsonValue
  public String word() {
    return word;
  }

  public LabelColour colour() {
    return colour;
  }

  /** White stripes: acts against the class of its colour. */
  public boolean striped() {
    return striped;
  }

  /** Name in light letters in a black bar across the upper half. */
  public boolean reversed() {
    return reversed;
  }

  /** A black line across below the name; only in the 2020 edition. */
  public boolean lineBelowName() {
    return lineBelowName;
  }
}
