package sunup.http;

import com.nimbusds.jose.JOSEException;
import com.nimbusds.jose.JWSAlgorithm;
import com.nimbusds.jose.JWSHeader;
import com.nimbusds.jose.crypto.MACSigner;
import com.nimbusds.jose.crypto.RSASSASigner;
import com.nimbusds.jose.jwk.JWKSet;
import com.nimbusds.jose.jwk.RSAKey;
import com.nimbusds.jose.jwk.gen.RSAKeyGenerator;
import com.nimbusds.jwt.JWTClaimsSet;
import com.nimbusds.jwt.PlainJWT;
import com.nimbusds.jwt.SignedJWT;
import io.vertx.core.Future;
import io.vertx.core.Vertx;
import io.vertx.core.buffer.Buffer;
import io.vertx.core.http.HttpServer;
import io.vertx.core.http.HttpServerRequest;
import io.vertx.core.json.JsonArray;
import io.vertx.core.json.JsonObject;
import java.time.Instant;
import java.util.Date;
import java.util.concurrent.CompletableFuture;
import java.util.function.UnaryOperator;

/**
 * What an attacker answers in an identity provider's place: right in all but one thing. The real
 * provider is tried from a browser, in the pages' tests.
 */
final class TwistedProvider {
  static final String CLIENT = "sunup-board";
  static final String SECRET = "a-secret-of-more-than-thirty-two-letters";

  /** How the id token is made. */
  enum Signed {
    RIGHT,
    BY_ANOTHER_KEY,
    BY_THE_SECRET,
    NOT
  }

  private static final RSAKey KEY = key();
  private static final RSAKey OTHER = key();
  private HttpServer server;
  private volatile String subject = "A7";
  private volatile String nonce;
  private volatile Signed signed = Signed.RIGHT;
  private volatile UnaryOperator<JWTClaimsSet.Builder> twist = c -> c;
  private volatile boolean takesCodes = true;
  private volatile Future<Void> held = Future.succeededFuture();
  private volatile CompletableFuture<JsonObject> asked = new CompletableFuture<>();

  private static RSAKey key() {
    try {
      return new RSAKeyGenerator(2048).keyID("one").generate();
    } catch (JOSEException e) {
      throw new IllegalStateException(e);
    }
  }

  void start(Vertx vertx) throws Exception {
    server =
        PairedBoard.await(
            vertx.createHttpServer().requestHandler(this::answer).listen(0, "127.0.0.1"));
  }

  void stop() throws Exception {
    PairedBoard.await(server.close());
  }

  String issuer() {
    return "http://127.0.0.1:" + server.actualPort();
  }

  /** The next id tokens are of somebody, for a sign-on with this nonce, and right. */
  TwistedProvider of(String who, String itsNonce) {
    subject = who;
    nonce = itsNonce;
    signed = Signed.RIGHT;
    twist = c -> c;
    takesCodes = true;
    asked = new CompletableFuture<>();
    return this;
  }

  TwistedProvider but(UnaryOperator<JWTClaimsSet.Builder> how) {
    twist = how;
    return this;
  }

  TwistedProvider but(Signed how) {
    signed = how;
    return this;
  }

  TwistedProvider refusingCodes() {
    takesCodes = false;
    return this;
  }

  /** Answers questions for tokens no sooner than told. */
  TwistedProvider holding(Future<Void> until) {
    held = until;
    return this;
  }

  /** What the board asked its code with. */
  CompletableFuture<JsonObject> asked() {
    return asked;
  }

  private void answer(HttpServerRequest request) {
    request.setExpectMultipart(request.path().equals("/token"));
    request.endHandler(
        v -> {
          if (request.path().equals("/token")) {
            held.onSuccess(h -> say(request, token(request)));
          } else {
            say(request, bodyOf(request));
          }
        });
    request.resume();
  }

  private static void say(HttpServerRequest request, JsonObject body) {
    request
        .response()
        .setStatusCode(body.containsKey("error") ? 400 : 200)
        .putHeader("Content-Type", "application/json")
        .end(Buffer.buffer(body.encode()));
  }

  private JsonObject bodyOf(HttpServerRequest request) {
    return switch (request.path()) {
      case "/.well-known/openid-configuration" ->
          new JsonObject()
              .put("issuer", issuer())
              .put("authorization_endpoint", issuer() + "/authorize")
              .put("token_endpoint", issuer() + "/token")
              .put("jwks_uri", issuer() + "/keys")
              .put("response_types_supported", new JsonArray().add("code"))
              .put("subject_types_supported", new JsonArray().add("public"))
              .put("id_token_signing_alg_values_supported", new JsonArray().add("RS256"));
      case "/keys" -> new JsonObject(new JWKSet(KEY.toPublicJWK()).toString());
      default -> throw new IllegalStateException(request.path());
    };
  }

  private JsonObject token(HttpServerRequest request) {
    JsonObject form = new JsonObject().put("client", request.getHeader("Authorization"));
    request.formAttributes().forEach(each -> form.put(each.getKey(), each.getValue()));
    asked.complete(form);
    return takesCodes
        ? new JsonObject()
            .put("access_token", "not-used")
            .put("token_type", "Bearer")
            .put("id_token", idToken())
        : new JsonObject().put("error", "invalid_grant");
  }

  private String idToken() {
    Instant now = Instant.now();
    JWTClaimsSet claims =
        twist
            .apply(
                new JWTClaimsSet.Builder()
                    .issuer(issuer())
                    .subject(subject)
                    .audience(CLIENT)
                    .issueTime(Date.from(now))
                    .expirationTime(Date.from(now.plusSeconds(300)))
                    .claim("auth_time", now.getEpochSecond())
                    .claim("nonce", nonce))
            .build();
    try {
      if (signed == Signed.NOT) {
        return new PlainJWT(claims).serialize();
      }
      boolean secret = signed == Signed.BY_THE_SECRET;
      JWSAlgorithm by = secret ? JWSAlgorithm.HS256 : JWSAlgorithm.RS256;
      SignedJWT made = new SignedJWT(new JWSHeader.Builder(by).keyID("one").build(), claims);
      made.sign(
          secret
              ? new MACSigner(SECRET)
              : new RSASSASigner(signed == Signed.BY_ANOTHER_KEY ? OTHER : KEY));
      return made.serialize();
    } catch (JOSEException e) {
      throw new IllegalStateException(e);
    }
  }
}
