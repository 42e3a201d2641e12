package sunup.intake;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;
import net.jqwik.api.Arbitraries;
import net.jqwik.api.Arbitrary;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.Provide;
import sunup.codec.Problem;

/** Whatever is written comes back, and whatever comes in is answered. */
class CsvProperties {
  @Provide
  Arbitrary<List<List<String>>> tables() {
    Arbitrary<String> cell =
        Arbitraries.strings()
            .withChars("ab ,;\"'\n\u00e9\uD83D\uDE00")
            .ofMaxLength(12)
            .map(s -> s.replaceAll("[\uD800-\uDFFF]", "u"));
    // The mark in front keeps rows from being blank: those are skipped.
    return cell.list()
        .ofMinSize(1)
        .ofMaxSize(5)
        .map(
            row -> {
              List<String> marked = new ArrayList<>(row);
              marked.set(0, "x" + marked.get(0));
              return marked;
            })
        .list()
        .ofMinSize(1)
        .ofMaxSize(8);
  }

  @Property(tries = 500)
  void shouldReadBackWhatWasWritten(
      @ForAll("tables") List<List<String>> table, @ForAll boolean semicolon, @ForAll boolean crlf) {
    char separator = semicolon ? ';' : ',';
    String end = crlf ? "\r\n" : "\n";
    StringBuilder text = new StringBuilder();
    List<Integer> lines = new ArrayList<>();
    int line = 1;
    for (List<String> row : table) {
      lines.add(line);
      List<String> cells = new ArrayList<>();
      for (String cell : row) {
        cells.add('"' + cell.replace("\"", "\"\"").replace("\n", end) + '"');
        line += (int) cell.chars().filter(c -> c == '\n').count();
      }
      text.append(String.join(String.valueOf(separator), cells)).append(end);
      line++;
    }
    List<Problem> problems = new ArrayList<>();
    List<Csv.Row> rows = Csv.read("t", text.toString(), separator, problems);
    assertThat(problems).isEmpty();
    assertThat(rows.stream().map(r -> r.cells().stream().map(Csv.Cell::text).toList()))
        .isEqualTo(table);
    assertThat(rows.stream().map(Csv.Row::line)).isEqualTo(lines);
  }

  @Property(tries = 500)
  void shouldAnswerAnyBytesWithCasesOrProblems(@ForAll byte[] bytes) {
    CaseListResult result = CaseList.read(bytes, Lists.SITE, Lists.DAY, Lists.SHEETS);
    assertThat(result.problems().isEmpty()).isEqualTo(!result.cases().isEmpty());
  }

  @Property(tries = 500)
  void shouldAnswerAnyRowUnderAGoodHeaderWithCasesOrProblems(
      @ForAll("scraps") List<String> scraps) {
    String csv = "room,start,technique,options,surgeon,case\n" + String.join("", scraps);
    CaseListResult result =
        CaseList.read(csv.getBytes(StandardCharsets.UTF_8), Lists.SITE, Lists.DAY, Lists.SHEETS);
    assertThat(result.problems().isEmpty()).isEqualTo(!result.cases().isEmpty());
    assertThat(result.problems()).allMatch(p -> !p.message().isBlank());
  }

  @Provide
  Arbitrary<List<String>> scraps() {
    return Arbitraries.of(
            "1",
            "12",
            ",",
            ",",
            ",",
            "07:30",
            "7.30",
            "general",
            "spinal",
            "block",
            "\n",
            "\r\n",
            "\"",
            "\"\"",
            " ",
            ";",
            "T",
            "2026-11-25",
            "+01:00",
            "child alone",
            "\uFEFF",
            "-")
        .list()
        .ofMaxSize(30);
  }
}
