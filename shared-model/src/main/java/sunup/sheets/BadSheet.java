package sunup.sheets;

import java.util.List;
import java.util.stream.Collectors;
import sunup.codec.Problem;

/** Sheets that can't be used, with everything that is wrong and where. */
public final class BadSheet extends Exception {
  private static final long serialVersionUID = 1L;

  private final transient List<Problem> problems;

  public BadSheet(List<Problem> problems) {
    super(problems.stream().map(Problem::toString).collect(Collectors.joining("\n")));
    this.problems = List.copyOf(problems);
  }

  public List<Problem> problems() {
    return problems;
  }
}
