package sunup.forecast;

import static org.assertj.core.api.Assertions.assertThat;
import static sunup.forecast.Mornings.MINUTE;
import static sunup.forecast.Mornings.PLAIN;
import static sunup.forecast.Mornings.at;
import static sunup.forecast.Mornings.exactly;
import static sunup.forecast.Mornings.item;
import static sunup.forecast.Mornings.morning;
import static sunup.forecast.Mornings.room;

import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;
import sunup.forecast.ForecastInput.KindIn;
import sunup.forecast.Mornings.Work;

/**
 * PSPLIB (Kolisch and Sprecher, European Journal of Operational Research 96, 1997), J30, instance
 * 1-1: 30 jobs, four resources, optimum 43.
 */
class ScheduleTest {
  private static final int OPTIMUM = 43;
  private static final int[] DURATION = {
    0, 8, 4, 6, 3, 8, 5, 9, 2, 7, 9, 2, 6, 3, 9, 10, 6, 5, 3, 7, 2, 7, 2, 3, 3, 7, 8, 3, 7, 2, 2, 0
  };
  private static final int[][] NEXT = {
    {1, 2, 3},
    {5, 10, 14},
    {6, 7, 12},
    {4, 8, 9},
    {19},
    {29},
    {26},
    {11, 18, 26},
    {13},
    {15, 24},
    {19, 25},
    {13},
    {16, 17},
    {16},
    {24},
    {20, 21},
    {21},
    {19, 21},
    {23, 28},
    {22, 24},
    {27},
    {22},
    {23},
    {29},
    {29},
    {30},
    {27},
    {30},
    {31},
    {31},
    {31},
    {}
  };
  private static final int[] CAPACITY = {12, 13, 4, 12};
  private static final int[][][] USES = {
    {{1, 4}, {2, 10}, {4, 3}, {6, 4}, {8, 6}, {12, 4}, {14, 3}, {21, 2}, {22, 3}, {24, 4}},
    {{7, 1}, {10, 5}, {11, 7}, {13, 8}, {18, 1}, {19, 10}, {23, 9}, {27, 8}, {28, 7}, {29, 7}},
    {{25, 4}, {30, 2}},
    {{3, 3}, {5, 8}, {9, 1}, {15, 5}, {16, 8}, {17, 7}, {20, 6}, {26, 7}}
  };

  static ForecastInput instance(long now) {
    List<Work> jobs = new ArrayList<>();
    for (int j = 0; j < DURATION.length; j++) {
      List<String> before = new ArrayList<>();
      for (int i = 0; i < NEXT.length; i++) {
        for (int next : NEXT[i]) {
          if (next == j) {
            before.add("j" + i);
          }
        }
      }
      Work job = item("j" + j).takes(exactly(DURATION[j])).after(before.toArray(new String[0]));
      for (int k = 0; k < CAPACITY.length; k++) {
        for (int[] use : USES[k]) {
          if (use[0] == j) {
            job.needs("R" + (k + 1), use[1], null);
          }
        }
      }
      jobs.add(j == DURATION.length - 1 ? job.marks("start") : job);
    }
    List<KindIn> kinds = new ArrayList<>();
    for (int k = 0; k < CAPACITY.length; k++) {
      kinds.add(new KindIn("R" + (k + 1), CAPACITY[k], List.of()));
    }
    return Mornings.with(
        morning(
            now,
            1,
            PLAIN,
            List.of(),
            List.of(room("1", now, now, Mornings.items(jobs.toArray(new Work[0]))))),
        kinds,
        List.of());
  }

  @Test
  void shouldFindAScheduleThatKeepsToCapacitiesNearTheOptimum() {
    long now = at(6, 0);
    Model m = Compiler.compile(instance(now), List.of(0));
    Trial trial = new Trial(m);
    trial.run(0);
    Course c = trial.course;
    for (int i = 0; i < m.items; i++) {
      for (int j : m.before[i]) {
        assertThat(c.begin(i)).isGreaterThanOrEqualTo(c.good(j));
      }
      for (int k = 0; k < m.kinds; k++) {
        int used = 0;
        for (int j = 0; j < m.items; j++) {
          for (int n = m.firstNeed[j]; n < m.firstNeed[j + 1]; n++) {
            boolean running = c.begin(j) <= c.begin(i) && c.begin(i) < c.good(j);
            used += running && m.needKind[n] == k ? m.needUnits[n] : 0;
          }
        }
        assertThat(used).isLessThanOrEqualTo(CAPACITY[k]);
      }
    }
    long makespan = c.good(m.startItem[0]) / MINUTE;
    // The rule is greedy: it comes to 46 (a serial longest-tail rule too), 7 % over the optimum.
    assertThat(makespan).isEqualTo(OPTIMUM + 3);
    assertThat(Forecaster.run(instance(now)).rooms().get(0).start50())
        .isEqualTo(now + makespan * MINUTE);
  }
}
