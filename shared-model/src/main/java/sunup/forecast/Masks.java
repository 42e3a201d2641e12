package sunup.forecast;

import java.util.Map;
import java.util.TreeMap;
import java.util.stream.IntStream;
import sunup.forecast.Model.Bits;

/** Bit sets that say which items a change of people or units can let begin. */
final class Masks {
  private final Model m;

  private Masks(Model m) {
    this.m = m;
  }

  static void set(Model m) {
    new Masks(m).all();
  }

  private void all() {
    int most = 1;
    for (int r = 0; r < m.rooms; r++) {
      most = Math.max(most, m.firstItem[r + 1] - m.firstItem[r]);
    }
    m.words = (most + 63) / 64;
    m.ownItems = new long[m.rooms * m.words];
    m.askedItems = new long[m.rooms * m.words];
    m.errandItems = new long[m.rooms * m.words];
    m.hasAsked = new boolean[m.rooms];
    m.hasErrands = new boolean[m.rooms];
    m.roomPeople = new int[m.rooms][];
    for (int r = 0; r < m.rooms; r++) {
      int room = r;
      m.roomPeople[r] = IntStream.range(0, m.people).filter(p -> m.personRoom[p] == room).toArray();
    }
    m.kindRanked = empty(m.kinds);
    m.personOwnItems = empty(m.people);
    m.personRanked = empty(m.people);
    for (int i = 0; i < m.items; i++) {
      boolean own = false;
      for (int s = m.firstSlot[i]; s < m.firstSlot[i + 1]; s++) {
        own |= m.slotOwn[s].length > 0;
      }
      if (own) {
        ownItem(i);
      }
      if (m.rank[i] >= 0) {
        ranked(i);
      }
    }
    people();
    groups();
  }

  private static Bits[] empty(int n) {
    Bits[] all = new Bits[n];
    for (int i = 0; i < n; i++) {
      all[i] = new Bits();
    }
    return all;
  }

  /** An item that own people may take; a roaming person matters to it only as a second one. */
  private void ownItem(int i) {
    int word = m.wordOf(i);
    int bit = (i - m.firstItem[m.room[i]]) & 63;
    m.ownItems[word] |= 1L << bit;
    m.hasAsked[m.room[i]] |= m.asked[i];
    m.hasErrands[m.room[i]] |= m.place[i] >= 0;
    m.askedItems[word] |= m.asked[i] ? 1L << bit : 0;
    m.errandItems[word] |= m.place[i] >= 0 ? 1L << bit : 0;
    for (int s = m.firstSlot[i]; s < m.firstSlot[i + 1]; s++) {
      for (int p : m.slotOwn[s]) {
        m.personOwnItems[p].set(word, bit);
      }
      if (m.slotsOf(i) > 1) {
        for (int p : m.slotRoaming[s]) {
          m.personOwnItems[p].set(word, bit);
        }
      }
    }
  }

  private void ranked(int i) {
    int word = m.rank[i] >> 6;
    int bit = m.rank[i] & 63;
    for (int s = m.firstSlot[i]; s < m.firstSlot[i + 1]; s++) {
      for (int p : m.slotRoaming[s]) {
        m.personRanked[p].set(word, bit);
      }
      if (m.slotsOf(i) > 1) {
        for (int p : m.slotOwn[s]) {
          m.personRanked[p].set(word, bit);
        }
      }
    }
    for (int n = m.firstNeed[i]; n < m.firstNeed[i + 1]; n++) {
      m.kindRanked[m.needKind[n]].set(word, bit);
    }
  }

  private void people() {
    m.personOwn = new long[m.people * m.words];
    for (int p = 0; p < m.people; p++) {
      Bits items = m.personOwnItems[p];
      for (int n = 0; n < items.word.length && m.personRoom[p] >= 0; n++) {
        m.personOwn[p * m.words + items.word[n] % m.words] = items.bits[n];
      }
    }
  }

  private void groups() {
    int words = (m.ranked.length + 63) / 64;
    m.rankedAlways = new long[words];
    m.rankedGroups = new int[words][];
    m.rankedGroupItems = new long[words][];
    for (int w = 0; w < words; w++) {
      Map<Integer, Long> items = new TreeMap<>();
      for (int n = w << 6; n < Math.min(m.ranked.length, (w + 1) << 6); n++) {
        int i = m.ranked[n];
        if (m.slotsOf(i) == 1) {
          items.merge(m.slotRoamingGroup[m.firstSlot[i]], 1L << n, (a, b) -> a | b);
        } else {
          m.rankedAlways[w] |= 1L << n;
        }
      }
      m.rankedGroups[w] = items.keySet().stream().mapToInt(Integer::intValue).toArray();
      m.rankedGroupItems[w] = items.values().stream().mapToLong(Long::longValue).toArray();
    }
  }
}
