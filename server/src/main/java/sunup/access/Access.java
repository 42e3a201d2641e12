package sunup.access;

import java.io.IOException;
import java.nio.file.Path;
import java.sql.Connection;
import java.sql.SQLException;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.concurrent.CompletableFuture;
import java.util.concurrent.ConcurrentHashMap;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;
import sunup.access.Known.PairedScreen;
import sunup.access.Known.SignedOn;
import sunup.board.Actor;
import sunup.board.PersonId;
import sunup.board.Role;
import sunup.board.RoomId;
import sunup.board.SuiteId;
import sunup.journal.SideDatabase;
import sunup.push.PushKey;
import sunup.push.Pushes;
import sunup.suites.Clock;
import sunup.suites.Seal;

/**
 * Which screens are ours and who is signed on at them. What is known stands in memory and is asked
 * for each touch; changes are written first, on a thread of their own.
 */
public final class Access implements AutoCloseable {
  /** Letters that tell two people's own browsers apart. */
  private static final int OWN_LETTERS = 6;

  /** How long a code of a new screen counts. */
  static final long CODE_MS = 5 * 60_000;

  /** How long the first administrator's link counts. */
  static final long LINK_MS = 15 * 60_000;

  /** How long it is kept who was signed on where. */
  static final long SIGN_ONS_KEPT_MS = 90L * 24 * 3_600_000;

  /** Wrong tries of all people at a screen within {@link AccessStore#LOCK_MS}. */
  static final int TRIES_AT_SCREEN_MAX = 30;

  /** Of tries beyond a lock one in so many is told in the log. */
  private static final int TOLD_EACH = 100;

  private static final Logger LOG = LoggerFactory.getLogger(Access.class);

  private final Ledger ledger;
  private final Pins pins;
  private final Map<SuiteId, Set<RoomId>> suites;
  private final Map<String, Integer> sockets = new ConcurrentHashMap<>();
  private final Passes passes;
  private final SuiteId firstSuite;
  private final Managing managing;
  private final SigningOn signingOn;
  private final Subscribing subscribing;

  /** Null where the site has no identity provider. */
  private final SigningIn signingIn;

  private FirstLink.Link firstLink;
  private Seal seal;

  private Access(
      Ledger ledger,
      Pins pins,
      Map<SuiteId, Set<RoomId>> suites,
      byte[] key,
      ProviderOptions provider,
      Subscribing subscribing) {
    this.ledger = ledger;
    this.pins = pins;
    this.suites = Map.copyOf(suites);
    this.firstSuite = suites.keySet().iterator().next();
    this.passes = new Passes(key);
    this.managing = new Managing(this);
    this.signingOn = new SigningOn(this);
    this.subscribing = subscribing;
    this.signingIn = provider == null ? null : new SigningIn(this, provider);
  }

  /**
   * Opens what is known of screens and people.
   *
   * @param database is closed with it, also if it can't be opened
   * @param pepper file with what goes into every PIN's hash
   * @param makePepper whether it is made if it is missing
   * @param pepperLost whether PINs that were made with another are given up
   * @param provider by which people sign on too, or null
   * @param suites this board's in order, each with its rooms
   * @param pushes which of them tell phones
   */
  public static Access open(
      SideDatabase database,
      Path pepper,
      boolean makePepper,
      boolean pepperLost,
      ProviderOptions provider,
      Clock clock,
      Map<SuiteId, Set<RoomId>> suites,
      Pushes pushes)
      throws IOException {
    boolean opened = false;
    try {
      Pins pins = new Pins(database.inOne(c -> Pepper.of(c, pepper, makePepper, pepperLost)));
      byte[] key = database.inOne(Passes::key);
      FirstLink.Link link = FirstLink.made(database, suites.keySet(), clock.realMs());
      Ledger ledger = Ledger.open(database, clock);
      PushKey sender = PushKey.of(database.inOne(PushStore::key));
      Subscribing phones = new Subscribing(ledger, pushes, sender);
      Access made = new Access(ledger, pins, suites, key, provider, phones);
      made.firstLink = link;
      made.seal = new CommandSeal(database.inOne(c -> AccessStore.key(c, CommandSeal.NAME)));
      opened = true;
      return made;
    } catch (SQLException e) {
      throw new IOException("Screens and people can't be read: " + e.getMessage(), e);
    } finally {
      if (!opened) {
        database.close();
      }
    }
  }

  /** The secret of the link for the first administrator, while a suite has none. */
  public Optional<String> firstLink() {
    return Optional.ofNullable(firstLink).map(FirstLink.Link::secret);
  }

  /** The suites that had no administrator at the start, of a board that has one; else empty. */
  public List<SuiteId> unadministered() {
    boolean some = firstLink != null && firstLink.suites().size() < suites.size();
    return some ? firstLink.suites() : List.of();
  }

  /** What commands go under from node to node. */
  public Seal seal() {
    return seal;
  }

  Ledger ledger() {
    return ledger;
  }

  /** Looks for changes by other nodes; called about once a second where there are others. */
  public void poll() {
    ledger.poll();
  }

  Map<SuiteId, Set<RoomId>> suites() {
    return suites;
  }

  /** The suite of this id, or the first if a page named none, or one that is not ours. */
  SuiteId suite(String id) {
    return suites.keySet().stream()
        .filter(one -> one.value().equals(id))
        .findFirst()
        .orElse(firstSuite);
  }

  Pins pins() {
    return pins;
  }

  Managing managing() {
    return managing;
  }

  SigningOn signingOn() {
    return signingOn;
  }

  public Subscribing subscribing() {
    return subscribing;
  }

  /** Signing on by the site's identity provider, if it has one. */
  Optional<SigningIn> signingIn() {
    return Optional.ofNullable(signingIn);
  }

  /** The page to which a browser goes that comes back from the identity provider. */
  public Optional<String> signingInAt(String state) {
    return signingIn().flatMap(one -> one.page(state));
  }

  Passes passes() {
    return passes;
  }

  /** Sockets of a screen, of this node. */
  int sockets(String screen) {
    return sockets.getOrDefault(screen, 0);
  }

  /** Counts a socket of a screen; false if it has too many already. */
  boolean seat(String screen, int most) {
    return sockets.merge(screen, 1, (had, one) -> Math.min(had + one, most + 1)) <= most;
  }

  void unseat(String screen) {
    sockets.computeIfPresent(screen, (s, had) -> had <= 1 ? null : had - 1);
  }

  /** The screen of a key that was just proved, if it is one of ours. */
  CompletableFuture<Optional<PairedScreen>> proved(String fingerprint) {
    Known.Key key = ledger.known().keys().get(fingerprint);
    if (key == null || key.used()) {
      return CompletableFuture.completedFuture(ledger.known().screenOf(fingerprint));
    }
    return ledger
        .change(
            c -> {
              AccessStore.keyUsed(c, fingerprint, key.screen(), ledger.now());
              return null;
            })
        .thenApply(v -> ledger.known().screenOf(fingerprint));
  }

  /** A code for a screen that is not known. */
  CompletableFuture<Pairings.Asks> asks(String fingerprint, String address, String page) {
    return ledger.inStore(
        c -> {
          long now = ledger.now();
          Pairings.Asks asks =
              new Pairings.Asks(
                  Secrets.pairingCode(), fingerprint, address, page, now, now + CODE_MS);
          if (!Pairings.ask(c, asks)) {
            throw new Refusal("Too many screens wait to be paired. Try again in five minutes.");
          }
          return asks;
        });
  }

  /** The screen's next key: both count until the new one was used. */
  CompletableFuture<Void> newKey(String screen, String fingerprint) {
    return ledger.change(
        c -> {
          if (ledger.known().keys().containsKey(fingerprint)) {
            throw new Refusal("This key is in use already. Make a new one.");
          }
          AccessStore.dropUnused(c, screen);
          AccessStore.addKey(c, fingerprint, screen, ledger.now());
          return null;
        });
  }

  /** The screen of the first administrator becomes a desk, and he or she is signed on there. */
  CompletableFuture<Void> claim(
      String fingerprint, String link, String code, String pin, SuiteId suite) {
    return FirstLink.claim(this, fingerprint, link, code, pin, suite);
  }

  static void checkCode(String code) throws Refusal {
    if (!code.matches("[A-Za-z0-9][A-Za-z0-9-]{1,15}")) {
      throw new Refusal("A person's code is 2 to 16 letters, digits or dashes, and no name.");
    }
  }

  /** Makes a screen ours. */
  PairedScreen paired(
      Connection c, String fingerprint, Page page, SuiteId suite, RoomId room, String by)
      throws SQLException {
    String first = page.word() + "-" + (room == null ? suite.value() : room.value());
    String name = first;
    for (char more = 'b'; taken(name, suite) && more <= 'z'; more++) {
      name = first + "." + more;
    }
    PairedScreen made =
        new PairedScreen(Secrets.token(), name, page, suite, room, ledger.now(), by, false);
    return ours(c, fingerprint, made);
  }

  /** A browser that is one person's own is known while that person is signed on at it. */
  CompletableFuture<Void> ownScreen(SigningIn.Browser at, String person, Role role, PersonId post) {
    return ledger.change(
        c -> {
          long now = ledger.now();
          // No code in it: it stands in every event beside the post, longer than codes are kept.
          String name = at.page().word() + "-own-" + Secrets.token().substring(0, OWN_LETTERS);
          String id = Secrets.token();
          ours(
              c,
              at.fingerprint(),
              new PairedScreen(id, name, at.page(), at.suite(), null, now, person, true));
          AccessStore.signOn(c, signedOn(id, person, at.suite(), role, post, now));
          return null;
        });
  }

  private PairedScreen ours(Connection c, String fingerprint, PairedScreen made)
      throws SQLException {
    Pairings.noMore(c, fingerprint);
    AccessStore.addScreen(c, made);
    AccessStore.addKey(c, fingerprint, made.id(), ledger.now());
    return made;
  }

  private boolean taken(String name, SuiteId suite) {
    return ledger.known().screens().values().stream()
        .anyMatch(s -> s.name().equals(name) && s.suite().equals(suite));
  }

  static SignedOn signedOn(
      String screen, String person, SuiteId suite, Role role, PersonId post, long now) {
    return new SignedOn(Secrets.token(), screen, person, suite, role, post, now, null);
  }

  /**
   * Looks at a PIN. The try is counted before, so that many at once are not more than many.
   *
   * @return fails with a {@link Refusal} if it is not right, or may not be tried now
   */
  CompletableFuture<Void> checkPin(PairedScreen at, String person, String pin) {
    return ledger
        .inStore(
            c -> {
              int tried = PinTries.tried(c, person, at.id(), ledger.now());
              int here = PinTries.triedAt(c, at.id());
              if (here > TRIES_AT_SCREEN_MAX) {
                refused(at, person, here, TRIES_AT_SCREEN_MAX, "too many wrong PINs there");
                throw new Refusal("Too many wrong PINs at this screen. Wait a quarter of an hour.");
              }
              return tried > AccessStore.TRIES_MAX
                  ? new Tried(tried, null)
                  : new Tried(tried, AccessStore.pin(c, person));
            })
        .thenCompose(
            tried ->
                tried.count() > AccessStore.TRIES_MAX
                    ? locked(at, person, tried.count())
                    : ledger
                        .hash(() -> pins.right(pin, tried.kept()))
                        .thenCompose(
                            right ->
                                right ? untried(person, at) : wrong(at, person, tried.count())));
  }

  /** What a try found: the how manyth in a row it is, and what is kept of the PIN. */
  private record Tried(int count, Pins.Kept kept) {}

  private static final String LOCKED =
      "This code is locked at this screen after too many wrong PINs. Ask a colleague who is signed"
          + " on to let you try again, or wait a quarter of an hour.";

  private CompletableFuture<Void> locked(PairedScreen at, String person, int count) {
    refused(at, person, count, AccessStore.TRIES_MAX, "locked there");
    return failed(new Refusal(LOCKED));
  }

  private CompletableFuture<Void> untried(String person, PairedScreen at) {
    return ledger.inStore(
        c -> {
          PinTries.forgetTries(c, person, at.id());
          return null;
        });
  }

  /**
   * For whoever looks into what was tried. A code that nobody has may be a PIN in the wrong field,
   * and is not written. Beyond the lock the first is told and one in so many.
   */
  private void refused(PairedScreen at, String person, int count, int most, String why) {
    if (count <= most + 1 || count % TOLD_EACH == 0) {
      String who = ledger.known().people().containsKey(person) ? person : "a code nobody has";
      LOG.warn("not signed on at {}: {}: {} ({} tries)", at.name(), who, why, count);
    }
  }

  private CompletableFuture<Void> wrong(PairedScreen at, String person, int count) {
    refused(at, person, count, AccessStore.TRIES_MAX, "code or PIN is not right");
    int left = AccessStore.TRIES_MAX - count;
    // What is known says who is locked; a colleague sees it and can help.
    return left > 0
        ? failed(new Refusal("Code or PIN is not right. Tries left: " + left + "."))
        : ledger.change(c -> null).thenCompose(v -> failed(new Refusal(LOCKED)));
  }

  static <T> CompletableFuture<T> failed(Refusal why) {
    return CompletableFuture.failedFuture(why);
  }

  /** Somebody whose PIN was right is signed on; whoever was before is not any more. */
  CompletableFuture<Void> signOn(PairedScreen at, String person, Role role, PersonId post) {
    return ledger.change(
        c -> {
          AccessStore.signOn(c, signedOn(at.id(), person, at.suite(), role, post, ledger.now()));
          return null;
        });
  }

  CompletableFuture<Void> signOff(PairedScreen at) {
    return ledger.change(
        c -> {
          AccessStore.endAt(c, at.id(), ledger.now());
          return null;
        });
  }

  /**
   * Who asks over HTTP.
   *
   * @param page that the screen is paired as
   */
  public record Asker(Actor actor, Page page, SuiteId suite) {}

  /** Whose pass this is, if it is of a screen that is ours now. */
  public Optional<Asker> asker(String pass) {
    Known all = ledger.known();
    String fingerprint = pass == null ? null : passes.read(pass, ledger.now());
    return fingerprint == null
        ? Optional.empty()
        : all.screenOf(fingerprint)
            .filter(at -> !at.own() || all.signedAt(at.id(), ledger.now()).isPresent())
            .map(
                at ->
                    new Asker(
                        actor(at, all.signedAt(at.id(), ledger.now())), at.page(), at.suite()));
  }

  /** As whom somebody acts at a screen; unsigned it is the screen alone. */
  static Actor actor(PairedScreen at, Optional<SignedOn> by) {
    return by.map(one -> new Actor(one.role(), one.onBoard(), at.name()))
        .orElseGet(() -> at.page().actor(at.name(), null, null));
  }

  @Override
  public void close() {
    signingIn().ifPresent(SigningIn::close);
    ledger.close();
  }
}
