package sunup.ops.madeup;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.function.Function;
import sunup.board.MorningPlan;
import sunup.ops.madeup.Scenario.Truth;
import sunup.ops.rehearsal.Script;
import sunup.ops.rehearsal.StartTimes;

/**
 * What the truths of a scenario truly cost: the same time and dice of the simulated hospital with
 * and without each, by when rooms truly started, and not by what anybody told. No board has a part
 * in it.
 */
public final class Weighing {
  private static final long MINUTE = 60_000;

  private Weighing() {}

  /**
   * Starts that a truth falls on.
   *
   * @param starts how many
   * @param minutes late of all of them together, seconds included
   * @param onTime by the morning's grace
   */
  public record Sum(int starts, double minutes, int onTime) {
    static final Sum NONE = new Sum(0, 0, 0);

    Sum plus(Sum other) {
      return new Sum(starts + other.starts, minutes + other.minutes, onTime + other.onTime);
    }

    public double meanLate() {
      return minutes / starts;
    }

    public double share() {
      return (double) onTime / starts;
    }
  }

  /**
   * One truth.
   *
   * @param none the starts that it falls on, with nothing hidden
   * @param alone the same with this truth alone
   * @param others with all the others
   * @param all with all
   */
  public record Weight(String name, Sum none, Sum alone, Sum others, Sum all) {}

  /**
   * Weighs each truth.
   *
   * @param plans of any date
   */
  public static List<Weight> of(Scenario scenario, Function<LocalDate, MorningPlan> plans) {
    List<Truth> truths = scenario.truths();
    List<Sum[]> sums = new ArrayList<>();
    truths.forEach(t -> sums.add(new Sum[] {Sum.NONE, Sum.NONE, Sum.NONE, Sum.NONE}));
    LocalDate date = scenario.from();
    for (; !date.isAfter(scenario.to()); date = date.plusDays(1)) {
      if (Weekdays.isOne(date)) {
        weigh(scenario, plans.apply(date), sums);
      }
    }
    List<Weight> weights = new ArrayList<>();
    for (int i = 0; i < truths.size(); i++) {
      Sum[] s = sums.get(i);
      weights.add(new Weight(truths.get(i).name(), s[0], s[1], s[2], s[3]));
    }
    return weights;
  }

  private static void weigh(Scenario scenario, MorningPlan plan, List<Sum[]> sums) {
    List<Truth> truths = scenario.truths();
    Map<List<Truth>, List<StartTimes.Start>> played = new HashMap<>();
    for (int i = 0; i < truths.size(); i++) {
      Truth truth = truths.get(i);
      if (!truth.isOn(plan.id().date())) {
        continue;
      }
      List<Truth> none = new ArrayList<>(java.util.Collections.nCopies(truths.size(), null));
      List<Truth> alone = new ArrayList<>(none);
      alone.set(i, truth);
      List<Truth> others = new ArrayList<>(truths);
      others.set(i, null);
      int at = 0;
      for (List<Truth> hidden : List.of(none, alone, others, truths)) {
        List<StartTimes.Start> starts =
            played.computeIfAbsent(today(hidden, plan), kept -> play(scenario, kept, plan));
        sums.get(i)[at] = sums.get(i)[at].plus(sum(truth, starts, plan));
        at++;
      }
    }
  }

  /** Those that hold today; the others are nothing, in their places: each draws in its turn. */
  private static List<Truth> today(List<Truth> hidden, MorningPlan plan) {
    List<Truth> today = new ArrayList<>(hidden);
    today.replaceAll(t -> t != null && t.isOn(plan.id().date()) ? t : null);
    return today;
  }

  private static List<StartTimes.Start> play(
      Scenario scenario, List<Truth> hidden, MorningPlan plan) {
    MadeMornings mornings = new MadeMornings(scenario);
    long seed = mornings.seed(plan);
    return StartTimes.of(Script.write(plan, mornings.story(plan, seed, hidden), seed), plan);
  }

  private static Sum sum(Truth truth, List<StartTimes.Start> starts, MorningPlan plan) {
    int count = 0;
    double minutes = 0;
    int onTime = 0;
    for (StartTimes.Start s : starts) {
      if (s.at() != null && truth.isIn(s.plan().room().value(), s.plan().service())) {
        count++;
        minutes += Math.max(0, s.at() - s.plan().bookedAt()) / (double) MINUTE;
        long grace = plan.settings().graceMinutes();
        onTime += Math.floorDiv(s.at() - s.plan().bookedAt(), MINUTE) <= grace ? 1 : 0;
      }
    }
    return new Sum(count, minutes, onTime);
  }
}
