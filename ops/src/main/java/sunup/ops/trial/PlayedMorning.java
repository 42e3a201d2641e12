package sunup.ops.trial;

import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import sunup.board.MorningPlan;
import sunup.board.Recorded;
import sunup.ops.madeup.MadeMornings;
import sunup.review.facts.FactsBuilder;
import sunup.review.facts.FirstCaseFact;
import sunup.review.facts.ForecastNote;
import sunup.review.facts.ForecastReplay;

/**
 * An invented morning from its plan to the review's facts, as a board would make them.
 *
 * @param events all of it, in order
 * @param facts one of each first case
 * @param broken what should hold and does not
 */
public record PlayedMorning(List<Recorded> events, List<FirstCaseFact> facts, List<String> broken) {
  public PlayedMorning {
    events = List.copyOf(events);
    facts = List.copyOf(facts);
    broken = List.copyOf(broken);
  }

  /**
   * Plays it.
   *
   * @param trials of each forecast at T-60, T-40, T-20 and T-10
   * @param twice whether it is all done again and compared
   */
  public static PlayedMorning of(
      MorningPlan plan, MadeMornings mornings, int trials, boolean twice) {
    List<Recorded> events = events(mornings.play(plan));
    List<ForecastNote> notes = ForecastReplay.notes(events, trials, Set.of());
    List<FirstCaseFact> facts = FactsBuilder.build(events, notes);
    List<String> broken = new ArrayList<>(MustHold.broken(plan, facts));
    if (twice) {
      List<Recorded> again = events(mornings.play(plan));
      if (!again.equals(events)) {
        broken.add(plan.id().date() + " is another one when it is played again");
      } else if (!FactsBuilder.build(again, ForecastReplay.notes(again, trials, Set.of()))
          .equals(facts)) {
        broken.add(plan.id().date() + " gives other facts when they are made again");
      }
    }
    return new PlayedMorning(events, facts, broken);
  }

  private static List<Recorded> events(List<MadeMornings.Given> given) {
    return given.stream().flatMap(one -> one.events().stream()).toList();
  }
}
