package sunup.sheets;

/**
 * "One in N needs M more minutes": a mend or a search that some days bring.
 *
 * @param oneIn N, at least 2
 * @param minutes M, usual minutes of the extra
 */
public record RareExtra(int oneIn, double minutes) {
  public RareExtra {
    if (oneIn < 2 || !(minutes > 0)) {
      throw new IllegalArgumentException("'one in' must be 2 or more and 'minutes' above 0");
    }
  }
}
