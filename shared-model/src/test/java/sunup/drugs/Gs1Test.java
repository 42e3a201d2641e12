package sunup.drugs;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.LocalDate;
import java.time.LocalTime;
import java.util.List;
import net.jqwik.api.Arbitraries;
import net.jqwik.api.Arbitrary;
import net.jqwik.api.Combinators;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.Provide;
import net.jqwik.api.constraints.IntRange;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/**
 * Scans of packages: GS1 Barcode Syntax Dictionary (GS1 AISBL), its unit tests and those of the GS1
 * Barcode Syntax Engine, and GS1 General Specifications where named.
 */
class Gs1Test {
  private static final LocalDate TODAY = LocalDate.of(2026, 11, 25);
  private static final String GS = "\u001D";

  private static Gs1Package read(String scan) {
    Gs1.Result result = Gs1.read(scan, TODAY);
    assertThat(result).as(scan).isInstanceOf(Gs1.Read.class);
    return ((Gs1.Read) result).contents();
  }

  private static String unreadable(String scan) {
    Gs1.Result result = Gs1.read(scan, TODAY);
    assertThat(result).as(scan).isInstanceOf(Gs1.Unreadable.class);
    return ((Gs1.Unreadable) result).why();
  }

  /** Worked examples of GS1 and its members: 57 to 3, 63 to 7, 23 to 7, 90 to 0, UPC-A 53 to 7. */
  @ParameterizedTest
  @CsvSource({
    "629104150021, 3",
    "890400021003, 7",
    "730001100001, 7",
    "501234567890, 0",
    "03600024145, 7",
    "0950600013435, 2",
    "0061414112345, 2",
    "0950110153000, 3",
    "1234567890987, 9",
    "1231231231233, 3"
  })
  void shouldMeetPublishedCheckDigits(String digits, int check) {
    assertThat(Gs1.checkDigit(digits)).isEqualTo(check);
  }

  /** The dictionary's own unit tests of the check digit. */
  @ParameterizedTest
  @ValueSource(
      strings = {
        "02345673",
        "416000336108",
        "1234567890128",
        "12345678901231",
        "123456789012345675"
      })
  void shouldAcceptWhatTheDictionaryAccepts(String digits) {
    assertThat(Gs1.checked(digits)).isTrue();
  }

  /** Example of the syntax engine's text, with its DataMatrix, GS1-128 and dot code prefixes. */
  @ParameterizedTest
  @ValueSource(strings = {"]d2", "]C1", "]J1", "]Q3", "]e0", "", "\u001D", "]d2\u001D"})
  void shouldReadAScanWithEverySymbologyIdentifierAndWithout(String prefix) {
    Gs1Package contents = read(prefix + "011231231231233310ABC123" + GS + "99TESTING");
    assertThat(contents.toString()).isEqualTo("(01)12312312312333(10)ABC123(99)TESTING");
    assertThat(contents.gtin()).contains("12312312312333");
    assertThat(contents.lot()).contains("ABC123");
  }

  /** (01)12345678901231(10)ABC123(11)210630 = ^011234567890123110ABC123^11210630, same text. */
  @Test
  void shouldReadTheWrittenFormOfFnc1Too() {
    assertThat(read("^011234567890123110ABC123^11210630").toString())
        .isEqualTo("(01)12345678901231(10)ABC123(11)210630");
  }

  /** A medicine-like string with a published demo number. */
  @Test
  void shouldReadProductExpiryLotAndSerial() {
    Gs1Package contents = read("010950110153000317250101" + "10ABC123" + GS + "21SN-7");
    assertThat(contents.gtin()).contains("09501101530003");
    assertThat(contents.expiry().orElseThrow().day()).isEqualTo(LocalDate.of(2025, 1, 1));
    assertThat(contents.lot()).contains("ABC123");
    assertThat(contents.serial()).contains("SN-7");
  }

  /** A printer manual's example: its check digit should be 9. */
  @Test
  void shouldRejectTheManualsExampleWithTheWrongCheckDigit() {
    assertThat(unreadable("0112345678909876" + "21123456" + GS + "17120428" + "10123456"))
        .contains("check digit");
    assertThat(read("0112345678909879" + "21123456" + GS + "17120428" + "10123456").lot())
        .contains("123456");
  }

  @Test
  void shouldSayThatBracketsArePrintedAndNotScanned() {
    assertThat(unreadable("(01)12345678909879(21)123456")).contains("brackets");
  }

  /** Split only at a separator or the end: a lot may hold "17". */
  @Test
  void shouldNotSplitALotThatLooksLikeAnotherIdentifier() {
    Gs1Package contents = read("0109501101530003" + "10AB17CD");
    assertThat(contents.lot()).contains("AB17CD");
    assertThat(contents.expiry()).isEmpty();
    assertThat(unreadable("0109501101530003" + "10ABCDEFGHIJKLMNOPQR17250101"))
        .contains("20", "separator");
  }

  @Test
  void shouldPassOverWhatItDoesNotNeedByItsLength() {
    Gs1Package contents =
        read(
            "0109501101530003"
                + "3103000123" // net weight, fixed
                + "30"
                + "12"
                + GS // count
                + "4141234567890128" // place, fixed
                + "7122-345"
                + GS // national number
                + "240XYZ"
                + GS
                + "17270228");
    assertThat(contents.expiry().orElseThrow().day()).isEqualTo(LocalDate.of(2027, 2, 28));
    assertThat(contents.elements()).hasSize(7);
  }

  /** Fixed lengths need no separator, and one after them is no mistake. */
  @Test
  void shouldAcceptASeparatorAfterAFixedLength() {
    assertThat(read("0109501101530003" + GS + "17270228" + GS + "10A").lot()).contains("A");
    assertThat(read("0109501101530003" + "10A" + GS).lot()).contains("A");
    assertThat(read("0109501101530003" + "10A" + "\r\n").lot()).contains("A");
  }

  /** The dictionary's unit tests of dates whose day may be 00. */
  @ParameterizedTest
  @ValueSource(strings = {"000606", "200131", "200229", "210228", "200100"})
  void shouldAcceptDatesThatAre(String date) {
    assertThat(read("0109501101530003" + "17" + date).expiry()).isPresent();
  }

  @ParameterizedTest
  @ValueSource(strings = {"200230", "210229", "200431", "201310", "200010", "11111", "x00131"})
  void shouldRejectDatesThatAreNot(String date) {
    unreadable("0109501101530003" + "17" + date);
  }

  /** Day 00: the last day of the month (General Specifications); the string stays what it is. */
  @ParameterizedTest
  @CsvSource({
    "210300, 2021-03-31",
    "210400, 2021-04-30",
    "210200, 2021-02-28",
    "240200, 2024-02-29",
    "270200, 2027-02-28"
  })
  void shouldReadDayZeroAsTheLastOfTheMonthAndKeepTheString(String date, LocalDate day) {
    Gs1Date expiry = read("0109501101530003" + "17" + date).expiry().orElseThrow();
    assertThat(expiry.day()).isEqualTo(day);
    assertThat(expiry.written()).isEqualTo(date);
    assertThat(Gs1Date.of("210331", TODAY)).isNotEqualTo(Gs1Date.of("210300", TODAY));
  }

  /**
   * The dictionary's code: 51 or more ahead is of the last century, 50 or more back of the next.
   */
  @ParameterizedTest
  @CsvSource({
    "76, 2026, 2076",
    "77, 2026, 1977",
    "0, 2026, 2000",
    "1, 2051, 2101",
    "2, 2051, 2002",
    "26, 2026, 2026",
    "50, 2100, 2150",
    "51, 2100, 2051"
  })
  void shouldFindTheCentury(int twoDigits, int now, int year) {
    assertThat(Gs1Date.year(twoDigits, now)).isEqualTo(year);
  }

  /** AI 7003: a real day, hour and minute. */
  @Test
  void shouldReadAnExpiryWithItsTimeAheadOfTheDay() {
    Gs1Date expiry =
        read("0109501101530003" + "17261231" + "70032611251430").expiry().orElseThrow();
    assertThat(expiry.day()).isEqualTo(LocalDate.of(2026, 11, 25));
    assertThat(expiry.time()).isEqualTo(LocalTime.of(14, 30));
    assertThat(unreadable("0109501101530003" + "70032611252430")).contains("no date and time");
    assertThat(unreadable("0109501101530003" + "70032611001430")).contains("no date and time");
  }

  @Test
  void shouldRejectWhatMayNotStandTogether() {
    assertThat(unreadable("0109501101530003" + "0209506000134352" + "3712"))
        .contains("larger package");
    assertThat(unreadable("0109501101530003" + "10A" + GS + "10B")).contains("twice");
    assertThat(read("0109501101530003" + "10A" + GS + "10A").lot()).contains("A");
  }

  @ParameterizedTest
  @ValueSource(strings = {"10A B", "10A#B", "10A\u00E9", "10A\u0000", "10A[B"})
  void shouldRejectCharactersOutsideTheSet(String lot) {
    assertThat(unreadable("0109501101530003" + lot)).contains("character");
  }

  @Test
  void shouldSayWhyNothingElseCanBeRead() {
    assertThat(unreadable("")).contains("nothing");
    assertThat(unreadable(GS)).contains("nothing");
    assertThat(Gs1.read(null, TODAY)).isInstanceOf(Gs1.Unreadable.class);
    assertThat(unreadable("]E04006381333931")).contains("no GS1 code");
    assertThat(unreadable("01095011")).contains("cut off");
    assertThat(unreadable("0109501101530003" + "10")).contains("0 characters");
    assertThat(unreadable("0109501101530003" + "45X")).contains("no identifier");
    assertThat(unreadable("hello")).contains("no identifier");
    assertThat(unreadable("1".repeat(Gs1.LENGTH_MAX + 1))).contains("longer");
  }

  /** Any text whatever has an answer. */
  @Property(tries = 5000)
  void shouldNeverThrow(
      @ForAll("scans") String scan, @ForAll @IntRange(min = 1, max = 9999) int y) {
    Gs1.Result result = Gs1.read(scan, LocalDate.of(y, 6, 15));
    if (result instanceof Gs1.Unreadable unreadable) {
      assertThat(unreadable.why()).isNotBlank();
      assertThat(unreadable.at()).isBetween(0, scan.length());
    } else {
      Gs1Package contents = ((Gs1.Read) result).contents();
      assertThat(contents.elements()).isNotEmpty();
      contents.expiry();
    }
  }

  @Provide
  Arbitrary<String> scans() {
    Arbitrary<String> pieces =
        Arbitraries.oneOf(
            Arbitraries.of(
                "01",
                "09501101530003",
                "17",
                "250101",
                "10",
                "ABC",
                GS,
                "^",
                "21",
                "]d2",
                "7003",
                "2611251430",
                "310",
                "41",
                "00",
                "30",
                "8006",
                "240",
                "(01)",
                "\r\n",
                " "),
            Arbitraries.strings().ofMaxLength(6),
            Arbitraries.strings().numeric().ofMaxLength(20));
    return pieces.list().ofMaxSize(10).map(list -> String.join("", list));
  }

  /** What was put together is read back. */
  @Property
  void shouldReadBackWhatWasWritten(
      @ForAll("numbers") String body, @ForAll("texts") String lot, @ForAll("texts") String serial) {
    String gtin = body + Gs1.checkDigit(body);
    Gs1Package contents = read("01" + gtin + "17281130" + "10" + lot + GS + "21" + serial);
    assertThat(contents.gtin()).contains(gtin);
    assertThat(contents.lot()).contains(lot);
    assertThat(contents.serial()).contains(serial);
    assertThat(contents.elements()).hasSize(4);
  }

  /** One digit mistyped, or two neighbours that differ by other than 5 swapped, is found. */
  @Property
  void shouldFindAMistypedDigit(
      @ForAll("numbers") String body,
      @ForAll @IntRange(min = 0, max = 13) int at,
      @ForAll @IntRange(min = 1, max = 9) int off) {
    char[] gtin = (body + Gs1.checkDigit(body)).toCharArray();
    gtin[at] = (char) ('0' + (gtin[at] - '0' + off) % 10);
    assertThat(Gs1.checked(new String(gtin))).isFalse();
  }

  @Provide
  Arbitrary<String> numbers() {
    return Arbitraries.strings().numeric().ofLength(13);
  }

  @Provide
  Arbitrary<String> texts() {
    return Combinators.combine(
            Arbitraries.strings().withChars("!\"%&'()*+,-./:;<=>?_").ofMaxLength(8),
            Arbitraries.strings().alpha().numeric().ofMinLength(1).ofMaxLength(12))
        .as((a, b) -> a + b);
  }

  @Test
  void shouldListWhatStoodInTheCode() {
    assertThat(read("0109501101530003" + "10A").elements())
        .isEqualTo(
            List.of(
                new Gs1Package.Element("01", "product", "09501101530003"),
                new Gs1Package.Element("10", "lot", "A")));
  }
}
