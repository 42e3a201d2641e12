package sunup.intake;

import java.nio.charset.StandardCharsets;
import java.time.LocalDate;
import java.util.List;
import sunup.codec.Problem;
import sunup.sheets.Sheets;

/** What the tests of this package share. */
final class Lists {
  static final SiteFile SITE = SiteFile.standard();
  static final Sheets SHEETS = Sheets.standard();
  static final LocalDate DAY = LocalDate.of(2026, 11, 25);

  private Lists() {}

  static CaseListResult read(String csv) {
    return read(csv, DAY);
  }

  static CaseListResult read(String csv, LocalDate date) {
    return CaseList.read(csv.getBytes(StandardCharsets.UTF_8), SITE, date, SHEETS);
  }

  /** A list that must be right. */
  static List<ListedCase> cases(String csv) {
    CaseListResult result = read(csv);
    if (!result.problems().isEmpty()) {
      throw new AssertionError(result.problems().toString());
    }
    return result.cases();
  }

  static List<String> words(List<Problem> problems) {
    return problems.stream().map(Problem::toString).toList();
  }
}
