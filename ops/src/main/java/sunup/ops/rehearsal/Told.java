package sunup.ops.rehearsal;

import java.util.ArrayList;
import java.util.EnumSet;
import java.util.HashMap;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import sunup.board.Command;
import sunup.board.DelayReason;
import sunup.board.ItemRef;
import sunup.board.PersonId;
import sunup.board.Private;
import sunup.board.Role;
import sunup.board.RoomId;
import sunup.board.Section;
import sunup.board.UnitId;

/** Turns what happens into what is reported, room by room and person by person. */
final class Told {
  private static final long SECOND = 1_000;
  private static final long MINUTE = 60 * SECOND;

  /** The one word of a room that reports once comes so long before its target. */
  static final long ONCE_BEFORE = 15 * MINUTE;

  /** Between two touches of one person. */
  private static final long TOUCH = 4 * SECOND;

  /** Share of longer items whose beginning is touched by those who report each item. */
  private static final double BEGIN_TOUCHED = 0.35;

  private static final double LONGER_MINUTES = 2;

  /** What has happened in one room and was not told yet. */
  private static final class Board {
    final Set<ItemRef> done = new HashSet<>();
    final Set<ItemRef> told = new HashSet<>();
    final Map<ItemRef, List<PersonId>> by = new HashMap<>();
    final Set<Section> swept = EnumSet.noneOf(Section.class);
    Section at;
    Job lastGating;
    boolean ready;
    boolean onceOver;
  }

  private final World world;
  private final Story story;
  private final Dice dice;
  private final Map<RoomId, Style> styles;
  private final Map<RoomId, Board> boards = new LinkedHashMap<>();
  private final Map<RoomId, Map<String, UnitId>> units = new HashMap<>();
  private final List<Report> reports = new ArrayList<>();

  Told(World world, Story story, Dice dice, Map<RoomId, Style> styles) {
    this.world = world;
    this.story = story;
    this.dice = dice;
    this.styles = styles;
    world.rooms.keySet().forEach(id -> boards.put(id, new Board()));
  }

  List<Report> reports() {
    return reports;
  }

  /** In order of time. */
  void hear(Fact fact) {
    tellOnce(fact.at());
    if (fact instanceof Fact.Came f) {
      came(f);
    } else if (fact instanceof Fact.Began f) {
      began(f);
    } else if (fact instanceof Fact.Done f) {
      done(f);
    } else if (fact instanceof Fact.Broke f) {
      if (speaks(f.room(), f.at())) {
        station(f.at(), f.room(), null, new Command.Fault(f.item(), Private.of(f.what())), null);
      }
    } else if (fact instanceof Fact.Taken f) {
      desk(f.at() + 20 * SECOND, new Command.TakeFault(f.item(), f.by()), null);
    } else if (fact instanceof Fact.Mended f) {
      desk(f.at() + 20 * SECOND, new Command.Mend(f.item()), null);
    } else if (fact instanceof Fact.Fetched f) {
      units.computeIfAbsent(f.room(), r -> new HashMap<>()).put(kindOf(f.unit()), f.unit());
      desk(f.at() + 30 * SECOND, new Command.Claim(f.unit(), f.room()), "unit/" + f.unit());
    } else if (fact instanceof Fact.Freed f) {
      desk(f.at() + 30 * SECOND, new Command.Release(f.unit()), "unit/" + f.unit());
    } else if (fact instanceof Fact.Used f) {
      Command say = new Command.SayRoom(f.room(), f.use(), f.until());
      desk(f.at() + 10 * SECOND, say, "room/" + f.room());
    }
  }

  /** After the last fact: a room that reports once and was never asked again has its word. */
  void end() {
    tellOnce(Long.MAX_VALUE);
  }

  private void came(Fact.Came f) {
    Style style = f.room() == null ? Style.EACH_ITEM : styles.getOrDefault(f.room(), Style.NEVER);
    if (style != Style.EACH_ITEM && style != Style.EACH_SECTION) {
      return;
    }
    long at = f.at() + 20 * SECOND + dice.waiting(0.8, "came " + f.person());
    Command arrive = new Command.Arrive(f.person(), f.room());
    if (f.room() == null) {
      desk(at, arrive, null);
    } else {
      // The surgeon never touches a screen: somebody of the room tells it, unsigned.
      station(at, f.room(), isSurgeon(f.person()) ? null : f.person(), arrive, null);
    }
  }

  private boolean isSurgeon(PersonId person) {
    return world.workers.stream()
        .anyMatch(w -> w.role == Role.SURGEON && w.name.equals(person.value()));
  }

  private void began(Fact.Began f) {
    Job job = jobOf(f.room(), f.item());
    Board board = boards.get(f.room());
    Section section = job.item.section();
    Style style = styles.get(f.room());
    if (section.isSetUp() && !job.hands.isEmpty()) {
      if (style == Style.EACH_SECTION && board.at != null && board.at != section) {
        sweep(f.at(), f.room(), board.at);
      }
      board.at = section;
    }
    if (style == Style.EACH_ITEM
        && job.item.hands().usual() >= LONGER_MINUTES
        && !f.hands().isEmpty()
        && (section.isSetUp() || section == Section.ROOM || section == Section.INSTRUMENTS)
        && dice.oneIn(BEGIN_TOUCHED, "begin " + job.name())) {
      PersonId by = f.hands().get(0);
      station(f.at() + 5 * SECOND, f.room(), by, new Command.Begin(f.item(), by), null);
    }
  }

  private void done(Fact.Done f) {
    Job job = jobOf(f.room(), f.item());
    Board board = boards.get(f.room());
    if (job.item.section() != Section.START && job.item.gates() != null) {
      board.lastGating = job;
    }
    board.done.add(f.item());
    board.by.put(f.item(), f.hands());
    Section section = job.item.section();
    if (job.item.marks() != null) {
      long at = f.at() + dice.waiting(0.4, "step " + job.name());
      Command reach = new Command.Reach(job.room.plan.id(), job.item.marks());
      told(board, f.item());
      if (job.item.marks() == job.room.startEvent) {
        reason(f, job.room, board);
      }
      if (speaks(f.room(), at)) {
        station(at, f.room(), first(f.hands()), reach, null);
      } else {
        // The desk sees it happen; the room itself is still silent.
        desk(at, reach, null);
      }
    } else if (section == Section.PATIENT) {
      tell(f.at() + dice.waiting(0.7, "tell " + job.name()), f, "holding");
    } else if (section == Section.SURGEON) {
      tell(f.at() + dice.waiting(2, "tell " + job.name()), f, "holding");
    } else if (section == Section.START || section == Section.TEAM) {
      if (speaks(f.room(), f.at())) {
        tell(f.at() + dice.waiting(0.4, "tell " + job.name()), f, "station");
      }
    } else if (section.isSetUp()) {
      setUpDone(f, job, board);
    } else {
      trackDone(f, job, board);
    }
  }

  /** A late start gets the reason that people would see: what came good last before it. */
  private void reason(Fact.Done f, Theatre room, Board board) {
    long grace = world.plan.settings().graceMinutes() * MINUTE;
    if (f.at() <= room.target + grace + MINUTE) {
      return;
    }
    Section last = board.lastGating == null ? Section.TEAM : board.lastGating.item.section();
    DelayReason reason =
        switch (last) {
          case PATIENT -> DelayReason.PATIENT;
          case SURGEON -> DelayReason.SURGEON;
          case ROOM -> DelayReason.ROOM;
          case INSTRUMENTS -> DelayReason.INSTRUMENTS;
          case TEAM, START -> DelayReason.STAFF;
          case MACHINE, MONITORS, SUCTION -> DelayReason.EQUIPMENT;
          default -> DelayReason.ANAESTHESIA;
        };
    long at = f.at() + 3 * MINUTE + dice.waiting(3, "reason " + room.id);
    station(at, room.id, null, new Command.GiveReason(room.plan.id(), reason, null), null);
  }

  private void setUpDone(Fact.Done f, Job job, Board board) {
    Section section = job.item.section();
    boolean all = all(f.room(), board, true);
    switch (styles.get(f.room())) {
      case EACH_ITEM -> tell(f.at() + dice.waiting(0.4, "tell " + job.name()), f, "station");
      case EACH_SECTION -> {
        if (board.swept.contains(section)) {
          tell(f.at() + dice.waiting(0.6, "tell " + job.name()), f, "station");
        } else if (all || allOf(f.room(), board, section)) {
          sweep(f.at(), f.room(), section);
        }
      }
      case AT_END -> {
        if (all) {
          everything(f.at() + MINUTE, f.room());
        }
      }
      case NEVER, ONCE -> {
        return;
      }
    }
    if (all && !board.ready) {
      ready(f.at() + MINUTE, f.room());
    }
  }

  private void trackDone(Fact.Done f, Job job, Board board) {
    Section section = job.item.section();
    Style style = styles.get(f.room());
    if (style == Style.EACH_ITEM) {
      tell(f.at() + dice.waiting(0.6, "tell " + job.name()), f, "station");
    } else if (style != Style.ONCE && style != Style.NEVER && allOf(f.room(), board, section)) {
      sweep(f.at(), f.room(), section);
    }
  }

  /** The room that reports once says all that is done 15 minutes before its target. */
  private void tellOnce(long now) {
    for (Theatre room : world.rooms.values()) {
      Board board = boards.get(room.id);
      long at = room.plan.bookedAt() - ONCE_BEFORE;
      if (styles.get(room.id) == Style.ONCE && !board.onceOver && now >= at) {
        board.onceOver = true;
        everything(at, room.id);
        if (all(room.id, board, true)) {
          ready(at + MINUTE, room.id);
        }
      }
    }
  }

  private boolean speaks(RoomId room, long at) {
    return styles.get(room) != Style.ONCE
        || at >= world.rooms.get(room).plan.bookedAt() - ONCE_BEFORE;
  }

  private void everything(long at, RoomId room) {
    Board board = boards.get(room);
    long time = at;
    for (Section section : Section.values()) {
      boolean any =
          world.rooms.get(room).jobs.stream()
              .anyMatch(
                  j ->
                      j.item.section() == section
                          && board.done.contains(j.ref)
                          && !board.told.contains(j.ref));
      boolean track = section == Section.ROOM || section == Section.INSTRUMENTS;
      if (any && (section.isSetUp() || track)) {
        time = sweep(time, room, section);
      }
    }
  }

  private long sweep(long at, RoomId room, Section section) {
    Board board = boards.get(room);
    long time = at + 10 * SECOND;
    List<ItemRef> open = new ArrayList<>();
    List<ItemRef> swept = new ArrayList<>();
    PersonId by = null;
    for (Job job : world.rooms.get(room).jobs) {
      if (job.item.section() != section || board.told.contains(job.ref)) {
        continue;
      }
      if (!board.done.contains(job.ref)) {
        open.add(job.ref);
      } else if (Proof.needsNone(job.item.evidence())) {
        swept.add(job.ref);
        by = by == null ? first(board.by.get(job.ref)) : by;
      } else {
        good(time, job, "station");
        time += TOUCH;
      }
    }
    board.swept.add(section);
    if (swept.isEmpty()) {
      return time;
    }
    swept.forEach(ref -> told(board, ref));
    station(time, room, by, new Command.Sweep(room, section, open, by), null);
    return time + TOUCH;
  }

  private void tell(long at, Fact.Done f, String page) {
    good(at, jobOf(f.room(), f.item()), page);
  }

  private void good(long at, Job job, String page) {
    Board board = boards.get(job.room.id);
    List<PersonId> hands = board.by.getOrDefault(job.ref, List.of());
    UnitId unit =
        job.item.uses().isEmpty()
            ? null
            : units.getOrDefault(job.room.id, Map.of()).get(job.item.uses().get(0).kind());
    PersonId by = first(hands);
    PersonId witness = hands.size() > 1 ? hands.get(1) : witnessFor(job, by);
    Double shown = story.shown(job.room.id, job.item.key());
    Command good =
        new Command.Good(
            job.ref,
            Proof.of(job, dice, unit, shown),
            by,
            job.item.evidence().witness() ? witness : null);
    told(board, job.ref);
    reports.add(report(at, page, job.room.id, by, good, null));
  }

  /** A second signature is given by whoever of the plan is about: the room's own, or anyone. */
  private PersonId witnessFor(Job job, PersonId by) {
    return world.workers.stream()
        .filter(w -> w.id != null && !w.id.equals(by) && w.serves(job.room.id))
        .map(w -> w.id)
        .findFirst()
        .orElse(null);
  }

  private void ready(long at, RoomId room) {
    boards.get(room).ready = true;
    PersonId by =
        world.rooms.get(room).own.stream()
            .filter(w -> w.role == Role.ANAESTHETIST)
            .map(w -> w.id)
            .findFirst()
            .orElse(null);
    station(at, room, by, new Command.ReportReady(room), null);
  }

  private boolean all(RoomId room, Board board, boolean setUp) {
    return world.rooms.get(room).jobs.stream()
        .filter(j -> j.item.section().isSetUp() == setUp && j.item.gates() != null)
        .allMatch(j -> board.done.contains(j.ref));
  }

  private boolean allOf(RoomId room, Board board, Section section) {
    return world.rooms.get(room).jobs.stream()
        .filter(j -> j.item.section() == section)
        .allMatch(j -> board.done.contains(j.ref));
  }

  private static void told(Board board, ItemRef ref) {
    board.told.add(ref);
  }

  private Job jobOf(RoomId room, ItemRef ref) {
    return world.rooms.get(room).byKey.get(ref.key());
  }

  private String kindOf(UnitId unit) {
    return world.units.stream()
        .filter(u -> u.plan.id().equals(unit))
        .map(u -> u.plan.kind())
        .findFirst()
        .orElse(null);
  }

  private static PersonId first(List<PersonId> people) {
    return people == null || people.isEmpty() ? null : people.get(0);
  }

  private void station(long at, RoomId room, PersonId person, Command command, String shown) {
    reports.add(report(at, "station", room, person, command, shown));
  }

  private void desk(long at, Command command, String shown) {
    reports.add(report(at, "desk", null, null, command, shown));
  }

  private static Report report(
      long at, String page, RoomId room, PersonId person, Command command, String shown) {
    String screen =
        switch (page) {
          case "desk" -> DeskNotes.SCREEN;
          case "holding" -> "rehearsal-holding";
          default -> "station-" + room + ".rehearsal";
        };
    return new Report(at, page, screen, person, command, shown);
  }
}
