package sunup.ops.madeup;

import java.time.LocalDate;
import java.util.ArrayDeque;
import java.util.Deque;
import java.util.List;
import sunup.board.LearnedTimes;
import sunup.board.Morning;
import sunup.board.Recorded;
import sunup.review.facts.Replayed;
import sunup.review.learn.Closing;
import sunup.review.learn.Lessons;
import sunup.review.learn.LessonsReader;

/**
 * What closed made-up mornings taught for the next opening, as a board's archive keeps it: of about
 * a year's.
 */
public final class Taught {
  private final Deque<Lessons> lessons = new ArrayDeque<>();
  private LearnedTimes next;

  /** Takes a morning that closed; in the order of their dates. */
  public void add(LocalDate date, List<Recorded> events) {
    lessons.addLast(LessonsReader.read(events));
    if (lessons.size() > Closing.LEARNED_FROM) {
      lessons.removeFirst();
    }
    Morning end = Replayed.of(events).end();
    next =
        Closing.of(date, List.copyOf(end.sheets().values()), List.copyOf(lessons), end.learned())
            .next();
  }

  /** What the next opening freezes; null if nothing closed yet. */
  public LearnedTimes next() {
    return next;
  }
}
