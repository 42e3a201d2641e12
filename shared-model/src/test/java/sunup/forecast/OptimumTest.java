package sunup.forecast;

import static org.assertj.core.api.Assertions.assertThat;
import static sunup.forecast.Mornings.MINUTE;
import static sunup.forecast.Mornings.PLAIN;
import static sunup.forecast.Mornings.at;
import static sunup.forecast.Mornings.exactly;
import static sunup.forecast.Mornings.item;
import static sunup.forecast.Mornings.person;
import static sunup.forecast.Mornings.room;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.condition.EnabledOnOs;
import org.junit.jupiter.api.condition.OS;
import sunup.forecast.BestSchedule.Aim;
import sunup.forecast.BestSchedule.Answer;
import sunup.forecast.Forecast.RoomOut;
import sunup.forecast.ForecastInput.ItemIn;
import sunup.forecast.ForecastInput.KindIn;
import sunup.forecast.ForecastInput.PersonIn;
import sunup.forecast.ForecastInput.PlaceIn;
import sunup.forecast.ForecastInput.RoomIn;
import sunup.forecast.Mornings.Work;

/**
 * The forecast gives work out as it comes; a constraint solver (OR-Tools CP-SAT) that sees the
 * whole morning may do better, and never worse. How far the two are apart is printed and stands in
 * FORECAST.md. The solver's native part is there for Linux on x86-64 only.
 */
@EnabledOnOs(value = OS.LINUX, architectures = "amd64")
class OptimumTest {
  private static final long NOW = at(6, 40);
  private static final int MORNINGS = Integer.getInteger("sunup.optimum.mornings", 12);

  private static final double WORK =
      Double.parseDouble(System.getProperty("sunup.optimum.work", "0.5"));

  /** Rooms of one item chain and set-up, shared people, a machine or two, a pharmacy. */
  private static ForecastInput morning(long seed) {
    Random random = new Random(seed);
    int rooms = 2 + random.nextInt(5);
    List<RoomIn> list = new ArrayList<>();
    List<PersonIn> people = new ArrayList<>();
    for (int r = 1; r <= rooms; r++) {
      String id = "r" + r;
      people.add(coming(random, person("n" + r, "nurse").in(id)));
      if (r % 2 == 1) {
        people.add(
            coming(
                random,
                person("a" + r, "anaesthetist").covering(id, "r" + Math.min(r + 1, rooms))));
      }
      list.add(room(id, NOW + (20 + random.nextInt(3) * 10) * MINUTE, NOW, items(random)));
    }
    people.add(coming(random, person("t", "technician")));
    people.add(coming(random, person("v", "supervisor")));
    if (rooms > 3) {
      people.add(coming(random, person("w", "supervisor", "technician")));
    }
    return new ForecastInput(
        1,
        NOW,
        seed,
        1,
        PLAIN,
        people,
        List.of(new KindIn("scanner", 1, List.of()), new KindIn("warmer", 2, List.of())),
        List.of(new PlaceIn("pharmacy", NOW + 10 * MINUTE, null)),
        list);
  }

  private static PersonIn coming(Random random, Mornings.Person p) {
    return random.nextInt(3) == 0
        ? p.comes(NOW + random.nextInt(12) * MINUTE, null).build()
        : p.here(NOW).spoke(NOW).build();
  }

  private static List<ItemIn> items(Random random) {
    String[] roles = {"anaesthetist", "nurse", "technician", "supervisor"};
    List<Work> works = new ArrayList<>();
    int n = 4 + random.nextInt(5);
    for (int i = 0; i < n; i++) {
      String role = roles[random.nextInt(4)];
      Work w = item("i" + i).by(role).takes(exactly(1 + random.nextInt(8))).gates("in");
      if (i > 0 && random.nextBoolean()) {
        w.after("i" + random.nextInt(i));
      }
      switch (random.nextInt(8)) {
        case 0 -> w.needs("scanner", 1, null);
        case 1 -> w.needs("warmer", 1 + random.nextInt(2), null);
        case 2 -> w.by(role.equals("nurse") ? "supervisor" : "nurse");
        case 3 -> w.waits(exactly(1 + random.nextInt(8)));
        case 4 -> w.at("pharmacy");
        case 5 -> w.notBefore(NOW + random.nextInt(15) * MINUTE);
        default -> {
          // Nothing special.
        }
      }
      works.add(w);
    }
    works.add(item("in").by("nurse").takes(exactly(3)).marks("in").notBefore(NOW + 15 * MINUTE));
    works.add(
        item("start")
            .by("anaesthetist")
            .by("supervisor")
            .takes(exactly(4 + random.nextInt(5)))
            .after("in")
            .marks("start"));
    return Mornings.items(works.toArray(new Work[0]));
  }

  private static long late(ForecastInput in, Forecast f, Aim aim) {
    long most = 0;
    long sum = 0;
    for (int r = 0; r < in.rooms().size(); r++) {
      RoomOut room = f.rooms().get(r);
      assertThat(room.capped()).isZero();
      long late = Math.max(0, room.start50() - in.rooms().get(r).target()) / MINUTE;
      most = Math.max(most, late);
      sum += late;
    }
    return aim == Aim.LATEST_ROOM ? most : sum;
  }

  @Test
  void shouldNeverBeatTheBestScheduleAndStayNearIt() {
    for (Aim aim : Aim.values()) {
      int proved = 0;
      int equal = 0;
      long worst = 0;
      double gaps = 0;
      double ours = 0;
      double best = 0;
      for (int seed = 1; seed <= MORNINGS; seed++) {
        ForecastInput in = morning(seed);
        Forecast f = Forecaster.run(in);
        long late = late(in, f, aim);
        Answer answer = BestSchedule.find(in, aim, WORK);
        assertThat(late).as("seed %d", seed).isGreaterThanOrEqualTo(answer.bound());
        if (answer.proved()) {
          proved++;
          long gap = late - answer.late();
          equal += gap == 0 ? 1 : 0;
          worst = Math.max(worst, gap);
          gaps += gap;
          ours += late;
          best += answer.late();
        }
      }
      System.out.printf(
          Locale.ROOT,
          "%s: %d of %d mornings proved; the forecast's schedule is a best one in %d, later by %.2f"
              + " min in the mean and %d at most; late minutes %.2f against %.2f%n",
          aim,
          proved,
          MORNINGS,
          equal,
          gaps / proved,
          worst,
          ours / proved,
          best / proved);
      assertThat(proved).isGreaterThanOrEqualTo(MORNINGS / 4);
    }
  }

  @Test
  void shouldBreakNoRuleThatTheSolverKnows() {
    for (int seed = 1; seed <= MORNINGS; seed++) {
      ForecastInput in = morning(seed);
      assertThat(BestSchedule.allows(in, Forecaster.run(in))).as("seed %d", seed).isTrue();
    }
  }

  /** PSPLIB J30 1-1: 43 is the best, as its authors say; the forecast's rule comes to 46. */
  @Test
  void shouldProveTheOptimumOfThePublishedInstance() {
    ForecastInput in = ScheduleTest.instance(NOW);
    Answer best = BestSchedule.find(in, Aim.LATEST_ROOM, 10);
    assertThat(best.proved()).isTrue();
    assertThat(best.late()).isEqualTo(43);
    assertThat(late(in, Forecaster.run(in), Aim.LATEST_ROOM)).isEqualTo(46);
  }
}
