package sunup.outlook;

import static sunup.outlook.FirstSettings.MINUTE;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import sunup.board.ItemState;
import sunup.board.Morning;
import sunup.board.RoomId;
import sunup.board.Section;
import sunup.forecast.Forecast.ItemOut;
import sunup.forecast.Forecast.RoomOut;
import sunup.forecast.Forecast.Share;
import sunup.outlook.Judged.RoomJudged;
import sunup.outlook.RoomSheet.Line;
import sunup.wire.Standing;

/**
 * Standings with memory. Three things it keeps to: silence is never called late and never ready; a
 * standing changes only past a dead band; a shown figure changes by an event, or by three minutes
 * for a minute.
 */
final class Judge {
  private final Judged before;
  private final Snapshot snapshot;
  private final Morning morning;
  private final Map<String, RoomOut> figures = new LinkedHashMap<>();
  private final long now;
  private final Foretold foretold;
  private final long sortEvery;

  /**
   * @param sortEvery least time between two sorts of the needs, in the morning's milliseconds
   */
  Judge(Judged before, Snapshot snapshot, Foretold foretold, long sortEvery) {
    this.before = before;
    this.sortEvery = sortEvery;
    this.snapshot = snapshot;
    this.morning = snapshot.morning();
    this.now = snapshot.now();
    this.foretold = foretold;
    if (foretold.forecast() != null) {
      for (RoomOut room : foretold.forecast().rooms()) {
        figures.put(room.id(), room);
      }
    }
  }

  Judged judge() {
    Map<String, RoomJudged> rooms = new LinkedHashMap<>();
    for (RoomId id : morning.rooms().keySet()) {
      rooms.put(id.value(), room(id));
    }
    NeedsOrder needs = needs(rooms);
    return new Judged(rooms, needs.ids(), needs.sortedAt());
  }

  private RoomJudged room(RoomId id) {
    RoomSheet sheet = snapshot.sheets().get(id);
    if (sheet == null) {
      return RoomJudged.NO_CASE;
    }
    RoomOut figure = figures.get(id.value());
    RoomJudged last = before.rooms().get(id.value());
    Standing standing = standing(sheet, figure, last == null ? null : last.standing());
    StartTold told = StartTold.of(sheet, figure, standing, now);
    int late = lateMinutes(sheet, standing, told);
    boolean orMore = late > 0 && sheet.startedAt() == null && told.moreThanHours() != null;
    boolean unheard = isUnheard(sheet, sheet.openForStart());
    boolean quiet = standing == Standing.UNHEARD && (!unheard || isDueAWord(sheet));
    boolean unsaid = quiet || isUnsaid(sheet);
    boolean ask = sheet.startedAt() == null && unsaid && isTimeToAsk(sheet, figure);
    long revision = RoomRevision.of(morning, sheet);
    RoomJudged fresh =
        new RoomJudged(
            standing,
            late,
            told.at50(),
            orMore,
            saveable(figure, standing),
            ask,
            unheard,
            null,
            Math.min(revision, foretold.of()),
            foretold.forecast() == null ? 0 : foretold.forecast().now(),
            WaitsFor.NOBODY);
    RoomJudged shown = steady(last, fresh, revision);
    WaitsFor waited = last == null ? WaitsFor.NOBODY : last.waitsFor();
    boolean atOnce = shown.figuresOf() == fresh.figuresOf();
    return shown.with(waited.then(figure, shown.standing(), atOnce, now));
  }

  /** Of the expected minutes, which the shares are shares of; not of the shown median. */
  private static int saveable(RoomOut figure, Standing standing) {
    boolean below =
        standing == Standing.LATE || standing == Standing.TIGHT || standing == Standing.STUCK;
    if (figure == null || !below) {
      return 0;
    }
    return (int) Math.round(figure.meanLateMs() / MINUTE * Math.max(0, 1 - figure.alreadyLost()));
  }

  /** What happened to the room shows at once, when the figures have it; a wobble waits. */
  private RoomJudged steady(RoomJudged last, RoomJudged fresh, long revision) {
    boolean counted = revision <= foretold.of();
    boolean event =
        counted && (last == null || revision > last.revision() || refines(last.figuresOf()));
    boolean told = last == null || last.standing() != fresh.standing();
    if (told || event || fresh.standing() == Standing.STARTED) {
      return fresh;
    }
    if (!differs(last, fresh)) {
      return kept(last, fresh, null);
    }
    long since = last.differsSince() == null ? now : last.differsSince();
    if (now - since >= FirstSettings.SHOWN_FOR) {
      return fresh;
    }
    return kept(last, fresh, since);
  }

  /** True if what is computed now is another figure than the shown ones, not their wobble. */
  private boolean differs(RoomJudged last, RoomJudged fresh) {
    if (Math.abs(fresh.lateMinutes() - last.lateMinutes()) >= FirstSettings.SHOWN_CHANGE) {
      return true;
    }
    Long was = last.startShown(now);
    Long is = fresh.at50();
    if (was == null || is == null) {
      return (was == null) != (is == null);
    }
    return Math.abs(is - was) >= FirstSettings.SHOWN_CHANGE * MINUTE;
  }

  /** True if the figures are more trials of the moment that the shown one is of. */
  private boolean refines(long figuresOf) {
    return foretold.forecast() != null && foretold.forecast().now() == figuresOf;
  }

  private static RoomJudged kept(RoomJudged last, RoomJudged fresh, Long since) {
    return new RoomJudged(
        last.standing(),
        last.lateMinutes(),
        last.at50(),
        last.orMore(),
        last.saveable(),
        fresh.ask(),
        fresh.unheard(),
        since,
        last.revision(),
        last.figuresOf(),
        last.waitsFor());
  }

  private Standing standing(RoomSheet sheet, RoomOut figure, Standing last) {
    if (sheet.startedAt() != null) {
      return Standing.STARTED;
    }
    if (sheet.untakenFault() != null) {
      return Standing.STUCK;
    }
    List<Line> open = sheet.openForStart();
    boolean unheard = isUnheard(sheet, open);
    if (figure == null) {
      return unheard && isDueAWord(sheet) ? Standing.UNHEARD : Standing.NO_FIGURES;
    }
    Standing byFigures = byFigures(sheet, figure, open, last);
    boolean late = byFigures == Standing.LATE || byFigures == Standing.TIGHT;
    if (unheard) {
      boolean never = sheet.room().lastWordAt() == null;
      double cause = never ? FirstSettings.ONLY_CAUSE : FirstSettings.KNOWN_CAUSE;
      return late && knownShare(sheet, figure) >= cause ? byFigures : Standing.UNHEARD;
    }
    return late && isUnsaid(sheet) && occupiedShare(figure) >= FirstSettings.KNOWN_CAUSE
        ? Standing.UNHEARD
        : byFigures;
  }

  private Standing byFigures(RoomSheet sheet, RoomOut figure, List<Line> open, Standing last) {
    double onTime = figure.onTime();
    boolean wasLate = last == Standing.LATE;
    boolean wasTight = last == Standing.TIGHT || wasLate;
    if (onTime < (wasLate ? FirstSettings.LATE_LEAVE : FirstSettings.LATE_ENTER)) {
      return Standing.LATE;
    }
    if (onTime < (wasTight ? FirstSettings.TIGHT_LEAVE : FirstSettings.TIGHT_ENTER)) {
      return Standing.TIGHT;
    }
    if (open.isEmpty() && sheet.room().readyAt() != null) {
      return Standing.READY;
    }
    return sheet.caseDay().agreedAt() != null ? Standing.AGREED : Standing.AHEAD;
  }

  /**
   * Nobody heard yet, or gone quiet with set-up work open. A room that reported itself ready is not
   * silent, whatever single touches are missing.
   */
  private boolean isUnheard(RoomSheet sheet, List<Line> open) {
    boolean done = sheet.startedAt() != null || sheet.room().readyAt() != null;
    if (!isOpen() || done || !hasOpenSetUp(open)) {
      return false;
    }
    Long word = sheet.room().lastWordAt();
    return word == null || (now - word >= FirstSettings.QUIET_AFTER && !hasWorkInHand(open));
  }

  /** Before the planned beginning, and shortly after it, nobody is missed. */
  private boolean isDueAWord(RoomSheet sheet) {
    return sheet.room().lastWordAt() != null
        || now >= morning.beginsAt() + FirstSettings.FIRST_WORD_WITHIN;
  }

  /** Nobody said that the room's use goes on past its end; that is to be asked, not to be known. */
  private boolean isUnsaid(RoomSheet sheet) {
    return isOpen() && sheet.isOverrun();
  }

  /** Nobody reports to a draft, and a closed morning is over. */
  private boolean isOpen() {
    return morning.phase() == Morning.Phase.OPEN;
  }

  private static boolean hasOpenSetUp(List<Line> open) {
    return open.stream().anyMatch(line -> line.asks().section().isSetUp());
  }

  private boolean hasWorkInHand(List<Line> open) {
    for (Line line : open) {
      if (line.state() == ItemState.IN_HAND && line.asks().section().isSetUp()) {
        long begun = line.item().begunAt() != null ? line.item().begunAt() : line.item().since();
        if (now - begun < 2 * FirstSettings.QUIET_AFTER) {
          return true;
        }
      }
    }
    return false;
  }

  /** The share of the late minutes that something else than the room's silent people explains. */
  private double knownShare(RoomSheet sheet, RoomOut figure) {
    double known = 0;
    for (Share share : figure.holdups()) {
      known += isKnown(sheet, share) ? share.share() : 0;
    }
    return known;
  }

  private static double occupiedShare(RoomOut figure) {
    double sum = 0;
    for (Share share : figure.holdups()) {
      sum += share.kind().equals("occupied") ? share.share() : 0;
    }
    return sum;
  }

  private boolean isKnown(RoomSheet sheet, Share share) {
    if (share.where() != null && !share.where().equals(share.room())) {
      return true;
    }
    Line line = sheet.line(share.item());
    return switch (share.kind()) {
      case "place", "equipment" -> true;
      case "mend" -> snapshot.isFault(share);
      case "occupied" -> !sheet.isOverrun();
      case "plan", "not-begun", "person" -> false;
      case "arrival" ->
          share.thing() == null
              && line != null
              && (line.item().expectedAt() != null
                  || (snapshot.isOverdue(sheet.room().id(), line) && isHeard(sheet, line)));
      default ->
          line != null
              && !line.asks().section().isSetUp()
              && line.asks().section() != Section.START
              && isHeard(sheet, line);
    };
  }

  private boolean isHeard(RoomSheet sheet, Line line) {
    return snapshot.isHeard(sheet.room().id(), line.asks().section());
  }

  private boolean isTimeToAsk(RoomSheet sheet, RoomOut figure) {
    if (now >= sheet.target() - FirstSettings.ASK_FROM) {
      return true;
    }
    if (figure == null) {
      return false;
    }
    long last = Long.MAX_VALUE;
    for (ItemOut item : figure.items()) {
      Line line = sheet.line(item.key());
      if (item.last90() != null
          && line != null
          && line.asks().section().isSetUp()
          && !line.isDone()) {
        last = Math.min(last, item.last90());
      }
    }
    return last != Long.MAX_VALUE && now >= last - FirstSettings.ASK_BEFORE_LAST;
  }

  /**
   * The median start, less the target, for all who have a figure: it is the start that desk and
   * station show, and no trial that never ends pulls it. A room that is more likely on time than
   * not has none, and says "tight".
   */
  private int lateMinutes(RoomSheet sheet, Standing standing, StartTold told) {
    if (sheet.startedAt() != null) {
      return (int) Math.max(0, (sheet.startedAt() - sheet.target()) / MINUTE);
    }
    boolean shown =
        standing == Standing.LATE || standing == Standing.TIGHT || standing == Standing.STUCK;
    return shown ? told.lateMinutes() : 0;
  }

  private NeedsOrder needs(Map<String, RoomJudged> rooms) {
    List<String> wanted = new ArrayList<>();
    Map<String, Integer> weights = new HashMap<>();
    rooms.forEach(
        (id, room) -> {
          if (needsSomeone(id, room) || asksForHelp(id)) {
            wanted.add(id);
            weights.put(id, weight(room, id));
          }
        });
    return NeedsOrder.of(before, wanted, weights, rooms, sortEvery, now);
  }

  /** A tight room is one among many an hour ahead; it is listed once somebody can act on it. */
  private boolean needsSomeone(String id, RoomJudged room) {
    return switch (room.standing()) {
      case LATE, STUCK -> true;
      case TIGHT -> now >= snapshot.sheet(id).target() - FirstSettings.ASK_FROM;
      default -> room.ask();
    };
  }

  private boolean asksForHelp(String id) {
    Morning.RoomDay room = morning.rooms().get(new RoomId(id));
    return room.help() != null && room.help().answeredBy() == null;
  }

  /** Worst saveable first: a room lost by 40 minutes that nobody can help stands below one by 8. */
  private int weight(RoomJudged room, String id) {
    int weight = 10 * room.saveable();
    if (room.standing() == Standing.STUCK) {
      weight += 60;
    } else if (room.standing() == Standing.LATE) {
      weight += 5;
    } else if (room.ask()) {
      weight += 20;
    }
    return asksForHelp(id) ? weight + 30 : weight;
  }
}
