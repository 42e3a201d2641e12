package sunup.ops.madeup;

import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashSet;
import java.util.List;
import java.util.PriorityQueue;
import java.util.Queue;
import java.util.Set;
import java.util.SplittableRandom;
import sunup.board.Command;
import sunup.board.LearnedTimes;
import sunup.board.Morning;
import sunup.board.Morning.CaseDay;
import sunup.board.MorningPlan;
import sunup.board.Recorded;
import sunup.board.RoomId;
import sunup.forecast.BadInput;
import sunup.forecast.Forecast;
import sunup.forecast.Forecaster;
import sunup.ops.madeup.MadeMornings.Given;
import sunup.ops.madeup.MadeMornings.Playing;
import sunup.ops.rehearsal.Fact;
import sunup.ops.rehearsal.Report;
import sunup.ops.rehearsal.Script;
import sunup.ops.rehearsal.Story;
import sunup.outlook.Foretold;
import sunup.outlook.Judged;
import sunup.outlook.Outlook;
import sunup.review.facts.BoardSaid;
import sunup.review.facts.Cause;
import sunup.review.facts.ForecastNote;
import sunup.review.facts.NotesDue;

/**
 * Plays made-up mornings before a board: at each of its moments it says what its model says of what
 * was recorded by then and of nothing else, and a desk may act on that. So the forecasts are those
 * that a running board would have kept, but for the standing, which is judged at these moments
 * only.
 */
public final class WatchedMornings {
  private static final long MINUTE = 60_000;

  /** The desk takes a holdup so long after it was said. */
  private static final long DESK_AFTER = 2 * MINUTE;

  /** Of a room with less chance than this the desk takes the largest holdup. */
  private static final double UNLIKELY = 0.5;

  /** After the last of these moments nobody can come sooner any more. */
  private static final int LAST_ACT = 20;

  private final Scenario scenario;
  private final MadeMornings mornings;
  private final int trials;

  /**
   * @param trials of each forecast: a board shows 256 at first, which are the ones that it keeps
   */
  public WatchedMornings(Scenario scenario, int trials) {
    this.scenario = scenario;
    this.mornings = new MadeMornings(scenario);
    this.trials = trials;
  }

  /**
   * A morning with what the board said.
   *
   * @param acts holdups that the desk took by it
   */
  public record Watched(List<Given> given, List<ForecastNote> notes, int acts) {
    /** All of it as a journal has it. */
    public List<Recorded> events() {
      return given.stream().flatMap(one -> one.events().stream()).toList();
    }
  }

  /**
   * The morning that a plan becomes: from its opening to its closing.
   *
   * @param taught what earlier mornings taught, for the opening to freeze; null if nothing
   */
  public Watched play(MorningPlan plan, LearnedTimes taught) {
    return new Watching(plan).play(taught);
  }

  /** One morning. */
  private final class Watching {
    private final MorningPlan plan;
    private final long seed;
    private final boolean deskActs;
    private final Playing playing;
    private final List<ForecastNote> notes = new ArrayList<>();
    private final Set<NotesDue.Key> kept = new HashSet<>();
    private final Set<RoomId> actedOn = new HashSet<>();

    /** What the desk does by itself, in order of time. */
    private final PriorityQueue<Report> acts =
        new PriorityQueue<>(Comparator.comparingLong(Report::at));

    private Story story;
    private Queue<Report> reports;
    private Judged judged = Judged.NOTHING;
    private int taken;

    Watching(MorningPlan plan) {
      this.plan = plan;
      this.seed = mornings.seed(plan);
      this.story = mornings.story(plan, seed);
      this.reports = new ArrayDeque<>(Script.write(plan, story, seed).reports());
      this.playing = new Playing(plan.id().date());
      Scenario.DeskWork desk = scenario.desk();
      this.deskActs =
          desk != null && new SplittableRandom(seed ^ 0x5DEECE66DL).nextDouble() < desk.chance();
    }

    Watched play(LearnedTimes taught) {
      long last = playing.open(plan, taught);
      while (true) {
        Queue<Report> told = next();
        Report next = told.peek();
        long moment = moment(last, next == null ? Long.MAX_VALUE : Math.max(last, next.at()));
        if (moment != Long.MAX_VALUE) {
          say(moment);
          last = moment;
        } else if (next == null) {
          break;
        } else {
          told.remove();
          last = Math.max(last, next.at());
          playing.give(next, last);
        }
      }
      return new Watched(playing.close(last), notes, taken);
    }

    /** Where the next word waits; empty if none does. */
    private Queue<Report> next() {
      Report act = acts.peek();
      Report report = reports.peek();
      return act == null || (report != null && report.at() <= act.at()) ? reports : acts;
    }

    /** The first moment after the last one said and before the next word, or the largest number. */
    private long moment(long last, long before) {
      long first = Long.MAX_VALUE;
      for (CaseDay day : playing.now().cases().values()) {
        for (int minutes : BoardSaid.MOMENTS) {
          long at = day.target() - minutes * MINUTE;
          boolean isNext = at >= last && at < before && at < first && !day.cancelled();
          if (isNext && !kept.contains(key(day, minutes))) {
            first = at;
          }
        }
      }
      return first;
    }

    private NotesDue.Key key(CaseDay day, int minutes) {
      return new NotesDue.Key(plan.id(), day.plan().room(), day.plan().id(), day.target(), minutes);
    }

    private void say(long at) {
      Morning now = playing.now();
      List<ForecastNote> said = List.of();
      try {
        Forecast figures = Forecaster.run(Outlook.input(now, at, trials));
        judged = Outlook.judge(judged, now, new Foretold(figures, now.seq(), false), at);
        said =
            NotesDue.of(
                now,
                figures,
                room ->
                    judged.rooms().containsKey(room) ? judged.rooms().get(room).standing() : null);
      } catch (BadInput e) {
        // A board that can't forecast shows none and keeps none; the moment is over all the same.
      }
      for (CaseDay day : now.cases().values()) {
        BoardSaid.MOMENTS.stream()
            .filter(minutes -> day.target() - minutes * MINUTE == at)
            .forEach(minutes -> kept.add(key(day, minutes)));
      }
      notes.addAll(said);
      if (deskActs) {
        said.forEach(note -> act(note, at + DESK_AFTER));
      }
    }

    private void act(ForecastNote note, long at) {
      boolean inTime = note.target() - note.at() >= LAST_ACT * MINUTE;
      if (!inTime || note.onTime() >= UNLIKELY || note.named().isEmpty()) {
        return;
      }
      if (!actedOn.add(note.room())) {
        return;
      }
      Cause cause = note.named().get(0).cause();
      String holdup = cause.kind() + " " + (cause.item() != null ? cause.item() : cause.thing());
      Command take = new Command.TakeHoldup(note.room(), holdup, null, null);
      acts.add(new Report(at, "desk", "desk", null, take, null));
      taken++;
      if (cause.kind().equals("arrival") && cause.item() != null) {
        call(note.room(), cause.item(), at);
      }
    }

    /** Who has not come yet comes sooner; all that was before stays as it was. */
    private void call(RoomId room, String item, long at) {
      Script before = Script.write(plan, story, seed);
      Long comes = comes(before, room, item);
      if (comes == null || comes <= at + MINUTE) {
        return;
      }
      long sooner = comes - Math.round((comes - at) * scenario.desk().sooner());
      List<Story.Arrives> arrivals = new ArrayList<>(story.arrivals());
      arrivals.removeIf(a -> a.room().equals(room) && a.item().equals(item));
      String told = MadeMornings.clock(plan, at + MINUTE);
      String then = MadeMornings.clock(plan, sooner + MINUTE);
      arrivals.add(new Story.Arrives(room, item, then, told, "on the way"));
      Story called = story.arriving(arrivals);
      Script after = Script.write(plan, called, seed);
      if (told(before, at).equals(told(after, at))) {
        story = called;
        Queue<Report> rest = new ArrayDeque<>();
        reports.stream().filter(r -> r.at() <= at).forEach(rest::add);
        after.reports().stream().filter(r -> r.at() > at).forEach(rest::add);
        reports = rest;
      }
    }

    private static List<Report> told(Script script, long until) {
      return script.reports().stream().filter(r -> r.at() <= until).toList();
    }

    private static Long comes(Script script, RoomId room, String item) {
      for (Fact fact : script.facts()) {
        if (fact instanceof Fact.Done d && d.room().equals(room) && d.item().key().equals(item)) {
          return d.at();
        }
      }
      return null;
    }
  }
}
