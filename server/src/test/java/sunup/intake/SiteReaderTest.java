package sunup.intake;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.LocalDate;
import java.util.List;
import org.junit.jupiter.api.Test;
import sunup.bedside.BedsideSettings;
import sunup.bedside.Release;
import sunup.board.HouseStyle;
import sunup.board.Step;
import sunup.codec.Problem;
import sunup.drugs.ApprovedDrug;
import sunup.drugs.ControlledDrug;
import sunup.push.PushTerms;
import sunup.units.Unit;

/** The site's file: what comes with Sunup, and what is said of mistakes. */
class SiteReaderTest {
  private static List<String> problemsOf(String wrong, String right) {
    String text = SiteFile.standardText();
    assertThat(text).contains(right);
    SiteReader.Result result = SiteReader.read("site.json", text.replace(right, wrong));
    assertThat(result.site()).isNull();
    return Lists.words(result.problems());
  }

  @Test
  void shouldReadTheSiteThatComesWithSunupAndFitTheStandardSheets() {
    SiteFile site = SiteFile.standard();
    assertThat(site.rooms()).hasSize(12);
    assertThat(site.settings().startEvent()).isEqualTo(Step.INDUCTION);
    assertThat(site.settings().demo()).isTrue();
    assertThat(Planner.check(site, Lists.SHEETS)).isEmpty();
  }

  @Test
  void shouldTellTheLineAndTheMendOfEachMistake() {
    assertThat(problemsOf("\"Europe/Lisboa\"", "\"Europe/Lisbon\""))
        .singleElement()
        .asString()
        .startsWith("site.json, line 6, zone: 'Europe/Lisboa' is no time zone");
    assertThat(problemsOf("\"6.30\"", "\"06:30\""))
        .anyMatch(
            p ->
                p.equals(
                    "site.json, line 11, setUpBegins: '6.30' is not a time, write it like 06:30"));
    assertThat(problemsOf("\"graceMinuts\"", "\"graceMinutes\""))
        .containsExactly(
            "site.json, line 8, graceMinuts: 'graceMinuts' is not known; did you mean"
                + " 'graceMinutes'?");
    assertThat(problemsOf("\"role\": \"scrubb\"", "\"role\": \"scrub\""))
        .containsExactly(
            "site.json, line 15, roster: role: 'scrubb' is not known; did you mean 'scrub'?");
    assertThat(problemsOf("{\"id\": \"2\"}, {\"id\": \"2\"}", "{\"id\": \"2\"}"))
        .containsExactly(
            "site.json, line 19, rooms: id: is there already, in line 19; give it another");
    assertThat(problemsOf("\"covers\": [\"1\", \"22\"]", "\"covers\": [\"1\", \"2\"]"))
        .singleElement()
        .asString()
        .contains("roaming: covers: room '22' is not known");
    assertThat(problemsOf("", "\"startEvent\": \"induction\","))
        .containsExactly(
            "site.json, line 1, startEvent: is missing; write wheels-in, induction or incision");
    assertThat(problemsOf("", "\"suite\": \"main\","))
        .containsExactly("site.json, line 1, suite: is missing; write a text");
  }

  @Test
  void shouldTellTheMendOfEachMistakeInTheListOfDrugs() {
    assertThat(problemsOf("\"10 mg\", \"syringe\"", "\"10 mg/mL\", \"syringe\""))
        .anyMatch(
            p ->
                p.endsWith(
                    "drugs: concentration: '10 mg' can't be read; write a number above 0 and its"
                        + " unit in full, like 10 mg/mL"));
    assertThat(problemsOf("\"02000000000016\"]", "\"02000000000015\"]"))
        .singleElement()
        .asString()
        .contains("drugs: products: '02000000000016' is no product number");
    assertThat(problemsOf("\"opiod\"", "\"opioid\""))
        .singleElement()
        .asString()
        .contains("drugs: class: 'opiod' is not known; did you mean 'opioid'?");
    assertThat(problemsOf("\"ampoule\": \"100\"", "\"ampoule\": \"100 micrograms\""))
        .singleElement()
        .asString()
        .contains("drugs: ampoule: '100' can't be read");
    assertThat(problemsOf("\"minutes\": 60", "\"limit\": \"propofol-syringe\""))
        .singleElement()
        .asString()
        .contains("drugs: source: is missing");
    String wrong = SiteFile.standardText().replace("[\"lines\"]", "[\"linse\"]");
    assertThat(Lists.words(Planner.check(SiteReader.read("site.json", wrong).site(), Lists.SHEETS)))
        .singleElement()
        .asString()
        .contains("drugs: lidocaine: cases: 'linse' is not known; did you mean 'lines'?");
  }

  @Test
  void shouldReadDrugsAsTheirLabelsHaveThem() {
    ApprovedDrug fentanyl =
        SiteFile.standard().settings().drugs().stream()
            .filter(drug -> drug.name().equals("fentanyl"))
            .findFirst()
            .orElseThrow();
    assertThat(fentanyl.drawn(0).text())
        .isEqualTo("fentaNYL 100 micrograms = 2 mL of 50 micrograms/mL");
    assertThat(fentanyl.controlled()).isEqualTo(ControlledDrug.ofMicrograms("fentanyl", "100"));
    assertThat(fentanyl.limit().minutes()).isEqualTo(240);
  }

  @Test
  void shouldTellWhereTheTextIsNoJson() {
    SiteReader.Result result = SiteReader.read("site.json", "{\n  \"suite\": \"main\",\n  oops\n}");
    assertThat(Lists.words(result.problems()))
        .singleElement()
        .asString()
        .startsWith("site.json, line 3: is not JSON");
    assertThat(Lists.words(SiteReader.read("site.json", "").problems()))
        .containsExactly("site.json, line 1: is empty");
    assertThat(Lists.words(SiteReader.read("site.json", "[]").problems()))
        .containsExactly("site.json, line 1: must be an object { }, not a list [ ]");
  }

  @Test
  void shouldTellOfOptionsAndWordsThatNoSheetKnows() {
    String text =
        SiteFile.standardText()
            .replace("\"options\": [\"alone\"]}\n", "\"options\": [\"alon\"]}\n")
            .replace("\"sab\": \"spinal\"", "\"sab\": \"spinl\"");
    SiteReader.Result result = SiteReader.read("site.json", text);
    assertThat(result.problems()).isEmpty();
    assertThat(Lists.words(Planner.check(result.site(), Lists.SHEETS)))
        .containsExactly(
            "site.json, rooms: 12: options: 'alon' is not known; did you mean 'alone'?",
            "site.json, words: sab: 'spinl' is not known; did you mean 'spinal'?");
  }

  @Test
  void shouldReadWhatTheSiteDecidesAboutBedsideFiguresAndTellMistakesByLine() {
    assertThat(SiteFile.standard().bedside()).isEqualTo(BedsideSettings.first());
    String text =
        SiteFile.standardText()
            .replace(
                "\"suite\": \"main\",",
                """
                "suite": "main",
                "bedside": {
                  "pressureUnits": ["bar"], "residualPsi": 150,
                  "releases": [{"figure": "mac", "fingerprint": "1", "by": "B", "on": "2026-01-12"}]
                },
                """);
    SiteFile site = SiteReader.read("site.json", text).site();
    assertThat(site.bedside().pressureUnits()).containsExactly(Unit.BAR);
    assertThat(site.bedside().residualPsi()).isEqualTo(150);
    assertThat(site.bedside().releases())
        .containsExactly(new Release("mac", "1", "B", LocalDate.of(2026, 1, 12)));
    String wrong =
        text.replace("\"mac\"", "\"macc\"")
            .replace("2026-01-12", "12 January")
            .replace("[\"bar\"]", "[\"bars\"]");
    assertThat(Lists.words(SiteReader.read("site.json", wrong).problems()))
        .anyMatch(p -> p.contains("line 5, bedside: pressureUnits: 'bars' is not known"))
        .anyMatch(p -> p.contains("line 6, bedside: releases: figure: 'macc' is not known"))
        .anyMatch(p -> p.contains("releases: on: '12 January' is no date"));
  }

  private static SiteReader.Result with(String fields) {
    return SiteReader.read(
        "site.json", SiteFile.standardText().replace("\"suite\":", fields + "\n\"suite\":"));
  }

  @Test
  void shouldReadHowASiteWrites() {
    assertThat(SiteFile.standard().settings().style()).isNull();
    SiteFile site = with("\"english\": \"american\", \"pressure\": \"kPa\", \"clock\": 12,").site();
    assertThat(site.settings().style())
        .isEqualTo(new HouseStyle(HouseStyle.English.AMERICAN, "kPa", 12));
    assertThat(site.bedside().pressureUnits()).containsExactly(Unit.KPA);
    assertThat(
            with("\"pressure\": \"bar\", \"bedside\": {\"pressureUnits\": [\"psi\", \"bar\"]},")
                .site()
                .bedside()
                .pressureUnits())
        .containsExactly(Unit.BAR, Unit.PSI);
  }

  @Test
  void shouldTellWhatIsWrongWithHowASiteWrites() {
    List<Problem> problems =
        with("\"english\": \"amercan\", \"pressure\": \"kpa\", \"clock\": 13,"
                + " \"bedside\": {},")
            .problems();
    assertThat(Lists.words(problems))
        .anyMatch(p -> p.contains("english: 'amercan' is not known; did you mean 'american'?"))
        .anyMatch(p -> p.contains("pressure: 'kpa' is not known; did you mean 'kPa'?"))
        .anyMatch(p -> p.contains("clock: must be 24 or 12, the hours of the clock, not 13"))
        .hasSize(3);
    assertThat(
            Lists.words(
                with("\"pressure\": \"bar\", \"bedside\": {\"pressureUnits\": [\"psi\"]},")
                    .problems()))
        .singleElement()
        .asString()
        .contains("bedside: pressureUnits: leaves out bar, in which the site reads pressures");
  }

  @Test
  void shouldPutReleasesIntoTheFileAndLeaveAllElseAsItIs() {
    List<Release> two =
        List.of(
            new Release("mac", "a1", "B. Doe \"night\"", LocalDate.of(2026, 1, 12)),
            new Release("tube", "b2", "B. Doe", LocalDate.of(2026, 1, 13)));
    String none = SiteFile.standardText();
    String added = ReleaseWriter.write(none, two);
    assertThat(added).startsWith(none.substring(0, none.lastIndexOf('}')).stripTrailing());
    String again = ReleaseWriter.write(added, two.subList(1, 2));
    String empty = none.replace("\"suite\": \"main\",", "\"suite\": \"main\", \"bedside\": {},");
    String some = empty.replace("\"bedside\": {}", "\"bedside\": {\"residualPsi\": 150}");
    for (String text :
        List.of(added, ReleaseWriter.write(empty, two), ReleaseWriter.write(some, two))) {
      assertThat(SiteReader.read("site.json", text).site().bedside().releases()).isEqualTo(two);
    }
    assertThat(SiteReader.read("site.json", again).site().bedside().releases())
        .isEqualTo(two.subList(1, 2));
    assertThat(ReleaseWriter.write(again, two)).isEqualTo(added);
  }

  @Test
  void shouldTellPhonesOnlyIfTheFileSaysWhoAnswersForIt() {
    assertThat(SiteFile.standard().push()).isNull();
    String site = SiteFile.standardText();
    String right =
        site.replaceFirst(
            "\\{",
            "{\"push\": {\"contact\": \"mailto:a@b.example\", \"hosts\": [\"Push.example\"]},");
    assertThat(SiteReader.read("site.json", right).site().push())
        .isEqualTo(new PushTerms("mailto:a@b.example", List.of("push.example")));

    String wrong =
        site.replaceFirst("\\{", "{\"push\": {\"contact\": \"us\", \"hosts\": [\"https://a\"]},");
    assertThat(SiteReader.read("site.json", wrong).problems())
        .extracting(Object::toString)
        .containsExactly(
            "site.json, line 1, push: contact: must be an address for questions:"
                + " mailto:somebody@hospital.example or https:",
            "site.json, line 1, push: hosts: 'https://a' is no host name; write only that");
  }
}
