package sunup.live;

import java.util.HashSet;
import java.util.List;
import java.util.Set;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;
import sunup.outlook.Foretold;
import sunup.review.facts.ForecastNote;
import sunup.review.facts.NotesDue;
import sunup.suites.Standpoint;

/**
 * Keeps what a morning's screens were told of each room at its moments: the first figures of each
 * moment, once. What could not be kept is tried again with the next figures of its minute. All of
 * it happens in the lane.
 */
final class Keeping {
  private static final Logger LOG = LoggerFactory.getLogger(Keeping.class);

  private final MorningChannel.Tools tools;
  private final Set<NotesDue.Key> kept = new HashSet<>();

  Keeping(MorningChannel.Tools tools) {
    this.tools = tools;
  }

  /**
   * @param memory of the sight that drew them
   * @param figures old ones, and those of an earlier state, are passed over: newer ones come
   */
  void shown(Standpoint now, Object memory, Foretold figures) {
    if (figures.forecast() == null || figures.old() || figures.of() != now.state().seq()) {
      return;
    }
    List<ForecastNote> due;
    try {
      due =
          tools.sight().due(memory, now.state(), figures.forecast()).stream()
              .filter(note -> kept.add(NotesDue.Key.of(note)))
              .toList();
    } catch (RuntimeException e) {
      LOG.error("what was said of {} can't be noted", now.morning(), e);
      return;
    }
    if (!due.isEmpty()) {
      tools.log().keep(due, now.epoch(), durable -> tools.lane().run(() -> told(due, durable)));
    }
  }

  private void told(List<ForecastNote> notes, boolean durable) {
    if (!durable) {
      notes.forEach(note -> kept.remove(NotesDue.Key.of(note)));
    }
  }
}
