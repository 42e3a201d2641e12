package sunup.access;

import java.util.Optional;
import java.util.concurrent.CompletableFuture;
import java.util.concurrent.CompletionException;
import java.util.function.Consumer;
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
  private static final long PASS_AGAIN_MS = 3_600_000;

  /** A touch may be this much younger than the end of its sign-on: clocks of screens differ. */
  private static final long CLOCK_SLACK_MS = 120_000;

  private static final int LETTERS_MAX = 64;

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
  private AccessStore.Asks asks;
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
    } else if (message instanceof ClientMessage.NewKey key) {
      inside("new-key", at -> newKey(at, key));
    } else if (message instanceof ClientMessage.SignOn on) {
      inside("sign-on", at -> signOn(at, on));
    } else if (message instanceof ClientMessage.SignOff) {
      inside(
          "sign-off", at -> told("sign-off", access.signOff(at), "Nobody is signed on here now."));
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

  private void show(AccessStore.Asks its) {
    asks = its;
    if (ledger.known().screenOf(fingerprint).isPresent()) {
      find();
    } else {
      line.send(new ServerMessage.Pairing(its.code(), its.address(), its.at(), its.until()));
    }
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
            access.passes().made(fingerprint, passAt)));
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
      tellSigned();
      if (ledger.now() - passAt > PASS_AGAIN_MS) {
        pass();
      }
    } else if (asks != null) {
      if (ledger.now() >= asks.until()) {
        line.close("the code has ended; another one comes");
      } else {
        line.send(new ServerMessage.Pairing(asks.code(), asks.address(), asks.at(), asks.until()));
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
    SignedOn now = current().orElse(null);
    if (now != null && now.id().equals(send.session())) {
      return Access.actor(screen, Optional.of(now));
    }
    SignedOn before = send.session() == null ? null : all.sessions().get(send.session());
    if (before != null
        && before.endedAt() != null
        && before.screen().equals(screen.id())
        && send.touchedAt() <= before.endedAt() + CLOCK_SLACK_MS
        && stillMay(all, before)) {
      return Access.actor(screen, Optional.of(before));
    }
    boolean earlier = now == null || send.touchedAt() < now.beganAt() - CLOCK_SLACK_MS;
    return Access.actor(screen, earlier ? Optional.empty() : Optional.of(now));
  }

  private static boolean stillMay(Known all, SignedOn one) {
    Known.Person person = all.people().get(one.person());
    return person != null && person.may(one.suite(), one.role());
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
    SuiteId suite =
        access.suites().keySet().stream()
            .filter(s -> s.value().equals(hello.suite()))
            .findFirst()
            .orElse(access.firstSuite());
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
    if (at.page() == Page.WALL
        || on.code().length() > LETTERS_MAX
        || on.pin().length() > LETTERS_MAX) {
      told("sign-on", Access.failed(new Refusal("Nobody signs on here like that.")), "");
      return;
    }
    Role planned = on.as() == null ? null : line.planned(on.as());
    told(
        "sign-on",
        access
            .checkPin(at, on.code(), on.pin())
            .thenCompose(
                v -> {
                  try {
                    Role role = role(at, on, planned);
                    return access.signOn(at, on.code(), role, on.as());
                  } catch (Refusal e) {
                    return Access.failed(e);
                  }
                }),
        on.code() + " is signed on.");
  }

  /** In which role somebody signs on whose PIN was right. */
  private Role role(PairedScreen at, ClientMessage.SignOn on, Role planned) throws Refusal {
    Known.Person person = ledger.known().people().get(on.code());
    Role asked = on.role() != null ? on.role() : planned;
    if (planned != null && asked != planned) {
      throw new Refusal(
          on.as() + " is planned as " + planned.word() + ". Sign on as that, or as yourself.");
    }
    for (Role role : Role.values()) {
      boolean wanted = asked == null || role == asked;
      if (wanted && at.page().mayBe(role) && person != null && person.may(at.suite(), role)) {
        return role;
      }
    }
    throw new Refusal(
        asked == null
            ? "You have no role at this kind of screen. An administrator gives roles at the desk."
            : "You may not sign on as "
                + asked.word()
                + " here. An administrator gives roles at the desk.");
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
