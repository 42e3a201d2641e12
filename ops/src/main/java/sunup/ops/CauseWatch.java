package sunup.ops;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.SortedSet;
import java.util.TreeMap;
import java.util.TreeSet;
import sunup.access.Page;
import sunup.board.Actor;
import sunup.board.Board;
import sunup.board.Command;
import sunup.board.CommandId;
import sunup.board.Morning;
import sunup.board.MorningPlan;
import sunup.board.Order;
import sunup.board.Outcome;
import sunup.board.Recorded;
import sunup.board.Role;
import sunup.board.RoomId;
import sunup.forecast.BadInput;
import sunup.forecast.Forecaster;
import sunup.ops.rehearsal.Report;
import sunup.ops.rehearsal.Script;
import sunup.outlook.Foretold;
import sunup.outlook.Judged;
import sunup.outlook.Outlook;
import sunup.wire.Part;

/**
 * Plays a script into the board's own rules, forecast and outlook, without sockets, and notes when
 * each cause shows.
 */
final class CauseWatch {
  /**
   * What showed of a cause.
   *
   * @param room which of its rooms, or null if it did not show in time
   * @param by when it had to show, or null if what it hangs on never happened
   * @param since from when on, without a break up to then, the desk had a sign of it
   * @param words of the sign by then
   * @param wall as the wall says it, or null if it was not among its five by then
   * @param lines how many signs the desk had by then
   */
  record Shown(
      Causes.Cause cause, RoomId room, Long by, Long since, String words, String wall, int lines) {}

  /** What the board shows of one room at one moment. */
  private record Seen(List<String> signs, String wall, int lines) {
    /** What is said of the cause, or null. */
    String sign(Causes.Cause cause) {
      return signs.stream().filter(s -> cause.words().matcher(s).find()).findFirst().orElse(null);
    }
  }

  private final MorningPlan plan;
  private final Script script;
  private final int trials;
  private final TreeMap<Long, Map<String, Seen>> seen = new TreeMap<>();
  private Morning morning = Morning.NONE;
  private Judged judged = Judged.NOTHING;
  private int commands;

  CauseWatch(MorningPlan plan, Script script, int trials) {
    this.plan = plan;
    this.script = script;
    this.trials = trials;
  }

  /**
   * Looks at the board every so often up to the last moment that matters, and at each moment by
   * which a cause is to show.
   */
  List<Shown> watch(List<Causes.Cause> causes, long every) {
    SortedSet<Long> moments = new TreeSet<>();
    for (Causes.Cause c : causes) {
      Long by = c.by(plan, script);
      if (by != null) {
        moments.add(by);
      }
    }
    for (long at = plan.beginsAt(); at < moments.last(); at += every) {
      moments.add(at);
    }
    play(moments);
    return causes.stream().map(this::shown).toList();
  }

  private void play(SortedSet<Long> moments) {
    Actor desk = new Actor(Role.DESK, null, "desk");
    give(new Command.Plan(plan), desk, plan.beginsAt());
    give(new Command.OpenMorning(), desk, plan.beginsAt());
    int next = 0;
    for (long now : moments) {
      while (next < script.reports().size() && script.reports().get(next).at() <= now) {
        Report r = script.reports().get(next++);
        Actor actor = Page.named(r.page()).orElseThrow().actor(r.screen(), r.person(), morning);
        give(r.command(), actor, r.at());
      }
      look(now);
    }
  }

  private void give(Command command, Actor actor, long at) {
    CommandId id = new CommandId("c" + ++commands);
    Outcome outcome = Board.decide(morning, new Order(id, command, actor, morning.seq(), at, at));
    if (outcome instanceof Outcome.Refused no) {
      throw new IllegalStateException(actor + " " + command + ": " + no.code().say(no.detail()));
    }
    for (Recorded event : ((Outcome.Accepted) outcome).events()) {
      morning = Board.apply(morning, morning.seq() + 1, event);
    }
  }

  private void look(long now) {
    Foretold figures;
    try {
      figures =
          new Foretold(Forecaster.run(Outlook.input(morning, now, trials)), morning.seq(), false);
    } catch (BadInput e) {
      throw new IllegalStateException(e);
    }
    judged = Outlook.judge(judged, morning, figures, now);
    Map<String, List<String>> signs = new HashMap<>();
    Map<String, String> wall = new HashMap<>();
    int lines = 0;
    for (Part part : Outlook.parts(morning, figures, judged, now)) {
      if (part instanceof Part.SignPart s) {
        lines++;
        s.rooms().forEach(r -> signs.computeIfAbsent(r, x -> new ArrayList<>()).add(s.words()));
      } else if (part instanceof Part.NeedPart n) {
        wall.put(n.room(), n.words());
      }
    }
    Map<String, Seen> rooms = new HashMap<>();
    for (RoomId room : plan.rooms()) {
      String id = room.value();
      rooms.put(id, new Seen(signs.getOrDefault(id, List.of()), wall.get(id), lines));
    }
    seen.put(now, rooms);
  }

  private Shown shown(Causes.Cause cause) {
    Long by = cause.by(plan, script);
    Shown best = new Shown(cause, null, by, null, null, null, 0);
    for (RoomId room : by == null ? List.<RoomId>of() : cause.rooms()) {
      Shown one = shownIn(cause, room, by);
      boolean none = best.since() == null;
      if (none || (one.since() != null && one.since() < best.since())) {
        best = one;
      }
    }
    return best;
  }

  /** Backwards from the moment by which it must show, as long as it shows. */
  private Shown shownIn(Causes.Cause cause, RoomId room, long by) {
    Long since = null;
    String words = null;
    String wall = null;
    int lines = 0;
    for (Map.Entry<Long, Map<String, Seen>> e : seen.headMap(by, true).descendingMap().entrySet()) {
      Seen s = e.getValue().get(room.value());
      lines = lines == 0 ? s.lines() : lines;
      String sign = s.sign(cause);
      if (sign == null) {
        break;
      }
      since = e.getKey();
      words = words == null ? sign : words;
      wall = wall == null ? s.wall() : wall;
    }
    return new Shown(cause, since == null ? null : room, by, since, words, wall, lines);
  }
}
