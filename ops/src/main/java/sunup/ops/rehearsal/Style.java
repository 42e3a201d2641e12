package sunup.ops.rehearsal;

/** How a person reports from a room: rule 3's first shares. */
public enum Style {
  EACH_ITEM(0.40),
  EACH_SECTION(0.35),
  AT_END(0.20),
  NEVER(0.05),
  /** Once, 15 minutes before the target; only a story brings it. */
  ONCE(0);

  private final double share;

  Style(double share) {
    this.share = share;
  }

  static Style drawn(double uniform) {
    double sum = 0;
    for (Style style : values()) {
      sum += style.share;
      if (uniform < sum) {
        return style;
      }
    }
    return NEVER;
  }
}
