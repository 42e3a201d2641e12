package sunup.archive;

import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import java.util.function.Function;
import java.util.stream.Collectors;
import sunup.board.MorningId;
import sunup.forecast.Forecaster;
import sunup.review.facts.ForecastNote;
import sunup.review.facts.NotesDue;

/**
 * Forecasts of moments of which the board kept nothing. Each is made again once, by one version of
 * the model: nothing that is recorded later changes what was known at a moment.
 */
final class Remade {
  private final FactStore store;

  Remade(FactStore store) {
    this.store = store;
  }

  /**
   * All that there is of a morning.
   *
   * @param kept what the board said
   * @param replay makes the notes of all moments but those that are known
   */
  List<ForecastNote> with(
      MorningId morning,
      List<ForecastNote> kept,
      Function<Set<NotesDue.Key>, List<ForecastNote>> replay) {
    Set<NotesDue.Key> known = kept.stream().map(NotesDue.Key::of).collect(Collectors.toSet());
    List<ForecastNote> again = new ArrayList<>();
    for (ForecastNote note : store.remade(morning)) {
      if (note.model() == Forecaster.MODEL && known.add(NotesDue.Key.of(note))) {
        again.add(note);
      }
    }
    List<ForecastNote> now = replay.apply(known);
    again.addAll(now);
    if (!now.isEmpty()) {
      store.remade(morning, again);
    }
    List<ForecastNote> all = new ArrayList<>(kept);
    all.addAll(again);
    return all;
  }
}
