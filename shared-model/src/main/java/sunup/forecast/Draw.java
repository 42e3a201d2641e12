package sunup.forecast;

import com.fasterxml.jackson.annotation.JsonSubTypes;
import com.fasterxml.jackson.annotation.JsonTypeInfo;

/** How a duration is drawn. All in milliseconds; zero is allowed, negative is not. */
@JsonTypeInfo(use = JsonTypeInfo.Id.NAME, property = "kind")
@JsonSubTypes({
  @JsonSubTypes.Type(value = Draw.Constant.class, name = "constant"),
  @JsonSubTypes.Type(value = Draw.LogNormal.class, name = "log-normal"),
  @JsonSubTypes.Type(value = Draw.Exponential.class, name = "exponential"),
  @JsonSubTypes.Type(value = Draw.ThreePoint.class, name = "three-point")
})
public sealed interface Draw {
  /** Always the same. */
  record Constant(long ms) implements Draw {}

  /**
   * Log-normal by its median and its 90 % point: mu = ln usual, sigma = ln(oneInTen / usual) /
   * 1.2816 (rule 4). Equal numbers are a constant.
   */
  record LogNormal(long usualMs, long oneInTenMs) implements Draw {}

  /** Exponential; for textbook cases. */
  record Exponential(long meanMs) implements Draw {}

  /**
   * Beta-PERT on [low, high] with mode likely and shape 4 (Malcolm et al. 1959); textbook cases.
   */
  record ThreePoint(long lowMs, long likelyMs, long highMs) implements Draw {}

  /** The median or nearest equivalent, in milliseconds: what the model allows for it. */
  default long usual() {
    if (this instanceof Constant c) {
      return c.ms();
    }
    if (this instanceof LogNormal l) {
      return l.usualMs();
    }
    if (this instanceof Exponential e) {
      return Math.round(e.meanMs() * Math.log(2));
    }
    ThreePoint p = (ThreePoint) this;
    return Math.round((p.lowMs() + 4.0 * p.likelyMs() + p.highMs()) / 6);
  }
}
