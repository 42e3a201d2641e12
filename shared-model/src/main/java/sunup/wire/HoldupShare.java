package sunup.wire;

/** One share in words. */
public record HoldupShare(String holdup, String words, double share) {}
