package sunup.forecast;

import java.util.Arrays;

/**
 * Rule 3's silence. What a person without a word since a moment may have done since, by rejection:
 * histories in which a word would have been heard are dropped, the k-th that is kept carries trial
 * k. The histories of different people depend on no common draw, so each is kept or dropped alone.
 */
final class Silence {
  /** Trials are counted in blocks; a block may try so many histories for each of its trials. */
  static final int BLOCK = 256;

  static final int TRIES = 16;

  /** The occurrence of an item's draws in a history: no trial's own. */
  private static final int OCCURRENCE = 1000;

  private static final int EACH_ITEM = 0;
  private static final int EACH_SECTION = 1;
  private static final int AT_END = 2;

  private final Model m;
  private final Known known;

  /** Shares of the styles of reporting. */
  private final double[] shares;

  private final boolean[] silent;

  /** Per person the items of the own room that this person would do alone, in sheet order. */
  private final int[][] mine;

  private final int[][] sectionOf;
  private final int[] sections;
  private final long[] total;
  private final long[] before;
  private final long[] wordAt;

  /** What is known of each person's histories; shared by all who play trials. */
  final Kept[] kept;

  private final int[] slotInHistory;
  private final int[] owner;
  private final History history;
  private int[] sectionLeft = new int[0];

  /** Of a section, and after the last one of all, the item that was good last; or -1. */
  private int[] sectionLast = new int[1];

  /** When an item can be begun by its person, before anything is played, and now. */
  private final long[] canAtFirst;

  private final long[] can;
  private final long[] handsStream;

  Silence(Model m, Known known, Kept[] kept) {
    this.m = m;
    this.known = known;
    this.kept = kept;
    ForecastInput.Silence first = m.silence;
    shares = new double[] {first.eachItem(), first.eachSection(), first.atEnd(), first.never()};
    silent = new boolean[m.people];
    mine = new int[m.people][];
    sectionOf = new int[m.people][];
    sections = new int[m.people];
    total = new long[m.people];
    before = new long[m.people];
    wordAt = new long[m.people];
    slotInHistory = new int[m.items];
    Arrays.fill(slotInHistory, -1);
    owner = new int[m.items];
    canAtFirst = new long[m.items];
    can = new long[m.items];
    handsStream = new long[m.items];
    Arrays.fill(owner, -1);
    int most = 0;
    for (int p = 0; p < m.people; p++) {
      find(p);
      most = Math.max(most, mine[p].length);
    }
    history = new History(most);
  }

  boolean isSilent(int p) {
    return silent[p];
  }

  private void find(int p) {
    mine[p] = new int[0];
    if (m.personRoom[p] < 0 || m.leavesAt[p] <= 0 || hasWorkInHand(p)) {
      return;
    }
    boolean here = m.arrivedAt[p] != Model.NEVER || m.lastWordAt[p] != Model.EVER;
    long word = Math.max(m.lastWordAt[p], here ? known.idleSince[p] : Model.EVER);
    wordAt[p] = word;
    if (here ? word >= 0 : m.arrivalReported[p]) {
      return;
    }
    silent[p] = true;
    int r = m.personRoom[p];
    int[] found = new int[m.firstItem[r + 1] - m.firstItem[r]];
    int n = 0;
    for (int i = m.firstItem[r]; i < m.firstItem[r + 1]; i++) {
      if (!isWorkOf(p, i)) {
        continue;
      }
      total[p] += m.hands[i].usual;
      if (m.state[i] == Model.GOOD) {
        before[p] += m.hands[i].usual;
      } else if (m.state[i] == Model.OPEN && unitsAreHere(i) && !blockedRoom(i)) {
        found[n++] = i;
        owner[i] = p;
      }
    }
    mine[p] = Arrays.copyOf(found, n);
    for (int i : mine[p]) {
      canAtFirst[i] = canBegin(i);
      handsStream[i] = Hash.stream(m.scope[i], Hash.HANDS, OCCURRENCE);
    }
    sections(p);
  }

  private void sections(int p) {
    sectionOf[p] = new int[mine[p].length];
    for (int n = 0; n < mine[p].length; n++) {
      sectionOf[p][n] = sections[p];
      for (int o = 0; o < n; o++) {
        if (m.section[mine[p][o]].equals(m.section[mine[p][n]])) {
          sectionOf[p][n] = sectionOf[p][o];
        }
      }
      if (sectionOf[p][n] == sections[p]) {
        sections[p]++;
      }
    }
    sectionLeft = new int[Math.max(sectionLeft.length, sections[p])];
    sectionLast = new int[sectionLeft.length + 1];
  }

  private boolean hasWorkInHand(int p) {
    for (int i = 0; i < m.items; i++) {
      if (m.state[i] == Model.IN_HAND && m.by[i] == p) {
        return true;
      }
    }
    return false;
  }

  /** Set-up work of one alone, of whom this person is the first in the room. */
  private boolean isWorkOf(int p, int i) {
    int s = m.firstSlot[i];
    return m.slotsOf(i) == 1
        && m.slotOwn[s].length > 0
        && m.slotOwn[s][0] == p
        && m.mends[i] < 0
        && !followsStep(i);
  }

  /** The start chain is not done in silence: somebody would have been told. */
  private boolean followsStep(int i) {
    if (m.marks[i]) {
      return true;
    }
    for (int j : m.before[i]) {
      if (followsStep(j)) {
        return true;
      }
    }
    return false;
  }

  private boolean unitsAreHere(int i) {
    for (int n = m.firstNeed[i]; n < m.firstNeed[i + 1]; n++) {
      if (!m.needHeld[n]) {
        return false;
      }
    }
    return true;
  }

  private boolean blockedRoom(int i) {
    return m.inRoom[i] && m.occupied[m.room[i]] != null;
  }

  History history() {
    return history;
  }

  long arrival(int p) {
    return history.arrived;
  }

  /**
   * Finds the history that carries a trial and plays it.
   *
   * @return its number, or -1 if none was kept and rule 4 stands in
   */
  int attempt(int p, int trial) {
    int limit = (trial / BLOCK + 1) * BLOCK * TRIES;
    int played = -1;
    int a;
    synchronized (kept[p]) {
      while (kept[p].lacks(trial, limit)) {
        int next = kept[p].tried();
        boolean isKept = play(p, next);
        played = isKept ? next : -1;
        kept[p].tried(isKept);
      }
      a = kept[p].carries(trial, limit);
    }
    if (a < 0) {
      standIn(p, trial);
    } else if (a != played) {
      play(p, a);
    }
    return a;
  }

  private double drawn(int p, int purpose, int attempt) {
    return Hash.uniform(Hash.stream(m.personScope[p], purpose, 1), attempt);
  }

  /** One history; true if nothing would have been heard of it. */
  private boolean play(int p, int a) {
    History h = history;
    start(p, a);
    int style = style(p, a);
    long at = h.arrived <= 0 ? Math.max(h.arrived, wordAt[p]) : h.arrived;
    double z = Normal.quantile(Hash.uniform(Hash.stream(m.personScope[p], Hash.FACTOR, 0), a));
    int[] work = mine[p];
    Arrays.fill(sectionLeft, 0, sections[p], 0);
    Arrays.fill(sectionLast, 0, sections[p] + 1, -1);
    for (int n = 0; n < work.length; n++) {
      slotInHistory[work[n]] = -1;
      sectionLeft[sectionOf[p][n]]++;
      can[work[n]] = canAtFirst[work[n]];
    }
    int left = work.length;
    int place = -1;
    while (at < 0) {
      long next = Model.NEVER;
      int pick = -1;
      for (int n = 0; n < work.length; n++) {
        int i = work[n];
        if (slotInHistory[i] < 0) {
          if (can[i] > at) {
            next = Math.min(next, can[i]);
          } else if (pick < 0
              || (place >= 0 && m.place[i] == place && m.place[work[pick]] != place)) {
            pick = n;
          }
        }
      }
      if (pick < 0) {
        at = next;
        continue;
      }
      int i = work[pick];
      long good = perform(i, a, at, place, z);
      for (int j : m.dependants[i]) {
        if (owner[j] == p && slotInHistory[j] < 0) {
          can[j] = canBegin(j);
        }
      }
      place = m.place[i];
      if (good <= 0) {
        left--;
        int section = sectionOf[p][pick];
        sectionLeft[section]--;
        good(section, i);
        good(sections[p], i);
        int completes = -1;
        if (style == EACH_ITEM) {
          completes = i;
        } else if (style == EACH_SECTION && sectionLeft[section] == 0) {
          completes = sectionLast[section];
        } else if (style == AT_END && left == 0) {
          completes = sectionLast[sections[p]];
        }
        if (completes >= 0 && h.good[slotInHistory[completes]] + delay(completes, a) <= 0) {
          return false;
        }
      }
      at = afterwards(p, h.handsEnd[h.count - 1]);
    }
    return true;
  }

  /** What was done before may have waited longer and be good later. */
  private void good(int section, int i) {
    int last = sectionLast[section];
    if (last < 0 || history.good[slotInHistory[last]] <= history.good[slotInHistory[i]]) {
      sectionLast[section] = i;
    }
  }

  private long delay(int i, int a) {
    return m.delay.isConstant() ? m.delay.usual : m.delay.at(uniform(i, Hash.DELAY, a));
  }

  private void start(int p, int a) {
    History h = history;
    h.count = 0;
    h.awayUntil = 0;
    h.backSince = Model.EVER;
    h.worked = before[p];
    h.calledAt = Model.NEVER;
    h.calledFor = 0;
    if (drawn(p, Hash.AWAY, a) < m.silence.away()) {
      long moment = (long) (drawn(p, Hash.AWAY_MOMENT, a) * total[p]);
      if (before[p] < total[p] && moment >= before[p]) {
        h.calledAt = moment;
        h.calledFor = m.awayFor.at(drawn(p, Hash.AWAY_FOR, a));
      }
    }
    if (m.arrivedAt[p] != Model.NEVER) {
      h.arrived = m.arrivedAt[p];
    } else if (m.lastWordAt[p] != Model.EVER) {
      h.arrived = m.lastWordAt[p];
    } else {
      h.arrived = m.plannedAt[p] + m.late[p].at(drawn(p, Hash.ARRIVAL, a));
    }
  }

  private int style(int p, int a) {
    double sum = 0;
    for (int s = 0; s < shares.length; s++) {
      sum += m.styles[p][s] ? shares[s] : 0;
    }
    double u = drawn(p, Hash.STYLE, a) * sum;
    int last = AT_END + 1;
    for (int s = 0; s < shares.length; s++) {
      if (m.styles[p][s]) {
        last = s;
        u -= shares[s];
        if (u < 0) {
          return s;
        }
      }
    }
    return last;
  }

  /** When an item could be begun by its person, as far as is known and played. */
  private long canBegin(int i) {
    long can = m.notBefore[i];
    if (m.place[i] >= 0) {
      can = Math.max(can, m.opensAt[m.place[i]]);
    }
    for (int j : m.before[i]) {
      if (m.state[j] == Model.GOOD) {
        can = Math.max(can, m.good[j]);
      } else if (owner[j] == owner[i] && slotInHistory[j] >= 0) {
        can = Math.max(can, history.good[slotInHistory[j]]);
      } else {
        return Model.NEVER;
      }
    }
    return can;
  }

  private double uniform(int i, int purpose, int a) {
    return Hash.uniform(Hash.stream(m.scope[i], purpose, OCCURRENCE), a);
  }

  private long perform(int i, int a, long at, int place, double z) {
    History h = history;
    int n = h.count++;
    slotInHistory[i] = n;
    long walk = 0;
    if (place != m.place[i]) {
      double u = uniform(i, Hash.WALK, a);
      walk += place >= 0 ? m.walk[place].at(u) : 0;
      walk += m.place[i] >= 0 ? m.walk[m.place[i]].at(u) : 0;
    }
    long hands = m.hands[i].usual;
    if (!m.hands[i].isConstant()) {
      double e = Normal.quantile(Hash.uniform(handsStream[i], a));
      hands = m.hands[i].atNormal(m.sqrtShare * z + m.sqrtRest * e);
    }
    h.item[n] = i;
    h.begin[n] = at;
    h.walked[n] = walk > 0;
    h.handsEnd[n] = at + walk + hands;
    h.extra[n] =
        m.extraOneIn[i] > 0 && uniform(i, Hash.EXTRA, a) * m.extraOneIn[i] < 1 ? m.extraMs[i] : 0;
    long waits =
        m.waits[i].isConstant() ? m.waits[i].usual : m.waits[i].at(uniform(i, Hash.WAITS, a));
    h.good[n] = h.handsEnd[n] + waits + h.extra[n];
    return h.good[n];
  }

  /** When the person can go on after an item: later if away or called away. */
  private long afterwards(int p, long end) {
    History h = history;
    if (end > 0) {
      return end;
    }
    h.worked += m.hands[h.item[h.count - 1]].usual;
    long at = end;
    if (h.worked >= h.calledAt) {
      h.calledAt = Model.NEVER;
      at += h.calledFor;
      h.backSince = at;
      h.awayUntil = at;
    }
    for (int s = 0; s < m.awayFrom[p].length; s++) {
      if (m.awayFrom[p][s] <= at && at < m.awayTo[p][s]) {
        at = m.awayTo[p][s];
        h.backSince = Math.max(h.backSince, Math.min(at, 0));
      }
    }
    return at;
  }

  /** No history was kept: the first item that can be begun is taken as in hand since the word. */
  private void standIn(int p, int trial) {
    start(p, trial);
    History h = history;
    h.calledAt = Model.NEVER;
    long since = Math.max(h.arrived, wordAt[p]);
    if (since >= 0) {
      return;
    }
    for (int n = 0; n < mine[p].length; n++) {
      slotInHistory[mine[p][n]] = -1;
    }
    for (int i : mine[p]) {
      long begin = Math.max(since, canBegin(i));
      if (begin < 0) {
        perform(i, trial, begin, -1, 0);
        h.handsEnd[0] = m.hands[i].remaining(uniform(i, Hash.HANDS, trial), -begin);
        h.good[0] = h.handsEnd[0] + m.waits[i].at(uniform(i, Hash.WAITS, trial)) + h.extra[0];
        return;
      }
    }
  }
}
