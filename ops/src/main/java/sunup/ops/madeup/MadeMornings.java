package sunup.ops.madeup;

import java.time.Instant;
import java.time.LocalDate;
import java.time.LocalTime;
import java.time.format.DateTimeFormatter;
import java.util.ArrayList;
import java.util.List;
import java.util.SplittableRandom;
import sunup.access.Page;
import sunup.board.Actor;
import sunup.board.Board;
import sunup.board.CasePlan;
import sunup.board.Command;
import sunup.board.CommandId;
import sunup.board.LearnedTimes;
import sunup.board.Morning;
import sunup.board.MorningPlan;
import sunup.board.Order;
import sunup.board.Outcome;
import sunup.board.PersonPlan;
import sunup.board.PlacePlan;
import sunup.board.Recorded;
import sunup.board.Role;
import sunup.board.RoomId;
import sunup.ops.madeup.Scenario.Truth;
import sunup.ops.rehearsal.Report;
import sunup.ops.rehearsal.Script;
import sunup.ops.rehearsal.Story;
import sunup.sheets.ComposedSheet;
import sunup.sheets.SheetItem;

/**
 * Plays mornings of the simulated hospital by a scenario and the board's own rules, without a
 * board: what comes out are the events that a board would have kept of them.
 */
public final class MadeMornings {
  private static final long MINUTE = 60_000;
  private static final DateTimeFormatter CLOCK = DateTimeFormatter.ofPattern("HH:mm");

  private final Scenario scenario;
  private final Gauges gauges;

  public MadeMornings(Scenario scenario) {
    this.scenario = scenario;
    this.gauges =
        new Gauges(
            scenario.seed(),
            scenario.leaks().stream().map(l -> l.renewedOn(scenario.from())).toList());
  }

  /** What one command yielded. */
  public record Given(CommandId id, List<Recorded> events) {}

  /** The morning that a plan becomes: from its opening to its closing. */
  public List<Given> play(MorningPlan plan) {
    long seed = seed(plan);
    Script script = Script.write(plan, story(plan, seed), seed);
    Playing playing = new Playing(plan.id().date());
    long last = playing.open(plan, null);
    for (Report r : script.reports()) {
      last = Math.max(last, r.at());
      playing.give(r, last);
    }
    return playing.close(last);
  }

  /** Of a morning's dice: the same for the same scenario's seed and date, whatever it hides. */
  long seed(MorningPlan plan) {
    return scenario.seed() * 1_000_003 + plan.id().date().toEpochDay();
  }

  /** A morning under way. */
  static final class Playing {
    private static final Actor DESK = new Actor(Role.DESK, null, "desk");

    private final List<Given> given = new ArrayList<>();
    private final LocalDate date;
    private Morning now = Morning.NONE;
    private String refused = "";

    Playing(LocalDate date) {
      this.date = date;
    }

    Morning now() {
      return now;
    }

    /** Plans and opens it, and says when that was. */
    long open(MorningPlan plan, LearnedTimes taught) {
      give(new Command.Plan(plan), DESK, plan.beginsAt(), null);
      give(new Command.OpenMorning(), DESK, plan.beginsAt(), taught);
      return plan.beginsAt();
    }

    /** What the board refuses is not in its journal: a room that was asked twice, say. */
    void give(Report r, long at) {
      give(
          r.command(),
          Page.named(r.page()).orElseThrow().actor(r.screen(), r.person(), now),
          at,
          null);
    }

    List<Given> close(long last) {
      give(new Command.CloseMorning(), DESK, last + 5 * MINUTE, null);
      if (now.phase() != Morning.Phase.CLOSED) {
        throw new IllegalStateException(now.id() + " could not be closed: " + refused);
      }
      return given;
    }

    private void give(Command command, Actor actor, long at, LearnedTimes taught) {
      CommandId id = new CommandId("made-" + date + "-" + given.size());
      Order order = new Order(id, command, actor, now.seq(), at, at).taught(taught);
      Outcome outcome = Board.decide(now, order);
      if (outcome instanceof Outcome.Refused no) {
        refused = no.code().say(no.detail());
      } else if (outcome instanceof Outcome.Accepted yes) {
        for (Recorded event : yes.events()) {
          now = Board.apply(now, now.seq() + 1, event);
        }
        if (!yes.events().isEmpty()) {
          given.add(new Given(id, yes.events()));
        }
      }
    }
  }

  /** What is special about a morning: the truths that fall on it. */
  Story story(MorningPlan plan, long seed) {
    return story(plan, seed, scenario.truths());
  }

  /**
   * The same with other truths than the scenario's.
   *
   * @param truths null in the place of one that is left out, so that it moves no other
   */
  Story story(MorningPlan plan, long seed, List<Truth> truths) {
    List<Story.Comes> people = new ArrayList<>();
    List<Story.Arrives> arrivals = new ArrayList<>();
    List<Story.Opens> places = new ArrayList<>();
    List<Story.Slow> slow = new ArrayList<>();
    List<Story.Night> nights = new ArrayList<>();
    List<Story.Sooner> sooner = new ArrayList<>();
    SplittableRandom random = new SplittableRandom(seed);
    for (Truth truth : truths) {
      // Each draws apart, so that adding a truth moves no other.
      SplittableRandom own = random.split();
      if (truth == null || !truth.isOn(plan.id().date())) {
        continue;
      }
      if (truth.place() != null) {
        Double late = drawn(truth, own);
        if (late != null) {
          opens(plan, truth, late, places);
        }
        continue;
      }
      for (CasePlan c : plan.cases()) {
        Double late = drawn(truth, own);
        if (late == null || !truth.isIn(c.room().value(), c.service())) {
          continue;
        }
        if (truth.isHandover()) {
          nights.add(handedOver(plan, c.room(), late));
        } else if (truth.role() != null) {
          people.addAll(late(plan, truth.role(), c.room(), late));
        } else {
          SheetItem item = item(plan, c, truth.comes() != null ? truth.comes() : truth.item());
          if (item != null && truth.comes() != null && late < 0) {
            sooner.add(new Story.Sooner(c.room(), item.key(), -late));
          } else if (item != null && truth.comes() != null) {
            long at = c.bookedAt() - Math.round((item.plannedBefore() - late) * MINUTE);
            arrivals.add(new Story.Arrives(c.room(), item.key(), clock(plan, at), null, null));
          } else if (item != null) {
            slow.add(new Story.Slow(c.room(), item.key(), late));
          }
        }
      }
    }
    return new Story(
        people, null, nights, arrivals, null, places, null, null, slow, gauges.on(plan), sooner);
  }

  /** Minutes if it is so this time, else null. Both are drawn, so that chance moves no minutes. */
  private static Double drawn(Truth truth, SplittableRandom random) {
    boolean isSo = random.nextDouble() < truth.chance();
    double minutes = truth.minutes() * (0.5 + random.nextDouble());
    return isSo ? (Double) minutes : null;
  }

  private static void opens(MorningPlan plan, Truth truth, double late, List<Story.Opens> places) {
    for (PlacePlan place : plan.places()) {
      if (place.id().value().equals(truth.place())) {
        String at = clock(plan, place.opensAt() + Math.round(late * MINUTE));
        // Nobody says so before it should have been open.
        places.add(new Story.Opens(truth.place(), at, clock(plan, place.opensAt() + 2 * MINUTE)));
      }
    }
  }

  /** Until then somebody else has it, who should have been out when its set-up begins. */
  private static Story.Night handedOver(MorningPlan plan, RoomId room, double minutes) {
    String begins = clock(plan, plan.beginsAt());
    String until = clock(plan, plan.beginsAt() + Math.round(minutes * MINUTE));
    return new Story.Night(room, begins, until, 0);
  }

  private static List<Story.Comes> late(
      MorningPlan plan, String role, RoomId room, double minutes) {
    return plan.people().stream()
        .filter(p -> p.role().word().equals(role) && room.equals(p.room()))
        .map(PersonPlan::id)
        .map(id -> new Story.Comes(id, minutes))
        .toList();
  }

  private static SheetItem item(MorningPlan plan, CasePlan c, String key) {
    for (ComposedSheet sheet : plan.sheets()) {
      if (sheet.hash().equals(c.sheet())) {
        return sheet.byKey().get(key);
      }
    }
    return null;
  }

  static String clock(MorningPlan plan, long at) {
    LocalTime time = Instant.ofEpochMilli(at).atZone(plan.settings().zoneId()).toLocalTime();
    return CLOCK.format(time);
  }
}
