package sunup.intake;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.charset.StandardCharsets;
import java.time.LocalDate;
import java.time.ZoneId;
import java.util.List;
import org.junit.jupiter.api.Test;
import sunup.board.CaseId;
import sunup.board.PersonId;
import sunup.board.RoomId;

/** What a desk can hand in, and what it is told if it can't be read. */
class CaseListTest {
  private static List<String> problemsOf(String csv) {
    CaseListResult result = Lists.read(csv);
    assertThat(result.cases()).isEmpty();
    return Lists.words(result.problems());
  }

  @Test
  void shouldReadEveryDocumentedColumnInAnyOrderAndCase() {
    List<ListedCase> cases =
        Lists.cases(
            """
            Surgeon,START,Room,case,Technique,Options,Service,Procedure
            s-12,07:30,3,A1,general,block,orthopaedics,shoulder
            """);
    ListedCase one = cases.get(0);
    assertThat(one.room()).isEqualTo(new RoomId("3"));
    assertThat(one.id()).isEqualTo(new CaseId("A1"));
    assertThat(one.surgeon()).isEqualTo(new PersonId("s-12"));
    assertThat(one.technique()).isEqualTo("general");
    assertThat(one.options()).containsExactly("block");
    assertThat(one.service()).isEqualTo("orthopaedics");
    assertThat(one.procedure()).isEqualTo("shoulder");
    assertThat(one.line()).isEqualTo(2);
    assertThat(one.sheet().byKey()).containsKey("patient.block");
    // Lisbon has no offset in November.
    assertThat(one.bookedAt())
        .isEqualTo(Lists.DAY.atTime(7, 30).atZone(ZoneId.of("UTC")).toInstant().toEpochMilli());
  }

  @Test
  void shouldReadWhatSpreadsheetsWrite() {
    String semicolons = "room;start;technique;procedure\r\n3;07:30;GA;\"knee; \"\"left\"\"\"\r\n";
    String marked = "\uFEFF" + semicolons;
    String told = "sep=;\r\n" + semicolons;
    for (String csv : List.of(semicolons, marked, told)) {
      List<ListedCase> cases = Lists.cases(csv);
      assertThat(cases).hasSize(1);
      assertThat(cases.get(0).procedure()).isEqualTo("knee; \"left\"");
      assertThat(cases.get(0).technique()).isEqualTo("general");
    }
  }

  @Test
  void shouldNameTheLineAlsoAfterACellThatSpansLines() {
    assertThat(
            problemsOf(
                """
                room,start,technique,procedure
                1,07:30,general,"two
                lines"
                2,7.30,general,
                """))
        .containsExactly("case list, line 4, start: '7.30' is not a time, write 07:30");
  }

  @Test
  void shouldTellEveryMistakeAtOnceWithLineFieldAndMend() {
    assertThat(
            problemsOf(
                """
                room,start,technique,options,surgeon,case
                99,07:30,general,,,
                2,25:10,general,,,
                3,07:30,genral,,,
                4,07:30,spinal,blok,,
                5,07:30,general,,Dr Ada Example,
                6,,general,,,x y
                """))
        .satisfiesExactly(
            p -> assertThat(p).startsWith("case list, line 2, room: '99' is not known; "),
            p ->
                assertThat(p)
                    .isEqualTo(
                        "case list, line 3, start: '25:10' is not a time of the day; write hours"
                            + " 00 to 23 and minutes 00 to 59, for example 07:30"),
            p ->
                assertThat(p)
                    .isEqualTo(
                        "case list, line 4, technique: 'genral' is not known; did you mean"
                            + " 'general'?"),
            p ->
                assertThat(p)
                    .isEqualTo(
                        "case list, line 5, options: 'blok' is not known; did you mean 'block'?"),
            p -> assertThat(p).startsWith("case list, line 6, surgeon: must be a pseudonym"),
            p ->
                assertThat(p)
                    .isEqualTo(
                        "case list, line 7, start: is empty; write the booked time, for example"
                            + " 07:30"),
            p -> assertThat(p).startsWith("case list, line 7, case: 'x y': case id must be"));
  }

  @Test
  void shouldOfferTheTimeThatWasProbablyMeant() {
    for (String text : List.of("7.30", "0730", "7h30", "07-30", "07:30h")) {
      assertThat(problemsOf("room,start,technique\n1," + text + ",general\n"))
          .as(text)
          .containsExactly("case list, line 2, start: '" + text + "' is not a time, write 07:30");
    }
    assertThat(problemsOf("room,start,technique\n1,early,general\n"))
        .containsExactly(
            "case list, line 2, start: 'early' is not a time, write hours and minutes, for"
                + " example 07:30");
  }

  @Test
  void shouldTakeNothingIfOneRowIsWrongUnlessAskedFor() {
    String csv = "room,start,technique\n1,07:30,general\n2,nine,general\n";
    assertThat(Lists.read(csv).cases()).isEmpty();
    CaseListResult some =
        CaseList.read(
            "monday.csv",
            csv.getBytes(StandardCharsets.UTF_8),
            Lists.SITE,
            Lists.DAY,
            Lists.SHEETS,
            CaseList.Take.ROWS_THAT_ARE_RIGHT);
    assertThat(some.cases()).extracting(ListedCase::room).containsExactly(new RoomId("1"));
    assertThat(some.partial()).isTrue();
    assertThat(Lists.words(some.notes()).get(0)).startsWith("monday.csv, line 3, start");
  }

  @Test
  void shouldRefuseAColumnThatPromisesAPatient() {
    for (String column :
        List.of("Patient", "patient_id", "MRN", "Date of birth", "surname", "Phone", "DOB")) {
      assertThat(problemsOf("room,start,technique," + column + "\n1,07:30,general,x\n"))
          .as(column)
          .singleElement()
          .asString()
          .startsWith("case list, line 1, " + column + ": looks like a patient's")
          .contains("Take the column out");
    }
  }

  @Test
  void shouldReportAColumnThatNobodyReadsAndGoOn() {
    CaseListResult result = Lists.read("room,start,technique,Optoins\n1,07:30,general,block\n");
    assertThat(result.cases()).hasSize(1);
    assertThat(Lists.words(result.notes()))
        .containsExactly(
            "case list, line 1, Optoins: is left aside: column 'Optoins' is not known; did you mean"
                + " 'options'?");
  }

  @Test
  void shouldSayWhichColumnIsMissingOrThereTwice() {
    assertThat(problemsOf("room,technique\n1,general\n"))
        .singleElement()
        .asString()
        .startsWith("case list, line 1, start: is no column of this list");
    assertThat(problemsOf("room,start,Room,technique\n1,07:30,1,general\n"))
        .containsExactly("case list, line 1, room: is a column twice; keep one");
  }

  @Test
  void shouldKeepTheFirstCaseOfEachRoomAndNoteLaterOnes() {
    CaseListResult result =
        Lists.read(
            """
            room,start,technique
            2,09:40,general
            2,07:30,spinal
            1,08:00,general
            """);
    assertThat(result.cases())
        .extracting(c -> c.room().value() + " " + c.technique())
        .containsExactly("1 general", "2 spinal");
    assertThat(Lists.words(result.notes()))
        .containsExactly(
            "case list, line 2, room: a later case of room 2; only first cases are on the board");
  }

  @Test
  void shouldRefuseTwoCasesAtOneTimeInARoomAndAnIdUsedTwice() {
    assertThat(
            problemsOf(
                """
                room,start,technique,case
                1,07:30,general,a
                1,07:30,spinal,b
                2,07:30,general,a
                """))
        .containsExactlyInAnyOrder(
            "case list, line 3, room: room 1 has two cases at the same time, the other in line 2;"
                + " which is first?",
            "case list, line 4, case: 'a' stands in line 2 too");
  }

  @Test
  void shouldSplitOptionsHoweverTheyAreWrittenAndAddTheRoomsOwn() {
    List<ListedCase> cases =
        Lists.cases("room;start;technique;options\n11;07:30;ga;Block + C-arm, child\n");
    assertThat(cases.get(0).options()).containsExactly("alone", "block", "child", "imaging");
  }

  @Test
  void shouldSendAWordThatStandsInTheWrongColumnToItsOwnAndOfferOnlyWordsOfTheColumn() {
    String header = "room,start,technique,options\n";
    assertThat(problemsOf(header + "1,07:30,c-arm,sab\n"))
        .containsExactly(
            "case list, line 2, technique: 'c-arm' is an option; write it in column options",
            "case list, line 2, options: 'sab' is a technique; write it in column technique");
    assertThat(problemsOf(header + "1,07:30,c-arn,microskope\n"))
        .satisfiesExactly(
            p -> assertThat(p).contains("'c-arn' is not known; use ").doesNotContain("c-arm"),
            p -> assertThat(p).endsWith("did you mean 'microscope'?"));
  }

  @Test
  void shouldSayWhatIsWrongWithQuotes() {
    String header = "room,start,technique,procedure\n";
    assertThat(problemsOf(header + "1,07:30,general,\"knee\n2,07:30,general,hip\n"))
        .containsExactly(
            "case list, line 2: the quote that opens here is never closed; write another at the"
                + " cell's end");
    assertThat(problemsOf(header + "1,07:30,general,5\" plate\n"))
        .singleElement()
        .asString()
        .startsWith("case list, line 2: a quote stands inside a cell");
    assertThat(problemsOf(header + "1,07:30,general,\"knee\" left\n"))
        .singleElement()
        .asString()
        .startsWith("case list, line 2: something follows the closing quote");
    assertThat(problemsOf(header + "1,07:30,general,knee, left\n"))
        .singleElement()
        .asString()
        .startsWith("case list, line 2: has more cells than the header has columns");
  }

  @Test
  void shouldSayWhatIsWrongWithAFileThatIsNoList() {
    assertThat(problemsOf("")).singleElement().asString().contains("is empty");
    assertThat(problemsOf("room\tstart\ttechnique\n1\t07:30\tgeneral\n"))
        .singleElement()
        .asString()
        .contains("separated by commas or semicolons");
    assertThat(problemsOf("room,start,technique\n"))
        .singleElement()
        .asString()
        .contains("no cases under its header");
    byte[] latin =
        "room,start,technique,service\n1,07:30,general,Chir\u00fcrgie\n"
            .getBytes(StandardCharsets.ISO_8859_1);
    assertThat(Lists.words(CaseList.read(latin, Lists.SITE, Lists.DAY, Lists.SHEETS).problems()))
        .containsExactly("case list, line 2: has letters that are not UTF-8; save it as CSV UTF-8");
    byte[] wide = "room,start".getBytes(StandardCharsets.UTF_16);
    assertThat(Lists.words(CaseList.read(wide, Lists.SITE, Lists.DAY, Lists.SHEETS).problems()))
        .containsExactly("case list, line 1: is UTF-16; save it as CSV UTF-8");
  }

  @Test
  void shouldStopAtItsLimitsAndSayWhich() {
    byte[] large = new byte[CaseList.MAX_BYTES + 1];
    assertThat(Lists.words(CaseList.read(large, Lists.SITE, Lists.DAY, Lists.SHEETS).problems()))
        .containsExactly("case list: is larger than 1024 KB; is it the right file?");
    String header = "room,start,technique,procedure\n";
    assertThat(problemsOf(header + "1,07:30,general,x\n".repeat(Csv.MAX_ROWS)))
        .anyMatch(p -> p.contains("is beyond 1000 rows"));
    assertThat(problemsOf(header + ",".repeat(Csv.MAX_CELLS) + "\n"))
        .anyMatch(p -> p.contains("has more than 60 cells"));
    assertThat(problemsOf(header + "1,07:30,general," + "x".repeat(600) + "\n"))
        .anyMatch(p -> p.contains("a cell has more than 500 letters"));
    assertThat(problemsOf("room,start,technique\n" + "99,x,y\n".repeat(200)))
        .hasSize(CaseList.MAX_PROBLEMS + 1)
        .last()
        .isEqualTo("case list: and 500 more problems");
    assertThat(problemsOf("\"".repeat(CaseList.MAX_BYTES))).isNotEmpty();
  }

  @Test
  void shouldRefuseATimeThatTheSpringNightSkips() {
    // Europe/Lisbon, 2026-03-29: 01:00 becomes 02:00 (IANA time zone database).
    LocalDate spring = LocalDate.of(2026, 3, 29);
    assertThat(Lists.words(Lists.read("room,start,technique\n1,01:30,ga\n", spring).problems()))
        .containsExactly(
            "case list, line 2, start: 01:30 does not exist on 2026-03-29: the clocks go from 01:00"
                + " to 02:00; write 02:30 or another time");
    ListedCase one = Lists.read("room,start,technique\n1,07:30,ga\n", spring).cases().get(0);
    assertThat(one.bookedAt())
        .isEqualTo(spring.atTime(6, 30).atZone(ZoneId.of("UTC")).toInstant().toEpochMilli());
  }

  @Test
  void shouldAskWhichOneIfTheAutumnNightHasATimeTwice() {
    // Europe/Lisbon, 2026-10-25: 02:00 becomes 01:00 (IANA time zone database).
    LocalDate autumn = LocalDate.of(2026, 10, 25);
    assertThat(Lists.words(Lists.read("room,start,technique\n1,01:30,ga\n", autumn).problems()))
        .containsExactly(
            "case list, line 2, start: 01:30 comes twice on 2026-10-25: the clocks go back; write"
                + " 2026-10-25T01:30+01:00 for the first or 2026-10-25T01:30Z for the second");
    long first =
        Lists.read("room,start,technique\n1,2026-10-25T01:30+01:00,ga\n", autumn)
            .cases()
            .get(0)
            .bookedAt();
    long second =
        Lists.read("room,start,technique\n1,2026-10-25T01:30Z,ga\n", autumn)
            .cases()
            .get(0)
            .bookedAt();
    assertThat(second - first).isEqualTo(3_600_000);
    assertThat(
            Lists.words(
                Lists.read("room,start,technique\n1,2026-10-25T01:30+05:00,ga\n", autumn)
                    .problems()))
        .singleElement()
        .asString()
        .contains("has an offset that Europe/Lisbon does not have then");
  }

  @Test
  void shouldRefuseARowOfAnotherDay() {
    assertThat(Lists.cases("room,start,technique\n1,2026-11-25 07:30,ga\n")).hasSize(1);
    assertThat(problemsOf("room,start,technique\n1,2026-11-26 07:30,ga\n"))
        .containsExactly(
            "case list, line 2, start: '2026-11-26 07:30' is on another day; this list is for"
                + " 2026-11-25");
  }

  @Test
  void shouldLeaveOutAndReportWhatLooksLikeAPersonsNameOrNumber() {
    for (String told :
        new String[] {
          "hip 943 476 5919",
          "knee; MRN 12-345",
          "hernia dob 3.4.1961",
          "Mrs Sample: hernia",
          "\"SAMPLE, Ann\"",
          "7654321"
        }) {
      CaseListResult list =
          Lists.read("room,start,technique,procedure\n1,07:30,general," + told + "\n");
      assertThat(list.problems()).as(told).isEmpty();
      assertThat(list.cases().get(0).procedure()).as(told).isNull();
      assertThat(list.notes()).anyMatch(note -> note.message().contains("was left out"));
      assertThat(list.notes().toString()).as(told).doesNotContain("SAMPLE").doesNotContain("943");
    }
    for (String fine : new String[] {"\"Hip, left\"", "L4-L5 fusion", "2-level 360 fusion", "MR"}) {
      CaseListResult list =
          Lists.read("room,start,technique,procedure\n1,07:30,general," + fine + "\n");
      assertThat(list.cases().get(0).procedure()).as(fine).isNotNull();
    }
    assertThat(Lists.read("room,start,technique,case\n1,07:30,general,12345678\n").notes())
        .anyMatch(note -> note.message().contains("seven digits"));
  }
}
