package sunup.outlook;

import static sunup.outlook.FirstSettings.MINUTE;

import java.util.HashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import sunup.board.Morning;
import sunup.board.Morning.CaseDay;
import sunup.board.Morning.RoomDay;
import sunup.board.Morning.Taken;
import sunup.board.RoomId;
import sunup.board.Section;
import sunup.board.SiteSettings;
import sunup.board.Step;
import sunup.forecast.Forecast;
import sunup.forecast.Forecast.RoomOut;
import sunup.forecast.Forecast.Share;
import sunup.outlook.Judged.RoomJudged;
import sunup.wire.Part;
import sunup.wire.Part.NeedPart;
import sunup.wire.Part.RoomPart;
import sunup.wire.Part.SuitePart;
import sunup.wire.Standing;

/** The parts that the wall may have: nothing about a patient. */
final class WallParts {
  private final Snapshot snapshot;
  private final Morning morning;
  private final Judged judged;
  private final long now;
  private final Long figuresOf;
  private final boolean computed;
  private final Map<String, RoomOut> figures = new HashMap<>();

  WallParts(Snapshot snapshot, Foretold foretold, Judged judged) {
    Forecast forecast = foretold.forecast();
    this.figuresOf = foretold.old() && forecast != null ? forecast.now() : null;
    this.computed = forecast != null;
    this.snapshot = snapshot;
    this.morning = snapshot.morning();
    this.judged = judged;
    this.now = snapshot.now();
    if (forecast != null) {
      for (RoomOut room : forecast.rooms()) {
        figures.put(room.id(), room);
      }
    }
  }

  void addTo(List<Part> parts) {
    parts.add(suite());
    if (morning.phase() == Morning.Phase.NONE) {
      return;
    }
    int order = 0;
    for (RoomId id : morning.rooms().keySet()) {
      parts.add(room(id, order++));
    }
    int rank = 0;
    for (String id : judged.needs()) {
      // A call that nobody has answered is never left out.
      if (rank < FirstSettings.NEEDS_AT_MOST || help(id)) {
        parts.add(need(id, rank++));
      }
    }
  }

  private SuitePart suite() {
    SiteSettings settings = morning.settings();
    String phase = morning.phase().name().toLowerCase(Locale.ROOT);
    if (settings == null) {
      return new SuitePart(
          "suite", "", "", "", "UTC", phase, Step.INDUCTION, 0, null, 0, 0, 0, null, false, null);
    }
    int cases = 0;
    int onTime = 0;
    int started = 0;
    int quiet = 0;
    for (RoomId id : morning.rooms().keySet()) {
      RoomJudged room = judged.rooms().get(id.value());
      if (room == null || room.standing() == Standing.NONE) {
        continue;
      }
      cases++;
      started += room.standing() == Standing.STARTED ? 1 : 0;
      onTime += looksOnTime(room) ? 1 : 0;
      quiet += room.unheard() ? 1 : 0;
    }
    return new SuitePart(
        "suite",
        settings.hospital(),
        settings.suiteName(),
        morning.id().date().toString(),
        settings.zone(),
        phase,
        settings.startEvent(),
        settings.graceMinutes(),
        horizon(),
        cases,
        computed || isClosed() || started == cases ? onTime : null,
        quiet,
        figuresOf,
        settings.demo(),
        settings.style());
  }

  /** Then nothing is computed any more; what counts is what has started. */
  private boolean isClosed() {
    return morning.phase() == Morning.Phase.CLOSED;
  }

  private boolean looksOnTime(RoomJudged room) {
    return switch (room.standing()) {
      case READY, AHEAD, AGREED -> !isClosed();
      case STARTED -> room.lateMinutes() <= morning.settings().graceMinutes();
      default -> false;
    };
  }

  /** The target that most rooms have; the earliest of those if several do. */
  private Long horizon() {
    Map<Long, Integer> count = new HashMap<>();
    for (CaseDay c : morning.cases().values()) {
      if (!c.cancelled()) {
        count.merge(c.target(), 1, Integer::sum);
      }
    }
    Long best = null;
    for (Map.Entry<Long, Integer> e : count.entrySet()) {
      boolean better =
          best == null
              || e.getValue() > count.get(best)
              || (e.getValue().equals(count.get(best)) && e.getKey() < best);
      best = better ? e.getKey() : best;
    }
    return best;
  }

  private RoomPart room(RoomId id, int order) {
    RoomDay room = morning.rooms().get(id);
    RoomSheet sheet = snapshot.sheets().get(id);
    RoomOut figure = figures.get(id.value());
    RoomJudged said = judged.of(id.value());
    boolean shown = sheet != null && figure != null && sheet.startedAt() == null;
    return new RoomPart(
        "room/" + id,
        id.value(),
        order,
        sheet == null ? null : sheet.target(),
        sheet != null && sheet.caseDay().agreedAt() != null,
        said.standing(),
        shown ? whole(figure.could10()) : null,
        shown ? whole(figure.could50()) : null,
        shown ? whole(figure.could90()) : null,
        shown ? said.startShown(now) : null,
        said.lateMinutes(),
        said.orMore(),
        word(sheet, said),
        sheet == null ? null : sheet.startedAt(),
        (sheet != null && sheet.isStartInferred()) ? Boolean.TRUE : null,
        room.lastWordAt(),
        room.readyAt(),
        room.readyBy(),
        room.readyOpen() == null ? 0 : room.readyOpen().size(),
        room.use(),
        room.useUntil(),
        room.revision());
  }

  /** Half minutes are enough for a lens and keep frames few. */
  private static Long whole(long at) {
    return Math.round(at / 30_000.0) * 30_000;
  }

  private String word(RoomSheet sheet, RoomJudged said) {
    Words words = new Words(snapshot);
    return switch (said.standing()) {
      case STARTED -> (sheet.isStartInferred() ? "by " : "in ") + words.clock(sheet.startedAt());
      case UNHEARD -> sheet.isOverrun() ? use(sheet) + "?" : "no word";
      case AGREED -> words.clock(sheet.target());
      case NONE -> "no case";
      case NO_FIGURES -> "no figures";
      default -> said.standing().name().toLowerCase(Locale.ROOT);
    };
  }

  private static String use(RoomSheet sheet) {
    return switch (sheet.room().use()) {
      case CLEANING -> "cleaning";
      case EMERGENCY -> "emergency";
      case OCCUPIED, FREE -> "in use";
    };
  }

  private NeedPart need(String id, int rank) {
    RoomId room = new RoomId(id);
    RoomDay day = morning.rooms().get(room);
    RoomJudged said = judged.rooms().get(id);
    Words words = new Words(snapshot);
    String text = words(id, said, words);
    String holdup = holdup(id, said, words);
    Taken taken = day.taken();
    boolean current =
        taken != null
            && taken.holdup().equals(holdup)
            && (taken.lookAgainAt() == null || taken.lookAgainAt() > now - 5 * MINUTE);
    return new NeedPart(
        "need/" + id,
        rank,
        id,
        kind(said),
        said.lateMinutes(),
        said.orMore(),
        said.saveable(),
        text,
        holdup,
        help(id),
        current ? taken.by() : null,
        current ? taken.lookAgainAt() : null);
  }

  private static String kind(RoomJudged said) {
    return switch (said.standing()) {
      case STUCK -> "stuck";
      case LATE -> "late";
      case TIGHT -> "tight";
      default -> said.ask() ? "ask" : "help";
    };
  }

  private boolean help(String id) {
    Morning.Help help = morning.rooms().get(new RoomId(id)).help();
    return help != null && help.answeredBy() == null;
  }

  /**
   * What holds the room up most, of what somebody could still change: not that too little was
   * planned, not who is not due yet, and the steps of the start itself only if nothing else is
   * worth a word.
   */
  private Share first(String id) {
    RoomOut figure = figures.get(id);
    if (figure == null || figure.holdups().isEmpty()) {
      return null;
    }
    Share due = null;
    for (Share share : figure.holdups()) {
      if (share.kind().equals("plan") || isNotDue(id, share)) {
        continue;
      }
      due = due == null ? share : due;
      if (share.share() >= FirstSettings.TOLD_SHARE && !isStep(id, share)) {
        return share;
      }
    }
    return due == null ? figure.holdups().get(0) : due;
  }

  /** Who comes by himself later than now, by plan, is no news. */
  private boolean isNotDue(String id, Share share) {
    RoomSheet sheet = snapshot.sheet(id);
    RoomSheet.Line line = sheet == null ? null : sheet.line(share.item());
    return share.kind().equals("arrival")
        && share.thing() == null
        && line != null
        && line.asks().isArrival()
        && line.item().expectedAt() == null
        && now < sheet.target() - line.asks().plannedBefore() * MINUTE;
  }

  private boolean isStep(String id, Share share) {
    RoomSheet sheet = snapshot.sheet(id);
    RoomSheet.Line line = sheet == null ? null : sheet.line(share.item());
    return share.kind().equals("work") && line != null && line.asks().section() == Section.START;
  }

  private String words(String id, RoomJudged said, Words words) {
    RoomSheet sheet = snapshot.sheet(id);
    if (said.standing() == Standing.STUCK && sheet.untakenFault() != null) {
      return words.fault(sheet.untakenFault(), sheet.untakenFault().asks().wall(), true);
    }
    if (kind(said).equals("ask") && sheet.isOverrun()) {
      return use(sheet) + " until " + words.clock(sheet.room().useUntil()) + ": still?";
    }
    if (said.ask() && said.standing() == Standing.UNHEARD) {
      Long word = sheet.room().lastWordAt();
      return word == null ? "no word yet" : "no word since " + words.clock(word);
    }
    if (help(id) && said.standing() != Standing.LATE && said.standing() != Standing.TIGHT) {
      return "asks for someone, not urgent";
    }
    Share share = first(id);
    return share == null ? "several small things" : words.wall(share);
  }

  private String holdup(String id, RoomJudged said, Words words) {
    if (said.standing() == Standing.STUCK) {
      RoomSheet sheet = snapshot.sheet(id);
      return Words.key("mend", sheet.untakenFault().asks().key());
    }
    if (kind(said).equals("ask")) {
      return "ask";
    }
    Share share = first(id);
    return share == null ? "room" : words.key(share);
  }
}
