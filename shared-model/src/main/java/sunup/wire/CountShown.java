package sunup.wire;

/** The sum of a controlled drug; amounts in words. */
public record CountShown(
    String drug,
    int drawn,
    int returned,
    String given,
    String wasted,
    String open,
    boolean comesOut) {}
