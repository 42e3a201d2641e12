package sunup.bedside;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.time.LocalDate;
import java.util.List;
import java.util.Locale;
import org.junit.jupiter.api.Test;
import sunup.units.Unit;

/** Figures are off until the site's pharmacy releases them. */
class ReleaseTest {
  private static final BedsideSettings FIRST = BedsideSettings.first();

  private static BedsideFigures.Listed listed(BedsideSettings site, String name) {
    return new BedsideFigures(site)
        .list(Desk.TODAY).stream()
            .filter(f -> f.card().name().equals(name))
            .findFirst()
            .orElseThrow();
  }

  @Test
  void shouldBeOffAtFirstEveryOne() {
    List<BedsideFigures.Listed> all = new BedsideFigures(FIRST).list(Desk.TODAY);
    assertThat(all).hasSizeGreaterThan(15).allMatch(f -> f.released() == null && f.off() != null);
    for (BedsideFigures.Listed figure : all) {
      Answer answer =
          new BedsideFigures(FIRST)
              .work(
                  figure.card().name(),
                  Desk.CASE,
                  CaseInputs.of(Desk.CASE),
                  Desk.entries(),
                  Desk.TODAY)
              .answer();
      assertThat(answer).isInstanceOf(Answer.Off.class);
    }
  }

  @Test
  void shouldBeOnOnceReleasedWithNameAndDate() {
    BedsideFigures.Listed mac = listed(Desk.releasing(FIRST), "mac");
    assertThat(mac.off()).isNull();
    assertThat(mac.released().by()).isEqualTo("A. Pharmacist");
    assertThat(mac.released().on()).isEqualTo(Desk.TODAY);
  }

  @Test
  void shouldNotCountAReleaseWithoutAName() {
    assertThatThrownBy(() -> new Release("mac", "x", " ", Desk.TODAY))
        .isInstanceOf(IllegalArgumentException.class);
  }

  @Test
  void shouldStayOffUntilTheDayOfItsRelease() {
    LocalDate tomorrow = Desk.TODAY.plusDays(1);
    String fingerprint = listed(FIRST, "mac").fingerprint();
    BedsideSettings site =
        FIRST.released(List.of(new Release("mac", fingerprint, "A. Pharmacist", tomorrow)));
    assertThat(listed(site, "mac").off()).contains("after today");
    assertThat(new BedsideFigures(site).list(tomorrow).stream().filter(f -> f.off() == null))
        .hasSize(1);
  }

  @Test
  void shouldBeOffAgainAfterAChangeThatThePharmacyHasNotSeen() {
    List<Release> releases = Desk.releasing(FIRST).releases();
    List<Ceiling> own =
        List.of(new Ceiling("lidocaine", Ceiling.Family.AMIDE, false, 5.0, 350.0, "another table"));
    BedsideSettings changed = new BedsideSettings(releases, own, 200, BedsideSettings.GAUGES);
    assertThat(listed(changed, "local-anaesthetic").off()).contains("changed since");
    assertThat(listed(changed, "cylinder").off()).isNull();
    BedsideSettings residual =
        new BedsideSettings(releases, Ceiling.PUBLISHED, 0, BedsideSettings.GAUGES);
    assertThat(listed(residual, "cylinder").off()).contains("changed since");
  }

  @Test
  void shouldRefuseAFigureThatDoesNotExist() {
    assertThat(Desk.refused("propofol").message()).contains("no figure 'propofol'");
  }

  @Test
  void shouldStateFormulaSourceRangeAndCautionOnEveryPage() {
    for (BedsideFigures.Listed listed : new BedsideFigures(FIRST).list(Desk.TODAY)) {
      Card card = listed.card();
      assertThat(List.of(card.title(), card.formula(), card.source(), card.range(), card.caution()))
          .allMatch(text -> !text.isBlank());
      assertThat(card.inputs()).isNotEmpty();
      for (Input input : card.inputs()) {
        assertThat(input.units().isEmpty()).isEqualTo(input.kind() == Input.Kind.CHOICE);
        assertThat(input.units().stream().map(Unit::quantity).distinct().count())
            .isLessThanOrEqualTo(1);
      }
    }
  }

  /** Practice's page: leave adult induction doses out; what has no source is left out. */
  @Test
  void shouldHaveNoInductionDose() {
    for (BedsideFigures.Listed listed : new BedsideFigures(FIRST).list(Desk.TODAY)) {
      String all = listed.card().toString().toLowerCase(Locale.ROOT);
      for (String drug : List.of("thiopent", "etomidate", "ketamine", "rocuronium", "fentanyl")) {
        assertThat(all).doesNotContain(drug);
      }
    }
  }
}
