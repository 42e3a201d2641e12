package sunup.drugs;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.time.LocalDate;
import java.time.LocalDateTime;
import java.util.List;
import java.util.Locale;
import java.util.Set;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import sunup.units.Concentration;
import sunup.units.Unit;
import sunup.units.Volume;

/** Label colours, lettering, how long a syringe stays usable, and scanned packages. */
class DrugsTest {
  /** ISO 26825:2020, Table 1 by its summaries, stripes and reversed plates by its text. */
  @ParameterizedTest
  @CsvSource({
    "INDUCTION, yellow, Process Yellow C, false, false, false",
    "BENZODIAZEPINE, orange, 151, false, false, false",
    "BENZODIAZEPINE_ANTAGONIST, orange, 151, true, false, false",
    "RELAXANT, red, Warm Red C, false, false, false",
    "SUXAMETHONIUM, red, Warm Red C, false, true, false",
    "RELAXANT_ANTAGONIST, red, Warm Red C, true, false, true",
    "OPIOID, blue, 297, false, false, false",
    "OPIOID_ANTAGONIST, blue, 297, true, false, false",
    "VASOPRESSOR, violet, 256, false, false, false",
    "ADRENALINE, violet, 256, false, true, false",
    "HYPOTENSIVE, violet, 256, true, false, false",
    "LOCAL_ANAESTHETIC, grey, 401, false, false, false",
    "ANTICHOLINERGIC, green, 367, false, false, false",
    "ANTIEMETIC, salmon, 156, false, false, false",
    "MISCELLANEOUS, white, '', false, false, false"
  })
  void shouldMeetTheLabelStandard(
      DrugClass drugClass,
      String colour,
      String pantone,
      boolean striped,
      boolean reversed,
      boolean line) {
    assertThat(drugClass.colour().word()).isEqualTo(colour);
    assertThat(drugClass.colour().pantone()).isEqualTo(pantone);
    assertThat(drugClass.striped()).isEqualTo(striped);
    assertThat(drugClass.reversed()).isEqualTo(reversed);
    assertThat(drugClass.lineBelowName()).isEqualTo(line);
    assertThat(LabelStandard.EDITION).isEqualTo("ISO 26825:2020");
    assertThat(drugClass.colour().rgb()).matches("#[0-9A-F]{6}");
  }

  /** 5.2.2 and 5.4.2 to 5.4.4 of the same standard. */
  @Test
  void shouldHoldTheGeometryOfTheStandard() {
    assertThat(LabelStandard.STRIPE_MM).isEqualTo(1);
    assertThat(LabelStandard.STRIPE_DEGREES).isEqualTo(45);
    assertThat(LabelStandard.STRIPE_DEGREES_OFF).isEqualTo(5);
    assertThat(LabelStandard.STRIPED_SHARE_LEAST).isEqualTo(0.20);
    assertThat(LabelStandard.STRIPE_SIDE_SHARE_LEAST).isEqualTo(0.15);
    assertThat(LabelStandard.NAME_BELOW_STRIPES_MM_LEAST).isEqualTo(0.5);
    assertThat(LabelStandard.LETTERS_MM_LEAST).isEqualTo(2.5);
    assertThat(LabelStandard.WIDTH_MM_LEAST).isLessThan(LabelStandard.WIDTH_MM_MOST);
    assertThat(LabelStandard.HEIGHT_MM_LEAST).isLessThan(LabelStandard.HEIGHT_MM_MOST);
  }

  /** FDA and ISMP lists of look-alike names. */
  @ParameterizedTest
  @CsvSource({
    "dopamine, DOPamine", "Dobutamine, DOBUTamine", "EPHEDRINE, ePHEDrine",
    "epinephrine, EPINEPHrine", "fentanyl, fentaNYL", "propofol, propofol"
  })
  void shouldShowNamesThatLookAlikeInMixedCase(String name, String shown) {
    assertThat(Lettering.shown(name)).isEqualTo(shown);
  }

  @Test
  void shouldSayWhichNamesItIsTakenFor() {
    assertThat(Lettering.alike("ephedrine")).containsExactly("EPINEPHrine");
    assertThat(Lettering.alike("nifedipine")).containsExactly("niCARdipine", "niMODipine");
    assertThat(Lettering.alike("propofol")).isEmpty();
  }

  /** ISO 26825:2020, 5.4.2: all capitals are not allowed. */
  @Test
  void shouldNeverWriteANameInCapitalsOnly() {
    for (Lettering.Alike alike : Lettering.ALIKE) {
      for (String name : alike.names()) {
        assertThat(name).isNotEqualTo(name.toUpperCase(Locale.ROOT));
        assertThat(Lettering.shown(name.toLowerCase(Locale.ROOT))).isEqualTo(name);
      }
    }
  }

  private static UseLimit limit(String name) {
    return UseLimit.PUBLISHED.stream().filter(l -> l.name().equals(name)).findFirst().orElseThrow();
  }

  /** USP <797>, propofol labels, ASA 2023, ASHP Handbook, UK specialist pharmacy service. */
  @ParameterizedTest
  @CsvSource({
    "immediate-use, 240", "propofol-with-edta, 720", "propofol-syringe, 360", "spiked-bag, 1440",
    "drawn-syringe, 1440", "dantrolene, 360", "rocuronium-diluted, 1440", "rocuronium-room, 86400",
    "succinylcholine-room, 20160", "multi-dose-vial, 40320"
  })
  void shouldHoldPublishedLimitsWithTheirSource(String name, long minutes) {
    assertThat(limit(name).minutes()).isEqualTo(minutes);
    assertThat(limit(name).source()).isNotBlank();
  }

  /** Texts leave the moment itself open: at exactly 4 h it has lapsed, as on the board. */
  @Test
  void shouldLapseAtTheMomentOfTheShortestLimit() {
    DrawnDrug syringe =
        DrawnDrug.of(
            "ephedrine",
            DrugClass.VASOPRESSOR,
            new Concentration(3),
            new Volume(10),
            1_000,
            List.of(limit("drawn-syringe"), limit("immediate-use")));
    long fourHours = 4 * 60 * 60_000L;
    assertThat(syringe.lapsesAtMs()).isEqualTo(1_000 + fourHours);
    assertThat(syringe.hasLapsed(1_000 + fourHours - 1)).isFalse();
    assertThat(syringe.hasLapsed(1_000 + fourHours)).isTrue();
    assertThat(syringe.text()).isEqualTo("ePHEDrine 30 mg = 10 mL of 3 mg/mL");
  }

  @Test
  void shouldWriteSmallAmountsInMicrogramsInFull() {
    DrawnDrug syringe =
        DrawnDrug.of(
            "epinephrine",
            DrugClass.ADRENALINE,
            Concentration.of(100_000, Unit.ONE_IN),
            new Volume(10),
            0,
            List.of(limit("immediate-use")));
    assertThat(syringe.text()).isEqualTo("EPINEPHrine 100 micrograms = 10 mL of 10 micrograms/mL");
  }

  @Test
  void shouldHaveNoLimitWithoutASourceAndNoSyringeWithoutALimit() {
    assertThatThrownBy(() -> new UseLimit("x", 60, " ", ""))
        .hasMessageContaining("no source, no limit");
    assertThatThrownBy(() -> UseLimit.lapsesAt(0, List.of()))
        .isInstanceOf(IllegalArgumentException.class);
  }

  private static final String GTIN = "09501101530003";
  private static final List<PackageCheck.Product> APPROVED =
      List.of(
          new PackageCheck.Product(GTIN, "ephedrine", DrugClass.VASOPRESSOR),
          new PackageCheck.Product("09506000134352", "atropine", DrugClass.ANTICHOLINERGIC));

  private static PackageCheck.Answer scan(String rest, LocalDateTime now) {
    return PackageCheck.check(
        Gs1.read(rest, now.toLocalDate()),
        APPROVED,
        Set.of("ephedrine"),
        Set.of(new PackageCheck.Recall(GTIN, "BAD1")),
        now);
  }

  private static final LocalDateTime NOW = LocalDate.of(2026, 11, 25).atTime(6, 40);

  @Test
  void shouldTakeWhatIsOnTheCasesList() {
    PackageCheck.Answer answer = scan("01" + GTIN + "17270131" + "10A1", NOW);
    assertThat(answer).isInstanceOf(PackageCheck.Expected.class);
    assertThat(((PackageCheck.Expected) answer).product().drug()).isEqualTo("ephedrine");
  }

  @Test
  void shouldRefuseWhatIsExpiredFromTheDayAfterItsLast() {
    assertThat(scan("01" + GTIN + "17261125", NOW)).isInstanceOf(PackageCheck.Expected.class);
    assertThat(scan("01" + GTIN + "17261124", NOW))
        .isEqualTo(new PackageCheck.Refused("expired 2026-11-24"));
    assertThat(scan("01" + GTIN + "17261100", NOW)).isInstanceOf(PackageCheck.Expected.class);
    assertThat(scan("01" + GTIN + "17261000", NOW)).isInstanceOf(PackageCheck.Refused.class);
    assertThat(scan("01" + GTIN + "70032611250640", NOW)).isInstanceOf(PackageCheck.Refused.class);
    assertThat(scan("01" + GTIN + "70032611250641", NOW)).isInstanceOf(PackageCheck.Expected.class);
  }

  @Test
  void shouldRefuseALotThatWasCalledBackAndWhatCannotBeRead() {
    assertThat(scan("01" + GTIN + "17270131" + "10BAD1", NOW))
        .isInstanceOf(PackageCheck.Refused.class);
    assertThat(scan("nonsense", NOW)).isInstanceOf(PackageCheck.Refused.class);
  }

  @Test
  void shouldStopForWhatIsNotExpectedAndKeepIt() {
    PackageCheck.Answer other = scan("0109506000134352" + "17270131", NOW);
    assertThat(((PackageCheck.Stop) other).why()).isEqualTo("atropine is not on this case's list");
    assertThat(((PackageCheck.Stop) other).contents().gtin()).contains("09506000134352");
    assertThat(((PackageCheck.Stop) scan("0100614141123452" + "17270131", NOW)).why())
        .contains("not on the approved list");
    assertThat(((PackageCheck.Stop) scan("01" + GTIN + "10A1", NOW)).why()).contains("no expiry");
    assertThat(((PackageCheck.Stop) scan("10A1", NOW)).why()).contains("no product");
  }

  /** Expired goes before unexpected: nobody signs for what is expired. */
  @Test
  void shouldRefuseAnUnexpectedPackageThatIsExpired() {
    assertThat(scan("0100614141123452" + "17200131", NOW)).isInstanceOf(PackageCheck.Refused.class);
  }

  @Test
  void shouldNotTakeAnApprovedProductWithAWrongCheckDigit() {
    assertThatThrownBy(
            () -> new PackageCheck.Product("09501101530004", "x", DrugClass.MISCELLANEOUS))
        .hasMessageContaining("check digit");
  }
}
