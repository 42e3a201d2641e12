package sunup.push;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import com.nimbusds.jose.crypto.ECDSAVerifier;
import com.nimbusds.jwt.SignedJWT;
import java.math.BigInteger;
import java.net.InetAddress;
import java.net.URI;
import java.net.UnknownHostException;
import java.nio.charset.StandardCharsets;
import java.security.KeyFactory;
import java.security.KeyPair;
import java.security.PrivateKey;
import java.security.interfaces.ECPublicKey;
import java.security.spec.ECPrivateKeySpec;
import java.util.Base64;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** What is sealed and shown is what the standards' own examples say. */
class PushKeyTest {
  private static final PushTerms ANY = new PushTerms("mailto:it@hospital.example", List.of());

  private static byte[] bytes(String text) {
    return Base64.getUrlDecoder().decode(text);
  }

  private static String text(byte[] of) {
    return Base64.getUrlEncoder().withoutPadding().encodeToString(of);
  }

  @Test
  void shouldSealTheExampleOfRfc8291LetterByLetter() throws Exception {
    ECPublicKey point =
        Points.read(
            bytes(
                "BP4z9KsN6nGRTbVYI_c7VJSPQTBtkgcy27mlmlMoZIIg"
                    + "Dll6e3vCYLocInmYWAmS6TlzAC8wEqKK6PBru3jl7A8"));
    BigInteger secret = new BigInteger(1, bytes("yfWPiYE-n46HLnH0KqZOF1fJJU3MYrct3AELtAQ-oRw"));
    PrivateKey own =
        KeyFactory.getInstance("EC")
            .generatePrivate(new ECPrivateKeySpec(secret, point.getParams()));
    Subscription to =
        Subscription.of(
            "https://push.example.net/push/JzLQ3raZJfFBR0aqvOMsLrt54w4rJUsV",
            "BCVxsr7N_eNgVRqvHtD0zTZsEc6-VV-JvLexhqUzORcx"
                + "aOzi6-AYWXvTBHm4bjyPjs7Vd8pZGH6SRpkNtoIAiw4",
            "BTBZMqHH6r4Tts7J_aSIgg");
    byte[] plain = "When I grow up, I want to be a watermelon".getBytes(StandardCharsets.UTF_8);

    byte[] sealed = Sealed.of(plain, to, new KeyPair(point, own), bytes("DGv6ra1nlYgDCS1FRnbzlw"));

    assertThat(text(sealed))
        .isEqualTo(
            "DGv6ra1nlYgDCS1FRnbzlwAAEABBBP4z9KsN6nGRTbVYI_c7VJSPQTBtkgcy27ml"
                + "mlMoZIIgDll6e3vCYLocInmYWAmS6TlzAC8wEqKK6PBru3jl7A_yl95bQpu6cVPT"
                + "pK4Mqgkf1CXztLVBSt2Ks3oZwbuwXPXLWyouBWLVWGNWQexSgSxsj_Qulcy4a-fN");
  }

  @Test
  void shouldShowAPushServiceWhatRfc8292Shows() throws Exception {
    // The standard's own example is taken by the key that stands beside it...
    SignedJWT theirs =
        SignedJWT.parse(
            "eyJ0eXAiOiJKV1QiLCJhbGciOiJFUzI1NiJ9.eyJhdWQiOiJodHRwczovL3B1c2guZXhhbXBsZS5uZXQiLCJl"
                + "eHAiOjE0NTM1MjM3NjgsInN1YiI6Im1haWx0bzpwdXNoQGV4YW1wbGUuY29tIn0."
                + "i3CYb7t4xfxCDquptF"
                + "OepC9GAu_HLGkMlMuCGSK2rpiUfnK9ojFwDXb1JrErtmysazNjjvW2L9OkSSHzvoD1oA");
    String key =
        "BA1Hxzyi1RUM1b5wjxsn7nGxAszw2u61m164i3MrAIxHF6YK5h4SDYic-dRuU_RCPCfA5aq9ojSwk5Y2EmClBPs";
    assertThat(theirs.verify(new ECDSAVerifier(Points.read(bytes(key))))).isTrue();

    // ...and what the board shows is like it.
    PushKey own = PushKey.of(PushKey.made());
    String shown =
        own.shown(URI.create("https://push.example.net/a?b"), ANY.contact(), 1_453_480_000_000L);
    assertThat(shown).matches("vapid t=[\\w-]+\\.[\\w-]+\\.[\\w-]+, k=[\\w-]{87}");
    SignedJWT ours = SignedJWT.parse(shown.replaceAll("vapid t=|, k=.*", ""));
    assertThat(ours.verify(new ECDSAVerifier(Points.read(bytes(own.point()))))).isTrue();
    assertThat(ours.getHeader().toJSONObject()).isEqualTo(theirs.getHeader().toJSONObject());
    assertThat(ours.getPayload().toJSONObject().keySet())
        .isEqualTo(theirs.getPayload().toJSONObject().keySet());
    assertThat(ours.getJWTClaimsSet().getAudience()).containsExactly("https://push.example.net");
    assertThat(ours.getJWTClaimsSet().getExpirationTime().toInstant().toEpochMilli())
        .isEqualTo(1_453_480_000_000L + PushKey.SHOWN_MS);
  }

  @Test
  void shouldTakeNoPointThatIsNotOnTheCurve() {
    byte[] off = bytes(PushKey.of(PushKey.made()).point());
    off[64] ^= 1;
    assertThatThrownBy(() -> Points.read(off)).isInstanceOf(IllegalArgumentException.class);
    assertThatThrownBy(() -> Points.read(new byte[65]))
        .isInstanceOf(IllegalArgumentException.class);
  }

  @ParameterizedTest
  @ValueSource(
      strings = {
        "http://push.example.net/a",
        "https://127.0.0.1/a",
        "https://[::1]/a",
        "https://2130706433/a",
        "https://0x7f.1/a",
        "https://user@push.example.net/a",
        "https://push.example.net:8443/a",
        "https://push.example.net.evil.example/a",
        "https://evilpush.example.net/a",
        "file:///etc/passwd",
        "https:///a",
        "no address"
      })
  void shouldTakeNoEndpointElsewhereThanTheSitesPushServices(String endpoint) {
    PushTerms listed = new PushTerms(ANY.contact(), List.of("push.example.net"));
    assertThatThrownBy(() -> listed.endpoint(endpoint, PushWay.PUBLIC))
        .isInstanceOf(IllegalArgumentException.class);
  }

  @Test
  void shouldTakeTheSitesPushServicesAndWhatStandsBelowThem() {
    PushTerms listed = new PushTerms(ANY.contact(), List.of("push.example.net"));
    for (String at : List.of("https://push.example.net/a", "https://EU.push.example.net:443/a?b")) {
      assertThat(listed.endpoint(at, PushWay.PUBLIC)).isEqualTo(URI.create(at));
      assertThat(ANY.endpoint(at, PushWay.PUBLIC)).isEqualTo(URI.create(at));
    }
  }

  @ParameterizedTest
  @ValueSource(
      strings = {
        "0.0.0.0",
        "10.1.2.3",
        "100.64.0.1",
        "127.0.0.1",
        "169.254.169.254",
        "172.16.0.1",
        "192.0.0.1",
        "192.168.1.1",
        "198.18.0.1",
        "203.0.113.9",
        "224.0.0.1",
        "255.255.255.255",
        "::",
        "::1",
        "fe80::1",
        "fc00::1",
        "fd12::1",
        "ff02::1",
        "2001:db8::1",
        "2002:a00:1::",
        "2001:0:1::1",
        "64:ff9b::a00:1",
        "::ffff:10.0.0.1"
      })
  void shouldConnectToNoAddressThatOnlyThisSiteReaches(String address) throws Exception {
    assertThat(PushWay.isPublic(InetAddress.getByName(address))).isFalse();
    assertThatThrownBy(() -> PushWay.PUBLIC.address(address))
        .isInstanceOf(UnknownHostException.class);
  }

  @ParameterizedTest
  @ValueSource(strings = {"9.9.9.9", "192.1.0.1", "100.128.0.1", "2a00:1450::1", "2607:f8b0::1"})
  void shouldConnectToAddressesThatEverybodyReaches(String address) throws Exception {
    assertThat(PushWay.isPublic(InetAddress.getByName(address))).isTrue();
  }
}
