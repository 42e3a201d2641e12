package sunup.access;

import com.nimbusds.jose.JOSEException;
import com.nimbusds.jose.JWSAlgorithm;
import com.nimbusds.jose.proc.BadJOSEException;
import com.nimbusds.jose.util.DefaultResourceRetriever;
import com.nimbusds.oauth2.sdk.AuthorizationCode;
import com.nimbusds.oauth2.sdk.AuthorizationCodeGrant;
import com.nimbusds.oauth2.sdk.GeneralException;
import com.nimbusds.oauth2.sdk.ResponseType;
import com.nimbusds.oauth2.sdk.Scope;
import com.nimbusds.oauth2.sdk.TokenRequest;
import com.nimbusds.oauth2.sdk.TokenResponse;
import com.nimbusds.oauth2.sdk.auth.ClientSecretBasic;
import com.nimbusds.oauth2.sdk.auth.Secret;
import com.nimbusds.oauth2.sdk.http.HTTPRequest;
import com.nimbusds.oauth2.sdk.id.ClientID;
import com.nimbusds.oauth2.sdk.id.Issuer;
import com.nimbusds.oauth2.sdk.id.State;
import com.nimbusds.oauth2.sdk.pkce.CodeChallengeMethod;
import com.nimbusds.oauth2.sdk.pkce.CodeVerifier;
import com.nimbusds.openid.connect.sdk.AuthenticationRequest;
import com.nimbusds.openid.connect.sdk.Nonce;
import com.nimbusds.openid.connect.sdk.OIDCTokenResponse;
import com.nimbusds.openid.connect.sdk.OIDCTokenResponseParser;
import com.nimbusds.openid.connect.sdk.Prompt;
import com.nimbusds.openid.connect.sdk.claims.IDTokenClaimsSet;
import com.nimbusds.openid.connect.sdk.op.OIDCProviderMetadata;
import com.nimbusds.openid.connect.sdk.validators.IDTokenValidator;
import java.io.IOException;
import java.net.URI;
import java.time.Instant;
import java.util.Date;
import java.util.List;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;

/**
 * What is asked of the identity provider: OpenID Connect, authorization code with PKCE (S256). Each
 * answer is looked at by the library: the id token's signature, issuer, audience, times and nonce.
 * Blocks for seconds; kept off every thread that others wait for. What the provider publishes is
 * asked anew each time: people sign on seldom, and so a provider that is down is noticed before
 * somebody is sent to it.
 */
final class Provider {
  private static final int TIMEOUT_MS = 5_000;

  /** Clocks of board and provider may differ by so much. */
  private static final long CLOCKS_MS = 60_000;

  private static final int KEYS_BYTES_MAX = 256 * 1024;

  /** What every provider can sign with; another algorithm, or none, is refused. */
  private static final JWSAlgorithm ALGORITHM = JWSAlgorithm.RS256;

  private static final String AWAY =
      " does not answer. Sign on with code and PIN at a paired screen, or try again.";
  private static final Logger LOG = LoggerFactory.getLogger(Provider.class);

  private final ProviderOptions options;

  Provider(ProviderOptions options) {
    this.options = options;
  }

  /**
   * One sign-on that was begun: what only the board knows of it.
   *
   * @param address where the person is sent
   * @param state comes back with the answer
   * @param freshFrom the person must have logged in at the provider since, epoch milliseconds; 0
   *     for whenever
   */
  record Begun(
      URI address, State state, Nonce nonce, CodeVerifier verifier, URI back, long freshFrom) {}

  ProviderOptions options() {
    return options;
  }

  /**
   * Begins one.
   *
   * @param shared true at a screen that many use: who was there before is not to be taken for who
   *     is there now, so the provider must ask
   */
  Begun begin(URI back, boolean shared, long now) throws Refusal {
    State state = new State();
    Nonce nonce = new Nonce();
    CodeVerifier verifier = new CodeVerifier();
    AuthenticationRequest.Builder request =
        new AuthenticationRequest.Builder(
                ResponseType.CODE,
                new Scope("openid", "profile"),
                new ClientID(options.client()),
                back)
            .endpointURI(published().getAuthorizationEndpointURI())
            .state(state)
            .nonce(nonce)
            .codeChallenge(verifier, CodeChallengeMethod.S256);
    if (shared) {
      request.prompt(new Prompt(Prompt.Type.LOGIN)).maxAge(0);
    }
    URI address = request.build().toURI();
    return new Begun(address, state, nonce, verifier, back, shared ? now - CLOCKS_MS : 0);
  }

  /**
   * Ends one: changes the code for an id token.
   *
   * @param issuer that the answer named, or null
   * @return the person's code on this board
   */
  String end(Begun begun, String code, String issuer) throws Refusal {
    OIDCProviderMetadata published = published();
    boolean named = issuer != null || published.supportsAuthorizationResponseIssuerParam();
    if (named && !options.issuer().toString().equals(issuer)) {
      throw refused("the answer names another issuer");
    }
    try {
      TokenResponse response = OIDCTokenResponseParser.parse(exchange(published, begun, code));
      if (!response.indicatesSuccess()) {
        throw refused(String.valueOf(response.toErrorResponse().getErrorObject().getCode()));
      }
      IDTokenValidator validator =
          new IDTokenValidator(
              new Issuer(options.issuer()),
              new ClientID(options.client()),
              ALGORITHM,
              published.getJWKSetURI().toURL(),
              new DefaultResourceRetriever(TIMEOUT_MS, TIMEOUT_MS, KEYS_BYTES_MAX));
      OIDCTokenResponse tokens = (OIDCTokenResponse) response.toSuccessResponse();
      IDTokenClaimsSet claims =
          validator.validate(tokens.getOIDCTokens().getIDToken(), begun.nonce());
      if (begun.freshFrom() > 0 && loggedInBefore(claims, begun.freshFrom())) {
        throw refused("nobody logged in for it");
      }
      return person(claims);
    } catch (BadJOSEException | GeneralException | ClassCastException e) {
      throw refused(e.getMessage());
    } catch (IOException | JOSEException e) {
      throw away(e);
    }
  }

  private static boolean loggedInBefore(IDTokenClaimsSet claims, long moment) {
    Date at = claims.getAuthenticationTime();
    return at == null || at.toInstant().isBefore(Instant.ofEpochMilli(moment));
  }

  private com.nimbusds.oauth2.sdk.http.HTTPResponse exchange(
      OIDCProviderMetadata published, Begun begun, String code) throws IOException {
    ClientID client = new ClientID(options.client());
    String secret = options.secretText();
    AuthorizationCodeGrant grant =
        new AuthorizationCodeGrant(new AuthorizationCode(code), begun.back(), begun.verifier());
    URI at = published.getTokenEndpointURI();
    TokenRequest.Builder request =
        secret == null
            ? new TokenRequest.Builder(at, client, grant)
            : new TokenRequest.Builder(
                at, new ClientSecretBasic(client, new Secret(secret)), grant);
    HTTPRequest http = request.build().toHTTPRequest();
    http.setConnectTimeout(TIMEOUT_MS);
    http.setReadTimeout(TIMEOUT_MS);
    http.setFollowRedirects(false);
    return http.send();
  }

  private OIDCProviderMetadata published() throws Refusal {
    try {
      OIDCProviderMetadata told =
          OIDCProviderMetadata.resolve(new Issuer(options.issuer()), TIMEOUT_MS, TIMEOUT_MS);
      for (URI at :
          List.of(
              told.getAuthorizationEndpointURI(),
              told.getTokenEndpointURI(),
              told.getJWKSetURI())) {
        if (!options.issuer().getScheme().equals(at.getScheme())) {
          throw new IOException(at + " is not " + options.issuer().getScheme());
        }
      }
      return told;
    } catch (IOException | GeneralException e) {
      throw away(e);
    }
  }

  /** Who it is here: by default nobody. */
  private String person(IDTokenClaimsSet claims) throws Refusal {
    String value =
        options.claim() == null
            ? claims.getSubject().getValue()
            : claims.getStringClaim(options.claim());
    String code = value == null || options.people() == null ? value : options.people().get(value);
    if (code == null) {
      throw new Refusal(
          "The "
              + options.name()
              + " says who you are, and this board does not know you. Ask its administrator.");
    }
    return code;
  }

  private Refusal refused(String why) {
    LOG.warn("a sign-on by {} was refused: {}", options.issuer(), why);
    return new Refusal(
        "What the "
            + options.name()
            + " answered does not count. Begin again, or use code and PIN.");
  }

  private Refusal away(Exception e) {
    LOG.warn("{} does not answer: {}", options.issuer(), e.getMessage());
    return new Refusal("The " + options.name() + AWAY);
  }
}
