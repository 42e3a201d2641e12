package sunup.push;

import com.nimbusds.jose.JOSEException;
import com.nimbusds.jose.JOSEObjectType;
import com.nimbusds.jose.JWSAlgorithm;
import com.nimbusds.jose.JWSHeader;
import com.nimbusds.jose.crypto.ECDSASigner;
import com.nimbusds.jwt.JWTClaimsSet;
import com.nimbusds.jwt.SignedJWT;
import java.net.URI;
import java.security.GeneralSecurityException;
import java.security.KeyFactory;
import java.security.KeyPair;
import java.security.KeyPairGenerator;
import java.security.interfaces.ECPrivateKey;
import java.security.interfaces.ECPublicKey;
import java.security.spec.ECGenParameterSpec;
import java.security.spec.PKCS8EncodedKeySpec;
import java.time.Instant;
import java.util.Arrays;
import java.util.Base64;
import java.util.Date;

/**
 * What the board shows push services to say that it is the one whom a browser subscribed to, by RFC
 * 8292 (VAPID). Made once; all nodes have the same.
 */
public final class PushKey {
  /** How long what is shown counts; a day is the most that the standard allows. */
  static final long SHOWN_MS = 12 * 3_600_000L;

  private final ECPrivateKey own;
  private final byte[] point;

  private PushKey(ECPrivateKey own, byte[] point) {
    this.own = own;
    this.point = point;
  }

  /** A new pair as it is kept: the public point, then the private key. */
  public static byte[] made() {
    try {
      KeyPairGenerator pairs = KeyPairGenerator.getInstance("EC");
      pairs.initialize(new ECGenParameterSpec("secp256r1"));
      KeyPair pair = pairs.generateKeyPair();
      byte[] point = Points.written((ECPublicKey) pair.getPublic());
      byte[] secret = pair.getPrivate().getEncoded();
      byte[] kept = Arrays.copyOf(point, point.length + secret.length);
      System.arraycopy(secret, 0, kept, point.length, secret.length);
      return kept;
    } catch (GeneralSecurityException e) {
      throw new IllegalStateException(e);
    }
  }

  /** Reads what {@link #made} made. */
  public static PushKey of(byte[] kept) {
    byte[] secret = Arrays.copyOfRange(kept, Points.BYTES, kept.length);
    try {
      ECPrivateKey own =
          (ECPrivateKey)
              KeyFactory.getInstance("EC").generatePrivate(new PKCS8EncodedKeySpec(secret));
      return new PushKey(own, Arrays.copyOf(kept, Points.BYTES));
    } catch (GeneralSecurityException e) {
      throw new IllegalStateException("the key for pushes can't be read", e);
    }
  }

  /** The public half, as a page gives it to its browser: base64url. */
  public String point() {
    return Base64.getUrlEncoder().withoutPadding().encodeToString(point);
  }

  /**
   * The header {@code Authorization} of one message.
   *
   * @param contact whom a push service writes to when something is wrong
   * @param now real time
   */
  String shown(URI endpoint, String contact, long now) throws JOSEException {
    String audience = endpoint.getScheme() + "://" + endpoint.getRawAuthority();
    SignedJWT token =
        new SignedJWT(
            new JWSHeader.Builder(JWSAlgorithm.ES256).type(JOSEObjectType.JWT).build(),
            new JWTClaimsSet.Builder()
                .audience(audience)
                .expirationTime(Date.from(Instant.ofEpochMilli(now + SHOWN_MS)))
                .subject(contact)
                .build());
    token.sign(new ECDSASigner(own));
    return "vapid t=" + token.serialize() + ", k=" + point();
  }
}
