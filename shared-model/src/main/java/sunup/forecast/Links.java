package sunup.forecast;

import java.util.ArrayList;
import java.util.List;
import sunup.forecast.ForecastInput.ItemIn;

/** Prerequisites: what is named, what gates the step that the item marks, and its mending. */
final class Links {
  private final Model m;

  /** By index; null for the mending of a fault. */
  private final List<ItemIn> items;

  Links(Model m, List<ItemIn> items) {
    this.m = m;
    this.items = items;
  }

  void set() {
    m.before = new int[m.items][];
    m.gatedBy = new int[m.items];
    m.continues = new boolean[m.items];
    List<List<Integer>> dependants = new ArrayList<>();
    for (int i = 0; i < m.items; i++) {
      dependants.add(new ArrayList<>());
    }
    for (int i = 0; i < m.items; i++) {
      List<Integer> before = before(i);
      m.before[i] = before.stream().mapToInt(Integer::intValue).toArray();
      m.continues[i] = m.marks[i] && before.stream().anyMatch(j -> m.marks[j]);
      for (int j : m.before[i]) {
        dependants.get(j).add(i);
      }
    }
    m.dependants = new int[m.items][];
    for (int i = 0; i < m.items; i++) {
      m.dependants[i] = dependants.get(i).stream().mapToInt(Integer::intValue).toArray();
    }
  }

  private List<Integer> before(int i) {
    List<Integer> before = new ArrayList<>();
    ItemIn item = items.get(i);
    m.gatedBy[i] = -1;
    if (item == null) {
      return before;
    }
    int room = m.room[i];
    for (int j = m.firstItem[room]; j < m.firstItem[room + 1]; j++) {
      ItemIn other = items.get(j);
      if (j == i || other == null) {
        continue;
      }
      boolean named = item.after().contains(other.key());
      boolean gates = item.marks() != null && item.marks().equals(other.gates());
      if (named || gates) {
        before.add(j);
      }
      if (other.marks() != null && other.marks().equals(item.gates())) {
        m.gatedBy[i] = j;
      }
    }
    if (i > 0 && m.mends[i - 1] == i) {
      before.add(i - 1);
    }
    return before;
  }
}
