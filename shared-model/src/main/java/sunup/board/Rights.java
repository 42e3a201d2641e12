package sunup.board;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Collections;
import java.util.EnumMap;
import java.util.EnumSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import sunup.board.Morning.PersonDay;
import sunup.board.Outcome.Refused;
import sunup.sheets.SheetItem;

/**
 * Who may do what: one table of roles by kind of command, and the rules about single items and
 * rooms. What is not in the table is refused. The owner of the morning checks every command here.
 */
public final class Rights {
  /** Those who make a room ready; they speak for a room when they are of it. */
  static final Set<Role> ROOM_TEAM =
      roles(
          Role.ANAESTHETIST,
          Role.SUPERVISOR,
          Role.TRAINEE,
          Role.TECHNICIAN,
          Role.CIRCULATING,
          Role.SCRUB);

  /** Under whom a trainee may say that a room is ready, and sign for drugs. */
  private static final Set<Role> ANSWER_FOR_TRAINEES = roles(Role.SUPERVISOR, Role.ANAESTHETIST);

  private static final Set<Role> COORDINATORS = roles(Role.DESK, Role.ADMIN);

  /** Everybody but the surgeon, who never touches, and those who only look. */
  private static final Set<Role> ALL_WHO_DO =
      with(
          ROOM_TEAM, Role.HOLDING, Role.PORTER, Role.CLEANER, Role.PHARMACY, Role.DESK, Role.ADMIN);

  private static final Map<CommandKind, Set<Role>> TABLE = table();

  /** Kinds of command that two people may sign; the second is one who may give it as well. */
  private static final Set<CommandKind> BY_TWO =
      Collections.unmodifiableSet(
          EnumSet.of(
              CommandKind.GOOD,
              CommandKind.DRAW_DRUGS,
              CommandKind.COUNT_DRUG,
              CommandKind.HAND_OVER));

  /** The prefix of the name of a screen that stands in a room: {@code station-7}. */
  private static final String STATION = "station-";

  private Rights() {}

  private static Map<CommandKind, Set<Role>> table() {
    Map<CommandKind, Set<Role>> t = new EnumMap<>(CommandKind.class);
    for (CommandKind kind : CommandKind.values()) {
      t.put(kind, ALL_WHO_DO);
    }
    for (CommandKind kind :
        List.of(
            CommandKind.PLAN,
            CommandKind.OPEN_MORNING,
            CommandKind.CLOSE_MORNING,
            CommandKind.ADD_CASE,
            CommandKind.CHANGE_CASE,
            CommandKind.SWAP_CASES,
            CommandKind.CANCEL_CASE,
            CommandKind.ADD_PERSON)) {
      t.put(kind, COORDINATORS);
    }
    t.put(CommandKind.CONFIRM_SWAP, ROOM_TEAM);
    t.put(CommandKind.AGREE_LATER, with(COORDINATORS, Role.SUPERVISOR));
    t.put(CommandKind.PROMISE_UNIT, with(COORDINATORS, Role.SUPERVISOR));
    t.put(CommandKind.ASK_MOVE, with(COORDINATORS, Role.SUPERVISOR));
    t.put(CommandKind.WITHDRAW_MOVE, with(COORDINATORS, Role.SUPERVISOR));
    t.put(CommandKind.PLACE_OPENS, with(COORDINATORS, Role.PHARMACY));
    t.put(CommandKind.SAY_ROOM, with(ROOM_TEAM, Role.CLEANER, Role.DESK, Role.ADMIN));
    t.put(
        CommandKind.TAKE_FAULT,
        with(ROOM_TEAM, Role.CLEANER, Role.PHARMACY, Role.DESK, Role.ADMIN));
    t.put(
        CommandKind.LEAVE_OUT,
        roles(Role.ANAESTHETIST, Role.SUPERVISOR, Role.CIRCULATING, Role.SCRUB, Role.HOLDING));
    for (CommandKind kind : List.of(CommandKind.CLAIM, CommandKind.RELEASE)) {
      t.put(kind, with(ROOM_TEAM, Role.HOLDING, Role.PORTER, Role.DESK, Role.ADMIN));
    }
    t.put(
        CommandKind.REPORT_READY,
        roles(
            Role.ANAESTHETIST,
            Role.SUPERVISOR,
            Role.TRAINEE,
            Role.CIRCULATING,
            Role.DESK,
            Role.ADMIN));
    for (CommandKind kind :
        List.of(CommandKind.GIVE_REASON, CommandKind.AGREE_REASON, CommandKind.DISPUTE_REASON)) {
      t.put(kind, with(ROOM_TEAM, Role.HOLDING, Role.DESK, Role.ADMIN));
    }
    for (CommandKind kind : List.of(CommandKind.DRAW_DRUGS, CommandKind.DISCARD_DRUG)) {
      t.put(kind, roles(Role.ANAESTHETIST, Role.SUPERVISOR, Role.TRAINEE, Role.CIRCULATING));
    }
    t.put(
        CommandKind.COUNT_DRUG,
        roles(Role.ANAESTHETIST, Role.SUPERVISOR, Role.TRAINEE, Role.CIRCULATING, Role.PHARMACY));
    t.put(
        CommandKind.SET_UP_NEXT,
        roles(
            Role.ANAESTHETIST,
            Role.SUPERVISOR,
            Role.TRAINEE,
            Role.TECHNICIAN,
            Role.CIRCULATING,
            Role.DESK,
            Role.ADMIN));
    return Collections.unmodifiableMap(t);
  }

  /** The roles that may give a kind of command. */
  public static Set<Role> who(CommandKind kind) {
    return TABLE.get(kind);
  }

  /** The roles that may sign such a command beside another: none if it is of one person. */
  public static Set<Role> whoSigns(CommandKind kind) {
    return BY_TWO.contains(kind) ? who(kind) : Set.of();
  }

  /**
   * Where people sign on, a refusal unless two did: who gives the command, and another by code and
   * PIN. Where they do not, null.
   *
   * @param first whom the command names as who did it, or null
   * @param named whom it names as the second person, or null if it needs none
   */
  static Refused checkSecond(Ask ask, CommandKind kind, PersonId first, PersonId named) {
    if (!ask.order.signing() || named == null) {
      return null;
    }
    Actor actor = ask.order.actor();
    if (actor.person() == null || (first != null && !first.equals(actor.person()))) {
      return Ask.refuse(
          RefusalCode.EVIDENCE_MISSING,
          "Two sign for this. Whoever did it signs on at this screen, then the other signs.");
    }
    if (named.equals(actor.person())) {
      return Ask.refuse(RefusalCode.SAME_PERSON, "two sign for this");
    }
    Actor.Second second = actor.second();
    if (second == null || !second.person().equals(named)) {
      return Ask.refuse(RefusalCode.SECOND_UNSIGNED, named.value());
    }
    return whoSigns(kind).contains(second.role()) ? null : askOneOf(whoSigns(kind));
  }

  /** NOT_ALLOWED if this actor may not give this command, else null. */
  static Refused check(Ask ask, CommandKind kind) {
    Actor actor = ask.order.actor();
    Set<Role> may = who(kind);
    if (actor == null || actor.role() == null || !may.contains(actor.role())) {
      return askOneOf(may);
    }
    return null;
  }

  /** NOT_ALLOWED if this actor may not say this of the item, else null. */
  static Refused checkItem(Ask ask, ItemRef ref, CommandKind kind) {
    RoomId room = ask.morning.roomOf(ref);
    Refused elsewhere = checkRoom(ask, room);
    if (elsewhere != null) {
      return elsewhere;
    }
    SheetItem sheet = ask.morning.sheetItem(ref);
    // The day before nobody of the room is there to tell it.
    boolean eve = ask.morning.phase() == Morning.Phase.DRAFT && COORDINATORS.contains(ask.role());
    return sheet == null || eve || mayTouch(ask.role(), sheet, kind)
        ? null
        : askOneOf(whoMay(sheet, kind));
  }

  /** NOT_ALLOWED if this actor is one of the rooms' people but not of this room, else null. */
  static Refused checkRoom(Ask ask, RoomId room) {
    Actor actor = ask.order.actor();
    if (room == null || !ROOM_TEAM.contains(actor.role()) || isOf(ask.morning, actor, room)) {
      return null;
    }
    return Ask.refuse(
        RefusalCode.NOT_ALLOWED,
        "somebody of room " + room + ", or come to it at its own station first");
  }

  /**
   * NOT_ALLOWED if this actor is a trainee in a room that nobody answers for: by the plan no
   * supervisor has it, no anaesthetist is in it, or they have left; else null.
   */
  static Refused checkSupervised(Ask ask, RoomId room) {
    Actor actor = ask.order.actor();
    if (actor.role() != Role.TRAINEE) {
      return null;
    }
    boolean supervised =
        ask.morning.people().values().stream()
            .filter(p -> ANSWER_FOR_TRAINEES.contains(p.plan().role()) && p.leftAt() == null)
            .anyMatch(p -> !p.plan().id().equals(actor.person()) && isOf(p, room));
    return supervised
        ? null
        : Ask.refuse(
            RefusalCode.NOT_ALLOWED,
            "a trainee under a supervisor or anaesthetist of room "
                + room
                + "; it has none, so ask the desk to add one");
  }

  /** True if this actor says it from the room's own station, or is one of its people. */
  static boolean isOf(Morning morning, Actor actor, RoomId room) {
    if (room.equals(roomOfScreen(morning, actor.screen()))) {
      return true;
    }
    PersonDay person = actor.person() == null ? null : morning.people().get(actor.person());
    return person != null && isOf(person, room);
  }

  private static boolean isOf(PersonDay person, RoomId room) {
    PersonPlan plan = person.plan();
    boolean own = room.equals(plan.room()) || room.equals(person.room());
    boolean roams =
        plan.room() == null && (plan.covers().isEmpty() || plan.covers().contains(room));
    return own || roams;
  }

  /** The room whose station this screen is, or null. */
  private static RoomId roomOfScreen(Morning morning, String screen) {
    if (screen == null || !screen.startsWith(STATION)) {
      return null;
    }
    String name = screen.substring(STATION.length());
    for (RoomId room : morning.rooms().keySet()) {
      // A room may have two stations: station-7 and station-7.b
      if (name.equals(room.value()) || name.startsWith(room.value() + ".")) {
        return room;
      }
    }
    return null;
  }

  /** Whether a role may say something of an item, wherever that is. */
  static boolean mayTouch(Role role, SheetItem sheet, CommandKind kind) {
    if (!who(kind).contains(role)) {
      return false;
    }
    if (kind == CommandKind.LEAVE_OUT) {
      return mayLeaveOut(role, sheet.section());
    }
    if (tellsNoGood(kind) && (COORDINATORS.contains(role) || ROOM_TEAM.contains(role))) {
      return true;
    }
    boolean named = sheet.who().stream().anyMatch(any -> any.contains(role));
    boolean whoeverSees = sheet.section() == Section.SURGEON || seesPatientLeave(role, sheet);
    return named || whoeverSees || sectionsOf(role).contains(sheet.section());
  }

  /** Who sent for a patient sees that he or she leaves, whoever pushes the bed. */
  private static boolean seesPatientLeave(Role role, SheetItem sheet) {
    return role == Role.HOLDING
        && sheet.section() == Section.START
        && sheet.gates() == Step.WHEELS_IN;
  }

  /** What any of a room's people, or a call to the desk, may tell of any item: never "good". */
  private static boolean tellsNoGood(CommandKind kind) {
    return kind == CommandKind.FAULT
        || kind == CommandKind.TAKE_FAULT
        || kind == CommandKind.MEND
        || kind == CommandKind.REOPEN
        || kind == CommandKind.EXPECT_ITEM;
  }

  /** Left out by those who answer for it, not by those who gain the time. */
  private static boolean mayLeaveOut(Role role, Section section) {
    return switch (role) {
      case ANAESTHETIST, SUPERVISOR -> true;
      case CIRCULATING, SCRUB -> section == Section.ROOM || section == Section.INSTRUMENTS;
      case HOLDING -> section == Section.PATIENT;
      default -> false;
    };
  }

  /** The sections that a role may speak of beside the items that name it. */
  private static Set<Section> sectionsOf(Role role) {
    return switch (role) {
      // The circulating nurse speaks for the room; a station that nobody signed speaks so too.
      case ANAESTHETIST, SUPERVISOR, TRAINEE, CIRCULATING -> EnumSet.allOf(Section.class);
      case TECHNICIAN ->
          EnumSet.of(
              Section.MACHINE,
              Section.SUCTION,
              Section.MONITORS,
              Section.AIRWAY,
              Section.IV,
              Section.SPECIAL,
              Section.ROOM);
      case SCRUB -> EnumSet.of(Section.ROOM, Section.INSTRUMENTS, Section.TEAM, Section.START);
      case HOLDING, PORTER -> EnumSet.of(Section.PATIENT);
      case CLEANER -> EnumSet.of(Section.ROOM);
      case DESK, ADMIN -> EnumSet.of(Section.ROOM, Section.PATIENT, Section.TEAM);
      default -> EnumSet.noneOf(Section.class);
    };
  }

  private static Set<Role> whoMay(SheetItem sheet, CommandKind kind) {
    Set<Role> may = EnumSet.noneOf(Role.class);
    for (Role role : Role.values()) {
      if (mayTouch(role, sheet, kind)) {
        may.add(role);
      }
    }
    return may;
  }

  private static Refused askOneOf(Set<Role> may) {
    List<String> words = new ArrayList<>();
    for (Role role : may) {
      if (role != Role.ADMIN || may.size() == 1) {
        words.add(role.word());
      }
    }
    return Ask.refuse(
        RefusalCode.NOT_ALLOWED,
        words.isEmpty() ? "the site's administrator" : "one of: " + String.join(", ", words));
  }

  private static Set<Role> roles(Role... roles) {
    return Collections.unmodifiableSet(EnumSet.copyOf(Arrays.asList(roles)));
  }

  private static Set<Role> with(Set<Role> some, Role... more) {
    Set<Role> all = EnumSet.copyOf(some);
    all.addAll(Arrays.asList(more));
    return Collections.unmodifiableSet(all);
  }
}
