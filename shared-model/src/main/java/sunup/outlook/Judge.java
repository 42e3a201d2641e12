package sunup.outlook;

import static sunup.outlook.FirstSettings.MINUTE;

import java.util.ArrayList;
import java.util.Comparator;
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
  private final boolean event;

  Judge(Judged before, Snapshot snapshot, Foretold foretold) {
    this.before = before;
    this.snapshot = snapshot;
    this.morning = snapshot.morning();
    this.now = snapshot.now();
    this.event = before.seq() != morning.seq();
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
    List<String> needs = needs(rooms);
    boolean sorted = !needs.equals(before.needs());
    return new Judged(
        rooms,
        needs,
        sorted || before.sortedAt() == Long.MIN_VALUE ? now : before.sortedAt(),
        morning.seq());
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
    int late = lateMinutes(sheet, figure, standing, told);
    boolean orMore = late > 0 && sheet.startedAt() == null && told.moreThanHours() != null;
    int saveable =
        figure == null ? 0 : (int) Math.round(late * Math.max(0, 1 - figure.alreadyLost()));
    boolean unsaid = standing == Standing.UNHEARD || isUnsaid(sheet);
    boolean ask = sheet.startedAt() == null && unsaid && isTimeToAsk(sheet, figure);
    return steady(last, new RoomJudged(standing, late, orMore, saveable, ask, null));
  }

  private RoomJudged steady(RoomJudged last, RoomJudged fresh) {
    if (last == null || event || last.standing() != fresh.standing()) {
      return fresh;
    }
    if (Math.abs(fresh.lateMinutes() - last.lateMinutes()) < FirstSettings.SHOWN_CHANGE) {
      return kept(last, fresh, null);
    }
    long since = last.differsSince() == null ? now : last.differsSince();
    if (now - since >= FirstSettings.SHOWN_FOR) {
      return fresh;
    }
    return kept(last, fresh, since);
  }

  private static RoomJudged kept(RoomJudged last, RoomJudged fresh, Long since) {
    return new RoomJudged(
        last.standing(), last.lateMinutes(), last.orMore(), last.saveable(), fresh.ask(), since);
  }

  private Standing standing(RoomSheet sheet, RoomOut figure, Standing last) {
    if (sheet.startedAt() != null) {
      return Standing.STARTED;
    }
    if (sheet.untakenFault() != null) {
      return Standing.STUCK;
    }
    List<Line> open = sheet.openForStart();
    boolean silent = isSilent(sheet, open);
    if (figure == null) {
      return silent ? Standing.UNHEARD : Standing.NO_FIGURES;
    }
    Standing byFigures = byFigures(sheet, figure, open, last);
    boolean neverHeard =
        isOpen()
            && sheet.room().lastWordAt() == null
            && sheet.room().readyAt() == null
            && hasOpenSetUp(open);
    boolean late = byFigures == Standing.LATE || byFigures == Standing.TIGHT;
    if (!silent && !neverHeard) {
      return late && isUnsaid(sheet) && occupiedShare(figure) >= FirstSettings.KNOWN_CAUSE
          ? Standing.UNHEARD
          : byFigures;
    }
    double cause = neverHeard ? FirstSettings.ONLY_CAUSE : FirstSettings.KNOWN_CAUSE;
    if (late && knownShare(sheet, figure) >= cause) {
      return byFigures;
    }
    if (silent) {
      return Standing.UNHEARD;
    }
    return late ? Standing.AHEAD : byFigures;
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
    if (open.isEmpty()) {
      return Standing.READY;
    }
    return sheet.caseDay().agreedAt() != null ? Standing.AGREED : Standing.AHEAD;
  }

  /**
   * Nobody heard since the planned beginning, or gone quiet with set-up work open. A room that
   * reported itself ready is not silent, whatever single touches are missing.
   */
  private boolean isSilent(RoomSheet sheet, List<Line> open) {
    if (!isOpen() || sheet.room().readyAt() != null || !hasOpenSetUp(open)) {
      return false;
    }
    Long word = sheet.room().lastWordAt();
    if (word == null) {
      return now >= morning.beginsAt() + FirstSettings.FIRST_WORD_WITHIN;
    }
    return now - word >= FirstSettings.QUIET_AFTER && !hasWorkInHand(open);
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
        return now - begun < 2 * FirstSettings.QUIET_AFTER;
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
      case "place", "equipment", "mend" -> true;
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

  private int lateMinutes(RoomSheet sheet, RoomOut figure, Standing standing, StartTold told) {
    if (sheet.startedAt() != null) {
      return (int) Math.max(0, (sheet.startedAt() - sheet.target()) / MINUTE);
    }
    if (figure == null) {
      return 0;
    }
    if (standing == Standing.LATE || standing == Standing.STUCK) {
      return told.lateMinutes();
    }
    if (standing == Standing.TIGHT) {
      return (int) Math.max(1, Math.round(figure.meanLateMs() / MINUTE));
    }
    return 0;
  }

  private List<String> needs(Map<String, RoomJudged> rooms) {
    List<String> wanted = new ArrayList<>();
    rooms.forEach(
        (id, room) -> {
          if (needsSomeone(id, room) || asksForHelp(id)) {
            wanted.add(id);
          }
        });
    List<String> kept = new ArrayList<>(before.needs());
    kept.retainAll(wanted);
    boolean due = now - before.sortedAt() >= FirstSettings.SORT_EVERY || before.sortedAt() > now;
    if (!due && kept.size() == before.needs().size()) {
      for (String id : wanted) {
        if (!kept.contains(id)) {
          kept.add(id);
        }
      }
      return List.copyOf(kept);
    }
    wanted.sort(
        Comparator.comparingInt((String id) -> -weight(rooms.get(id), id))
            .thenComparing(id -> order(id)));
    return List.copyOf(wanted);
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

  private int order(String id) {
    return new ArrayList<>(morning.rooms().keySet()).indexOf(new RoomId(id));
  }
}
