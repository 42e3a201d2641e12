package sunup.access;

import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.Optional;
import java.util.function.Predicate;
import java.util.stream.Collectors;

/**
 * Sign-ons that were begun at the identity provider and have not ended, by their states. Anybody
 * who can open a page can begin one where people use browsers of their own, so what strangers begin
 * is counted by where they come from, and never takes the place of what was begun at a screen of
 * the site, nor of what others begin elsewhere.
 *
 * @param <T> what is kept of one
 */
final class Beginnings<T> {
  /** How long somebody may take over there. */
  static final long LONGEST_MS = 10 * 60_000;

  /** Of one key: whoever begins anew has given the others up. */
  static final int OF_KEY_MAX = 4;

  /** Of strangers from one source; beyond it the oldest from there counts no more. */
  static final int OF_SOURCE_MAX = 64;

  /** Of all strangers; beyond it the oldest from where most come. */
  static final int OF_STRANGERS_MAX = 256;

  /** Begun by strangers from one source in a minute: a whole house may come from one. */
  static final int A_MINUTE_MAX = 240;

  /** Of these by one key. */
  static final int OF_KEY_A_MINUTE_MAX = 30;

  /** Sources (and keys) whose minutes are counted; beyond it the oldest is forgotten. */
  static final int SOURCES_MAX = 1_024;

  private static final long MINUTE_MS = 60_000;

  private final Map<String, One<T>> all = new LinkedHashMap<>();
  private final Map<String, Minute> bySource = new LinkedHashMap<>();
  private final Map<String, Minute> byKey = new LinkedHashMap<>();

  /**
   * @param key of the browser
   * @param source where it comes from; null for a screen of the site
   */
  private record One<T>(String key, String source, T begun, long since) {
    boolean strange() {
      return source != null;
    }
  }

  private record Minute(long since, int count) {}

  /**
   * Whether a stranger from there may begin another now; counts it if so. Who makes new keys is
   * held by the source, and no flood from many sources keeps a new one out.
   *
   * @param source see {@link Sources#of}
   * @param key of the browser
   */
  synchronized boolean mayBegin(String source, String key, long now) {
    boolean may =
        countOf(byKey, key, now) < OF_KEY_A_MINUTE_MAX
            && countOf(bySource, source, now) < A_MINUTE_MAX;
    if (may) {
      count(byKey, key, now);
      count(bySource, source, now);
    }
    return may;
  }

  private static int countOf(Map<String, Minute> minutes, String of, long now) {
    Minute minute = minutes.get(of);
    return minute == null || now - minute.since() >= MINUTE_MS ? 0 : minute.count();
  }

  /** They stand by when their minutes began. */
  private static void count(Map<String, Minute> minutes, String of, long now) {
    int before = countOf(minutes, of, now);
    if (before > 0) {
      minutes.computeIfPresent(of, (any, minute) -> new Minute(minute.since(), before + 1));
      return;
    }
    minutes.remove(of);
    if (minutes.size() >= SOURCES_MAX) {
      minutes.remove(minutes.keySet().iterator().next());
    }
    minutes.put(of, new Minute(now, 1));
  }

  /**
   * Keeps one.
   *
   * @param source of a stranger, or null for a screen of the site
   */
  synchronized void keep(String state, String key, String source, T begun, long now) {
    all.values().removeIf(one -> one.since() <= now - LONGEST_MS);
    makeRoom(OF_KEY_MAX, one -> one.key().equals(key));
    if (source != null) {
      makeRoom(OF_SOURCE_MAX, one -> source.equals(one.source()));
      if (all.values().stream().filter(One::strange).count() >= OF_STRANGERS_MAX) {
        String most = mostFrom();
        takeOldest(one -> most.equals(one.source()));
      }
    }
    all.put(state, new One<>(key, source, begun, now));
  }

  private void makeRoom(int most, Predicate<One<T>> these) {
    if (all.values().stream().filter(these).count() >= most) {
      takeOldest(these);
    }
  }

  private void takeOldest(Predicate<One<T>> these) {
    all.entrySet().stream()
        .filter(each -> these.test(each.getValue()))
        .findFirst()
        .map(Map.Entry::getKey)
        .ifPresent(all::remove);
  }

  private String mostFrom() {
    Map<String, Long> counts =
        all.values().stream()
            .filter(One::strange)
            .collect(Collectors.groupingBy(One::source, Collectors.counting()));
    return counts.entrySet().stream()
        .max(Comparator.comparingLong(Map.Entry::getValue))
        .map(Map.Entry::getKey)
        .orElseThrow();
  }

  /** What is kept of this state, whoever asks. */
  synchronized Optional<T> look(String state) {
    return Optional.ofNullable(all.get(state)).map(One::begun);
  }

  /** Whether this key began it and it can end now. */
  synchronized boolean isBegun(String state, String key, long now) {
    One<T> one = all.get(state);
    return one != null && one.since() > now - LONGEST_MS && one.key().equals(key);
  }

  /** Ends it: null if it is none, too old, or was begun with another key. A state counts once. */
  synchronized T take(String state, String key, long now) {
    return isBegun(state, key, now) ? all.remove(state).begun() : null;
  }
}
