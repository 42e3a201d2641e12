package sunup.http;

import java.time.LocalDate;
import java.util.List;
import sunup.archive.Filter;

/**
 * Two sets of starts that share no morning: two periods with dates of their own, or the time from a
 * date on and the time before it. All else of the filter holds for both.
 *
 * @param firstName as a table names it
 * @param secondName of what is taken off
 */
record TwoPeriods(Filter first, String firstName, Filter second, String secondName) {
  /** The parameters that two periods are given by. */
  private static final List<String> ENDS =
      List.of("first-from", "first-to", "second-from", "second-to");

  /** One of them. */
  private record Period(LocalDate from, LocalDate to) {
    String words() {
      return from + " to " + to;
    }
  }

  /** True if the question gives a date of two periods, or where one cuts. */
  static boolean areGiven(ReviewQuery query) throws Answers.Wrong {
    return query.date("at") != null || ENDS.stream().anyMatch(end -> query.text(end) != null);
  }

  /**
   * What the question says.
   *
   * @throws Answers.Wrong if it does not give two periods that lie apart
   */
  static TwoPeriods of(ReviewQuery query) throws Answers.Wrong {
    LocalDate at = query.date("at");
    boolean own = ENDS.stream().anyMatch(end -> query.text(end) != null);
    if (at != null && own) {
      throw wrong("Give two periods, or the date that cuts one (at): not both.");
    }
    if (at == null && !own) {
      throw wrong("Give both dates of both periods, or the date that cuts one (at).");
    }
    return at == null ? apart(query) : cut(query.filter(), at);
  }

  private static TwoPeriods cut(Filter filter, LocalDate at) {
    Filter from = filter.between(ReviewQuery.later(filter.from(), at), filter.to());
    LocalDate last = ReviewQuery.earlier(filter.to(), at.minusDays(1));
    return new TwoPeriods(from, "from " + at, filter.between(filter.from(), last), "before " + at);
  }

  private static TwoPeriods apart(ReviewQuery query) throws Answers.Wrong {
    Filter filter = query.filter();
    if (filter.from() != null || filter.to() != null) {
      throw wrong("Leave out from and to: each of the two periods has dates of its own.");
    }
    for (String end : ENDS) {
      if (query.date(end) == null) {
        throw wrong("Give both dates of both periods: " + end + " is missing.");
      }
    }
    Period first = period(query, "first");
    Period second = period(query, "second");
    LocalDate from = ReviewQuery.later(first.from(), second.from());
    LocalDate to = ReviewQuery.earlier(first.to(), second.to());
    if (!from.isAfter(to)) {
      throw wrong(overlap(from, to));
    }
    return new TwoPeriods(
        filter.between(first.from(), first.to()),
        first.words(),
        filter.between(second.from(), second.to()),
        second.words());
  }

  private static Period period(ReviewQuery query, String which) throws Answers.Wrong {
    Period period = new Period(query.date(which + "-from"), query.date(which + "-to"));
    if (period.to().isBefore(period.from())) {
      throw wrong(
          "The " + which + " period ends before it begins (" + period.words() + "): mend a date.");
    }
    return period;
  }

  private static String overlap(LocalDate from, LocalDate to) {
    boolean one = from.equals(to);
    return "The two periods overlap: "
        + (one ? from + " lies in both." : from + " to " + to + " lie in both.")
        + " A morning can count on one side only: let one period end before "
        + from
        + " or begin after "
        + to
        + ".";
  }

  private static Answers.Wrong wrong(String words) {
    return new Answers.Wrong("Not two periods", 400, words);
  }
}
