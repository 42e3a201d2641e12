package sunup.access;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.concurrent.CompletableFuture;
import sunup.access.Known.PairedScreen;
import sunup.access.Known.SignedOn;
import sunup.board.PersonId;
import sunup.board.SuiteId;
import sunup.push.PushKey;
import sunup.push.PushTerms;
import sunup.push.Pushes;
import sunup.push.Subscription;
import sunup.wire.ClientMessage;

/** Phones that are told when something is asked of whoever is signed on at them. */
public final class Subscribing {
  /** Phones of one person. */
  static final int OF_PERSON_MAX = 4;

  private static final String NOT_HERE =
      "This site tells no phones. What is asked of you stands on this page.";

  private final Ledger ledger;
  private final Pushes pushes;
  private final PushKey key;

  Subscribing(Ledger ledger, Pushes pushes, PushKey key) {
    this.ledger = ledger;
    this.pushes = pushes;
    this.key = key;
  }

  /** What the board shows push services. */
  public PushKey key() {
    return key;
  }

  /** What a page gives its browser to subscribe with, or null if this screen may not. */
  String offered(PairedScreen at) {
    return at.page() == Page.POCKET && pushes.terms().containsKey(at.suite()) ? key.point() : null;
  }

  /**
   * A phone wants to be told.
   *
   * @param by who is signed on at it, or null
   */
  CompletableFuture<Void> on(PairedScreen at, SignedOn by, ClientMessage.PushOn asked) {
    PushTerms terms = pushes.terms().get(at.suite());
    if (at.page() != Page.POCKET || terms == null) {
      return Access.failed(new Refusal(NOT_HERE));
    }
    if (by == null || by.post() == null) {
      return Access.failed(new Refusal("Say who you are first: sign on at this phone."));
    }
    Subscription its;
    try {
      terms.endpoint(asked.endpoint(), pushes.way());
      its = Subscription.of(asked.endpoint(), asked.key(), asked.auth());
    } catch (IllegalArgumentException e) {
      return Access.failed(new Refusal(e.getMessage()));
    }
    return ledger.change(
        c -> {
          long now = ledger.now();
          PushStore.keep(c, by.id(), its, now);
          PushStore.keepFew(c, by.person(), OF_PERSON_MAX);
          return null;
        });
  }

  /** A phone does not want to be told any more. */
  CompletableFuture<Void> off(SignedOn by) {
    return by == null ? CompletableFuture.completedFuture(null) : forget(by.id());
  }

  private CompletableFuture<Void> forget(String signOn) {
    return ledger.change(
        c -> {
          PushStore.drop(c, signOn);
          return null;
        });
  }

  private void dropped(String signOn) {
    // Whether it could be written or not, its push service says the same the next time.
    var unused = forget(signOn);
  }

  /**
   * A phone to be told.
   *
   * @param gone to be run if its push service does not know it any more
   */
  public record Phone(Subscription subscription, PushTerms terms, Runnable gone) {}

  /** The phones at which one of these people of a suite's morning is signed on now. */
  public List<Phone> of(SuiteId suite, Set<PersonId> people) {
    List<Phone> phones = new ArrayList<>();
    Known all = ledger.known();
    long now = ledger.now();
    for (Map.Entry<String, Subscription> each : all.pushes().entrySet()) {
      Optional<SignedOn> by =
          Optional.ofNullable(all.sessions().get(each.getKey()))
              .flatMap(one -> all.signedAt(one.screen(), now))
              .filter(one -> one.id().equals(each.getKey()) && one.suite().equals(suite))
              .filter(one -> one.post() != null && people.contains(one.post()));
      PushTerms terms = pushes.terms().get(suite);
      if (by.isPresent() && terms != null) {
        phones.add(new Phone(each.getValue(), terms, () -> dropped(each.getKey())));
      }
    }
    return phones;
  }

  /** Real time. */
  public long now() {
    return ledger.now();
  }
}
