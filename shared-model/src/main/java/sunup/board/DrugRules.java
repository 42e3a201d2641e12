package sunup.board;

import java.time.Instant;
import java.time.LocalDateTime;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Set;
import java.util.TreeSet;
import sunup.board.CaseDrugs.Syringe;
import sunup.board.Morning.CaseDay;
import sunup.board.Outcome.Refused;
import sunup.drugs.ApprovedDrug;
import sunup.drugs.ControlledCount;
import sunup.drugs.ControlledDrug;
import sunup.drugs.ControlledEntry;
import sunup.drugs.DrawnDrug;
import sunup.drugs.Gs1;
import sunup.drugs.Lettering;
import sunup.drugs.PackageCheck;
import sunup.sheets.EvidenceRule;
import sunup.sheets.SheetItem;

/** Drugs drawn up by the site's approved list, thrown away, and the count of controlled ones. */
final class DrugRules {
  /** The sheet's item that is good once all of the list is drawn that is not controlled. */
  static final String DRAWN = "drugs.drawn";

  /** The sheet's item that is good once all controlled ones of the list are fetched. */
  static final String CONTROLLED = "drugs.controlled";

  /** Longest code of a package, letters. */
  static final int SCAN_MAX = 500;

  private DrugRules() {}

  static Outcome draw(Ask ask, Command.DrawDrugs c) {
    PersonId by = ask.doer(c.by());
    Refused refused =
        Ask.first(
            meets(ask, c.caseId(), by, c.witness()),
            Rights.checkSecond(ask, CommandKind.DRAW_DRUGS, by, c.witness()),
            noList(ask));
    if (refused != null) {
      return refused;
    }
    if (c.scan() != null && c.scan().length() > SCAN_MAX) {
      return Ask.refuse(RefusalCode.BAD_COMMAND, "'scan' is longer than " + SCAN_MAX + " letters");
    }
    List<ApprovedDrug> list = listOf(ask, c.caseId());
    boolean vouched = c.reason() != null && by != null && c.witness() != null;
    Set<String> names = new TreeSet<>(c.drugs());
    String scanned = null;
    if (c.scan() != null) {
      PackageCheck.Answer answer = check(ask, c.scan(), list);
      if (answer instanceof PackageCheck.Refused no) {
        return Ask.refuse(RefusalCode.PACKAGE_REFUSED, no.why());
      } else if (answer instanceof PackageCheck.Expected expected) {
        String drug = expected.product().drug();
        if (!names.isEmpty() && !names.equals(Set.of(drug))) {
          String not = "the package is " + Lettering.shown(drug);
          return Ask.refuse(RefusalCode.PACKAGE_STOP, not + ", another drug than was named");
        }
        names.add(drug);
        scanned = expected.contents().toString();
      } else if (answer instanceof PackageCheck.Stop stop) {
        if (!vouched || names.size() != 1) {
          return Ask.refuse(RefusalCode.PACKAGE_STOP, stop.why());
        }
        scanned = stop.contents().toString();
      }
    }
    if (names.isEmpty()) {
      return Ask.refuse(RefusalCode.BAD_COMMAND, "it names no drug");
    }
    return draw(ask, c, by, names, scanned, vouched);
  }

  private static Outcome draw(
      Ask ask,
      Command.DrawDrugs c,
      PersonId by,
      Set<String> names,
      String scanned,
      boolean vouched) {
    CaseDay day = ask.morning.cases().get(c.caseId());
    CaseDrugs had = ask.morning.drugsOf(c.caseId());
    if (had.syringes().size() + names.size() > CaseDrugs.SYRINGES_MAX) {
      return Ask.refuse(
          RefusalCode.OUT_OF_RANGE,
          "A case keeps at most " + CaseDrugs.SYRINGES_MAX + " syringes.");
    }
    List<DrawnDrug> drawn = new ArrayList<>();
    for (ApprovedDrug drug : ask.morning.settings().drugs()) {
      if (names.remove(drug.name())) {
        if (!vouched && !drug.isFor(day.plan().technique(), day.plan().options())) {
          return Ask.refuse(
              RefusalCode.PACKAGE_STOP,
              Lettering.shown(drug.name()) + " is not on this case's list");
        }
        drawn.add(drug.drawn(ask.at));
      }
    }
    if (!names.isEmpty()) {
      return Ask.refuse(
          RefusalCode.UNKNOWN, "drug '" + names.iterator().next() + "' on its approved list");
    }
    List<Event> events = new ArrayList<>();
    events.add(
        new Event.DrugsDrawn(c.caseId(), List.copyOf(drawn), scanned, c.reason(), by, c.witness()));
    Set<String> there = new HashSet<>();
    drawn.forEach(one -> there.add(one.name()));
    boolean all =
        listOf(ask, c.caseId()).stream()
            .filter(drug -> drug.controlled() == null)
            .allMatch(drug -> there.contains(drug.name()) || had.has(drug.name(), ask.at));
    if (all) {
      good(ask, events, ItemRef.of(c.caseId(), DRAWN), by, null);
    }
    return ask.accept(events);
  }

  /** The item is good by what was done, if the sheet asks for it and it is not good yet. */
  private static void good(
      Ask ask, List<Event> events, ItemRef item, PersonId by, PersonId witness) {
    SheetItem sheet = ask.morning.sheetItem(item);
    if (sheet == null
        || sheet.evidence().kind() != EvidenceRule.Kind.TOUCH
        || (sheet.evidence().witness() && (by == null || witness == null))
        || Rights.checkItem(ask, item, CommandKind.GOOD) != null
        || ItemRules.kept(ask, item) != null) {
      return;
    }
    ItemState state = ask.morning.stateOf(item, ask.at);
    if (state == ItemState.OPEN || state == ItemState.IN_HAND || state == ItemState.LAPSED) {
      List<String> flags = ItemRules.flags(ask, item, ask.morning.roomOf(item));
      events.add(new Event.ItemGood(item, new Evidence.Touch(), by, witness, flags));
    }
  }

  private static PackageCheck.Answer check(Ask ask, String scan, List<ApprovedDrug> list) {
    LocalDateTime now =
        LocalDateTime.ofInstant(Instant.ofEpochMilli(ask.now), ask.morning.settings().zoneId());
    List<PackageCheck.Product> products = new ArrayList<>();
    for (ApprovedDrug drug : ask.morning.settings().drugs()) {
      for (String gtin : drug.products()) {
        products.add(new PackageCheck.Product(gtin, drug.name(), drug.drugClass()));
      }
    }
    Set<String> wanted = new HashSet<>();
    list.forEach(drug -> wanted.add(drug.name()));
    return PackageCheck.check(
        Gs1.read(scan, now.toLocalDate()),
        products,
        wanted,
        Set.copyOf(ask.morning.settings().calledBack()),
        now);
  }

  static Outcome discard(Ask ask, Command.DiscardDrug c) {
    PersonId by = ask.doer(c.by());
    Refused refused = Ask.first(ask.unknown(c.caseId()), ask.unknown(by));
    if (refused != null) {
      return refused;
    }
    List<Syringe> syringes = ask.morning.drugsOf(c.caseId()).syringes();
    if (c.syringe() < 0 || c.syringe() >= syringes.size()) {
      return Ask.refuse(RefusalCode.UNKNOWN, "syringe " + c.syringe() + " of this case");
    }
    Syringe syringe = syringes.get(c.syringe());
    // Where it lies, or where its case is now.
    Refused elsewhere = Rights.checkRoom(ask, syringe.room());
    if (elsewhere != null) {
      elsewhere = Rights.checkRoom(ask, ask.morning.cases().get(c.caseId()).plan().room());
    }
    if (elsewhere != null) {
      return elsewhere;
    }
    return syringe.discardedAt() != null
        ? ask.accept()
        : ask.accept(new Event.DrugDiscarded(c.caseId(), c.syringe(), by));
  }

  static Outcome count(Ask ask, Command.CountDrug c) {
    PersonId by = ask.doer(c.by());
    Refused refused =
        Ask.first(
            counts(ask, c.caseId(), by, c.witness()),
            Rights.checkSecond(ask, CommandKind.COUNT_DRUG, by, c.witness()),
            noList(ask));
    if (refused != null) {
      return refused;
    }
    ControlledDrug drug = null;
    if (c.kind() != CountKind.STRUCK) {
      drug = controlled(ask, c.drug());
      if (drug == null) {
        return Ask.refuse(RefusalCode.UNKNOWN, "controlled drug '" + c.drug() + "' on its list");
      }
    }
    ControlledEntry entry = entry(ask, c, drug, by);
    ControlledCount.Outcome outcome = ask.morning.drugsOf(c.caseId()).count().take(entry);
    if (outcome instanceof ControlledCount.Refused no) {
      return Ask.refuse(RefusalCode.OUT_OF_RANGE, "Not counted: " + no.why() + ".");
    }
    ControlledCount next = ((ControlledCount.Taken) outcome).count();
    List<Event> events = new ArrayList<>();
    events.add(new Event.DrugCounted(c.caseId(), entry));
    if (c.kind() == CountKind.DRAWN && allFetched(ask, c.caseId(), next)) {
      good(ask, events, ItemRef.of(c.caseId(), CONTROLLED), by, c.witness());
    }
    return ask.accept(events);
  }

  private static ControlledEntry entry(
      Ask ask, Command.CountDrug c, ControlledDrug drug, PersonId by) {
    int units = c.units() == null ? 0 : c.units();
    int strikes = c.entry() == null ? -1 : c.entry();
    return switch (c.kind()) {
      case DRAWN -> new ControlledEntry.Drawn(drug, units, ask.at, by, c.witness());
      case GIVEN -> new ControlledEntry.Given(drug, c.micrograms(), ask.at, by);
      case WASTED -> new ControlledEntry.Wasted(drug, c.micrograms(), ask.at, by, c.witness());
      case RETURNED -> new ControlledEntry.Returned(drug, units, ask.at, by, c.witness());
      case STRUCK -> new ControlledEntry.Struck(strikes, c.why(), ask.at, by, c.witness());
    };
  }

  private static boolean allFetched(Ask ask, CaseId caseId, ControlledCount count) {
    Set<ControlledDrug> there = new HashSet<>();
    count.sums().stream()
        .filter(sum -> sum.drawnUnits() > sum.returnedUnits())
        .forEach(sum -> there.add(sum.drug()));
    return listOf(ask, caseId).stream()
        .filter(drug -> drug.controlled() != null)
        .allMatch(drug -> there.contains(drug.controlled()));
  }

  private static ControlledDrug controlled(Ask ask, String name) {
    for (ApprovedDrug drug : ask.morning.settings().drugs()) {
      if (drug.controlled() != null && drug.name().equals(name)) {
        return drug.controlled();
      }
    }
    return null;
  }

  /** The drugs of a case's list. */
  private static List<ApprovedDrug> listOf(Ask ask, CaseId caseId) {
    return ask.morning.settings().drugsFor(ask.morning.cases().get(caseId).plan());
  }

  private static Refused meets(Ask ask, CaseId caseId, PersonId by, PersonId witness) {
    Refused refused = counts(ask, caseId, by, witness);
    if (refused != null) {
      return refused;
    }
    return ask.morning.cases().get(caseId).cancelled()
        ? Ask.refuse(RefusalCode.CASE_CANCELLED, "Nothing is drawn for it any more.")
        : null;
  }

  /** What is left of a cancelled case is counted all the same. */
  private static Refused counts(Ask ask, CaseId caseId, PersonId by, PersonId witness) {
    Refused unknown = Ask.first(ask.unknown(caseId), ask.unknown(by), ask.unknown(witness));
    if (unknown != null) {
      return unknown;
    }
    RoomId room = ask.morning.cases().get(caseId).plan().room();
    Refused not = Ask.first(Rights.checkRoom(ask, room), Rights.checkSupervised(ask, room));
    if (not != null) {
      return not;
    }
    return witness != null && witness.equals(by)
        ? Ask.refuse(RefusalCode.SAME_PERSON, "two sign for this")
        : null;
  }

  private static Refused noList(Ask ask) {
    return ask.morning.settings().drugs().isEmpty()
        ? Ask.refuse(RefusalCode.UNKNOWN, "approved list of drugs")
        : null;
  }
}
