package sunup.sheets;

import com.fasterxml.jackson.annotation.JsonIgnore;
import com.fasterxml.jackson.annotation.JsonInclude;
import com.fasterxml.jackson.annotation.JsonProperty;
import java.util.EnumSet;
import java.util.List;
import java.util.Objects;
import java.util.Set;
import sunup.board.Role;
import sunup.board.Section;
import sunup.board.Step;

/**
 * One thing to get ready, as a sheet describes it.
 *
 * @param key unique on the composed sheet, {@code section.word}, for example {@code
 *     machine.self-test}
 * @param section where it stands
 * @param belongs to the room-day or to the case
 * @param desk its name for those who work in the suite
 * @param wall its name where relatives and patients pass: says nothing about the patient; at most
 *     24 letters
 * @param who the people that it takes, all at once; each entry lists the roles of which one is
 *     enough; empty for a milestone
 * @param hands hands-on minutes
 * @param waits minutes that follow without anybody, or null
 * @param extra a rare extra, or null
 * @param after keys of the items that must be good before it begins
 * @param gates the step that may not happen without it, or null if it is only advised
 * @param marks the step that its being good marks, or null
 * @param core true if it may never be left out
 * @param evidence what makes it good
 * @param life how long it stays good, or null
 * @param place the place where it is done, or null for the room
 * @param uses shared equipment that it needs
 * @param plannedBefore for an arrival (patient, surgeon): minutes before the target by which it
 *     usually happens; {@code hands} is then unused
 * @param plannedLate for an arrival: minutes before the target that one in ten comes later than
 * @param asa the items of the ASA 2008 pre-anaesthesia checkout that it covers
 */
@JsonInclude(JsonInclude.Include.NON_EMPTY)
public record SheetItem(
    String key,
    Section section,
    Belongs belongs,
    String desk,
    String wall,
    List<List<Role>> who,
    Hands hands,
    Hands waits,
    RareExtra extra,
    List<String> after,
    Step gates,
    Step marks,
    boolean core,
    EvidenceRule evidence,
    Life life,
    String place,
    List<Uses> uses,
    Integer plannedBefore,
    Integer plannedLate,
    List<Integer> asa) {
  /** Whose an item is. */
  public enum Belongs {
    @JsonProperty("room")
    ROOM,
    @JsonProperty("case")
    CASE
  }

  private static final Set<Section> ELSEWHERE =
      EnumSet.of(Section.PATIENT, Section.SURGEON, Section.TEAM, Section.INSTRUMENTS);

  public SheetItem {
    Objects.requireNonNull(key, "key");
    Objects.requireNonNull(section, "section");
    Objects.requireNonNull(belongs, "belongs");
    who = who == null ? List.of() : who.stream().map(List::copyOf).toList();
    hands = hands == null ? new Hands(0, 0) : hands;
    after = after == null ? List.of() : List.copyOf(after);
    evidence = evidence == null ? EvidenceRule.TOUCHED : evidence;
    uses = uses == null ? List.of() : List.copyOf(uses);
    asa = asa == null ? List.of() : List.copyOf(asa);
  }

  /** True if somebody or something comes by itself and is only seen: patient, surgeon. */
  @JsonIgnore
  public boolean isArrival() {
    return plannedBefore != null;
  }

  /** True if it takes nobody and no time: a step that happens once all else is there. */
  @JsonIgnore
  public boolean isMilestone() {
    return who.isEmpty() && marks != null;
  }

  /** True if it can't be done while the room is used for something else. */
  @JsonIgnore
  public boolean isInRoom() {
    return place == null
        && !ELSEWHERE.contains(section)
        && !isMilestone()
        && !(section == Section.START && gates == Step.WHEELS_IN);
  }

  /** What is asked for by it. */
  public Work work() {
    return new Work(key, who, hands);
  }

  /** The same item with another duration. */
  public SheetItem withHands(Hands other) {
    return with(other, after);
  }

  /** The same item with other prerequisites. */
  SheetItem withAfter(List<String> keys) {
    return with(hands, keys);
  }

  private SheetItem with(Hands duration, List<String> prerequisites) {
    return new SheetItem(
        key,
        section,
        belongs,
        desk,
        wall,
        who,
        duration,
        waits,
        extra,
        prerequisites,
        gates,
        marks,
        core,
        evidence,
        life,
        place,
        uses,
        plannedBefore,
        plannedLate,
        asa);
  }

  /** True if what was good for one case is good for the next one in the room. */
  public boolean outlastsItsCase() {
    return life != null && life.outlastsTheCase();
  }

  /**
   * True if it may be said to outlast its case: a check of the machine with a time of its own. What
   * touched the last patient, a drip or a syringe never does, whatever its clock says.
   */
  boolean mayOutlastItsCase() {
    return section == Section.MACHINE && belongs == Belongs.ROOM && life.minutes() != null;
  }
}
