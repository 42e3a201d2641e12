package sunup.review;

import java.time.DayOfWeek;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import sunup.review.facts.FirstCaseFact;

/** What results may be broken down by. There is no person among them, and none in the facts. */
public enum Split {
  ROOM,
  SERVICE,
  TECHNIQUE,
  WEEKDAY,
  MONTH,
  SUITE;

  /** The group of a fact; {@code none} where it names none. */
  public String of(FirstCaseFact fact) {
    String value =
        switch (this) {
          case ROOM -> fact.room().value();
          case SERVICE -> fact.service();
          case TECHNIQUE -> fact.technique();
          case WEEKDAY -> weekday(fact.weekday());
          case MONTH -> fact.morning().date().toString().substring(0, 7);
          case SUITE -> fact.morning().suite().value();
        };
    return value == null ? "none" : value;
  }

  /** The name of a weekday's group: numbered, so that names sort from Monday on. */
  public static String weekday(DayOfWeek day) {
    return day.getValue() + " " + word(day.toString());
  }

  private static String word(String name) {
    return name.charAt(0) + name.substring(1).toLowerCase(java.util.Locale.ROOT);
  }

  /** The facts by group, in the order of the groups' names. */
  public Map<String, List<FirstCaseFact>> apart(List<FirstCaseFact> facts) {
    Map<String, List<FirstCaseFact>> groups = new TreeMap<>();
    for (FirstCaseFact fact : facts) {
      groups.computeIfAbsent(of(fact), k -> new ArrayList<>()).add(fact);
    }
    return groups;
  }
}
