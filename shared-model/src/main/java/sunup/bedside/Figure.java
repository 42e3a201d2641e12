package sunup.bedside;

import java.util.List;

/**
 * A figure: its page and its sum.
 *
 * @param card what stands on its page
 * @param settings the site's numbers that the result depends on, as text; they are part of what is
 *     released
 * @param sum from what was given to an answer
 */
record Figure(Card card, String settings, Sum sum) {
  /** The sum of a figure. All inputs are there, in range, and asked again where that was due. */
  @FunctionalInterface
  interface Sum {
    Result of(Given given) throws Outside;
  }

  /** The lines of a result, with the sum in numbers and what to keep in mind. */
  record Result(String worked, List<String> cautions, List<Line> lines) {
    static Result of(String worked, Line... lines) {
      return new Result(worked, List.of(), List.of(lines));
    }

    Result caution(String... more) {
      return new Result(worked, List.of(more), lines);
    }
  }
}
