package sunup.access;

import java.util.Comparator;
import java.util.HashMap;
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

  /** Begun by strangers from one source in a minute. */
  static final int A_MINUTE_MAX = 30;

  /** Sources whose minutes are counted. */
  static final int SOURCES_MAX = 1_024;

  private static final long MINUTE_MS = 60_000;

  private final Map<String, One<T>> all = new LinkedHashMap<>();
  private final Map<String, Minute> minutes = new HashMap<>();

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
   * Whether a stranger from there may begin another now; counts it if so.
   *
   * @param source see {@link Sources#of}
   */
  synchronized boolean mayBegin(String source, long now) {
    Minute minute = minutes.get(source);
    if (minute == null || now - minute.since() >= MINUTE_MS) {
      if (minutes.size() >= SOURCES_MAX) {
        minutes.values().removeIf(one -> now - one.since() >= MINUTE_MS);
      }
      if (minute == null && minutes.size() >= SOURCES_MAX) {
        return false;
      }
      minute = new Minute(now, 0);
    }
    if (minute.count() >= A_MINUTE_MAX) {
      return false;
    }
    minutes.put(source, new Minute(minute.since(), minute.count() + 1));
    return true;
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

  /** Ends it: null if it is none, too old, or was begun with another key. A state counts once. */
  synchronized T take(String state, String key, long now) {
    One<T> one = all.get(state);
    if (one == null || one.since() <= now - LONGEST_MS || !one.key().equals(key)) {
      return null;
    }
    return all.remove(state).begun();
  }
}
