package sunup.access;

import java.util.Optional;
import java.util.concurrent.CompletableFuture;
import java.util.concurrent.CompletionException;
import java.util.function.Consumer;
import java.util.function.Function;
import sunup.access.Known.PairedScreen;
import sunup.access.Known.SignedOn;
import sunup.board.Actor;
import sunup.board.PersonId;
import sunup.board.Role;
import sunup.board.SuiteId;
import sunup.wire.Audience;
import sunup.wire.ClientMessage;
import sunup.wire.ServerMessage;

/**
 * Who a socket is, where screens are paired: a challenge for every hello, a code for a screen that
 * is not known, and from then on who is signed on at it. Used on the socket's own context only.
 */
public final class Door {
  /** Sockets of one screen. */
  static final int SOCKETS_MAX = 8;

  /** A page gets a new pass this often. */
  private static final long PASS_AGAIN_MS = 2 * 60_000;

  private static final String COUNTERSIGN = "countersign";
  private static final String PUSH = "push";

  private final Access access;
  private final Ledger ledger;
  private final Managing managing;
  private final Line line;
  private final String origin;
  private final String address;
  private ClientMessage.Hello hello;
  private String nonce;
  private String fingerprint;
  private PairedScreen screen;
  private Pairings.Asks asks;
  private String signed;

  /** Of whoever is signed on; read by those who make frames. */
  private volatile Role signedRole;

  private long passAt;
  private boolean closed;
  private Runnable unwatch = () -> {};

  /** The socket, as the door uses it. */
  public interface Line {
    void send(ServerMessage message);

    /** Something is wrong with what was sent. */
    void trouble(String code, String words);

    /** Closes the socket for a breach of these rules. */
    void close(String why);

    /** The screen is known: the hello, with what it was paired as. */
    void enter(ClientMessage.Hello as);

    /** It is told by another audience from now on: everything anew. */
    void anew();

    /** The screen holds its key, so that there is no hurry any more. */
    void proved();

    /** Runs it on the socket's own context. */
    void run(Runnable task);

    /** What a person of the morning is planned as, or null if that is not known here. */
    Role planned(PersonId post);
  }

  private Door(Access access, Line line, String origin, String address) {
    this.access = access;
    this.ledger = access.ledger();
    this.managing = access.managing();
    this.line = line;
    this.origin = origin;
    this.address = address;
  }

  /**
   * A socket's.
   *
   * @param origin of the page that opened it
   * @param address it came from
   */
  public static Door of(Access access, Line line, String origin, String address) {
    return new Door(access, line, origin, address);
  }

  /** The first message: who is it? */
  public void hello(ClientMessage.Hello first) {
    if (hello != null) {
      line.trouble("hello-twice", "This socket has said hello; open another for another page");
      return;
    }
    hello = first;
    nonce = Secrets.token();
    line.send(new ServerMessage.Challenge(nonce));
  }

  /** True if the message is one for the door. */
  public boolean take(ClientMessage message) {
    if (message instanceof ClientMessage.Prove prove) {
      prove(prove);
    } else if (message instanceof ClientMessage.FirstLink claim) {
      claim(claim);
    } else if (message instanceof ClientMessage.SignIn asked) {
      signIn(asked);
    } else if (message instanceof ClientMessage.SignedIn back) {
      signedIn(back);
    } else if (message instanceof ClientMessage.NewKey key) {
      inside("new-key", at -> newKey(at, key));
    } else if (message instanceof ClientMessage.SignOn on) {
      inside("sign-on", at -> signOn(at, on));
    } else if (message instanceof ClientMessage.SignOff) {
      inside(
          "sign-off", at -> told("sign-off", access.signOff(at), "Nobody is signed on here now."));
    } else if (message instanceof ClientMessage.PushOn on) {
      inside(PUSH, at -> pushOn(at, on));
    } else if (message instanceof ClientMessage.PushOff) {
      inside(PUSH, at -> told(PUSH, access.subscribing().off(current().orElse(null)), ""));
    } else if (message instanceof ClientMessage.Countersign by) {
      inside(COUNTERSIGN, at -> countersign(at, by));
    } else if (message instanceof ClientMessage.Manage manage) {
      inside(manage.id(), at -> manage(at, manage));
    } else {
      return false;
    }
    return true;
  }

  private void inside(String id, Consumer<PairedScreen> then) {
    if (screen == null) {
      line.send(new ServerMessage.Told(id, false, "This screen is not paired yet.", null));
    } else {
      then.accept(screen);
    }
  }

  private void prove(ClientMessage.Prove prove) {
    if (nonce == null || fingerprint != null) {
      line.trouble("not-asked", "A proof answers a challenge, once");
      return;
    }
    byte[] words = KeyProof.words(KeyProof.PROVE, origin, nonce);
    Optional<String> proved = KeyProof.check(prove.key(), prove.signature(), words);
    if (proved.isEmpty()) {
      line.close("the screen's signature is not right");
      return;
    }
    fingerprint = proved.get();
    line.proved();
    unwatch = ledger.watch(() -> line.run(this::look));
    find();
  }

  private void find() {
    then(access.proved(fingerprint), this::found, line::close);
  }

  private void found(Optional<PairedScreen> its) {
    if (its.isPresent()) {
      admit(its.get());
    } else if (asks == null) {
      String page = Page.named(hello.page()).map(Page::word).orElse("");
      then(access.asks(fingerprint, address, page), this::show, line::close);
    }
  }

  private void show(Pairings.Asks its) {
    asks = its;
    if (ledger.known().screenOf(fingerprint).isPresent()) {
      find();
    } else {
      pairing();
    }
  }

  private void pairing() {
    String provider =
        access.signingIn().filter(SigningIn::ownScreens).map(SigningIn::name).orElse(null);
    line.send(
        new ServerMessage.Pairing(asks.code(), asks.address(), asks.at(), asks.until(), provider));
  }

  private void admit(PairedScreen its) {
    if (screen != null || closed) {
      return;
    }
    if (!access.seat(its.id(), SOCKETS_MAX)) {
      access.unseat(its.id());
      line.close("this screen has too many sockets open");
      return;
    }
    screen = its;
    pass();
    // Everybody who is paired may look at the wall, which tells least.
    if (!hello.page().equals(its.page().word()) && !hello.page().equals(Page.WALL.word())) {
      line.close("this screen was paired as another page");
      return;
    }
    signed = "";
    tellSigned();
    line.enter(
        new ClientMessage.Hello(
            its.name(),
            hello.page(),
            hello.morning(),
            // Where a manager may be signed on, frames of another audience may lie between.
            its.page() == Page.DESK ? null : hello.epoch(),
            its.page() == Page.DESK ? null : hello.n(),
            hello.date(),
            its.suite().value()));
  }

  /** Who it is told as, on a page of it. */
  public Audience audience(Page page) {
    return page.audience(signedRole);
  }

  private void pass() {
    passAt = ledger.now();
    line.send(
        new ServerMessage.Paired(
            screen.name(),
            screen.page().word(),
            screen.suite().value(),
            screen.room(),
            access.passes().made(fingerprint, passAt),
            access.signingIn().map(SigningIn::name).orElse(null),
            access.subscribing().offered(screen)));
  }

  /** Something changed, here or at another node. */
  private void look() {
    if (closed) {
      return;
    }
    boolean ours = ledger.known().screenOf(fingerprint).isPresent();
    if (screen == null) {
      if (ours && asks != null) {
        find();
      }
    } else if (ours) {
      tellSigned();
    } else {
      line.close("this screen is not paired any more");
    }
  }

  private Optional<SignedOn> current() {
    return ledger.known().signedAt(screen.id(), ledger.now());
  }

  private void tellSigned() {
    SignedOn now = current().orElse(null);
    String id = now == null ? null : now.id();
    if (java.util.Objects.equals(id, signed)) {
      return;
    }
    signed = id;
    Page at = screen.page();
    Audience before = at.audience(signedRole);
    signedRole = now == null ? null : now.role();
    if (at.audience(signedRole) != before) {
      line.anew();
    }
    line.send(
        now == null
            ? new ServerMessage.Signed(null, null, null, null)
            : new ServerMessage.Signed(id, now.person(), now.role(), now.post()));
  }

  /** Every few seconds. */
  public void pulse() {
    if (screen != null) {
      if (screen.own() && current().isEmpty()) {
        told("sign-off", access.signOff(screen), "");
        line.close("its sign-on has ended");
        return;
      }
      tellSigned();
      if (ledger.now() - passAt > PASS_AGAIN_MS) {
        pass();
      }
    } else if (asks != null) {
      if (ledger.now() >= asks.until()) {
        line.close("the code has ended; another one comes");
      } else {
        pairing();
      }
    }
  }

  public void closed() {
    if (!closed) {
      closed = true;
      unwatch.run();
      if (screen != null) {
        access.unseat(screen.id());
      }
    }
  }

  /**
   * Who gave a command: whoever is signed on at the screen, whatever the message says; only one
   * that was touched before may be of an earlier sign-on here, or of none.
   *
   * @return null if the screen is not ours any more
   */
  public Actor actor(ClientMessage.Send send) {
    Known all = ledger.known();
    if (all.screenOf(fingerprint).isEmpty()) {
      return null;
    }
    if (hello.page().equals(Page.WALL.word())) {
      return Page.WALL.actor(screen.name(), null, null);
    }
    return Giver.of(access, screen, current().orElse(null), send);
  }

  private void claim(ClientMessage.FirstLink claim) {
    if (fingerprint == null) {
      line.trouble("not-asked", "A screen proves its key before it claims");
      return;
    }
    if (screen != null) {
      told("first-link", Access.failed(new Refusal("This screen is paired already.")), "");
      return;
    }
    SuiteId suite = access.suite(hello.suite());
    told(
        "first-link",
        access.claim(fingerprint, claim.link(), claim.code(), claim.pin(), suite),
        "This screen is a desk now, and you are its administrator.");
  }

  private void newKey(PairedScreen at, ClientMessage.NewKey key) {
    byte[] words = KeyProof.words(KeyProof.NEW_KEY, origin, nonce);
    Optional<String> proved = KeyProof.check(key.key(), key.signature(), words);
    told(
        "new-key",
        proved.isEmpty()
            ? Access.failed(new Refusal("The new key's signature is not right."))
            : access.newKey(at.id(), proved.get()),
        "The new key counts from its first use on.");
  }

  private void signOn(PairedScreen at, ClientMessage.SignOn on) {
    Role planned = on.as() == null ? null : line.planned(on.as());
    told("sign-on", access.signingOn().on(at, on, planned), on.code() + " is signed on.");
  }

  private void signIn(ClientMessage.SignIn asked) {
    if (screen == null && asked.as() != null) {
      // It has not entered, so what is planned for that post is not known to it.
      String first = "Sign on as yourself first.";
      line.send(new ServerMessage.Told("sign-in", false, first, null));
      return;
    }
    Role planned = asked.as() == null ? null : line.planned(asked.as());
    then(
        withProvider(one -> one.begin(browser(), asked, origin, planned)),
        to -> line.send(new ServerMessage.Told("sign-in", true, "", null, null, to)),
        why -> line.send(new ServerMessage.Told("sign-in", false, why, null)));
  }

  private void signedIn(ClientMessage.SignedIn back) {
    then(
        withProvider(one -> one.end(browser(), back)),
        code -> line.send(new ServerMessage.Told("signed-in", true, code + " is signed on.", null)),
        why -> line.send(new ServerMessage.Told("signed-in", false, why, null)));
  }

  private CompletableFuture<String> withProvider(
      Function<SigningIn, CompletableFuture<String>> then) {
    return fingerprint == null || access.signingIn().isEmpty()
        ? Access.failed(new Refusal("Nobody signs on here like that."))
        : then.apply(access.signingIn().get());
  }

  private SigningIn.Browser browser() {
    Page page = Page.named(hello.page()).orElse(Page.WALL);
    return new SigningIn.Browser(fingerprint, page, access.suite(hello.suite()), address);
  }

  private void countersign(PairedScreen at, ClientMessage.Countersign by) {
    Role planned = by.as() == null ? null : line.planned(by.as());
    String words = by.code() + " signed.";
    then(
        access.signingOn().second(at, current().orElse(null), by, planned),
        token -> line.send(new ServerMessage.Told(COUNTERSIGN, true, words, null, token, null)),
        why -> line.send(new ServerMessage.Told(COUNTERSIGN, false, why, null)));
  }

  private void pushOn(PairedScreen at, ClientMessage.PushOn on) {
    told(PUSH, access.subscribing().on(at, current().orElse(null), on), "");
  }

  private void manage(PairedScreen at, ClientMessage.Manage manage) {
    then(
        managing.ask(at, manage.ask()),
        done -> line.send(new ServerMessage.Told(manage.id(), true, done.words(), done.list())),
        why -> line.send(new ServerMessage.Told(manage.id(), false, why, null)));
  }

  private void told(String id, CompletableFuture<Void> work, String words) {
    then(
        work,
        done -> line.send(new ServerMessage.Told(id, true, words, null)),
        why -> line.send(new ServerMessage.Told(id, false, why, null)));
  }

  /** Goes on in the socket's context. */
  private <T> void then(CompletableFuture<T> work, Consumer<T> done, Consumer<String> refused) {
    var unused =
        work.whenComplete(
            (value, e) ->
                line.run(
                    () -> {
                      if (closed) {
                        return;
                      }
                      if (e == null) {
                        done.accept(value);
                      } else {
                        refused.accept(words(e));
                      }
                    }));
  }

  private static String words(Throwable e) {
    Throwable why = e instanceof CompletionException && e.getCause() != null ? e.getCause() : e;
    return why instanceof Refusal ? why.getMessage() : "Something went wrong here. Try again.";
  }
}
