package sunup.http;

import io.vertx.core.MultiMap;
import java.math.BigDecimal;
import java.time.DateTimeException;
import java.time.DayOfWeek;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import sunup.archive.Filter;
import sunup.review.Measures;
import sunup.review.Split;
import sunup.review.charts.MinutesByCause.Grouping;
import sunup.review.charts.Period;
import sunup.review.facts.BoardSaid;

/**
 * What a request asks of the review.
 *
 * @param suite whose cases
 */
record ReviewQuery(String suite, MultiMap given) {
  /** A price of a minute; one of a thousand million digits is a question without an end. */
  private static final Pattern PRICE = Pattern.compile("\\d{1,9}(\\.\\d{1,6})?");

  /**
   * Years of four digits, whichever: a browser tells 0202 while somebody types 2026. The day before
   * the first of all dates would be none.
   */
  private static final Pattern DATE = Pattern.compile("\\d{4}-\\d\\d-\\d\\d");

  /** Values of one parameter. */
  private static final int VALUES_MOST = 200;

  Filter filter() throws Answers.Wrong {
    List<DayOfWeek> days = new ArrayList<>();
    for (String day : all("weekday")) {
      days.add(choice("weekday", DayOfWeek.class, day));
    }
    return new Filter(
        List.of(suite),
        date("from"),
        date("to"),
        all("room"),
        all("service"),
        all("technique"),
        days);
  }

  /** All values of a parameter that may stand more than once. */
  private List<String> all(String name) throws Answers.Wrong {
    List<String> values = given.getAll(name).stream().filter(v -> !v.isBlank()).toList();
    if (values.size() > VALUES_MOST) {
      throw new Answers.Wrong("Too many", 400, name + " may stand " + VALUES_MOST + " times.");
    }
    return values;
  }

  /** Blank counts as not given. */
  String text(String name) {
    String value = given.get(name);
    return value == null || value.isBlank() ? null : value.strip();
  }

  LocalDate date(String name) throws Answers.Wrong {
    String value = text(name);
    return value == null ? null : date(name, value);
  }

  private static LocalDate date(String name, String value) throws Answers.Wrong {
    if (DATE.matcher(value).matches()) {
      try {
        return LocalDate.parse(value);
      } catch (DateTimeException e) {
        // As below: 2026-02-30.
      }
    }
    throw new Answers.Wrong("Not a date", 400, "Give " + name + " as 2026-11-25.");
  }

  static LocalDate later(LocalDate one, LocalDate other) {
    return one == null || one.isBefore(other) ? other : one;
  }

  static LocalDate earlier(LocalDate one, LocalDate other) {
    return one == null || one.isAfter(other) ? other : one;
  }

  /** Dates of marked changes. */
  List<LocalDate> changes() throws Answers.Wrong {
    List<LocalDate> dates = new ArrayList<>();
    for (String value : all("change")) {
      dates.add(date("change", value));
    }
    return dates;
  }

  Period period() throws Answers.Wrong {
    String value = text("period");
    return value == null ? Period.WEEK : choice("period", Period.class, value);
  }

  Split split() throws Answers.Wrong {
    String value = text("split");
    return value == null ? Split.ROOM : choice("split", Split.class, value);
  }

  Grouping grouping() throws Answers.Wrong {
    String value = text("by");
    return value == null ? Grouping.SECTION : choice("by", Grouping.class, value);
  }

  /** Null for each morning's own. */
  Integer grace() throws Answers.Wrong {
    return number("grace", Measures.GRACES, null);
  }

  int minutesBefore() throws Answers.Wrong {
    return number("before", BoardSaid.MOMENTS, 20);
  }

  private Integer number(String name, List<Integer> known, Integer otherwise) throws Answers.Wrong {
    String value = text(name);
    if (value == null) {
      return otherwise;
    }
    for (Integer one : known) {
      if (one.toString().equals(value)) {
        return one;
      }
    }
    throw new Answers.Wrong(
        "Not understood",
        400,
        name
            + " is "
            + known.stream().map(String::valueOf).collect(Collectors.joining(", "))
            + ".");
  }

  /** The site's own price of a minute, or null. */
  BigDecimal price() throws Answers.Wrong {
    String value = text("price");
    if (value != null && !PRICE.matcher(value).matches()) {
      throw new Answers.Wrong("Not a number", 400, "Give price as 12.50.");
    }
    return value == null ? null : new BigDecimal(value);
  }

  private static <E extends Enum<E>> E choice(String name, Class<E> type, String value)
      throws Answers.Wrong {
    String wanted = value.strip().replace('-', '_').toUpperCase(Locale.ROOT);
    for (E one : type.getEnumConstants()) {
      if (one.name().equals(wanted)) {
        return one;
      }
    }
    String known =
        Stream.of(type.getEnumConstants())
            .map(e -> e.name().toLowerCase(Locale.ROOT).replace('_', '-'))
            .collect(Collectors.joining(", "));
    throw new Answers.Wrong("Not understood", 400, name + " is one of " + known + ".");
  }
}
