package sunup.http;

import static org.assertj.core.api.Assertions.assertThat;

import com.nimbusds.jwt.JWTClaimsSet;
import io.vertx.core.Promise;
import io.vertx.core.http.HttpMethod;
import io.vertx.core.http.RequestOptions;
import io.vertx.core.json.JsonObject;
import java.net.URI;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.attribute.PosixFilePermissions;
import java.security.MessageDigest;
import java.time.Instant;
import java.util.ArrayList;
import java.util.Date;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.concurrent.TimeUnit;
import java.util.function.UnaryOperator;
import org.junit.jupiter.api.Test;
import sunup.access.KeyHolder;
import sunup.access.PairingOptions;
import sunup.board.Role;
import sunup.http.TwistedProvider.Signed;
import sunup.wire.ClientMessage;
import sunup.wire.ServerMessage;

/** People sign on by the site's identity provider, and an attacker in its place gets nobody in. */
class SignInTest extends PairedBoard {
  private static final String OTHER_PIN = "739164";

  private final TwistedProvider provider = new TwistedProvider();

  @Override
  void begin() throws Exception {
    provider.start(vertx);
    Path secret = folder.resolve("client-secret");
    Files.writeString(secret, TwistedProvider.SECRET);
    Files.setPosixFilePermissions(secret, PosixFilePermissions.fromString("rw-------"));
    Path file = folder.resolve("sign-in.json");
    Files.writeString(
        file,
        new JsonObject()
            .put("issuer", provider.issuer())
            .put("client", TwistedProvider.CLIENT)
            .put("secret", "client-secret")
            .put("ownScreens", true)
            .encode());
    begin(new PairingOptions(null, false, file));
  }

  /** Asks to be sent to the provider; tells what the address there says. */
  private Map<String, String> asks(KeyHolder at, String path) throws Exception {
    at.socket().forgetMessages();
    at.socket().send(new ClientMessage.SignIn(path, null, null));
    ServerMessage.Told told =
        at.socket().await(ServerMessage.Told.class, t -> t.id().equals("sign-in"));
    assertThat(told.done()).as(told.words()).isTrue();
    assertThat(told.address()).startsWith(provider.issuer() + "/authorize?");
    return fields(URI.create(told.address()));
  }

  private static Map<String, String> fields(URI address) {
    Map<String, String> fields = new HashMap<>();
    for (String each : address.getQuery().split("&", -1)) {
      fields.put(each.substring(0, each.indexOf('=')), each.substring(each.indexOf('=') + 1));
    }
    return fields;
  }

  private static ServerMessage.Told back(KeyHolder at, String state) throws Exception {
    return back(at, state, null);
  }

  private static ServerMessage.Told back(KeyHolder at, String state, String iss) throws Exception {
    at.socket().forgetMessages();
    at.socket().send(new ClientMessage.SignedIn("the-code", state, iss));
    return at.socket().await(ServerMessage.Told.class, t -> t.id().equals("signed-in"));
  }

  private KeyHolder stranger(String page) throws Exception {
    KeyHolder made = screen().open(page);
    assertThat(made.socket().await(ServerMessage.Pairing.class, p -> true).provider())
        .isEqualTo("hospital account");
    return made;
  }

  @Test
  void shouldSignOnAtABrowserOfOnesOwnWhichIsKnownNoLongerThanThat() throws Exception {
    person("V7", OTHER_PIN, Role.SUPERVISOR);
    KeyHolder phone = stranger("pocket");
    Map<String, String> sent = asks(phone, "/pocket");
    assertThat(sent)
        .containsEntry("response_type", "code")
        .containsEntry("code_challenge_method", "S256")
        .containsEntry("client_id", TwistedProvider.CLIENT)
        .containsEntry("redirect_uri", "http://127.0.0.1:" + server.port() + "/signed-in");
    assertThat(location("/signed-in?code=the-code&state=" + sent.get("state")))
        .isEqualTo("/pocket#signed-in?code=the-code&state=" + sent.get("state"));
    provider.of("V7", sent.get("nonce"));

    assertThat(back(phone, sent.get("state")).words()).isEqualTo("V7 is signed on.");

    JsonObject asked = provider.asked().get(10, TimeUnit.SECONDS);
    byte[] hash =
        MessageDigest.getInstance("SHA-256")
            .digest(asked.getString("code_verifier").getBytes(StandardCharsets.US_ASCII));
    assertThat(KeyHolder.text(hash)).isEqualTo(sent.get("code_challenge"));
    assertThat(asked.getString("client")).startsWith("Basic ");
    assertThat(phone.socket().await(ServerMessage.Signed.class, s -> s.code() != null).role())
        .isEqualTo(Role.SUPERVISOR);
    assertThat(phone.paired().page()).isEqualTo("pocket");
    assertThat(status("/api/site", phone.pass())).isEqualTo(200);
    // PINs are tried at screens of the site only.
    assertThat(phone.signOn("K1", PIN).words()).contains("own");
    String pass = phone.pass();

    phone.socket().send(new ClientMessage.SignOff());
    assertThat(phone.socket().closeCode()).isEqualTo(1008);

    assertThat(status("/api/site", pass)).isEqualTo(401);
    stranger("pocket");
    assertThat(new KeyHolder(vertx, server.port()).turn(phone.key()).open("pocket").code())
        .isNotNull();
  }

  private String location(String path) throws Exception {
    RequestOptions asked =
        new RequestOptions()
            .setMethod(HttpMethod.GET)
            .setHost("127.0.0.1")
            .setPort(server.port())
            .setURI(path)
            .setFollowRedirects(false);
    return await(
        http.request(asked)
            .compose(r -> r.send())
            .map(r -> r.statusCode() == 303 ? r.getHeader("Location") : "" + r.statusCode()));
  }

  @Test
  void shouldSignNobodyOnByAnAnswerThatIsWrongInOneThing() throws Exception {
    person("A7", OTHER_PIN, Role.ANAESTHETIST);
    KeyHolder station = paired("station", "4");
    List<UnaryOperator<JWTClaimsSet.Builder>> twists =
        List.of(
            c -> c.claim("nonce", "another"),
            c -> c.claim("nonce", null),
            c -> c.audience("another-client"),
            c -> c.issuer("http://127.0.0.1:1"),
            c -> c.expirationTime(Date.from(Instant.now().minusSeconds(600))),
            c -> c.expirationTime(null),
            // At a screen that many use whoever logged in before is not whoever is there now.
            c -> c.claim("auth_time", Instant.now().minusSeconds(600).getEpochSecond()),
            c -> c.claim("auth_time", null));
    for (UnaryOperator<JWTClaimsSet.Builder> twist : twists) {
      Map<String, String> sent = asks(station, "/station/4");
      provider.of("A7", sent.get("nonce")).but(twist);
      assertThat(back(station, sent.get("state")).words()).contains("does not count");
    }
    for (Signed how : List.of(Signed.NOT, Signed.BY_ANOTHER_KEY, Signed.BY_THE_SECRET)) {
      Map<String, String> sent = asks(station, "/station/4");
      provider.of("A7", sent.get("nonce")).but(how);
      assertThat(back(station, sent.get("state")).words()).contains("does not count");
    }
    Map<String, String> sent = asks(station, "/station/4");
    provider.of("A7", sent.get("nonce")).refusingCodes();
    assertThat(back(station, sent.get("state")).words()).contains("does not count");
    sent = asks(station, "/station/4");
    provider.of("A7", sent.get("nonce"));
    assertThat(back(station, sent.get("state"), "http://elsewhere").done()).isFalse();
    // Right in all: the same person is signed on, at a screen that was paired.
    sent = asks(station, "/station/4");
    provider.of("A7", sent.get("nonce"));
    assertThat(back(station, sent.get("state"), provider.issuer()).done()).isTrue();
    assertThat(station.session()).isNotNull();
  }

  @Test
  void shouldTakeWhatComesBackOnceInTheBrowserThatAskedAndOnlyOfWhomTheSiteKnows()
      throws Exception {
    person("V7", OTHER_PIN, Role.SUPERVISOR);
    KeyHolder attacker = stranger("desk");
    KeyHolder victim = paired("desk", null);
    Map<String, String> sent = asks(attacker, "/desk");
    provider.of("V7", sent.get("nonce"));

    assertThat(back(victim, "invented").words()).contains("not begun here");
    // The victim was made to follow the attacker's address: it counts for neither of them there.
    assertThat(back(victim, sent.get("state")).words()).contains("not begun here");
    assertThat(location("/signed-in?code=x&state=invented")).isEqualTo("400");
    assertThat(location("/signed-in")).isEqualTo("400");
    victim.socket().send(new ClientMessage.SignIn("//elsewhere", null, null));
    assertThat(
            victim.socket().await(ServerMessage.Told.class, t -> t.id().equals("sign-in")).done())
        .isFalse();

    sent = asks(victim, "/desk");
    provider.of("nobody-here", sent.get("nonce"));
    assertThat(back(victim, sent.get("state")).done()).isFalse();
    assertThat(back(victim, sent.get("state")).words()).contains("not begun here");
    // Not what the person may be on such a page, and no page for a browser of one's own.
    KeyHolder wall = screen().open("wall");
    wall.code();
    wall.socket().send(new ClientMessage.SignIn("/wall", null, null));
    assertThat(wall.socket().await(ServerMessage.Told.class, t -> true).done()).isFalse();

    provider.stop();
    victim.socket().forgetMessages();
    victim.socket().send(new ClientMessage.SignIn("/desk", null, null));
    assertThat(
            victim.socket().await(ServerMessage.Told.class, t -> t.id().equals("sign-in")).words())
        .contains("does not answer");
    assertThat(victim.signOn("V7", OTHER_PIN).done()).isTrue();
  }

  /** As many phones of one network as may ask at once; one more waits, and its sign-on counts. */
  @Test
  void shouldTakeTheSameBackAgainFromWhoWasToldToWaitBecauseTooManyAsk() throws Exception {
    person("V7", OTHER_PIN, Role.SUPERVISOR);
    KeyHolder phone = stranger("pocket");
    Map<String, String> sent = asks(phone, "/pocket");
    List<KeyHolder> others = new ArrayList<>();
    List<String> states = new ArrayList<>();
    for (int i = 0; i < 8; i++) {
      others.add(stranger("pocket"));
      states.add(asks(others.get(i), "/pocket").get("state"));
    }
    Promise<Void> answers = Promise.promise();
    provider.of("V7", sent.get("nonce")).holding(answers.future());
    for (int i = 0; i < 8; i++) {
      others.get(i).socket().forgetMessages();
      others.get(i).socket().send(new ClientMessage.SignedIn("the-code", states.get(i), null));
      // Refused at once, so what was sent before it waits by now.
      others.get(i).socket().send(new ClientMessage.SignIn("//elsewhere", null, null));
      others.get(i).socket().await(ServerMessage.Told.class, t -> t.id().equals("sign-in"));
    }
    assertThat(back(phone, sent.get("state")).words()).contains("from this network");

    answers.complete();
    for (KeyHolder other : others) {
      other.socket().await(ServerMessage.Told.class, t -> t.id().equals("signed-in"));
    }
    assertThat(back(phone, sent.get("state")).words()).isEqualTo("V7 is signed on.");
  }

  @Test
  void shouldLetNoStrangerKeepOthersFromSigningOn() throws Exception {
    person("A7", OTHER_PIN, Role.ANAESTHETIST);
    KeyHolder station = paired("station", "4");
    Map<String, String> sent = asks(station, "/station/4");
    KeyHolder phone = stranger("pocket");
    ServerMessage.Told told = null;
    for (int i = 0; i <= 30; i++) {
      phone.socket().forgetMessages();
      phone.socket().send(new ClientMessage.SignIn("/pocket", null, null));
      told = phone.socket().await(ServerMessage.Told.class, t -> t.id().equals("sign-in"));
      assertThat(told.done()).as("sign-on %d", i).isEqualTo(i < 30);
    }
    assertThat(told.words()).contains("from this network", "code and PIN");

    provider.of("A7", sent.get("nonce"));
    assertThat(back(station, sent.get("state")).words()).isEqualTo("A7 is signed on.");
    assertThat(asks(station, "/station/4")).isNotEmpty();
  }
}
