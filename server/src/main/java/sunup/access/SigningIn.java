package sunup.access;

import java.net.URI;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.concurrent.CompletableFuture;
import java.util.concurrent.ConcurrentHashMap;
import java.util.concurrent.ThreadPoolExecutor;
import java.util.regex.Pattern;
import sunup.access.Known.PairedScreen;
import sunup.board.Role;
import sunup.board.SuiteId;
import sunup.wire.ClientMessage;

/**
 * People who sign on by the identity provider. A browser proves its key on its socket, is sent away
 * with a state, and gives what it brought back over a socket that is proved by the same key: what
 * was begun in one browser ends in no other.
 */
final class SigningIn implements AutoCloseable {
  /** Questions to the provider that wait for a thread; beyond it "try again in a moment". */
  static final int WAITING_MAX = 32;

  /** Of these, questions of strangers from one source. */
  static final int WAITING_OF_SOURCE_MAX = 8;

  private static final String TOO_MANY =
      "Too many sign-ons are begun from this network. Wait a minute, or sign on with code"
          + " and PIN at a paired screen.";

  private static final String NOT_BEGUN =
      "This sign-on was not begun here, or is over. Begin it again.";

  /** Where the provider sends people back to; registered there. */
  public static final String BACK = "/signed-in";

  private static final int ANSWER_MAX = 4_096;
  private static final Pattern PATH =
      Pattern.compile("/(?!/)[A-Za-z0-9/_.%-]{0,100}([?]suite=[A-Za-z0-9%._-]{1,80})?");
  private static final Set<Page> OWN = Set.of(Page.POCKET, Page.DESK);

  private final Access access;
  private final Ledger ledger;
  private final Provider provider;
  private final ThreadPoolExecutor asking = Ledger.pool("sunup-sign-in", WAITING_MAX);

  /** Of browsers that are no screens of the site: nobody there waits for them. */
  private final ThreadPoolExecutor strangers = Ledger.pool("sunup-sign-in-own", WAITING_MAX);

  private final Beginnings<Begun> begun = new Beginnings<>();

  /** Questions of strangers that wait, by source. */
  private final Map<String, Integer> waiting = new ConcurrentHashMap<>();

  SigningIn(Access access, ProviderOptions options) {
    this.access = access;
    this.ledger = access.ledger();
    this.provider = new Provider(options);
  }

  /**
   * A browser.
   *
   * @param fingerprint of the key that it proved
   * @param page that it shows
   * @param suite that it shows
   * @param address it came from
   */
  record Browser(String fingerprint, Page page, SuiteId suite, String address) {}

  private record Begun(Browser by, ClientMessage.SignIn asked, Role planned, Provider.Begun at) {}

  /** What people call the provider. */
  String name() {
    return provider.options().name();
  }

  boolean ownScreens() {
    return provider.options().ownScreens();
  }

  /**
   * Begins.
   *
   * @param origin of the page
   * @param planned the role of the person of the plan that it shall be, or null if not known
   * @return where to send the browser
   */
  CompletableFuture<String> begin(
      Browser by, ClientMessage.SignIn asked, String origin, Role planned) {
    Optional<Known.PairedScreen> screen = ledger.known().screenOf(by.fingerprint());
    boolean known = screen.isPresent();
    boolean shared = known && !screen.get().own();
    if (!PATH.matcher(asked.path()).matches() || (!known && !mayBeOwn(by))) {
      return Access.failed(new Refusal("Nobody signs on here like that."));
    }
    String source = known ? null : Sources.of(by.address());
    if (source != null && !begun.mayBegin(source, by.fingerprint(), ledger.now())) {
      return Access.failed(new Refusal(TOO_MANY));
    }
    URI back = URI.create(origin + BACK);
    return ask(
        source,
        () -> {
          Provider.Begun at = provider.begin(back, shared, ledger.now());
          Begun one = new Begun(by, asked, planned, at);
          begun.keep(at.state().getValue(), by.fingerprint(), source, one, ledger.now());
          return at.address().toString();
        });
  }

  /**
   * Asks the provider, on a thread that screens of the site have for themselves.
   *
   * @param source of a stranger, or null
   */
  private <T> CompletableFuture<T> ask(String source, Ledger.Work<T> work) {
    if (source == null) {
      return Ledger.later(asking, work);
    }
    if (waiting.merge(source, 1, Integer::sum) > WAITING_OF_SOURCE_MAX) {
      answered(source);
      return Access.failed(new Refusal(TOO_MANY));
    }
    return Ledger.later(strangers, work).whenComplete((done, e) -> answered(source));
  }

  private void answered(String source) {
    waiting.computeIfPresent(source, (s, had) -> had <= 1 ? null : had - 1);
  }

  private boolean mayBeOwn(Browser by) {
    return ownScreens() && OWN.contains(by.page());
  }

  /** The page that a sign-on was begun on; what came back is given to it, and it to the board. */
  Optional<String> page(String state) {
    return begun.look(state).map(one -> one.asked().path());
  }

  private record Ended(Begun one, String code) {}

  /**
   * Ends. A state counts once, whatever comes of it, but not before the provider is asked: who is
   * told to wait because too many ask may give the same back again.
   */
  CompletableFuture<String> end(Browser by, ClientMessage.SignedIn back) {
    long now = ledger.now();
    boolean tooLong =
        back.code().isEmpty() || back.code().length() + back.state().length() > ANSWER_MAX;
    if (tooLong || !begun.isBegun(back.state(), by.fingerprint(), now)) {
      return Access.failed(new Refusal(NOT_BEGUN));
    }
    boolean known = ledger.known().screenOf(by.fingerprint()).isPresent();
    return ask(
            known ? null : Sources.of(by.address()),
            () -> {
              Begun one = begun.take(back.state(), by.fingerprint(), now);
              if (one == null) {
                throw new Refusal(NOT_BEGUN);
              }
              return new Ended(one, provider.end(one.at(), back.code(), back.iss()));
            })
        .thenCompose(ended -> on(ended.one(), ended.code()).thenApply(v -> ended.code()));
  }

  private CompletableFuture<Void> on(Begun one, String code) {
    Browser by = one.by();
    Optional<PairedScreen> at = ledger.known().screenOf(by.fingerprint());
    Page page = at.map(PairedScreen::page).orElse(by.page());
    SuiteId suite = at.map(PairedScreen::suite).orElse(by.suite());
    ClientMessage.SignIn asked = one.asked();
    try {
      Role role =
          access
              .signingOn()
              .role(
                  new SigningOn.At(page, suite),
                  code,
                  new SigningOn.Asked(asked.role(), asked.as(), one.planned()),
                  Set.of(Role.values()));
      if (at.isPresent() && (!at.get().own() || at.get().pairedBy().equals(code))) {
        return access.signOn(at.get(), code, role, asked.as());
      } else if (at.isEmpty() && mayBeOwn(by)) {
        return access.ownScreen(by, code, role, asked.as());
      }
      throw new Refusal("This browser is somebody else's. Let that person sign off first.");
    } catch (Refusal e) {
      return Access.failed(e);
    }
  }

  @Override
  public void close() {
    asking.shutdownNow();
    strangers.shutdownNow();
  }
}
