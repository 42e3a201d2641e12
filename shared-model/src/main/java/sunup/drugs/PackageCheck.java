package sunup.drugs;

import java.time.LocalDateTime;
import java.util.List;
import java.util.Optional;
import java.util.Set;

/**
 * Whether a scanned package is one of the case's list. What is expired or recalled is refused; what
 * is not expected stops and asks for a reason and a second person, as in a shortage another product
 * is the right one; it is kept.
 */
public final class PackageCheck {
  private PackageCheck() {}

  /** True for 14 digits of which the last checks the others. */
  public static boolean isProduct(String gtin) {
    return gtin != null && gtin.length() == 14 && Gs1.checked(gtin);
  }

  /**
   * A product of the site's approved list.
   *
   * @param gtin 14 digits
   * @param drug name as on the list
   * @param drugClass its class
   */
  public record Product(String gtin, String drug, DrugClass drugClass) {
    public Product {
      if (!isProduct(gtin)) {
        throw new IllegalArgumentException("a product number has 14 digits, check digit right");
      }
    }
  }

  /**
   * A lot that was called back.
   *
   * @param gtin of the product
   * @param lot as in the code
   */
  public record Recall(String gtin, String lot) {}

  /** What comes of a scan. */
  public sealed interface Answer {}

  /** On the case's list. */
  public record Expected(Product product, Gs1Package contents) implements Answer {}

  /** Stop: a reason and a second person, or another package. */
  public record Stop(String why, Gs1Package contents) implements Answer {}

  /** Not to be used, whoever signs. */
  public record Refused(String why) implements Answer {}

  /**
   * Looks at a scan.
   *
   * @param result of {@link Gs1#read}
   * @param approved the site's products
   * @param wanted drugs of the case's list, by name
   * @param recalled lots called back
   * @param now the site's day and time; a package is good through its last day
   */
  public static Answer check(
      Gs1.Result result,
      List<Product> approved,
      Set<String> wanted,
      Set<Recall> recalled,
      LocalDateTime now) {
    if (result instanceof Gs1.Unreadable unreadable) {
      return new Refused("can't be read: " + unreadable.why());
    }
    Gs1Package contents = ((Gs1.Read) result).contents();
    Optional<Gs1Date> expiry = contents.expiry();
    if (expiry.isPresent() && ended(expiry.get(), now)) {
      return new Refused("expired " + expiry.get().day());
    }
    Optional<String> gtin = contents.gtin();
    Optional<String> lot = contents.lot();
    if (gtin.isPresent()
        && lot.isPresent()
        && recalled.contains(new Recall(gtin.get(), lot.get()))) {
      return new Refused("lot " + lot.get() + " was called back; put it aside");
    }
    if (gtin.isEmpty()) {
      return new Stop("the code names no product", contents);
    }
    Optional<Product> product =
        approved.stream().filter(p -> p.gtin().equals(gtin.get())).findFirst();
    if (product.isEmpty()) {
      return new Stop("product " + gtin.get() + " is not on the approved list", contents);
    }
    if (!wanted.contains(product.get().drug())) {
      return new Stop(
          Lettering.shown(product.get().drug()) + " is not on this case's list", contents);
    }
    return expiry.isEmpty()
        ? new Stop("the code has no expiry; read it from the package", contents)
        : new Expected(product.get(), contents);
  }

  private static boolean ended(Gs1Date expiry, LocalDateTime now) {
    LocalDateTime end =
        expiry.time() == null
            ? expiry.day().plusDays(1).atStartOfDay()
            : expiry.day().atTime(expiry.time());
    return !now.isBefore(end);
  }
}
