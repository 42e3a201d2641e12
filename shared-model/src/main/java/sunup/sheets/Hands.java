package sunup.sheets;

/**
 * A duration as people can answer it, in minutes: what it usually takes (the median) and what one
 * in ten takes longer than (the 90 % point). {@code usual == oneInTen} is a fixed duration.
 */
public record Hands(double usual, double oneInTen) {
  public Hands {
    if (!(usual >= 0) || !(oneInTen >= usual) || oneInTen > 24 * 60) {
      throw new IllegalArgumentException(
          "minutes must be 0 or more, and 'one in ten' not less than 'usual' nor over a day");
    }
  }
}
