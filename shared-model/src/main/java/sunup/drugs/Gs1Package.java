package sunup.drugs;

import java.time.LocalDate;
import java.util.List;
import java.util.Optional;

/** What a package's code says. */
public final class Gs1Package {
  /**
   * One element.
   *
   * @param id application identifier, digits
   * @param title what it is
   * @param data as written in the code
   */
  public record Element(String id, String title, String data) {}

  private final List<Element> elements;
  private final LocalDate today;

  Gs1Package(List<Element> elements, LocalDate today) {
    this.elements = List.copyOf(elements);
    this.today = today;
  }

  /** All elements in the order of the code. */
  public List<Element> elements() {
    return elements;
  }

  private Optional<String> data(String id) {
    return elements.stream().filter(e -> e.id().equals(id)).map(Element::data).findFirst();
  }

  /** Product number of 14 digits, check digit right. */
  public Optional<String> gtin() {
    return data("01");
  }

  public Optional<String> lot() {
    return data("10");
  }

  public Optional<String> serial() {
    return data("21");
  }

  /** The expiry, with its time if the code has one. */
  public Optional<Gs1Date> expiry() {
    Optional<Gs1Date> timed = data("7003").map(d -> Gs1Date.withTime(d, today));
    return timed.isPresent() ? timed : data("17").map(d -> Gs1Date.of(d, today));
  }

  @Override
  public boolean equals(Object other) {
    return other instanceof Gs1Package that
        && elements.equals(that.elements)
        && today.equals(that.today);
  }

  @Override
  public int hashCode() {
    return elements.hashCode();
  }

  @Override
  public String toString() {
    StringBuilder text = new StringBuilder();
    elements.forEach(e -> text.append('(').append(e.id()).append(')').append(e.data()));
    return text.toString();
  }
}
