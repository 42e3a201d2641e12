package sunup.intake;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.charset.StandardCharsets;
import java.time.LocalDate;
import java.util.List;
import org.junit.jupiter.api.Test;
import sunup.board.DelayReason;
import sunup.codec.Problem;
import sunup.review.facts.FirstCaseFact;

/** What of a site's history is taken, and what is said of what is wrong in it. */
class HistoryTest {
  private static final SiteFile SITE = SiteReader.read("site", SiteFile.standardText()).site();

  private static History.Result read(String text) {
    return History.read("history", text.getBytes(StandardCharsets.UTF_8), SITE);
  }

  @Test
  void shouldTakeRowsWithTheirTimesInTheSitesZone() {
    History.Result read =
        read(
            """
            date,room,booked,started,service,cancelled,reason\r
            2025-07-01,1,07:30,07:42,bones,,Surgeon\r
            2025-07-01,2,07:30,07:30,,no,\r
            2025-07-02,1,07:30,,bones,yes,\r
            """);
    assertThat(read.problems()).isEmpty();
    List<FirstCaseFact> facts = read.facts();
    assertThat(facts).hasSize(3);
    assertThat(facts.get(0).lateMinutes()).isEqualTo(12);
    assertThat(facts.get(0).reported().reason()).isEqualTo(DelayReason.SURGEON);
    assertThat(facts.get(0).morning().date()).isEqualTo(LocalDate.of(2025, 7, 1));
    assertThat(facts.get(1).onTime(0)).isTrue();
    assertThat(facts.get(1).service()).isNull();
    assertThat(facts.get(2).hasStarted()).isFalse();
  }

  @Test
  void shouldTakeNothingAndNameLineAndFieldWhenARowIsWrong() {
    History.Result read =
        read(
            """
            date;room;booked;started;reason
            2025-07-01;1;07:30;07:42;weather
            1.7.2025;1;07:30;07:42;
            2025-07-02;99;7.30 h;07:42;
            2025-07-03;1;07:30;;
            2025-07-04;1;07:30;07:31;
            2025-07-04;1;07:30;07:33;
            """);
    assertThat(read.facts()).isEmpty();
    assertThat(read.problems().stream().map(p -> p.line() + " " + p.field()))
        .containsExactly("2 reason", "3 date", "4 room", "4 booked", "5 started", "7 room");
    assertThat(read.problems().get(5).message()).contains("twice");
  }

  @Test
  void shouldRefuseColumnsThatAHistoryDoesNotHave() {
    History.Result read = read("date,room,booked,started,patient name\n");
    assertThat(read.problems()).extracting(Problem::field).containsExactly("patient name");
    assertThat(read("date,room\n").problems()).hasSize(2);
    assertThat(read("").problems()).hasSize(1);
    assertThat(History.read("history", new byte[] {(byte) 0xff}, SITE).problems()).hasSize(1);
  }
}
