package sunup.drugs;

/**
 * Geometry of user-applied drug labels, ISO 26825:2020, 5.2.2, 5.4.2 to 5.4.4, as far as it was
 * seen. ASTM D4774 was withdrawn in 2022 and differs (it reverses the plates of beta blockers too);
 * it is not used.
 */
public final class LabelStandard {
  /** Colours and stripes of the 2020 edition; it changed four classes. */
  public static final String EDITION = "ISO 26825:2020";

  /** Width of a label, mm, from and to. */
  public static final double WIDTH_MM_LEAST = 25;

  public static final double WIDTH_MM_MOST = 40;

  /** Height of a label, mm, from and to. */
  public static final double HEIGHT_MM_LEAST = 10;

  public static final double HEIGHT_MM_MOST = 15;

  /** Height of letters, mm, at least; sans serif, bold or semi-bold, never all capitals. */
  public static final double LETTERS_MM_LEAST = 2.5;

  /** Stripes: white and colour in turn, mm each. */
  public static final double STRIPE_MM = 1;

  /** From lower left to upper right, degrees, give or take {@link #STRIPE_DEGREES_OFF}. */
  public static final double STRIPE_DEGREES = 45;

  public static final double STRIPE_DEGREES_OFF = 5;

  /** At least this share of the label from its upper edge is striped. */
  public static final double STRIPED_SHARE_LEAST = 0.20;

  /** Stripes on each side of the name take at least this share of the label's length. */
  public static final double STRIPE_SIDE_SHARE_LEAST = 0.15;

  /** The name stands at least this far below the stripes, mm; none behind or below it. */
  public static final double NAME_BELOW_STRIPES_MM_LEAST = 0.5;

  private LabelStandard() {}
}
