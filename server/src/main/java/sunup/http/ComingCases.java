package sunup.http;

import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneId;
import java.time.format.DateTimeFormatter;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import sunup.board.CasePlan;
import sunup.board.Morning;
import sunup.board.Morning.CaseDay;
import sunup.board.MorningId;
import sunup.codec.Maybe;
import sunup.codec.Problem;
import sunup.intake.ListedCase;
import sunup.intake.Planner;
import sunup.intake.SiteFile;
import sunup.sheets.ComposedSheet;
import sunup.sheets.SheetChanges;
import sunup.sheets.SheetDraft;
import sunup.sheets.SheetFiles;
import sunup.sheets.SheetItem;
import sunup.suites.Suites;

/** The next booked cases of a suite, and what a draft of the sheets would change for them. */
final class ComingCases {
  /** Cases that are told. */
  static final int CASES_MAX = 10;

  private static final String AWAY = "The journal does not answer. Ask again.";
  private static final DateTimeFormatter CLOCK = DateTimeFormatter.ofPattern("HH:mm");

  private final Suites suites;

  ComingCases(Suites suites) {
    this.suites = suites;
  }

  /**
   * One case and what the draft changes on its list.
   *
   * @param start as the site's clocks show it
   * @param open true if its morning is open and keeps its edition
   * @param keeps the edition that its list is of now
   * @param added what comes, in the desk's words
   * @param gone what goes
   * @param changed what is other, in words
   * @param moved how many stand elsewhere
   * @param minutes usual hands-on minutes that come, or go below 0; absent if they can't be told
   * @param problems why its list could not be made, or what the site does not have for it
   */
  record Coming(
      String date,
      String room,
      String start,
      String technique,
      List<String> options,
      boolean open,
      int keeps,
      List<String> added,
      List<String> gone,
      List<String> changed,
      int moved,
      @Maybe Double minutes,
      List<Problem> problems) {}

  private record Booked(MorningId morning, Morning state, CaseDay one) {}

  /** The cases, the next one first. */
  List<Coming> of(Hosted.Suite suite, SheetDraft draft) throws Answers.Wrong {
    List<Coming> all = new ArrayList<>();
    for (Booked each : booked(suite, CASES_MAX)) {
      all.add(coming(suite.site(), each, draft));
    }
    return all;
  }

  /**
   * Cases of mornings that are not open yet and name a sheet that goes: it can't go before them.
   */
  List<Problem> needing(Hosted.Suite suite, List<String> gone) throws Answers.Wrong {
    List<Problem> all = new ArrayList<>();
    if (gone.isEmpty()) {
      return all;
    }
    List<Booked> drafts =
        booked(suite, Integer.MAX_VALUE).stream()
            .filter(each -> each.state().phase() != Morning.Phase.OPEN)
            .toList();
    ZoneId zone = suite.site().settings().zoneId();
    for (String sheet : gone) {
      List<String> cases =
          drafts.stream()
              .filter(each -> names(each.one().plan(), sheet))
              .map(each -> said(each, zone))
              .toList();
      if (!cases.isEmpty()) {
        all.add(new Problem(SheetFiles.file(sheet), 0, "", needed(cases)));
      }
    }
    return all;
  }

  private static boolean names(CasePlan plan, String sheet) {
    return sheet.equals(plan.technique()) || plan.options().contains(sheet);
  }

  private static String said(Booked each, ZoneId zone) {
    CasePlan plan = each.one().plan();
    return each.morning().date() + " room " + plan.room().value() + ", " + start(plan, zone);
  }

  private static String start(CasePlan plan, ZoneId zone) {
    return CLOCK.format(Instant.ofEpochMilli(plan.bookedAt()).atZone(zone));
  }

  private static String needed(List<String> cases) {
    int more = cases.size() - CASES_MAX;
    return "can't go: "
        + String.join("; ", cases.subList(0, Math.min(CASES_MAX, cases.size())))
        + (more > 0 ? "; and " + more + " more" : "")
        + (cases.size() == 1 ? " is" : " are")
        + " booked with it; take their list again without it first, or leave the sheet";
  }

  private List<Booked> booked(Hosted.Suite suite, int most) throws Answers.Wrong {
    LocalDate today = suite.mornings().today().date();
    List<MorningId> mornings =
        OwnerCalls.mornings(suites, AWAY).stream()
            .filter(m -> m.suite().equals(suite.site().suite()) && suite.mornings().takes(m))
            .filter(m -> !m.date().isBefore(today))
            .sorted(Comparator.comparing(MorningId::date))
            .toList();
    List<Booked> all = new ArrayList<>();
    for (MorningId morning : mornings) {
      if (all.size() >= most) {
        break;
      }
      Morning state = OwnerCalls.look(suites, morning, AWAY).orElse(Morning.NONE);
      if (state.phase() != Morning.Phase.CLOSED) {
        state.cases().values().stream()
            .filter(one -> !one.cancelled() && one.steps().isEmpty())
            .sorted(Comparator.comparingLong((CaseDay one) -> one.plan().bookedAt()))
            .limit(most - all.size())
            .forEach(one -> all.add(new Booked(morning, state, one)));
      }
    }
    return all;
  }

  private static Coming coming(SiteFile site, Booked booked, SheetDraft draft) {
    CasePlan plan = booked.one().plan();
    ZoneId zone = site.settings().zoneId();
    ComposedSheet keeps = booked.state().sheetOf(booked.one());
    SheetChanges changes = null;
    List<Problem> problems = List.of();
    ComposedSheet before = UsableSheets.list(draft.on().sheets(), plan.technique(), plan.options());
    ComposedSheet after = UsableSheets.list(draft.sheets(), plan.technique(), plan.options());
    if (draft.sheets() != null && draft.on().sheets() != null) {
      SheetChanges.Coming asked =
          new SheetChanges.Coming(plan.id().value(), plan.technique(), plan.options());
      SheetChanges.ForCase its =
          SheetChanges.forCases(draft.on().sheets(), draft.sheets(), List.of(asked)).get(0);
      changes = its.changes();
      problems = new ArrayList<>(its.problems());
      problems.addAll(lacks(site, booked, before, after));
    }
    boolean told = changes != null;
    return new Coming(
        booked.morning().date().toString(),
        plan.room().value(),
        start(plan, zone),
        plan.technique(),
        plan.options(),
        booked.state().phase() == Morning.Phase.OPEN,
        keeps == null ? 0 : keeps.edition(),
        told ? desk(changes.added(), after) : List.of(),
        told ? desk(changes.taken(), before) : List.of(),
        told ? changes.changed().stream().map(c -> words(c, after)).toList() : List.of(),
        told ? changes.moved().size() : 0,
        told ? changes.allMinutes() : null,
        problems);
  }

  /** What the site does not have for the new list and had no need of for the old one. */
  private static List<Problem> lacks(
      SiteFile site, Booked booked, ComposedSheet before, ComposedSheet after) {
    if (after == null) {
      return List.of();
    }
    List<Problem> lacks = new ArrayList<>(lacks(site, booked, after));
    if (before != null) {
      lacks.removeAll(lacks(site, booked, before));
    }
    return lacks;
  }

  private static List<Problem> lacks(SiteFile site, Booked booked, ComposedSheet list) {
    CasePlan plan = booked.one().plan();
    if (site.rooms().stream().noneMatch(room -> room.id().equals(plan.room()))) {
      return List.of();
    }
    ListedCase listed =
        new ListedCase(
            0,
            plan.id(),
            plan.room(),
            plan.bookedAt(),
            plan.technique(),
            plan.options(),
            null,
            plan.service(),
            plan.surgeon(),
            list);
    return Planner.plan(site, List.of(listed), booked.morning().date()).problems();
  }

  private static List<String> desk(List<String> keys, ComposedSheet list) {
    Map<String, SheetItem> items = list.byKey();
    return keys.stream().map(key -> items.get(key).desk()).toList();
  }

  private static String words(SheetChanges.Change c, ComposedSheet list) {
    String what = list.byKey().get(c.key()).desk() + ": " + c.field();
    if (c.before() == null) {
      return what + " " + c.after();
    }
    return what + " " + c.before() + ", now " + (c.after() == null ? "none" : c.after());
  }
}
