package sunup.review.learn;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.NavigableSet;
import java.util.TreeSet;
import sunup.board.Item;
import sunup.board.ItemState;
import sunup.board.Morning;
import sunup.board.Morning.CaseDay;
import sunup.board.Morning.PersonDay;
import sunup.board.Morning.PlaceDay;
import sunup.board.PersonId;
import sunup.board.PlaceId;
import sunup.board.Placed;
import sunup.board.Recorded;
import sunup.board.RoomId;
import sunup.board.Section;
import sunup.forecast.ImpliedBeginning;
import sunup.forecast.Past;
import sunup.review.facts.Replayed;
import sunup.review.facts.Replayed.Told;
import sunup.review.facts.ToldPast;
import sunup.review.learn.Lessons.Delay;
import sunup.review.learn.Lessons.Left;
import sunup.review.learn.Lessons.Style;
import sunup.review.learn.Lessons.Sum;
import sunup.review.learn.Lessons.Took;
import sunup.sheets.SheetItem;
import sunup.sheets.Uses;

/**
 * Reads the lessons of a closed morning by rule 3: several finishes of one person in one room, each
 * within {@link #TOGETHER_MS} of the one before, are one duration of their sum; where no beginning
 * was touched it is the latest of that person's last finish, arrival, prerequisites good, place
 * open, room free and equipment in it. The finish may be in another room: who serves several began
 * nothing here while still at work there. Without the last two a line that waits for the one
 * ultrasound machine would seem to take an hour.
 */
public final class LessonsReader {
  /** Finishes of one person so close together are one observation (rule 3). */
  static final long TOGETHER_MS = 20_000;

  /** Who touches one thing after the other says at one go what was done before. */
  static final long ONE_SITTING_MS = 30_000;

  /** A room that reports so small a share of its set-up one by one never reports. */
  static final double NEVER_BELOW = 0.2;

  /** One sitting that holds so large a share of what was reported is a word at the end. */
  static final double AT_END_FROM = 0.8;

  /** So many words for each item reported are a word for each item. */
  static final double EACH_ITEM_FROM = 0.7;

  private final Replayed played;
  private final Morning end;
  private final ToldPast past;

  /** When each person finished something, wherever that was. */
  private final Map<PersonId, NavigableSet<Long>> finished = new HashMap<>();

  private final List<Took> took = new ArrayList<>();
  private final List<Sum> sums = new ArrayList<>();
  private final List<Style> styles = new ArrayList<>();
  private final List<Delay> delays = new ArrayList<>();
  private int lateEntries;
  private int unsigned;
  private int noBeginning;

  private LessonsReader(Replayed played) {
    this.played = played;
    end = played.end();
    past = new ToldPast(played);
  }

  /**
   * @throws IllegalArgumentException if the morning is not closed
   */
  public static Lessons read(List<Recorded> journal) {
    Replayed played = Replayed.of(journal);
    if (played.end().phase() != Morning.Phase.CLOSED) {
      throw new IllegalArgumentException(
          "lessons are those of a closed morning; close " + played.end().id() + " first");
    }
    return new LessonsReader(played).all();
  }

  private Lessons all() {
    end.rooms().keySet().forEach(room -> end.itemsOf(room).forEach(this::finish));
    int begun = 0;
    int forgotten = 0;
    for (RoomId room : end.rooms().keySet()) {
      CaseDay day = end.caseIn(room);
      if (day != null && !day.cancelled() && day.hasPassed(end.settings().startEvent())) {
        List<Placed> items = end.itemsOf(room);
        read(room, items);
        styles.add(style(items));
        for (Placed placed : items) {
          boolean open = placed.item().state() == ItemState.IN_HAND;
          forgotten += open ? 1 : 0;
          begun += open || wasBegun(placed) ? 1 : 0;
        }
      }
    }
    Left left = new Left(lateEntries, unsigned, noBeginning);
    return new Lessons(took, sums, styles, delays, begun, forgotten, left);
  }

  private void finish(Placed placed) {
    Item item = placed.item();
    if (item.state() == ItemState.GOOD && item.by() != null) {
      finished.computeIfAbsent(item.by(), k -> new TreeSet<>()).add(item.since());
    }
  }

  private boolean wasBegun(Placed placed) {
    return placed.item().state() == ItemState.GOOD && placed.item().begunAt() != null;
  }

  /** Work that somebody reported good with his or her hands, in order of time. */
  private void read(RoomId room, List<Placed> items) {
    Map<PersonId, List<Placed>> byPerson = new LinkedHashMap<>();
    for (Placed placed : items) {
      Item item = placed.item();
      boolean work =
          item.state() == ItemState.GOOD
              && !placed.sheet().who().isEmpty()
              && !placed.sheet().isArrival()
              && placed.sheet().marks() == null;
      Told told = work ? played.toldGood(item) : null;
      if (told == null) {
        continue;
      }
      delays.add(new Delay(placed.sheet().key(), told.recordedAt() - told.happenedAt()));
      if (item.by() == null && item.begunAt() == null) {
        unsigned++;
      } else {
        byPerson.computeIfAbsent(item.by(), k -> new ArrayList<>()).add(placed);
      }
    }
    byPerson.forEach((person, list) -> ofPerson(room, person, list));
  }

  private void ofPerson(RoomId room, PersonId person, List<Placed> finishes) {
    finishes.sort(Comparator.comparingLong(p -> p.item().since()));
    Long before = arrived(person);
    int from = 0;
    while (from < finishes.size()) {
      int to = from + 1;
      while (to < finishes.size() && together(finishes.get(to - 1), finishes.get(to))) {
        to++;
      }
      observe(room, before, finishes.subList(from, to));
      before = person == null ? null : (Long) finishes.get(to - 1).item().since();
      from = to;
    }
  }

  private static boolean together(Placed one, Placed next) {
    return next.item().since() - one.item().since() <= TOGETHER_MS;
  }

  /**
   * Nobody tells when the last of several people was free, and the wait for them would be learned
   * as work.
   */
  private static boolean mustGather(SheetItem item) {
    return item.who().size() > 1;
  }

  private Long arrived(PersonId person) {
    PersonDay day = person == null ? null : end.people().get(person);
    return day == null ? null : day.arrivedAt();
  }

  private void observe(RoomId room, Long before, List<Placed> group) {
    if (group.stream().anyMatch(p -> played.toldGood(p.item()).late())) {
      lateEntries += group.size();
      return;
    }
    long good = group.get(group.size() - 1).item().since();
    Item only = group.size() == 1 ? group.get(0).item() : null;
    boolean implied = only == null || only.begunAt() == null;
    boolean gather = group.stream().anyMatch(p -> mustGather(p.sheet()));
    Long begin =
        !implied ? only.begunAt() : gather ? null : implied(room, elsewhere(before, group), group);
    if (begin == null || begin >= good) {
      noBeginning += group.size();
      return;
    }
    boolean inOne = only == null || isInOne(group.get(0)) || only.together();
    if (inOne) {
      List<String> keys =
          new TreeSet<>(group.stream().map(p -> p.sheet().key()).toList()).stream().toList();
      sums.add(new Sum(keys, good - begin));
    } else {
      took.add(new Took(group.get(0).sheet().work(), good - begin, implied));
    }
  }

  /** The person's arrival or last finish before these, in whichever room; null if none was told. */
  private Long elsewhere(Long before, List<Placed> group) {
    PersonId person = group.get(0).item().by();
    NavigableSet<Long> all = person == null ? null : finished.get(person);
    Long last = all == null ? null : all.lower(group.get(0).item().since());
    if (last == null || before == null) {
      return last == null ? before : last;
    }
    return Math.max(before, last);
  }

  /** Hands and waiting (or a rare extra) that nobody told apart. */
  private static boolean isInOne(Placed placed) {
    return placed.sheet().waits() != null || placed.sheet().extra() != null;
  }

  private Long implied(RoomId room, Long before, List<Placed> group) {
    ImpliedBeginning begin = new ImpliedBeginning(group.get(group.size() - 1).item().since());
    begin.from(before);
    List<String> own = group.stream().map(p -> p.sheet().key()).toList();
    for (Placed placed : group) {
      for (String key : placed.sheet().after()) {
        begin.after(own.contains(key) ? null : readyAt(room, key));
      }
      Long freed = placed.sheet().isInRoom() ? past.freed(room) : null;
      begin.from(freed != null && freed <= placed.item().since() ? freed : null);
      String place = placed.sheet().place();
      PlaceDay day = place == null ? null : end.places().get(new PlaceId(place));
      begin.from(day == null ? null : (Long) day.opensAt());
      for (Uses use : placed.sheet().uses()) {
        if (end.units().values().stream().anyMatch(u -> u.plan().kind().equals(use.kind()))) {
          Past.Came came = past.came(room.value(), use.kind(), placed.item().since());
          if (came == null) {
            return null;
          }
          begin.from(came.at());
        }
      }
    }
    return begin.moment();
  }

  private Long readyAt(RoomId room, String key) {
    for (Placed placed : end.itemsOf(room)) {
      if (placed.sheet().key().equals(key) && placed.item().state() == ItemState.GOOD) {
        return placed.item().since();
      }
    }
    return null;
  }

  /** How the set-up was reported: by how many words, and how much of it at one go. */
  private Style style(List<Placed> items) {
    int asked = 0;
    List<Long> words = new ArrayList<>();
    for (Placed placed : items) {
      Section section = placed.sheet().section();
      if (section.isSetUp() && !placed.sheet().who().isEmpty()) {
        asked++;
        Told told = played.toldGood(placed.item());
        if (told != null) {
          words.add(told.recordedAt());
        }
      }
    }
    if (words.isEmpty() || words.size() < NEVER_BELOW * asked) {
      return Style.NEVER;
    }
    words.sort(null);
    if (largestSitting(words) >= AT_END_FROM * words.size()) {
      return Style.AT_END;
    }
    int count = 0;
    int from = 0;
    for (int i = 0; i < words.size(); i++) {
      if (words.get(i) - words.get(from) > TOGETHER_MS) {
        from = i;
      }
      count += i == from ? 1 : 0;
    }
    return count >= EACH_ITEM_FROM * words.size() ? Style.EACH_ITEM : Style.EACH_SECTION;
  }

  /** Of words in order of time, how many most were said at one go. */
  private static int largestSitting(List<Long> words) {
    int largest = 0;
    int size = 0;
    for (int i = 0; i < words.size(); i++) {
      size = i > 0 && words.get(i) - words.get(i - 1) <= ONE_SITTING_MS ? size + 1 : 1;
      largest = Math.max(largest, size);
    }
    return largest;
  }
}
