package sunup.drugs;

import com.fasterxml.jackson.annotation.JsonValue;

/**
 * Colours of user-applied labels, {@link LabelStandard#EDITION}. The RGB values are conversions for
 * screens and no part of the standard.
 */
public enum LabelColour {
  YELLOW("yellow", "Process Yellow C", "#FEDF00"),
  ORANGE("orange", "151", "#FF8200"),
  RED("red", "Warm Red C", "#F9423A"),
  BLUE("blue", "297", "#71C5E8"),
  VIOLET("violet", "256", "#D6BFDD"),
  GREY("grey", "401", "#AFA9A0"),
  GREEN("green", "367", "#A4D65E"),
  SALMON("salmon", "156", "#EFBE7D"),
  WHITE("white", "", "#FFFFFF");

  private final String word;
  private final String pantone;
  private final String rgb;

  LabelColour(String word, String pantone, String rgb) {
    this.word = word;
    this.pantone = pantone;
    this.rgb = rgb;
  }

  @JsonValue
  public String word() {
    return word;
  }

  /** The standard's name of the colour, empty for white. */
  public String pantone() {
    return pantone;
  }

  /** For screens only. */
  public String rgb() {
    return rgb;
  }
}
