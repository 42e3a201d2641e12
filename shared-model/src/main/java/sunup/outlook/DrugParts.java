package sunup.outlook;

import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Set;
import sunup.board.CaseDrugs;
import sunup.board.CaseDrugs.Syringe;
import sunup.board.CountKind;
import sunup.board.Morning;
import sunup.board.Morning.CaseDay;
import sunup.drugs.ApprovedDrug;
import sunup.drugs.ControlledCount;
import sunup.drugs.ControlledDrug;
import sunup.drugs.ControlledEntry;
import sunup.drugs.DrawnDrug;
import sunup.drugs.LabelStandard;
import sunup.drugs.Lettering;
import sunup.wire.CountEntryShown;
import sunup.wire.CountShown;
import sunup.wire.DrugShown;
import sunup.wire.Part;
import sunup.wire.Part.DrugListPart;
import sunup.wire.Part.DrugsPart;
import sunup.wire.SyringeShown;

/** Drugs for the stations: the approved list once, and for each case what was drawn. */
final class DrugParts {
  private final Morning morning;

  DrugParts(Snapshot snapshot) {
    morning = snapshot.morning();
  }

  void addTo(List<Part> parts) {
    List<ApprovedDrug> approved = morning.settings().drugs();
    if (approved.isEmpty()) {
      return;
    }
    parts.add(
        new DrugListPart(
            "drug-list", LabelStandard.EDITION, approved.stream().map(DrugParts::shown).toList()));
    for (CaseDay day : morning.cases().values()) {
      parts.add(ofCase(day, morning.drugsOf(day.plan().id())));
    }
  }

  private static DrugShown shown(ApprovedDrug drug) {
    DrawnDrug drawn = drug.drawn(0);
    ControlledDrug controlled = drug.controlled();
    return new DrugShown(
        drug.name(),
        Lettering.shown(drug.name()),
        Lettering.alike(drug.name()),
        drug.drugClass(),
        drug.drugClass().colour().rgb(),
        drug.drugClass().striped(),
        drug.drugClass().reversed(),
        drug.drugClass().lineBelowName(),
        drawn.amount().toString(),
        drug.volume().toString(),
        drug.concentration().toString(),
        drug.limit().minutes(),
        drug.limit().source(),
        controlled == null ? null : controlled.unitMicrograms().doubleValue());
  }

  private DrugsPart ofCase(CaseDay day, CaseDrugs drugs) {
    List<SyringeShown> syringes = new ArrayList<>();
    for (Syringe one : drugs.syringes()) {
      syringes.add(
          new SyringeShown(
              syringes.size(),
              one.drawn().name(),
              one.drawn().text(),
              one.room().value(),
              one.drawn().drawnAtMs(),
              one.drawn().lapsesAtMs(),
              one.voided(),
              one.discardedAt(),
              one.scanned()));
    }
    return new DrugsPart(
        "drugs/" + day.plan().id(),
        day.plan().id().value(),
        day.plan().room().value(),
        morning.settings().drugsFor(day.plan()).stream().map(ApprovedDrug::name).toList(),
        syringes,
        drugs.count().sums().stream().map(DrugParts::sum).toList(),
        entries(drugs),
        drugs.count().open());
  }

  private static CountShown sum(ControlledCount.Sum sum) {
    return new CountShown(
        sum.drug().name(),
        sum.drawnUnits(),
        sum.returnedUnits(),
        ControlledDrug.text(sum.given()),
        ControlledDrug.text(sum.wasted()),
        ControlledDrug.text(sum.open()),
        sum.comesOut());
  }

  private static List<CountEntryShown> entries(CaseDrugs drugs) {
    ControlledCount count = drugs.count();
    Set<Integer> struck = new HashSet<>();
    for (ControlledEntry entry : count.entries()) {
      if (entry instanceof ControlledEntry.Struck one) {
        struck.add(one.entry());
      }
    }
    List<CountEntryShown> shown = new ArrayList<>();
    for (ControlledEntry entry : count.entries()) {
      int number = shown.size();
      shown.add(
          new CountEntryShown(
              number,
              kind(entry),
              words(entry),
              entry.atMs(),
              entry.by().value(),
              entry.witness() == null ? null : entry.witness().value(),
              onlyNamed(entry, drugs.signed(), number) ? true : null,
              struck.contains(number)));
    }
    return shown;
  }

  /** Whether an entry's second person is in it without having signed. */
  private static boolean onlyNamed(ControlledEntry entry, List<Integer> signed, int number) {
    return entry.witness() != null && !signed.contains(number);
  }

  private static CountKind kind(ControlledEntry entry) {
    if (entry instanceof ControlledEntry.Drawn) {
      return CountKind.DRAWN;
    } else if (entry instanceof ControlledEntry.Given) {
      return CountKind.GIVEN;
    } else if (entry instanceof ControlledEntry.Wasted) {
      return CountKind.WASTED;
    }
    return entry instanceof ControlledEntry.Returned ? CountKind.RETURNED : CountKind.STRUCK;
  }

  private static String words(ControlledEntry entry) {
    if (entry instanceof ControlledEntry.Drawn one) {
      return units(one.drug(), one.units()) + " drawn";
    } else if (entry instanceof ControlledEntry.Returned one) {
      return units(one.drug(), one.units()) + " returned unopened";
    } else if (entry instanceof ControlledEntry.Given one) {
      return Lettering.shown(one.drug().name())
          + " "
          + ControlledDrug.text(one.micrograms())
          + " given";
    } else if (entry instanceof ControlledEntry.Wasted one) {
      return Lettering.shown(one.drug().name())
          + " "
          + ControlledDrug.text(one.micrograms())
          + " wasted";
    }
    ControlledEntry.Struck one = (ControlledEntry.Struck) entry;
    return "entry " + (one.entry() + 1) + " struck";
  }

  private static String units(ControlledDrug drug, int units) {
    return Lettering.shown(drug.name())
        + " "
        + units
        + (units == 1 ? " ampoule of " : " ampoules of ")
        + ControlledDrug.text(drug.unitMicrograms());
  }
}
