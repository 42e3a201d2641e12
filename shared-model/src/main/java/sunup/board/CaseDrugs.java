package sunup.board;

import com.fasterxml.jackson.annotation.JsonInclude;
import java.util.ArrayList;
import java.util.List;
import java.util.function.UnaryOperator;
import sunup.drugs.ControlledCount;
import sunup.drugs.DrawnDrug;

/**
 * What was drawn up for a case, and the count of its controlled drugs. Immutable.
 *
 * @param syringes in the order in which they were drawn; a syringe's number is its place, from 0
 * @param count controlled drugs
 * @param signed entries of the count, by number, whose second person signed, and was not only named
 */
public record CaseDrugs(
    List<Syringe> syringes,
    ControlledCount count,
    @JsonInclude(JsonInclude.Include.NON_EMPTY) List<Integer> signed) {
  /** Syringes of one case. */
  public static final int SYRINGES_MAX = 200;

  /**
   * A syringe.
   *
   * @param drawn what is in it
   * @param room where it was drawn
   * @param by who drew it, or null if nobody signed
   * @param witness the second person, or null where one was enough
   * @param scanned the package's code, or null if none was scanned
   * @param reason why it was drawn although the list has it not, or null
   * @param voided true if the case went elsewhere after it was drawn: to be thrown away
   * @param discardedAt when it was thrown away, or null
   */
  @JsonInclude(JsonInclude.Include.NON_NULL)
  public record Syringe(
      DrawnDrug drawn,
      RoomId room,
      PersonId by,
      PersonId witness,
      String scanned,
      Private reason,
      boolean voided,
      Long discardedAt) {
    /** True if it may be used at this moment, as far as the board knows. */
    public boolean counts(long now) {
      return !voided && discardedAt == null && !drawn.hasLapsed(now);
    }

    Syringe asVoid() {
      return new Syringe(drawn, room, by, witness, scanned, reason, true, discardedAt);
    }

    Syringe discarded(long at) {
      return new Syringe(drawn, room, by, witness, scanned, reason, voided, at);
    }
  }

  public CaseDrugs {
    syringes = List.copyOf(syringes);
    signed = List.copyOf(signed);
  }

  static CaseDrugs of(CaseId caseId) {
    return new CaseDrugs(List.of(), ControlledCount.of(caseId), List.of());
  }

  /** True if a usable syringe of the drug is there. */
  public boolean has(String drug, long now) {
    return syringes.stream().anyMatch(s -> s.drawn().name().equals(drug) && s.counts(now));
  }

  CaseDrugs with(List<Syringe> more) {
    List<Syringe> all = new ArrayList<>(syringes);
    all.addAll(more);
    return new CaseDrugs(all, count, signed);
  }

  /**
   * With one more entry.
   *
   * @param bySecond true if its second person signed
   */
  CaseDrugs counted(ControlledCount next, boolean bySecond) {
    List<Integer> all = new ArrayList<>(signed);
    if (bySecond) {
      all.add(next.entries().size() - 1);
    }
    return new CaseDrugs(syringes, next, all);
  }

  CaseDrugs with(int number, UnaryOperator<Syringe> change) {
    List<Syringe> all = new ArrayList<>(syringes);
    all.set(number, change.apply(all.get(number)));
    return new CaseDrugs(all, count, signed);
  }

  CaseDrugs voided() {
    return new CaseDrugs(syringes.stream().map(Syringe::asVoid).toList(), count, signed);
  }
}
