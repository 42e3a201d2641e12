package sunup.bedside;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.LocalDate;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import sunup.board.CaseId;
import sunup.units.Unit;

/** A site that has released every figure, and a case in its room. */
final class Desk {
  static final LocalDate TODAY = LocalDate.of(2026, 11, 25);
  static final CaseId CASE = new CaseId("case-1");

  private Desk() {}

  /** The settings with every figure released as it stands. */
  static BedsideSettings releasing(BedsideSettings site) {
    List<Release> releases =
        new BedsideFigures(site)
            .list(TODAY).stream()
                .map(f -> new Release(f.card().name(), f.fingerprint(), "A. Pharmacist", TODAY))
                .toList();
    return site.released(releases);
  }

  static BedsideFigures figures() {
    return new BedsideFigures(releasing(BedsideSettings.first()));
  }

  static Entry of(String text, Unit unit) {
    return Entry.number(text, unit);
  }

  static Entry of(String word) {
    return Entry.choice(word);
  }

  /** Names and entries in turn. */
  static Map<String, Entry> entries(Object... namesAndEntries) {
    Map<String, Entry> map = new LinkedHashMap<>();
    for (int i = 0; i < namesAndEntries.length; i += 2) {
      map.put((String) namesAndEntries[i], (Entry) namesAndEntries[i + 1]);
    }
    return map;
  }

  /** Asks with facts of the patient and others in one map. */
  static Answer ask(String figure, Map<String, Entry> entries) {
    return ask(figures(), figure, entries);
  }

  static Answer ask(BedsideFigures figures, String figure, Map<String, Entry> entries) {
    CaseInputs patient = CaseInputs.of(CASE);
    Map<String, Entry> own = new LinkedHashMap<>();
    for (Map.Entry<String, Entry> each : entries.entrySet()) {
      if (List.of("age", "weight", "height", "sex").contains(each.getKey())) {
        patient = patient.with(each.getKey(), each.getValue());
      } else {
        own.put(each.getKey(), each.getValue());
      }
    }
    return figures.work(figure, CASE, patient, own, TODAY).answer();
  }

  static Answer.Worked worked(String figure, Object... namesAndEntries) {
    Answer answer = ask(figure, entries(namesAndEntries));
    assertThat(answer).isInstanceOf(Answer.Worked.class);
    return (Answer.Worked) answer;
  }

  /** The text of the line with this label. */
  static String line(Answer.Worked worked, String label) {
    return worked.lines().stream()
        .filter(l -> l.label().equals(label))
        .map(Line::text)
        .findFirst()
        .orElseThrow(() -> new AssertionError(label + " is not in " + worked.lines()));
  }

  /** The only reason for which it was refused. */
  static Answer.Reason refused(String figure, Object... namesAndEntries) {
    Answer answer = ask(figure, entries(namesAndEntries));
    assertThat(answer).isInstanceOf(Answer.Refused.class);
    assertThat(((Answer.Refused) answer).reasons()).hasSize(1);
    return ((Answer.Refused) answer).reasons().get(0);
  }
}
