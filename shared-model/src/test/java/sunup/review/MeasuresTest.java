package sunup.review;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;
import static sunup.review.facts.InventedFacts.MONDAY;
import static sunup.review.facts.InventedFacts.on;

import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Map;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.IntRange;
import net.jqwik.api.constraints.Size;
import org.junit.jupiter.api.Test;
import sunup.codec.Json;
import sunup.review.Measures.Figures;
import sunup.review.Measures.Grace;
import sunup.review.facts.FirstCaseFact;
import sunup.review.facts.FirstCaseFact.Beside;
import sunup.review.facts.InventedFacts;

class MeasuresTest {
  /**
   * 0, 0, 0, 3, 5, 5.5, 8, 12, 16, 30.5 minutes late on two mornings, one cancelled, one untold.
   */
  private static List<FirstCaseFact> ten() {
    double[] late = {0, -4, 0, 3, 5, 5.5, 8, 12, 16, 30.5};
    List<FirstCaseFact> facts = new ArrayList<>();
    for (int i = 0; i < late.length; i++) {
      facts.add(on(MONDAY.plusDays(i % 2), "" + i).late(late[i]).fact());
    }
    facts.add(on(MONDAY, "11").cancelled().fact());
    facts.add(on(MONDAY, "12").untold().fact());
    return facts;
  }

  @Test
  void shouldCountStartsAndWhatIsNone() {
    Measures m = Measures.of(ten());
    assertThat(m.cases()).isEqualTo(12);
    assertThat(m.cancelled()).isEqualTo(1);
    assertThat(m.untold()).isEqualTo(1);
    assertThat(m.starts()).isEqualTo(10);
    assertThat(m.mornings()).isEqualTo(2);
  }

  @Test
  void shouldMeasureMinutesOverAllAndOverLateStarts() {
    Measures.Minutes minutes = Measures.of(ten()).figures().minutes();
    assertThat(minutes.total()).isEqualTo(80);
    assertThat(minutes.meanOverAll()).isEqualTo(8);
    assertThat(minutes.perMorning()).isEqualTo(40);
    assertThat(minutes.late()).isEqualTo(7);
    assertThat(minutes.median()).isEqualTo(5.25);
    assertThat(minutes.ninth()).as("16 + 0.1 x 14.5").isCloseTo(17.45, within(1e-9));
    Measures.Minutes twice = Measures.of(twice(ten())).figures().minutes();
    assertThat(twice.late()).isEqualTo(14);
    assertThat(twice.meanOverLate()).isCloseTo(80.0 / 7, within(1e-12));
    assertThat(twice.medianOverLate()).isEqualTo(8);
  }

  private static List<FirstCaseFact> twice(List<FirstCaseFact> facts) {
    List<FirstCaseFact> all = new ArrayList<>(facts);
    all.addAll(facts);
    return all;
  }

  @Test
  void shouldWithholdAMeanOfFewerThanTenLateStarts() {
    Figures figures = Measures.of(ten()).figures();
    assertThat(figures.minutes().late()).isEqualTo(7);
    assertThat(figures.minutes().meanOverLate()).isNull();
    assertThat(figures.minutes().medianOverLate()).isNull();
    assertThat(figures.minutes().intervals().meanOverLate()).isNull();
    assertThat(figures.minutes().intervals().meanOverAll()).isNotNull();
    List<Grace> graces = Measures.of(twice(ten())).figures().graces();
    assertThat(graces.get(0).meanOverLate()).isNotNull();
    assertThat(graces.get(1).onTime().n() - graces.get(1).onTime().x()).isEqualTo(8);
    assertThat(graces.get(1).meanOverLate()).as("of 8").isNull();
  }

  /** Twelve starts, of nine of which it is known whether they were on time. */
  @Test
  void shouldWithholdAShareThatIsKnownOfFewerThanTenStartsAndSayHowManyAreNotKnown() {
    List<FirstCaseFact> facts = new ArrayList<>();
    for (int i = 0; i < 9; i++) {
      facts.add(on(MONDAY.plusDays(i % 2), "" + i).late(i < 4 ? 0 : 20).fact());
    }
    for (int i = 9; i < 12; i++) {
      facts.add(on(MONDAY, "" + i).late(7).inferred(null).fact());
    }
    Figures figures = Measures.of(facts).figures();
    assertThat(figures.onTime()).isNull();
    assertThat(figures.unjudged()).isEqualTo(3);
    assertThat(figures.minutes().late()).as("the share would follow").isNull();
    assertThat(figures.minutes().lateInferred()).isNull();
    assertThat(figures.minutes().meanOverAll()).isCloseTo(121.0 / 12, within(1e-12));
    assertThat(figures.ahead()).isNull();
    assertThat(figures.graces()).extracting(Grace::unjudged).containsExactly(3, 3, 0, 0);
    assertThat(figures.graces().get(1).onTime()).isNull();
    assertThat(figures.graces().get(2).onTime().x()).isEqualTo(7);
    assertThat(Json.write(figures)).doesNotContain("\"x\":4");
  }

  /** A start within its minute is on time: 5.5 late is within 5 minutes of grace. */
  @Test
  void shouldShowFourGracesSideBySide() {
    List<Grace> graces = Measures.of(ten()).figures().graces();
    assertThat(graces).extracting(Grace::minutes).containsExactly(0, 5, 10, 15);
    assertThat(graces).extracting(g -> g.onTime().x()).containsExactly(3, 6, 7, 8);
    List<FirstCaseFact> more = new ArrayList<>(ten());
    for (int i = 0; i < 4; i++) {
      more.addAll(ten());
    }
    assertThat(Measures.of(more).figures().graces().get(3).meanOverLate()).isEqualTo(23.25);
  }

  @Test
  void shouldGiveWilsonsIntervalWithTheShare() {
    Share share = Measures.of(ten()).figures().onTime();
    assertThat(share.share()).isEqualTo(0.3);
    assertThat(share.interval().lower()).isCloseTo(.1078, within(5e-5));
    assertThat(share.interval().upper()).isCloseTo(.6032, within(5e-5));
    assertThat(share.byMornings().upper() - share.byMornings().lower())
        .isGreaterThanOrEqualTo(share.interval().upper() - share.interval().lower());
  }

  /** Ten told, and four of which only the step after the start was told. */
  @Test
  void shouldLeaveOutOfTheShareWhoseStartNobodyKnows() {
    List<FirstCaseFact> facts = new ArrayList<>();
    for (int i = 0; i < 10; i++) {
      facts.add(on(MONDAY, "" + i).late(i < 4 ? 0 : 20).fact());
    }
    facts.add(on(MONDAY, "in-time").late(-2).inferred(null).fact());
    facts.add(on(MONDAY, "unknown-1").late(12).inferred(-5).fact());
    facts.add(on(MONDAY, "unknown-2").late(7).inferred(null).fact());
    facts.add(on(MONDAY, "late-before").late(30).inferred(14).fact());
    Measures measures = Measures.of(facts);
    Figures figures = measures.figures();
    assertThat(measures.starts()).isEqualTo(14);
    assertThat(measures.inferred()).isEqualTo(4);
    assertThat(figures.onTime().x()).isEqualTo(5);
    assertThat(figures.onTime().n()).as("ten, the one in time and the one late").isEqualTo(12);
    assertThat(figures.unjudged()).isEqualTo(2);
    assertThat(figures.graces()).extracting(g -> g.onTime().x()).containsExactly(5, 5, 6, 7);
    assertThat(figures.graces()).extracting(Grace::unjudged).containsExactly(2, 2, 1, 1);
    assertThat(figures.minutes().late()).isEqualTo(7);
    assertThat(figures.minutes().inferred()).isEqualTo(4);
    assertThat(figures.minutes().lateInferred()).isEqualTo(1);
    assertThat(Comparison.Start.of(facts)).as("compared are those that are known").hasSize(12);
  }

  @Test
  void shouldWithholdFiguresOfFewerThanTenStarts() {
    assertThat(Measures.of(ten().subList(1, 12)).figures()).isNull();
    assertThat(Measures.of(List.of()).figures()).isNull();
    assertThat(Json.write(Measures.of(ten().subList(1, 12)))).doesNotContain("figures");
    Map<String, Measures> rooms = Measures.by(Split.ROOM, ten());
    assertThat(rooms.values()).allMatch(m -> m.figures() == null);
    assertThat(Measures.by(Split.SERVICE, ten()).get("general").figures()).isNotNull();
  }

  @Test
  void shouldHaveNoWayToBreakAnythingDownByPerson() {
    assertThat(Split.values())
        .extracting(Enum::name)
        .containsExactly("ROOM", "SERVICE", "TECHNIQUE", "WEEKDAY", "MONTH", "SUITE");
    assertThat(Measures.by(Split.WEEKDAY, ten())).containsOnlyKeys("1 Monday", "2 Tuesday");
  }

  @Test
  void shouldShowOnTheSamePageWhatMustNotSuffer() {
    List<FirstCaseFact> facts = new ArrayList<>();
    for (int i = 0; i < 12; i++) {
      Beside beside = new Beside(i == 0 ? null : (Long) (i * 60_000L), 50, 1, 0, 5, 2, 1);
      facts.add(on(MONDAY, "" + i).beside(beside).fact());
    }
    Measures.Balancing b = Measures.of(facts).figures().beside();
    assertThat(b.wheelsInToInduction()).isEqualTo(6);
    assertThat(b.wheelsInToInductionOf()).isEqualTo(11);
    assertThat(Measures.of(facts.subList(0, 10)).figures().beside().wheelsInToInduction())
        .as("of nine")
        .isNull();
    assertThat(b.leftOut()).isEqualTo(2);
    assertThat(b.together()).isEqualTo(10);
    assertThat(b.cancelled().share()).isZero();
  }

  @Test
  void shouldSayHowOftenTheCauseHadBeenShownTwentyMinutesAhead() {
    List<FirstCaseFact> facts = new ArrayList<>();
    for (int i = 0; i < 24; i++) {
      InventedFacts f =
          on(MONDAY.plusDays(i % 3), "" + i).late(10).piece("work", "drugs.drawn", 10, false);
      if (i < 8) {
        f.said(40, .3, .5, false, "work", "drugs.drawn");
      } else if (i < 12) {
        f.said(40, .3, .5, false, "arrival", "patient.arrived");
        f.said(10, .3, .5, false, "work", "drugs.drawn");
      } else if (i < 18) {
        f.said(10, .3, .5, false, "work", "drugs.drawn");
      }
      facts.add(f.fact());
    }
    Measures.Ahead ahead = Measures.of(facts).figures().ahead();
    assertThat(ahead.shown().x()).isEqualTo(8);
    assertThat(ahead.shown().n()).isEqualTo(12);
    assertThat(ahead.unknown()).isEqualTo(12);
    assertThat(Measures.of(facts.subList(3, 24)).figures().ahead()).as("of nine").isNull();
  }

  @Property
  void shouldOnlyGrowOnTimeWithGraceAndNeverLetEarlyStartsPayForLateOnes(
      @ForAll @Size(min = 10, max = 60) List<@IntRange(min = -30, max = 90) Integer> late) {
    List<FirstCaseFact> facts = new ArrayList<>();
    for (int i = 0; i < late.size(); i++) {
      facts.add(on(MONDAY.plusDays(i % 7), "" + i % 5).late(late.get(i)).fact());
    }
    Figures figures = Measures.of(facts).figures();
    assertThat(figures.graces()).extracting(g -> g.onTime().x()).isSorted();
    assertThat(figures.onTime()).isEqualTo(figures.graces().get(0).onTime());
    assertThat(figures.minutes().total())
        .isEqualTo(late.stream().mapToInt(i -> Math.max(0, i)).sum());
    assertThat(figures.minutes().late()).isEqualTo((int) late.stream().filter(i -> i > 0).count());
    assertThat(figures.minutes().median()).isLessThanOrEqualTo(figures.minutes().ninth());
    List<FirstCaseFact> shuffled = new ArrayList<>(facts);
    Collections.reverse(shuffled);
    assertThat(Measures.of(shuffled).figures().minutes().median())
        .isEqualTo(figures.minutes().median());
  }

  @Test
  void shouldCostNothingWithoutASourceForThePrice() {
    Cost.Price price = new Cost.Price(new BigDecimal("12.50"), "EUR", "finance 2026, staff only");
    assertThat(Cost.of(80, price).amount()).isEqualByComparingTo("1000.00");
    assertThat(Cost.of(80, null)).isNull();
    assertThatThrownBy(() -> new Cost.Price(BigDecimal.ONE, "EUR", " "))
        .hasMessageContaining("source");
    assertThatThrownBy(() -> new Cost.Price(BigDecimal.ZERO, "EUR", "x"))
        .hasMessageContaining("over 0");
    assertThatThrownBy(() -> new Cost.Price(BigDecimal.ONE, null, "x"))
        .hasMessageContaining("currency");
  }
}
