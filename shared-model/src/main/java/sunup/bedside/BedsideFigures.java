package sunup.bedside;

import com.fasterxml.jackson.annotation.JsonInclude;
import java.nio.charset.StandardCharsets;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.HexFormat;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import sunup.board.CaseId;
import sunup.codec.Maybe;

/**
 * Every bedside figure with its page, for a site's settings. A figure is off until the site's
 * pharmacy has released it as it stands. No induction doses. Immutable, thread-safe.
 */
public final class BedsideFigures {
  private static final int FINGERPRINT_LETTERS = 12;

  private final BedsideSettings site;
  private final Map<String, Figure> figures = new LinkedHashMap<>();

  /**
   * A figure in the list of a page.
   *
   * @param fingerprint of the figure as it stands: edition, texts and the site's settings; a
   *     release names it
   * @param settings the site's own numbers that the result depends on, in words; empty if none
   * @param released who released it and when, or null if it is off
   * @param off why it is off, or null if it is released
   */
  @JsonInclude(JsonInclude.Include.NON_NULL)
  public record Listed(
      Card card, String fingerprint, String settings, @Maybe Release released, @Maybe String off) {}

  public BedsideFigures(BedsideSettings site) {
    this.site = site;
    List<List<Figure>> all =
        List.of(
            Cylinders.figures(site),
            AirwayFigures.figures(),
            BodySize.figures(),
            LocalAnaesthetics.figures(site),
            Rescue.figures(),
            ConcentrationFigures.figures(),
            Maintenance.figures(),
            Mac.figures(),
            BasicMonitors.figures());
    for (List<Figure> some : all) {
      for (Figure figure : some) {
        if (figures.putIfAbsent(figure.card().name(), figure) != null) {
          throw new IllegalStateException("two figures are named " + figure.card().name());
        }
      }
    }
  }

  /**
   * All figures in the order of the page, those that are off with the reason.
   *
   * @param today the site's day
   */
  public List<Listed> list(LocalDate today) {
    return figures.values().stream()
        .map(
            figure -> {
              Release release = release(figure, today);
              return new Listed(
                  figure.card(),
                  fingerprint(figure),
                  figure.settings(),
                  release,
                  release == null ? off(figure, today) : null);
            })
        .toList();
  }

  /**
   * Works out a figure for the case that is in the room.
   *
   * @param name of the figure
   * @param inRoom the case that the screen shows now
   * @param patient facts of the patient, with the case that they belong to
   * @param own what the figure asks for beside them, by input name
   * @param today the site's day
   */
  public CaseAnswer work(
      String name, CaseId inRoom, CaseInputs patient, Map<String, Entry> own, LocalDate today) {
    return new CaseAnswer(
        name, inRoom, patient.revision(), answer(name, inRoom, patient, own, today));
  }

  private Answer answer(
      String name, CaseId inRoom, CaseInputs patient, Map<String, Entry> own, LocalDate today) {
    Figure figure = figures.get(name);
    if (figure == null) {
      return Answer.Refused.of("", "there is no figure '" + name + "'");
    }
    if (release(figure, today) == null) {
      return new Answer.Off(off(figure, today));
    }
    if (!patient.caseId().equals(inRoom)) {
      return Answer.Refused.of(
          "", "weight, age and height are those of another case; enter them for this one");
    }
    Map<String, Entry> entries = new LinkedHashMap<>();
    List<Answer.Reason> wrong = new ArrayList<>();
    for (Input input : figure.card().inputs()) {
      if (input.ofPatient() && patient.entries().containsKey(input.name())) {
        entries.put(input.name(), patient.entries().get(input.name()));
      }
    }
    own.forEach(
        (input, entry) -> {
          if (figure.card().inputs().stream()
              .anyMatch(i -> i.ofPatient() && i.name().equals(input))) {
            wrong.add(new Answer.Reason(input, "comes with the case; change it there"));
          } else {
            entries.put(input, entry);
          }
        });
    return worked(figure, Given.read(figure.card(), entries), wrong);
  }

  private static Answer worked(Figure figure, Given given, List<Answer.Reason> wrong) {
    wrong.addAll(given.wrong());
    if (!wrong.isEmpty()) {
      return new Answer.Refused(wrong);
    }
    if (!given.again().isEmpty()) {
      return new Answer.AskedAgain(given.again());
    }
    try {
      Figure.Result result = figure.sum().of(given);
      boolean child = given.has(Input.AGE.name()) && given.age().isChild();
      return new Answer.Worked(
          result.lines(),
          given.readBack(),
          result.worked(),
          result.cautions(),
          child && figure.card().dose());
    } catch (Outside outside) {
      return Answer.Refused.of(outside.input(), outside.getMessage());
    }
  }

  /** The release that holds now, or null. */
  private Release release(Figure figure, LocalDate today) {
    String fingerprint = fingerprint(figure);
    return site.releases().stream()
        .filter(r -> r.figure().equals(figure.card().name()))
        .filter(r -> r.fingerprint().equals(fingerprint) && !r.on().isAfter(today))
        .findFirst()
        .orElse(null);
  }

  private String off(Figure figure, LocalDate today) {
    List<Release> named =
        site.releases().stream().filter(r -> r.figure().equals(figure.card().name())).toList();
    if (named.isEmpty()) {
      return "off until the site's pharmacy releases it with name and date";
    }
    String fingerprint = fingerprint(figure);
    return named.stream()
            .anyMatch(r -> r.fingerprint().equals(fingerprint) && r.on().isAfter(today))
        ? "off: the release is dated after today"
        : "off: it has changed since it was released; the pharmacy looks at it again";
  }

  private static String fingerprint(Figure figure) {
    try {
      byte[] bytes = (figure.card() + "\n" + figure.settings()).getBytes(StandardCharsets.UTF_8);
      byte[] hash = MessageDigest.getInstance("SHA-256").digest(bytes);
      return HexFormat.of().formatHex(hash).substring(0, FINGERPRINT_LETTERS);
    } catch (NoSuchAlgorithmException e) {
      throw new IllegalStateException(e);
    }
  }
}
