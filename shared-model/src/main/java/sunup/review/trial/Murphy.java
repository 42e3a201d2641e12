package sunup.review.trial;

import java.util.List;

/**
 * The Brier score taken apart (A. H. Murphy, A new vector partition of the probability score, J
 * Appl Meteorol 12 (1973) 595-600): score = reliability - resolution + uncertainty + within.
 *
 * @param score mean squared distance of the chance said from what came (1 or 0); 0 is perfect, 1/4
 *     what "one half" always gets
 * @param base share of what came
 * @param reliability how far the chances said lie from the shares that came, smaller is better
 * @param resolution how far those shares lie from the base, larger is better
 * @param uncertainty base (1 - base): what always saying the base gets
 * @param within what is left as chances within one bin differ; 0 if each bin is one chance
 */
public record Murphy(
    double score,
    double base,
    double reliability,
    double resolution,
    double uncertainty,
    double within) {
  /**
   * Forecasts of one chance (or one bin of chances).
   *
   * @param said the chance, or the mean of those of the bin
   * @param came share of them that came
   * @param weight how many, or their share
   */
  public record Cell(double said, double came, double weight) {}

  /** The score of forecasts that are told by cells, each of one chance. */
  public static Murphy of(List<Cell> cells) {
    double weight = cells.stream().mapToDouble(Cell::weight).sum();
    double score = 0;
    for (Cell c : cells) {
      double yes = (1 - c.said()) * (1 - c.said()) * c.came();
      double no = c.said() * c.said() * (1 - c.came());
      score += c.weight() / weight * (yes + no);
    }
    return of(cells, score);
  }

  /** The same where cells are bins and the score is that of the forecasts themselves. */
  static Murphy of(List<Cell> cells, double score) {
    double weight = cells.stream().mapToDouble(Cell::weight).sum();
    double base = cells.stream().mapToDouble(c -> c.weight() * c.came()).sum() / weight;
    double reliability = 0;
    double resolution = 0;
    for (Cell c : cells) {
      double off = c.said() - c.came();
      double apart = c.came() - base;
      reliability += c.weight() / weight * off * off;
      resolution += c.weight() / weight * apart * apart;
    }
    double uncertainty = base * (1 - base);
    return new Murphy(
        score,
        base,
        reliability,
        resolution,
        uncertainty,
        score - (reliability - resolution + uncertainty));
  }

  /** Skill over always saying the base: 1 - score / uncertainty; null if all went one way. */
  public Double skillOverBase() {
    return uncertainty == 0 ? null : Double.valueOf(1 - score / uncertainty);
  }
}
