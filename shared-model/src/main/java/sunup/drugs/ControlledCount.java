package sunup.drugs;

import java.math.BigDecimal;
import java.math.RoundingMode;
import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Objects;
import java.util.Set;
import sunup.board.CaseId;

/**
 * Controlled drugs of one case: what was drawn is given, wasted or returned, to the microgram, and
 * drawing, wasting and returning have two different signatures. Entries are only added; a wrong one
 * is struck by two and stays. Immutable.
 *
 * @param caseId the case
 * @param entries in the order in which they were taken
 */
public record ControlledCount(CaseId caseId, List<ControlledEntry> entries) {
  /** Entries of one case. */
  public static final int ENTRIES_MAX = 500;

  /** Ampoules of one entry. */
  public static final int UNITS_MAX = 100;

  private static final int SCALE_MAX = 6;
  private static final BigDecimal MICROGRAMS_MAX = BigDecimal.valueOf(10_000_000);

  public ControlledCount {
    Objects.requireNonNull(caseId, "caseId");
    entries = List.copyOf(entries);
  }

  public static ControlledCount of(CaseId caseId) {
    return new ControlledCount(caseId, List.of());
  }

  /** What comes of an entry. */
  public sealed interface Outcome {}

  /** It was taken. */
  public record Taken(ControlledCount count) implements Outcome {}

  /**
   * It was not.
   *
   * @param why what is wrong and what to do
   */
  public record Refused(String why) implements Outcome {}

  /**
   * One drug's sum. All amounts in micrograms.
   *
   * @param drawnUnits ampoules taken
   * @param returnedUnits ampoules given back unopened
   * @param given to the patient
   * @param wasted before two
   * @param open drawn and neither given, wasted nor returned
   */
  public record Sum(
      ControlledDrug drug,
      int drawnUnits,
      int returnedUnits,
      BigDecimal given,
      BigDecimal wasted,
      BigDecimal open) {
    /** True if all that was drawn is accounted for. */
    public boolean comesOut() {
      return open.signum() == 0;
    }

    /** Ampoules that must have been opened for what was given and wasted. */
    public int openedUnits() {
      return given
          .add(wasted)
          .divide(drug.unitMicrograms(), 0, RoundingMode.CEILING)
          .intValueExact();
    }
  }

  /** Takes an entry, or says why not. */
  public Outcome take(ControlledEntry entry) {
    String wrong = entries.size() >= ENTRIES_MAX ? "too many entries for one case" : wrong(entry);
    if (wrong != null) {
      return new Refused(wrong);
    }
    List<ControlledEntry> more = new ArrayList<>(entries);
    more.add(entry);
    ControlledCount next = new ControlledCount(caseId, more);
    for (Sum sum : next.sums()) {
      String over = over(sum);
      if (over != null) {
        return new Refused(over);
      }
    }
    return new Taken(next);
  }

  private String wrong(ControlledEntry entry) {
    if (entry.by() == null) {
      return "needs a signature";
    }
    boolean two = !(entry instanceof ControlledEntry.Given);
    if (two && entry.witness() == null) {
      return "needs a second signature";
    }
    if (two && entry.by().equals(entry.witness())) {
      return "needs two different signatures; the same person signed twice";
    }
    if (entry instanceof ControlledEntry.Drawn drawn) {
      return units(drawn.units());
    } else if (entry instanceof ControlledEntry.Returned returned) {
      return units(returned.units());
    } else if (entry instanceof ControlledEntry.Given given) {
      return amount(given.micrograms());
    } else if (entry instanceof ControlledEntry.Wasted wasted) {
      return amount(wasted.micrograms());
    }
    return strikes((ControlledEntry.Struck) entry);
  }

  private static String units(int units) {
    return units >= 1 && units <= UNITS_MAX ? null : "ampoules must be 1 to " + UNITS_MAX;
  }

  private static String amount(BigDecimal micrograms) {
    boolean right =
        micrograms != null
            && micrograms.signum() > 0
            && micrograms.compareTo(MICROGRAMS_MAX) <= 0
            && ControlledDrug.plain(micrograms).scale() <= SCALE_MAX;
    return right ? null : "the amount must be above 0; look at the number, its point and its unit";
  }

  private String strikes(ControlledEntry.Struck struck) {
    if (struck.entry() < 0 || struck.entry() >= entries.size()) {
      return "there is no such entry to strike";
    }
    if (entries.get(struck.entry()) instanceof ControlledEntry.Struck) {
      return "what strikes an entry can't be struck; enter it anew";
    }
    return struckEntries().contains(struck.entry()) ? "is struck already" : null;
  }

  private static String over(Sum sum) {
    String name = Lettering.shown(sum.drug().name());
    if (sum.open().signum() < 0) {
      return name
          + ": "
          + ControlledDrug.text(sum.open().negate())
          + " more given, wasted or returned than drawn";
    }
    if (sum.openedUnits() + sum.returnedUnits() > sum.drawnUnits()) {
      return name + ": only whole, unopened ampoules can be returned; waste what is left of others";
    }
    return null;
  }

  private Set<Integer> struckEntries() {
    Set<Integer> struck = new LinkedHashSet<>();
    for (ControlledEntry entry : entries) {
      if (entry instanceof ControlledEntry.Struck s) {
        struck.add(s.entry());
      }
    }
    return struck;
  }

  /** The sum of each drug, in the order in which they were first named. */
  public List<Sum> sums() {
    Set<Integer> struck = struckEntries();
    List<ControlledEntry> counted = new ArrayList<>();
    Set<ControlledDrug> drugs = new LinkedHashSet<>();
    for (int i = 0; i < entries.size(); i++) {
      ControlledDrug drug = drug(entries.get(i));
      if (drug != null) {
        drugs.add(drug);
        if (!struck.contains(i)) {
          counted.add(entries.get(i));
        }
      }
    }
    return drugs.stream().map(drug -> sum(drug, counted)).toList();
  }

  private static ControlledDrug drug(ControlledEntry entry) {
    if (entry instanceof ControlledEntry.Drawn drawn) {
      return drawn.drug();
    } else if (entry instanceof ControlledEntry.Given given) {
      return given.drug();
    } else if (entry instanceof ControlledEntry.Wasted wasted) {
      return wasted.drug();
    } else if (entry instanceof ControlledEntry.Returned returned) {
      return returned.drug();
    }
    return null;
  }

  private static Sum sum(ControlledDrug drug, List<ControlledEntry> entries) {
    int drawn = 0;
    int returned = 0;
    BigDecimal given = BigDecimal.ZERO;
    BigDecimal wasted = BigDecimal.ZERO;
    for (ControlledEntry entry : entries) {
      if (!drug.equals(drug(entry))) {
        continue;
      }
      if (entry instanceof ControlledEntry.Drawn d) {
        drawn += d.units();
      } else if (entry instanceof ControlledEntry.Returned r) {
        returned += r.units();
      } else if (entry instanceof ControlledEntry.Given g) {
        given = given.add(g.micrograms());
      } else if (entry instanceof ControlledEntry.Wasted w) {
        wasted = wasted.add(w.micrograms());
      }
    }
    BigDecimal open =
        drug.unitMicrograms()
            .multiply(BigDecimal.valueOf((long) drawn - returned))
            .subtract(given)
            .subtract(wasted);
    return new Sum(
        drug,
        drawn,
        returned,
        ControlledDrug.plain(given),
        ControlledDrug.plain(wasted),
        ControlledDrug.plain(open));
  }

  /** What keeps the count from coming out, one line for each drug; empty if it does. */
  public List<String> open() {
    return sums().stream()
        .filter(sum -> !sum.comesOut())
        .map(
            sum ->
                Lettering.shown(sum.drug().name())
                    + ": "
                    + ControlledDrug.text(sum.open())
                    + " drawn and neither given, wasted nor returned")
        .toList();
  }
}
