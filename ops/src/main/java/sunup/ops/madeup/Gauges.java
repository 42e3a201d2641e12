package sunup.ops.madeup;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.SplittableRandom;
import sunup.board.CasePlan;
import sunup.board.MorningPlan;
import sunup.ops.madeup.Scenario.Leak;
import sunup.ops.rehearsal.Story;
import sunup.sheets.ComposedSheet;
import sunup.sheets.EvidenceRule;
import sunup.sheets.SheetItem;

/**
 * What the gauges of the rooms' machines show morning after morning: each about a level of its own,
 * and those that leak a little worse each time. All stay in their good band, as a leak that one
 * reading shows needs no history.
 */
public final class Gauges {
  /** Where a machine's level lies in its band: from this share on, over so wide a share. */
  private static final double LEVEL_FROM = 0.35;

  private static final double LEVEL_OVER = 0.3;

  /** A leaking one is as good as this share of the band when it is new. */
  private static final double NEW = 0.55;

  /** Scatter from morning to morning, standard deviation, as a share of the band. */
  private static final double SCATTER = 0.012;

  private static final double SCATTER_MOST = 2;

  private final long seed;
  private final List<Leak> leaks;

  /**
   * @param leaks with the dates on which they were renewed
   */
  public Gauges(long seed, List<Leak> leaks) {
    this.seed = seed;
    this.leaks = List.copyOf(leaks);
  }

  /** What they show on a morning: every number that the sheets ask of a room's machine. */
  public List<Story.Shows> on(MorningPlan plan) {
    Map<String, ComposedSheet> sheets = new HashMap<>();
    plan.sheets().forEach(sheet -> sheets.put(sheet.hash(), sheet));
    List<Story.Shows> shows = new ArrayList<>();
    for (CasePlan c : plan.cases()) {
      for (SheetItem item : sheets.get(c.sheet()).items()) {
        boolean ofRoom = item.belongs() == SheetItem.Belongs.ROOM;
        if (ofRoom && item.evidence().kind() == EvidenceRule.Kind.NUMBER) {
          double value = value(c.room().value(), item, plan.id().date());
          shows.add(new Story.Shows(c.room(), item.key(), value));
        }
      }
    }
    return shows;
  }

  private double value(String room, SheetItem item, LocalDate date) {
    EvidenceRule rule = item.evidence();
    double low = first(rule.low(), rule.least(), 0);
    double high = Math.max(low, first(rule.high(), rule.most(), low * 1.2 + 1));
    double band = high - low;
    // Where only the high end is good's end, more is worse.
    boolean falls = rule.low() != null;
    String name = room + " " + item.key();
    double level = LEVEL_FROM + LEVEL_OVER * random(name.hashCode()).nextDouble();
    SplittableRandom today = random(name.hashCode() * 1_000_003L + date.toEpochDay());
    double scatter = Math.max(-SCATTER_MOST, Math.min(SCATTER_MOST, normal(today))) * SCATTER;
    double at = falls ? level : 1 - level;
    for (Leak leak : leaks) {
      if (leak.room().equals(room) && leak.item().equals(item.key())) {
        int old = Math.floorMod(Weekdays.between(leak.renewed(), date), leak.mornings());
        double lost = leak.perMorning() * old / band;
        at = falls ? NEW - lost : 1 - NEW + lost;
      }
    }
    double step = band > 20 ? (band > 200 ? 10 : 1) : 0.1;
    double written = Math.round((low + band * (at + scatter)) / step) * step;
    return Math.min(high, Math.max(low, Math.round(written * 10) / 10.0));
  }

  private SplittableRandom random(long of) {
    return new SplittableRandom(seed * 31 + of);
  }

  /** Standard normal, by Box and Muller (1958). */
  private static double normal(SplittableRandom random) {
    double radius = Math.sqrt(-2 * Math.log(1 - random.nextDouble()));
    return radius * Math.cos(2 * Math.PI * random.nextDouble());
  }

  private static double first(Double one, Double other, double last) {
    return one != null ? one : other != null ? other : last;
  }
}
