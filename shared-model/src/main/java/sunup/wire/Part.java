package sunup.wire;

import com.fasterxml.jackson.annotation.JsonInclude;
import com.fasterxml.jackson.annotation.JsonSubTypes;
import com.fasterxml.jackson.annotation.JsonTypeInfo;
import java.util.List;
import sunup.board.DelayReason;
import sunup.board.Evidence;
import sunup.board.HouseStyle;
import sunup.board.ItemRef;
import sunup.board.ItemState;
import sunup.board.Morning.MoveState;
import sunup.board.Move;
import sunup.board.Role;
import sunup.board.RoomUse;
import sunup.board.Section;
import sunup.board.Step;
import sunup.board.SwapDay.Way;
import sunup.codec.Maybe;
import sunup.sheets.EvidenceRule;

/**
 * One piece of what a screen shows, under a key that is unique within its audience. A view is all
 * parts; a frame is the parts that changed and the keys that went. Times are epoch milliseconds.
 */
@JsonTypeInfo(use = JsonTypeInfo.Id.NAME, property = "part")
@JsonSubTypes({
  @JsonSubTypes.Type(value = Part.SuitePart.class, name = "suite"),
  @JsonSubTypes.Type(value = Part.RoomPart.class, name = "room"),
  @JsonSubTypes.Type(value = Part.NeedPart.class, name = "need"),
  @JsonSubTypes.Type(value = Part.CasePart.class, name = "case"),
  @JsonSubTypes.Type(value = Part.ItemPart.class, name = "item"),
  @JsonSubTypes.Type(value = Part.WaitPart.class, name = "wait"),
  @JsonSubTypes.Type(value = Part.PersonPart.class, name = "person"),
  @JsonSubTypes.Type(value = Part.UnitPart.class, name = "unit"),
  @JsonSubTypes.Type(value = Part.PlacePart.class, name = "place"),
  @JsonSubTypes.Type(value = Part.ChancePart.class, name = "chance"),
  @JsonSubTypes.Type(value = Part.SignPart.class, name = "sign"),
  @JsonSubTypes.Type(value = Part.NotePart.class, name = "note"),
  @JsonSubTypes.Type(value = Part.MovePart.class, name = "move"),
  @JsonSubTypes.Type(value = Part.IdeaPart.class, name = "idea"),
  @JsonSubTypes.Type(value = Part.IdeasPart.class, name = "ideas"),
  @JsonSubTypes.Type(value = Part.EvePart.class, name = "eve"),
  @JsonSubTypes.Type(value = Part.DrugListPart.class, name = "drug-list"),
  @JsonSubTypes.Type(value = Part.DrugsPart.class, name = "drugs"),
  @JsonSubTypes.Type(value = Part.LearnedPart.class, name = "learned"),
  @JsonSubTypes.Type(value = Part.NextPart.class, name = "next"),
  @JsonSubTypes.Type(value = Part.NextItemPart.class, name = "next-item"),
  @JsonSubTypes.Type(value = Part.SwapPart.class, name = "swap"),
})
@JsonInclude(JsonInclude.Include.NON_NULL)
public sealed interface Part {
  /** The key under which screens keep it, for example {@code room/7}. */
  String key();

  /** The least audience that may see it: wall parts go to all. */
  default Audience audience() {
    return LeastAudience.of(getClass());
  }

  /**
   * The morning as a whole.
   *
   * @param phase none, draft, open or closed
   * @param horizon the target that most rooms have
   * @param cases first cases that are not cancelled
   * @param onTime how many of them look on time, or have started on time; absent until figures were
   *     computed of those that have not started
   * @param quiet how many rooms nobody was heard from yet or of late; 0 in a draft, which nobody
   *     reports to
   * @param figuresOf if the figures shown are old, because newer ones could not be computed: the
   *     moment they are of; else absent
   * @param style how the site's pages write, if it says anything of it. Texts on the wire are
   *     written the first way, British and with 24 hours; a page turns them as it takes them
   */
  record SuitePart(
      String key,
      String hospital,
      String suite,
      String date,
      String zone,
      String phase,
      Step startEvent,
      int graceMinutes,
      @Maybe Long horizon,
      int cases,
      @Maybe Integer onTime,
      int quiet,
      @Maybe Long figuresOf,
      boolean demo,
      @Maybe HouseStyle style)
      implements Part {}

  /**
   * One room on the horizon. Nothing about a patient.
   *
   * @param order place in the wall's order, from 0
   * @param target agreed, or else booked; absent without a case
   * @param agreed true if the target is an agreed later start
   * @param could10 10 % point of when the room could start; with could50 and could90 the lens
   * @param start50 median of the start; absent if nobody knows, and where it lies beyond what is
   *     computed
   * @param lateMinutes what the wall says as "+11": the median start, less the target; 0 if nothing
   *     to say
   * @param orMore true if it is so late at least: "over 4 h"
   * @param word the one word under the room's number
   * @param startedAt when the start event happened, or had happened at the latest
   * @param startInferred true if nobody told the start event: it had happened by {@code startedAt},
   *     the earliest step told of those after it; absent otherwise
   * @param lastWordAt when anybody last reported from the room
   * @param readyAt when it was reported ready; readyBy by which role; readyOpen what was open then
   * @param use what the room is used for now
   * @param revision for decisions on the room
   */
  record RoomPart(
      String key,
      String room,
      int order,
      @Maybe Long target,
      boolean agreed,
      Standing standing,
      @Maybe Long could10,
      @Maybe Long could50,
      @Maybe Long could90,
      @Maybe Long start50,
      int lateMinutes,
      boolean orMore,
      String word,
      @Maybe Long startedAt,
      @Maybe Boolean startInferred,
      @Maybe Long lastWordAt,
      @Maybe Long readyAt,
      @Maybe Role readyBy,
      int readyOpen,
      RoomUse use,
      @Maybe Long useUntil,
      long revision)
      implements Part {}

  /**
   * One line of "needs someone", worst saveable first.
   *
   * @param rank from 0
   * @param kind late, tight, stuck, ask or help
   * @param minutes late minutes by the median start; 0 for ask and help
   * @param orMore true if so many at least
   * @param saveable minutes that can still be saved, of the expected ones
   * @param words the holdup in at most 40 letters
   * @param holdup its key, for taking it
   * @param help true if the room has asked for someone and nobody has answered, whatever the kind
   * @param takenBy the role that has taken the holdup
   */
  record NeedPart(
      String key,
      int rank,
      String room,
      String kind,
      int minutes,
      boolean orMore,
      int saveable,
      String words,
      String holdup,
      boolean help,
      @Maybe Role takenBy,
      @Maybe Long lookAgainAt)
      implements Part {}

  /** A case, for those who work on it. */
  record CasePart(
      String key,
      String caseId,
      String room,
      long bookedAt,
      @Maybe Long agreedAt,
      @Maybe String procedure,
      @Maybe String service,
      String technique,
      List<String> options,
      boolean cancelled,
      List<StepAt> steps,
      List<ItemRef> flagged,
      @Maybe DelayReason reason,
      boolean reasonAgreed,
      @Maybe DelayReason reasonInstead,
      long revision)
      implements Part {}

  /**
   * One item of a room or of its case.
   *
   * @param room where it is now
   * @param order place in the sheet
   * @param name the desk's wording
   * @param who roles that may do it
   * @param state with lapses worked out
   * @param asks what evidence it wants
   * @param evidence what it is good by
   * @param together entered together with others
   * @param what the fault or the reason for leaving it out
   * @param lapsesAt when it stops counting
   * @param goodUntil once the room has started: until when it is good for its next case too; absent
   *     if it is to be done again
   * @param stillGoing true if it has been in hand for so long that the station should ask
   * @param core may never be left out
   * @param eve what may be told of it the day before: fault, or good as well; absent if nothing
   */
  record ItemPart(
      String key,
      ItemRef item,
      String room,
      int order,
      Section section,
      String name,
      List<Role> who,
      ItemState state,
      long since,
      @Maybe Step gates,
      @Maybe Step marks,
      EvidenceRule asks,
      @Maybe Evidence evidence,
      boolean together,
      @Maybe String what,
      @Maybe String mender,
      @Maybe Long expectedAt,
      @Maybe Long lapsesAt,
      @Maybe Long goodUntil,
      boolean stillGoing,
      boolean core,
      @Maybe String eve,
      long revision)
      implements Part {}

  /**
   * What a room's start waits for, in words, in order; for the station and holding.
   *
   * @param about the median start
   */
  record WaitPart(String key, String room, @Maybe Long about, List<Wait> waits) implements Part {}

  /** A person under a pseudonym; waitedFor: late or tight rooms that wait for him or her. */
  record PersonPart(
      String key,
      String person,
      Role role,
      String label,
      @Maybe String ownRoom,
      List<String> covers,
      long plannedAt,
      @Maybe Long expectedAt,
      @Maybe Long arrivedAt,
      @Maybe Long leftAt,
      @Maybe String room,
      @Maybe Long lastWordAt,
      List<String> waitedFor,
      long revision)
      implements Part {}

  /** A piece of shared equipment. */
  record UnitPart(
      String key,
      String unit,
      String kind,
      String label,
      @Maybe String with,
      @Maybe Long since,
      @Maybe String promised,
      long revision)
      implements Part {}

  /** A place that opens. */
  record PlacePart(String key, String place, String label, long opensAt, long revision)
      implements Part {}

  /**
   * The figures of a room, for the desk. Of a room that nobody was heard from nothing is known: the
   * chance, the start, the late minutes and the shares are absent then.
   *
   * @param onTime P(start by target + grace)
   * @param start10 10 % point of the start, with start50 and start90; never before now, and absent
   *     where it lies beyond what is computed
   * @param moreThanHours the median start is later than the target by so many hours at least
   * @param meanLateMinutes expected minutes late
   * @param capped trials in which it had not started at the end of what is computed; they count to
   *     there
   * @param trials how many trials stand behind it
   * @param kept rule 3's histories kept
   * @param tried and tried
   * @param shares what the late minutes go to, adding to one
   */
  record ChancePart(
      String key,
      String room,
      @Maybe Double onTime,
      @Maybe Long start10,
      @Maybe Long start50,
      @Maybe Long start90,
      @Maybe Integer moreThanHours,
      @Maybe Double meanLateMinutes,
      int capped,
      int trials,
      int kept,
      int tried,
      double alreadyLost,
      List<HoldupShare> shares)
      implements Part {}

  /**
   * An early sign of a late start, for the desk: something is not as planned and can still be
   * mended. Sorted by the time to act by.
   *
   * @param rooms whose start it is, in the wall's order
   * @param holdup what a command that takes it names
   * @param actBy until when it can be mended without a late start; a first setting or the
   *     forecast's last moment
   * @param takenBy who has taken it, of one room
   */
  record SignPart(
      String key,
      List<String> rooms,
      String words,
      String holdup,
      long actBy,
      @Maybe Role takenBy,
      @Maybe Long lookAgainAt)
      implements Part {}

  /**
   * A note, a request for help, something said with a holdup or with a reason.
   *
   * @param by the role that said it; absent if nobody knows
   * @param at when
   */
  record NotePart(String key, @Maybe String room, @Maybe Role by, long at, String kind, String text)
      implements Part {}

  /**
   * A move that was asked. It counts in the forecast once it is accepted.
   *
   * @param id what answers to it name
   * @param words the move as somebody would say it
   * @param role who is asked, if it is not one person; who the same, or the person, in words
   */
  record MovePart(
      String key,
      String id,
      Move move,
      String words,
      @Maybe String room,
      @Maybe Role role,
      @Maybe String person,
      String who,
      MoveState state,
      @Maybe Role askedBy,
      long askedAt,
      @Maybe Role answeredBy,
      @Maybe Long answeredAt,
      long revision)
      implements Part {}

  /**
   * A move that may help, for the desk. Each figure is of that move alone: they do not add.
   *
   * @param rank from 0, the largest saving first
   * @param role whom to ask, if it is not one person; who the same, or the person, in words
   * @param savedMinutes late minutes that it is expected to save over the suite; absent for what is
   *     only to be talked about
   * @param errorMinutes standard error of that
   * @param rooms what it saves room by room; negative where it costs
   */
  record IdeaPart(
      String key,
      int rank,
      Move move,
      String words,
      @Maybe String room,
      @Maybe Role role,
      @Maybe String person,
      String who,
      @Maybe Double savedMinutes,
      @Maybe Double errorMinutes,
      List<RoomGain> rooms)
      implements Part {}

  /** What of a draft can be mended; kind: equipment, supervisor, people or options. */
  record EvePart(String key, String kind, List<String> rooms, String words) implements Part {}

  /**
   * The durations of this morning that were learned from closed ones, and how people report; there
   * is none where it goes by its sheets and first settings alone.
   *
   * @param upTo date of the last morning that taught
   * @param mornings how many taught
   * @param times in order of the items' keys
   * @param how what is learned of the reporting; empty if that goes by first settings
   */
  record LearnedPart(
      String key, String upTo, int mornings, List<LearnedTime> times, List<LearnedHow> how)
      implements Part {}

  /** A case went, came, or both (no {@code way}), for the room to confirm; see {@link SwapLeft}. */
  record SwapPart(
      String key,
      String room,
      String with,
      long at,
      List<SwapLeft> left,
      List<String> lacks,
      @Maybe Way way,
      @Maybe Long confirmedAt,
      @Maybe Role confirmedBy,
      long revision)
      implements Part {}

  /** The site's approved list of drugs; {@code standard} says which labels' colours these are. */
  record DrugListPart(String key, String standard, List<DrugShown> drugs) implements Part {}

  /**
   * What was drawn for a case.
   *
   * @param list names of the drugs on its list
   * @param open what keeps the count of its controlled drugs from coming out, in words
   */
  record DrugsPart(
      String key,
      String caseId,
      String room,
      List<String> list,
      List<SyringeShown> syringes,
      List<CountShown> counts,
      List<CountEntryShown> entries,
      List<String> open)
      implements Part {}

  /** The later case that a room is set up for now; technique and options are its list's. */
  record NextPart(
      String key, String room, String caseId, String technique, List<String> options, long at)
      implements Part {}

  /** One item of it; carried: good as it came over from the case before. */
  record NextItemPart(String key, String room, boolean carried, ItemPart item) implements Part {}

  /**
   * The search behind the ideas of a moment: moves that were thought of, how many of them were
   * simulated, and how many of these again on so many trials of their own.
   */
  record IdeasPart(String key, long of, int possible, int screened, int confirmed, int trials)
      implements Part {}
}
