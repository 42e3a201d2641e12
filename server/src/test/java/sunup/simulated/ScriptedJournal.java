package sunup.simulated;

import java.util.ArrayDeque;
import java.util.Collection;
import java.util.Deque;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.function.Consumer;
import sunup.board.MorningId;
import sunup.journal.Answer;
import sunup.journal.Append;
import sunup.journal.Appended;
import sunup.journal.Journal;
import sunup.journal.Stored;
import sunup.journal.TakenOver;

/** A journal that does what a test tells it, over one that works. */
public final class ScriptedJournal implements Journal {
  /** What happens to an append. */
  public enum Way {
    WORK,
    /** Waits for {@link #release}. */
    HOLD,
    FAIL,
    UNKNOWN_WRITTEN,
    UNKNOWN_LOST
  }

  private final Journal under;
  private final Deque<Runnable> held = new ArrayDeque<>();
  private final Deque<Way> scripted = new ArrayDeque<>();
  private Way way = Way.WORK;
  private boolean away;

  public ScriptedJournal(Journal under) {
    this.under = under;
  }

  public void appends(Way next) {
    way = next;
  }

  /** The next appends go so, one each; then on as before. */
  public void next(Way... ways) {
    scripted.addAll(List.of(ways));
  }

  /** While away, nothing but appends is answered with more than that. */
  public void away(boolean now) {
    away = now;
  }

  public void release() {
    way = Way.WORK;
    while (!held.isEmpty()) {
      held.poll().run();
    }
  }

  @Override
  public void append(Append append, Consumer<Appended> then) {
    switch (scripted.isEmpty() ? way : scripted.poll()) {
      case WORK -> under.append(append, then);
      case HOLD -> held.add(() -> under.append(append, then));
      case FAIL -> then.accept(new Appended.NotWritten("The disk is full."));
      case UNKNOWN_LOST -> then.accept(new Appended.Unknown("who knows"));
      case UNKNOWN_WRITTEN ->
          under.append(append, outcome -> then.accept(new Appended.Unknown("who knows")));
    }
  }

  @Override
  public void takeOver(MorningId morning, Long seen, Consumer<TakenOver> then) {
    if (away) {
      then.accept(new TakenOver.Away("It is away."));
    } else {
      under.takeOver(morning, seen, then);
    }
  }

  @Override
  public void load(MorningId morning, long after, Consumer<Answer<Stored>> then) {
    if (away) {
      then.accept(new Answer.Away<>("It is away."));
    } else {
      under.load(morning, after, then);
    }
  }

  @Override
  public void epochs(Collection<MorningId> mornings, Consumer<Answer<Map<MorningId, Long>>> then) {
    if (away) {
      then.accept(new Answer.Away<>("It is away."));
    } else {
      under.epochs(mornings, then);
    }
  }

  @Override
  public void mornings(Consumer<Answer<List<MorningId>>> then) {
    under.mornings(then);
  }

  @Override
  public void lengths(Consumer<Answer<Map<MorningId, Long>>> then) {
    under.lengths(then);
  }

  @Override
  public void erase(long now, Consumer<Answer<Set<MorningId>>> then) {
    under.erase(now, then);
  }

  @Override
  public void close() {
    under.close();
  }
}
