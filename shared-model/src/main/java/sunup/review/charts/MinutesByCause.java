package sunup.review.charts;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import sunup.board.DelayReason;
import sunup.codec.Maybe;
import sunup.review.facts.AsRunFact.Piece;
import sunup.review.facts.Cause;
import sunup.review.facts.FirstCaseFact;
import sunup.review.facts.FirstCaseFact.Reported;
import sunup.review.facts.Withheld;

/**
 * Late minutes by cause, largest first, with a running share.
 *
 * @param starts all of them; where there are too few all else is null: withheld
 * @param minutes late, of all
 * @param weakMinutes of these, on late or entered-together touches
 * @param unexplained minutes of starts that no chain (or no report) explains: counted in no row
 * @param rows the causes
 */
public record MinutesByCause(
    int starts,
    @Maybe Double minutes,
    @Maybe Double weakMinutes,
    @Maybe Double unexplained,
    @Maybe List<Row> rows) {
  /** What causes are put together by. */
  public enum Grouping {
    /** Computed: work, waiting, arrival, person, equipment, place and so on. */
    KIND,
    /** Computed: the item's section, or the kind of what has no item. */
    SECTION,
    /** Computed: kind and item, the finest. */
    ITEM,
    /** What people reported; all minutes of a start go to its one reason. */
    REPORTED
  }

  /**
   * One cause.
   *
   * @param label names it
   * @param minutes late
   * @param starts in which it carries any
   * @param weakMinutes of its minutes, on late or entered-together touches
   * @param share of all explained minutes
   * @param running the same with all larger ones; the last one is 1
   */
  public record Row(
      String label, double minutes, int starts, double weakMinutes, double share, double running) {}

  /**
   * Milliseconds of one cause.
   *
   * @param ms late
   * @param weak of these, on late or entered-together touches
   * @param starts in which it carries any
   */
  public record Sum(long ms, long weak, int starts) {
    /** More of the same start. */
    Sum inOneStart(Sum more) {
      return new Sum(ms + more.ms, weak + more.weak, 1);
    }

    Sum plus(Sum other) {
      return new Sum(ms + other.ms, weak + other.weak, starts + other.starts);
    }
  }

  /** The late minutes of these starts. */
  public static MinutesByCause of(List<FirstCaseFact> facts, Grouping grouping) {
    List<FirstCaseFact> starts = facts.stream().filter(FirstCaseFact::hasStarted).toList();
    long all = 0;
    long weak = 0;
    Map<String, Sum> sums = new LinkedHashMap<>();
    for (FirstCaseFact fact : starts) {
      for (Map.Entry<String, Sum> e : ofOne(fact, grouping).entrySet()) {
        sums.merge(e.getKey(), e.getValue(), Sum::plus);
      }
      all += fact.lateMs();
      weak += fact.asRun().weakMs();
    }
    return of(starts.size(), all, weak, sums);
  }

  /**
   * The same from sums.
   *
   * @param all late milliseconds of all starts
   * @param weak of these, on late or entered-together touches
   * @param sums by label
   */
  public static MinutesByCause of(int starts, long all, long weak, Map<String, Sum> sums) {
    if (Withheld.isWithheld(starts)) {
      return new MinutesByCause(starts, null, null, null, null);
    }
    long explained = sums.values().stream().mapToLong(Sum::ms).sum();
    return new MinutesByCause(
        starts, minutes(all), minutes(weak), minutes(all - explained), rows(sums, explained));
  }

  private static double minutes(long ms) {
    return (double) ms / FirstCaseFact.MINUTE;
  }

  /** What one start gives to each label. */
  public static Map<String, Sum> ofOne(FirstCaseFact fact, Grouping grouping) {
    return grouping == Grouping.REPORTED ? reported(fact) : computed(fact, grouping);
  }

  /** What the chain of one start gives to each label of a computed grouping. */
  public static Map<String, Sum> computed(FirstCaseFact fact, Grouping grouping) {
    Map<String, Sum> sums = new LinkedHashMap<>();
    for (Piece piece : fact.asRun().pieces()) {
      if (piece.lateMs() > 0) {
        long weak = piece.lateEntry() || piece.together() ? piece.lateMs() : 0;
        sums.merge(label(piece, grouping), new Sum(piece.lateMs(), weak, 1), Sum::inOneStart);
      }
    }
    return sums;
  }

  /** What a piece is counted under in a computed grouping. */
  public static String label(Piece piece, Grouping grouping) {
    Cause cause = new Cause(piece.kind(), piece.item(), piece.thing(), piece.where());
    return switch (grouping) {
      case KIND, REPORTED -> piece.kind();
      case SECTION -> cause.section();
      case ITEM -> piece.item() == null ? piece.kind() : piece.kind() + " " + piece.item();
    };
  }

  private static Map<String, Sum> reported(FirstCaseFact fact) {
    Reported reported = fact.reported();
    if (reported == null || fact.lateMs() == 0) {
      return Map.of();
    }
    return Map.of(word(reported), new Sum(fact.lateMs(), fact.asRun().weakMs(), 1));
  }

  /** The word of a reported reason. */
  public static String word(Reported reported) {
    return word(reported.reason());
  }

  /** The word of a reason. */
  public static String word(DelayReason reason) {
    return reason.name().toLowerCase(java.util.Locale.ROOT);
  }

  private static List<Row> rows(Map<String, Sum> sums, long explained) {
    List<Map.Entry<String, Sum>> order =
        sums.entrySet().stream()
            .sorted(
                Comparator.<Map.Entry<String, Sum>>comparingLong(e -> -e.getValue().ms())
                    .thenComparing(Map.Entry::getKey))
            .toList();
    List<Row> rows = new ArrayList<>();
    long running = 0;
    for (Map.Entry<String, Sum> e : order) {
      Sum sum = e.getValue();
      running += sum.ms();
      rows.add(
          new Row(
              e.getKey(),
              minutes(sum.ms()),
              sum.starts(),
              minutes(sum.weak()),
              (double) sum.ms() / explained,
              (double) running / explained));
    }
    return rows;
  }

  /**
   * Computed and reported side by side: how many late starts of one computed section had which
   * reported reason.
   *
   * @param computed section of the cause that carries most, or {@code none}
   * @param reported reason, or {@code none}
   * @param agreed how many of them both sides agreed on
   */
  public record Beside(String computed, String reported, int starts, int agreed) {}

  /**
   * The table of late starts by computed and reported cause, most frequent first.
   *
   * @return null if there are too few late starts: withheld
   */
  public static List<Beside> sideBySide(List<FirstCaseFact> facts) {
    Map<List<String>, int[]> table = new LinkedHashMap<>();
    int late = 0;
    for (FirstCaseFact fact : facts) {
      if (fact.late()) {
        late++;
        Reported r = fact.reported();
        String computed = fact.asRun().largest().map(Cause::section).orElse("none");
        int[] cell =
            table.computeIfAbsent(List.of(computed, r == null ? "none" : word(r)), k -> new int[2]);
        cell[0]++;
        cell[1] += r != null && r.settled() == FirstCaseFact.Settled.AGREED ? 1 : 0;
      }
    }
    if (Withheld.isWithheld(late)) {
      return null;
    }
    return table.entrySet().stream()
        .map(
            e -> new Beside(e.getKey().get(0), e.getKey().get(1), e.getValue()[0], e.getValue()[1]))
        .sorted(
            Comparator.<Beside>comparingInt(b -> -b.starts())
                .thenComparing(Beside::computed)
                .thenComparing(Beside::reported))
        .toList();
  }
}
