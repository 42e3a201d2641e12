package sunup.access;

import io.vertx.core.Vertx;
import java.security.GeneralSecurityException;
import java.security.KeyPair;
import java.security.KeyPairGenerator;
import java.security.Signature;
import java.security.spec.ECGenParameterSpec;
import java.util.Base64;
import java.util.concurrent.atomic.AtomicInteger;
import sunup.board.PersonId;
import sunup.board.Role;
import sunup.live.fake.TestScreen;
import sunup.wire.AccessAsk;
import sunup.wire.ClientMessage;
import sunup.wire.ServerMessage;

/** A browser with a key of its own: opens sockets, answers challenges, asks and is told. */
public final class KeyHolder {
  private static final AtomicInteger ASKED = new AtomicInteger();

  private final Vertx vertx;
  private final int port;
  private KeyPair key = newKey();
  private TestScreen socket;
  private String pass;

  public KeyHolder(Vertx vertx, int port) {
    this.vertx = vertx;
    this.port = port;
  }

  private static KeyPair newKey() {
    try {
      KeyPairGenerator made = KeyPairGenerator.getInstance("EC");
      made.initialize(new ECGenParameterSpec("secp256r1"));
      return made.generateKeyPair();
    } catch (GeneralSecurityException e) {
      throw new IllegalStateException(e);
    }
  }

  public static String text(byte[] bytes) {
    return Base64.getUrlEncoder().withoutPadding().encodeToString(bytes);
  }

  private String publicKey() {
    return text(key.getPublic().getEncoded());
  }

  private String sign(KeyPair by, String purpose, String nonce) throws Exception {
    Signature signature = Signature.getInstance("SHA256withECDSAinP1363Format");
    signature.initSign(by.getPrivate());
    signature.update(KeyProof.words(purpose, "http://127.0.0.1:" + port, nonce));
    return text(signature.sign());
  }

  /** Opens a socket, says hello and proves its key. */
  public KeyHolder open(String page) throws Exception {
    String nonce = knock(page);
    socket.send(new ClientMessage.Prove(publicKey(), sign(key, KeyProof.PROVE, nonce)));
    return this;
  }

  /** Opens a socket and says hello; tells what is to be signed. */
  public String knock(String page) throws Exception {
    return knock(page, null);
  }

  /** Opens a socket and says hello as a screen of that suite; the nonce to prove. */
  public String knock(String page, String suite) throws Exception {
    ClientMessage.Hello hello = new ClientMessage.Hello("any", page, null, null, null, null, suite);
    socket = TestScreen.connect(vertx, port).send(hello);
    return socket.await(ServerMessage.Challenge.class, c -> true).nonce();
  }

  /** What it would prove itself with. */
  public ClientMessage.Prove proof(String nonce) throws Exception {
    return new ClientMessage.Prove(publicKey(), sign(key, KeyProof.PROVE, nonce));
  }

  public TestScreen socket() {
    return socket;
  }

  /** The code that it shows. */
  public String code() throws Exception {
    return socket.await(ServerMessage.Pairing.class, p -> true).code();
  }

  public ServerMessage.Paired paired() throws Exception {
    ServerMessage.Paired now = socket.await(ServerMessage.Paired.class, p -> true);
    pass = now.pass();
    return now;
  }

  /** What it shows when it asks over HTTP. */
  public String pass() throws Exception {
    return pass != null ? pass : paired().pass();
  }

  public ServerMessage.Told ask(AccessAsk ask) throws Exception {
    String id = "ask-" + ASKED.incrementAndGet();
    socket.send(new ClientMessage.Manage(id, ask));
    return socket.await(ServerMessage.Told.class, t -> t.id().equals(id));
  }

  /** The first administrator, who makes this screen a desk. */
  public KeyHolder first(String link, String code, String pin) throws Exception {
    open("desk").code();
    socket.send(new ClientMessage.FirstLink(link, code, pin));
    paired();
    socket.await(ServerMessage.Signed.class, s -> code.equals(s.code()));
    return this;
  }

  public ServerMessage.Told signOn(String code, String pin) throws Exception {
    return signOn(code, pin, null, null);
  }

  public ServerMessage.Told signOn(String code, String pin, Role role, PersonId as)
      throws Exception {
    socket.forgetMessages();
    socket.send(new ClientMessage.SignOn(code, pin, role, as));
    return socket.await(ServerMessage.Told.class, t -> t.id().equals("sign-on"));
  }

  /** The session under which it touches now. */
  public String session() throws Exception {
    return socket.await(ServerMessage.Signed.class, s -> s.session() != null).session();
  }

  /** Asks for a new key to be known; it is used from {@link #turn} on. */
  public KeyPair newKeyAsked(String nonce) throws Exception {
    KeyPair next = newKey();
    socket.send(
        new ClientMessage.NewKey(
            text(next.getPublic().getEncoded()), sign(next, KeyProof.NEW_KEY, nonce)));
    return next;
  }

  /** Has this key from now on. */
  public KeyHolder turn(KeyPair to) {
    key = to;
    return this;
  }

  /** Closes its socket. */
  public void close() throws Exception {
    socket.close();
  }

  public KeyPair key() {
    return key;
  }
}
