package sunup.ops.rehearsal;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import sunup.board.MorningId;
import sunup.board.MorningPlan;
import sunup.board.RoomId;

/**
 * A morning as it is played: what truly happens and what is reported of it.
 *
 * @param morning which morning
 * @param seed of the dice
 * @param facts what happens, in order of time
 * @param reports what is reported, in order of time
 * @param styles how each room's anaesthetist reports
 */
public record Script(
    MorningId morning,
    long seed,
    List<Fact> facts,
    List<Report> reports,
    Map<RoomId, Style> styles) {

  /**
   * Plays the morning. The same plan, story and seed give the same script.
   *
   * @throws IllegalArgumentException if the story does not fit the plan; the message says where
   */
  public static Script write(MorningPlan plan, Story story, long seed) {
    List<String> misfits = story.misfits(plan);
    if (!misfits.isEmpty()) {
      throw new IllegalArgumentException("the story does not fit: " + String.join("; ", misfits));
    }
    Dice dice = new Dice(seed);
    World world = new World(plan, story, dice);
    List<Fact> facts = new Play(world, story, dice).run();
    Map<RoomId, Style> styles = Habits.of(plan, story, dice);
    Told told = new Told(world, story, dice, styles);
    facts.forEach(told::hear);
    told.end();
    List<Report> reports = new ArrayList<>(told.reports());
    DeskNotes.add(plan, story, reports);
    reports.sort(Comparator.comparingLong(Report::at));
    return new Script(plan.id(), seed, List.copyOf(facts), List.copyOf(reports), styles);
  }
}
