package sunup.archive;

import java.sql.PreparedStatement;
import java.sql.SQLException;
import java.time.DayOfWeek;
import java.util.ArrayList;
import java.util.List;

/** A filter as the condition of a statement, with what it compares to as parameters. */
final class Where {
  private final StringBuilder words = new StringBuilder("WHERE true");
  private final List<Object> values = new ArrayList<>();

  /** Of what stands before the condition. */
  private List<Object> before = List.of();

  Where(Filter filter) {
    any("suite", filter.suites());
    any("room", filter.rooms());
    any("service", filter.services());
    any("technique", filter.techniques());
    any("weekday", filter.weekdays().stream().map(DayOfWeek::getValue).toList());
    if (filter.from() != null) {
      also("day >= ?", (int) filter.from().toEpochDay());
    }
    if (filter.to() != null) {
      also("day <= ?", (int) filter.to().toEpochDay());
    }
  }

  /**
   * The same condition in a statement that has parameters of its own before it.
   *
   * @param own in the order of the statement
   */
  Where after(List<Object> own) {
    Where where = new Where(this);
    where.before = List.copyOf(own);
    return where;
  }

  private Where(Where other) {
    words.setLength(0);
    words.append(other.words);
    values.addAll(other.values);
  }

  private void any(String column, List<?> of) {
    if (!of.isEmpty()) {
      words.append(" AND ").append(column).append(" IN (?").append(", ?".repeat(of.size() - 1));
      words.append(')');
      values.addAll(of);
    }
  }

  private void also(String condition, Object value) {
    words.append(" AND ").append(condition);
    values.add(value);
  }

  @Override
  public String toString() {
    return words.toString();
  }

  void fill(PreparedStatement s) throws SQLException {
    int at = 1;
    for (Object value : before) {
      s.setObject(at++, value);
    }
    for (Object value : values) {
      s.setObject(at++, value);
    }
  }
}
