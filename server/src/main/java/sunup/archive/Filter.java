package sunup.archive;

import java.time.DayOfWeek;
import java.time.LocalDate;
import java.util.List;

/**
 * Which first cases are asked about; what is empty or null lets all pass.
 *
 * @param suites ids
 * @param from first date, or null
 * @param to last date, or null
 * @param rooms ids, within their suites
 * @param services names; {@code none} for cases without
 * @param techniques names; {@code none} for cases without
 * @param weekdays days of the week
 */
public record Filter(
    List<String> suites,
    LocalDate from,
    LocalDate to,
    List<String> rooms,
    List<String> services,
    List<String> techniques,
    List<DayOfWeek> weekdays) {
  public static final Filter ALL =
      new Filter(List.of(), null, null, List.of(), List.of(), List.of(), List.of());

  public Filter {
    suites = List.copyOf(suites);
    rooms = List.copyOf(rooms);
    services = List.copyOf(services);
    techniques = List.copyOf(techniques);
    weekdays = List.copyOf(weekdays);
  }

  public Filter inSuite(String suite) {
    return new Filter(List.of(suite), from, to, rooms, services, techniques, weekdays);
  }

  public Filter between(LocalDate first, LocalDate last) {
    return new Filter(suites, first, last, rooms, services, techniques, weekdays);
  }

  public Filter ofServices(List<String> which) {
    return new Filter(suites, from, to, rooms, which, techniques, weekdays);
  }

  public Filter on(List<DayOfWeek> which) {
    return new Filter(suites, from, to, rooms, services, techniques, which);
  }
}
