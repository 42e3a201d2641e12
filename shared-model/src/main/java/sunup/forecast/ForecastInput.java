package sunup.forecast;

import com.fasterxml.jackson.annotation.JsonInclude;
import com.fasterxml.jackson.annotation.JsonProperty;
import java.util.List;

/**
 * All that a forecast depends on: equal inputs give equal bits on every node. Times are
 * milliseconds on any one scale (the server uses the epoch), durations milliseconds. What is absent
 * has the default that its parameter names.
 *
 * @param version of this record's form: 1
 * @param now the moment from which the rest of the morning is simulated
 * @param seed the morning's seed
 * @param trials how many trials; the first 256 of 2,000 are the same as 256 alone
 * @param settings what a site decides
 * @param people who may work
 * @param kinds shared equipment by kind
 * @param places places that open
 * @param rooms rooms in the order of the board, with their items in sheet order
 */
@JsonInclude(JsonInclude.Include.NON_EMPTY)
public record ForecastInput(
    int version,
    long now,
    long seed,
    int trials,
    Settings settings,
    List<PersonIn> people,
    List<KindIn> kinds,
    List<PlaceIn> places,
    List<RoomIn> rooms) {

  public ForecastInput {
    settings = settings == null ? Settings.DEFAULT : settings;
    people = people == null ? List.of() : List.copyOf(people);
    kinds = kinds == null ? List.of() : List.copyOf(kinds);
    places = places == null ? List.of() : List.copyOf(places);
    rooms = rooms == null ? List.of() : List.copyOf(rooms);
  }

  /** The same morning with another number of trials. */
  public ForecastInput withTrials(int n) {
    return with(seed, n);
  }

  /** The same morning with other random numbers and another number of trials. */
  public ForecastInput with(long otherSeed, int n) {
    return new ForecastInput(version, now, otherSeed, n, settings, people, kinds, places, rooms);
  }

  /**
   * @param personShare rule 4's rho, 0 to 0.95 (0.2)
   * @param graceMs on time = start, cut to whole minutes, not after target + grace (0)
   * @param capMs a trial that has not started by target + cap counts as the cap (240 min)
   * @param forgottenTouch rule 3's p, chance that an item in hand is done and not reported (0.03)
   * @param silence how people report (rule 3's first settings)
   */
  public record Settings(
      double personShare, long graceMs, long capMs, double forgottenTouch, Silence silence) {
    public static final Settings DEFAULT =
        new Settings(0.2, 0, 240 * 60_000L, 0.03, Silence.DEFAULT);

    public Settings {
      silence = silence == null ? Silence.DEFAULT : silence;
      capMs = capMs <= 0 ? 240 * 60_000L : capMs;
    }
  }

  /**
   * Rule 3's reporting styles and interruptions.
   *
   * @param eachItem share of people who report each item as it is done
   * @param eachSection who report a section when it is gone through
   * @param atEnd who report once at the end
   * @param never who never report
   * @param away chance of being pulled away once during the set-up, at a uniform moment of it
   * @param awayFor how long, then
   * @param delay how long after its last item a word comes (constant 0): what was done so short a
   *     time ago may not be reported yet
   */
  @JsonInclude(JsonInclude.Include.NON_EMPTY)
  public record Silence(
      double eachItem,
      double eachSection,
      double atEnd,
      double never,
      double away,
      Draw awayFor,
      Draw delay) {
    public static final Silence DEFAULT =
        new Silence(0.40, 0.35, 0.20, 0.05, 0.07, new Draw.LogNormal(12 * 60_000L, 30 * 60_000L));

    /** People whose words come at once. */
    public Silence(
        double eachItem,
        double eachSection,
        double atEnd,
        double never,
        double away,
        Draw awayFor) {
      this(eachItem, eachSection, atEnd, never, away, awayFor, null);
    }

    public Silence {
      delay = delay == null ? new Draw.Constant(0) : delay;
    }
  }

  /**
   * A person.
   *
   * @param id unique
   * @param roles the roles that this person can fill
   * @param room own room, or null for one who serves several
   * @param covers rooms served without an own room; empty means all
   * @param arrivedAt when the person came, or null if not here yet
   * @param plannedAt when the person is planned to come
   * @param late how much later than planned he or she comes, if not here yet (constant 0)
   * @param arrivalReported false if the person may be here and nobody said so
   * @param leavesAt when the person goes for good, or null
   * @param away stretches in which the person can begin nothing (huddle, another duty)
   * @param lastWordAt when the person last reported anything, or null
   * @param styles how the person may be reporting, given what was heard; null means all of them
   */
  @JsonInclude(JsonInclude.Include.NON_EMPTY)
  public record PersonIn(
      String id,
      List<String> roles,
      String room,
      List<String> covers,
      Long arrivedAt,
      long plannedAt,
      Draw late,
      boolean arrivalReported,
      Long leavesAt,
      List<Stretch> away,
      Long lastWordAt,
      List<String> styles) {
    public PersonIn {
      roles = roles == null ? List.of() : List.copyOf(roles);
      covers = covers == null ? List.of() : List.copyOf(covers);
      away = away == null ? List.of() : List.copyOf(away);
      late = late == null ? new Draw.Constant(0) : late;
    }
  }

  /** From, inclusive, to, exclusive. */
  public record Stretch(long from, long to) {}

  /**
   * Shared equipment of one kind.
   *
   * @param id for example {@code ultrasound}
   * @param capacity how many units there are
   * @param promised rooms that get the next free units first, in order
   */
  @JsonInclude(JsonInclude.Include.NON_EMPTY)
  public record KindIn(String id, int capacity, List<String> promised) {
    public KindIn {
      promised = promised == null ? List.of() : List.copyOf(promised);
    }
  }

  /**
   * A place away from the rooms.
   *
   * @param opensAt when it opens; nothing is begun there before
   * @param walk one way; a person who goes on with another item of the same place walks once
   */
  public record PlaceIn(String id, long opensAt, Draw walk) {
    public PlaceIn {
      walk = walk == null ? new Draw.Constant(0) : walk;
    }
  }

  /**
   * A room with a first case.
   *
   * @param id unique
   * @param caseId its case; draws are keyed by the case for items of the case
   * @param target the time that the start is measured against
   * @param startStep which step is the start, the key in {@link ItemIn#marks()}
   * @param begins the room's planned beginning, B of rule 6
   * @param occupiedFor how long from now the room can't be worked in (night case, cleaning), or
   *     null; it holds the items with {@code inRoom}
   * @param startedAt when the start event happened, or null
   * @param items in sheet order
   */
  @JsonInclude(JsonInclude.Include.NON_EMPTY)
  public record RoomIn(
      String id,
      String caseId,
      long target,
      String startStep,
      long begins,
      Draw occupiedFor,
      Long startedAt,
      List<ItemIn> items) {
    public RoomIn {
      items = items == null ? List.of() : List.copyOf(items);
    }
  }

  /**
   * One item of a room.
   *
   * @param key unique in the room
   * @param section sections are reported together by those who report by section
   * @param ofCase true if its draws are keyed by the case instead of the room
   * @param who people needed all at once; each entry lists roles of which one person is enough
   * @param hands hands-on duration
   * @param waits unattended duration after it, or null
   * @param extra "one in N needs M more", or null
   * @param after keys of items of this room that must be good before it begins
   * @param gates the step that may not happen without it, or null
   * @param marks the step that its being good marks, or null
   * @param notBefore it may not happen before, or null (booked time; planned sending). An item that
   *     marks a step is not good before; any other does not begin before
   * @param place where it is done, or null for the room
   * @param inRoom true if it can't be done while the room is occupied
   * @param needs equipment
   * @param arrival for what comes by itself: when it comes (absolute draw = from + late), else null
   * @param lifeMs it is open again so long after it became good, or null
   * @param progress where it stands now
   * @param asked true if somebody was asked to do it next
   */
  @JsonInclude(JsonInclude.Include.NON_EMPTY)
  public record ItemIn(
      String key,
      String section,
      boolean ofCase,
      List<List<String>> who,
      Draw hands,
      Draw waits,
      Extra extra,
      List<String> after,
      String gates,
      String marks,
      Long notBefore,
      String place,
      boolean inRoom,
      List<Need> needs,
      Arrival arrival,
      Long lifeMs,
      Progress progress,
      boolean asked) {
    public ItemIn {
      who = who == null ? List.of() : who.stream().map(List::copyOf).toList();
      hands = hands == null ? new Draw.Constant(0) : hands;
      after = after == null ? List.of() : List.copyOf(after);
      needs = needs == null ? List.of() : List.copyOf(needs);
      progress = progress == null ? Progress.OPEN : progress;
    }
  }

  /** One in {@code oneIn} needs {@code ms} more. */
  public record Extra(int oneIn, long ms) {}

  /**
   * Equipment that an item needs.
   *
   * @param kind which
   * @param units how many
   * @param until key of the item at whose end they are released, or null for this item's end
   * @param held true if they are with the room already
   */
  public record Need(String kind, int units, String until, boolean held) {}

  /**
   * Something that comes by itself at {@code from} plus a draw.
   *
   * @param silent true if nobody would have said so: it may have come before now already, and the
   *     draw is taken as it falls; false if its coming would have been reported, so that the draw
   *     is conditioned on its not having come by now
   */
  public record Arrival(long from, Draw late, boolean silent) {}

  /**
   * Where an item stands.
   *
   * @param state open, in-hand, good, fault or left-out
   * @param since when it came into the state; for in-hand, when it was begun; for a fault that is
   *     taken, when its mending was taken up; null where it says nothing: open and left-out
   * @param began for good, when it was begun if that is known, or null: implied by rule 3
   * @param by who has it in hand or did it, or null
   * @param mend for a fault, how long mending takes; the item is then done again
   * @param mender for a fault, the roles of which one mends it
   * @param taken for a fault, the person who mends it, or null if nobody does yet
   */
  @JsonInclude(JsonInclude.Include.NON_EMPTY)
  public record Progress(
      State state,
      Long since,
      Long began,
      String by,
      Draw mend,
      List<String> mender,
      String taken) {
    public static final Progress OPEN =
        new Progress(State.OPEN, null, null, null, null, List.of(), null);

    /** Where an item stands when nobody said when it was begun. */
    public Progress(
        State state, Long since, String by, Draw mend, List<String> mender, String taken) {
      this(state, since, null, by, mend, mender, taken);
    }

    public Progress {
      mender = mender == null ? List.of() : List.copyOf(mender);
    }
  }

  /** States of an item as the forecast needs them; lapsed ones are open. */
  public enum State {
    @JsonProperty("open")
    OPEN,
    @JsonProperty("in-hand")
    IN_HAND,
    @JsonProperty("good")
    GOOD,
    @JsonProperty("fault")
    FAULT,
    @JsonProperty("left-out")
    LEFT_OUT
  }
}
