package sunup.live;

import java.util.Collection;
import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import sunup.board.SuiteId;

/** The mornings of each suite that this server shows, in the order of its site files. */
public final class MorningsBySuite {
  private final Map<String, Mornings> suites = new LinkedHashMap<>();

  /**
   * @throws IllegalArgumentException if there is none, or two are of one suite
   */
  public MorningsBySuite(List<Mornings> all) {
    if (all.isEmpty()) {
      throw new IllegalArgumentException("A server shows at least one suite.");
    }
    for (Mornings one : all) {
      if (suites.put(one.suite().value(), one) != null) {
        throw new IllegalArgumentException("The suite " + one.suite() + " is there twice.");
      }
    }
  }

  /** The one of addresses that name no suite. */
  public Mornings first() {
    return suites.values().iterator().next();
  }

  public Collection<Mornings> all() {
    return Collections.unmodifiableCollection(suites.values());
  }

  /**
   * @return none if this server does not show it
   */
  public Optional<Mornings> of(SuiteId suite) {
    return Optional.ofNullable(suites.get(suite.value()));
  }

  /**
   * What an address or a screen means.
   *
   * @param suite its id; null or empty means the first
   */
  public Optional<Mornings> named(String suite) {
    return suite == null || suite.isEmpty()
        ? Optional.of(first())
        : Optional.ofNullable(suites.get(suite));
  }

  public void open() {
    all().forEach(Mornings::open);
  }

  public void close() {
    all().forEach(Mornings::close);
  }
}
