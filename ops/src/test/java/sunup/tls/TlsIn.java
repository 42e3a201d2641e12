package sunup.tls;

import java.nio.charset.StandardCharsets;
import java.security.GeneralSecurityException;
import java.util.List;
import sunup.fuzz.Decoder;
import sunup.fuzz.Must;

/** What is read of a site's certificates. */
public final class TlsIn {
  /** Self-signed, of nobody. */
  private static final String PEM =
      """
      -----BEGIN CERTIFICATE-----
      MIIBhTCCASugAwIBAgIUXYKpubiZqDsi3wZOU9jxpZ01f10wCgYIKoZIzj0EAwIw
      GDEWMBQGA1UEAwwNYm9hcmQuZXhhbXBsZTAeFw0yNjExMjYxNTUwMDFaFw0zNjEx
      MjMxNTUwMDFaMBgxFjAUBgNVBAMMDWJvYXJkLmV4YW1wbGUwWTATBgcqhkjOPQIB
      BggqhkjOPQMBBwNCAAQvvRf873bJjR4h03FGhebsIrIHAhF6T4oqet4Pg47nVBZq
      ZUeDNDUZ6zizEfIw/VFn+TM5LXAi+a/m4/dfcfKQo1MwUTAdBgNVHQ4EFgQUEcik
      p/RmJRkybaNvZVCQw2hXuhIwHwYDVR0jBBgwFoAUEcikp/RmJRkybaNvZVCQw2hX
      uhIwDwYDVR0TAQH/BAUwAwEB/zAKBggqhkjOPQQDAgNIADBFAiAsmml0ZKXX/tuT
      xR4gD9NP/jXkCHYnf2TLPEHQQIwBnAIhAJHD0Fmcnl/stE0Buo7jLs1+QnsoGY0W
      xfhej986Cqgs
      -----END CERTIFICATE-----
      """;

  private TlsIn() {}

  public static List<Decoder> all() {
    return List.of(
        new Decoder(
            "certificate", List.of(PEM.getBytes(StandardCharsets.US_ASCII)), TlsIn::certificates));
  }

  private static boolean certificates(byte[] bytes) {
    try {
      var all = SiteRoot.certificates(bytes);
      Must.be(all.get(0).getNotAfter() != null, "without an end");
      return true;
    } catch (GeneralSecurityException refused) {
      return false;
    }
  }
}
