package sunup.tls;

import io.vertx.core.Vertx;
import io.vertx.core.buffer.Buffer;
import io.vertx.core.net.PemKeyCertOptions;
import io.vertx.core.net.ServerSSLOptions;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.security.GeneralSecurityException;
import java.security.MessageDigest;
import java.security.PrivateKey;
import java.security.Signature;
import java.security.cert.X509Certificate;
import java.time.Duration;
import java.time.Instant;
import java.util.HexFormat;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Locale;
import java.util.Set;
import java.util.TreeSet;
import java.util.concurrent.TimeUnit;
import java.util.function.Supplier;
import javax.net.ssl.KeyManager;
import javax.net.ssl.X509KeyManager;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;
import sunup.journal.SecretFile;

/**
 * The certificate that the server shows, looked after: files that change are taken while it runs,
 * and files that are wrong are told and not taken.
 */
public final class Identity implements AutoCloseable {
  private static final List<String> LOCAL = List.of("localhost", "127.0.0.1", "::1");
  private static final Set<String> PROTOCOLS = new LinkedHashSet<>(List.of("TLSv1.3", "TLSv1.2"));
  private static final int FILE_BYTES_MAX = 1 << 20;

  /** A certificate that runs out within this is told once. */
  private static final Duration WARN_BEFORE = Duration.ofDays(14);

  private static final Logger LOG = LoggerFactory.getLogger(Identity.class);

  private final Vertx vertx;
  private final TlsOptions options;
  private final Supplier<Instant> now;
  private final SiteRoot root;
  private volatile Shown shown;
  private String toldLast = "";
  private long timer = -1;

  /** What is shown, and the bytes of the files that it was read from; the root may be null. */
  private record Shown(Buffer certificate, Buffer key, X509Certificate leaf, Buffer root) {
    boolean is(Buffer otherCertificate, Buffer otherKey) {
      return certificate.equals(otherCertificate) && key.equals(otherKey);
    }
  }

  private Identity(Vertx vertx, TlsOptions options, Supplier<Instant> now) {
    this.vertx = vertx;
    this.options = options;
    this.now = now;
    this.root = options.folder() == null ? null : new SiteRoot(options.folder());
  }

  /**
   * Reads it, making a root and a certificate if that is asked for. Not on an event loop.
   *
   * @throws IOException if it can't be used; the message says what to do
   */
  public static Identity open(Vertx vertx, TlsOptions options, Supplier<Instant> now)
      throws IOException {
    Identity identity = new Identity(vertx, options, now);
    identity.shown = identity.read();
    return identity;
  }

  /** The names in the certificate that a site root made or that the site says it has. */
  private Set<String> names() {
    Set<String> names = new TreeSet<>(LOCAL);
    options.names().forEach(name -> names.add(name.toLowerCase(Locale.ROOT)));
    return names;
  }

  private Shown read() throws IOException {
    if (root != null) {
      boolean made = root.prepare(names(), now.get());
      if (made) {
        LOG.info("made a certificate for {} in {}", names(), options.folder());
      }
    }
    Path certificate = root == null ? options.certificate() : root.file(SiteRoot.SERVER);
    Path key = root == null ? options.key() : root.file(SiteRoot.SERVER_KEY);
    SecretFile.check(key, "the key");
    Buffer certificateBytes = bytes(certificate);
    Buffer keyBytes = bytes(key);
    // What was checked once is not checked every ten seconds.
    return shown != null && shown.is(certificateBytes, keyBytes)
        ? shown
        : checked(certificate, certificateBytes, key, keyBytes);
  }

  private static Buffer bytes(Path file) throws IOException {
    if (!Files.isReadable(file)) {
      throw new IOException("The file " + file + " for TLS can't be read.");
    }
    if (Files.size(file) > FILE_BYTES_MAX) {
      throw new IOException("The file " + file + " is too large for a certificate or key.");
    }
    return Buffer.buffer(Files.readAllBytes(file));
  }

  private Shown checked(Path file, Buffer certificate, Path keyFile, Buffer key)
      throws IOException {
    X509Certificate leaf;
    try {
      leaf = SiteRoot.certificates(certificate.getBytes()).get(0);
    } catch (GeneralSecurityException e) {
      throw new IOException(file + " holds no certificate in PEM: " + e.getMessage(), e);
    }
    if (leaf.getNotAfter().toInstant().isBefore(now.get())) {
      throw new IOException(
          "The certificate in " + file + " ran out at " + leaf.getNotAfter().toInstant() + ".");
    }
    try {
      PrivateKey held = privateKey(certificate, key);
      if (!belong(held, leaf)) {
        throw new IOException(
            "The key in " + keyFile + " does not belong to the certificate in " + file + ".");
      }
    } catch (IOException e) {
      throw e;
    } catch (Exception e) {
      throw new IOException(
          "The key in " + keyFile + " can't be used: " + e.getMessage() + ". PEM is needed.", e);
    }
    return new Shown(certificate, key, leaf, root == null ? null : bytes(root.file(SiteRoot.ROOT)));
  }

  private PrivateKey privateKey(Buffer certificate, Buffer key) throws Exception {
    KeyManager[] managers =
        new PemKeyCertOptions()
            .setCertValue(certificate)
            .setKeyValue(key)
            .getKeyManagerFactory(vertx)
            .getKeyManagers();
    for (KeyManager manager : managers) {
      for (String type : new String[] {"EC", "RSA", "EdDSA"}) {
        String[] names = ((X509KeyManager) manager).getServerAliases(type, null);
        if (names != null && names.length > 0) {
          return ((X509KeyManager) manager).getPrivateKey(names[0]);
        }
      }
    }
    throw new IOException("it is neither EC nor RSA nor Ed25519");
  }

  private static boolean belong(PrivateKey key, X509Certificate leaf)
      throws GeneralSecurityException {
    String kind = key.getAlgorithm();
    if (!leaf.getPublicKey().getAlgorithm().equals(kind)) {
      return false;
    }
    String name =
        kind.equals("EC") ? "SHA256withECDSA" : kind.equals("RSA") ? "SHA256withRSA" : "Ed25519";
    Signature signature = Signature.getInstance(name);
    signature.initSign(key);
    signature.update(leaf.getEncoded());
    byte[] signed = signature.sign();
    signature.initVerify(leaf.getPublicKey());
    signature.update(leaf.getEncoded());
    return signature.verify(signed);
  }

  /**
   * What a server is given, now and when it changed.
   *
   * @param handshakeMs real milliseconds that a handshake may take
   */
  public ServerSSLOptions ssl(int handshakeMs) {
    ServerSSLOptions ssl = new ServerSSLOptions();
    Shown is = shown;
    ssl.setKeyCertOptions(
        new PemKeyCertOptions().setCertValue(is.certificate()).setKeyValue(is.key()));
    ssl.setUseAlpn(true);
    ssl.setApplicationLayerProtocols(List.of("h2", "http/1.1"));
    ssl.setEnabledSecureTransportProtocols(PROTOCOLS);
    ssl.setSslHandshakeTimeout(handshakeMs);
    ssl.setSslHandshakeTimeoutUnit(TimeUnit.MILLISECONDS);
    return ssl;
  }

  /**
   * Looks after it until it is closed.
   *
   * @param changed called when there is another to show from now on
   */
  public void watch(Runnable changed) {
    timer =
        vertx.setPeriodic(
            options.lookEveryMs(),
            id ->
                vertx
                    .executeBlocking(this::look)
                    .onSuccess(
                        is -> {
                          if (is) {
                            changed.run();
                          }
                        }));
  }

  /** Never fails: what is wrong is told once, and what is shown stays. */
  private boolean look() {
    try {
      Shown found = read();
      if (!warn(found.leaf())) {
        toldLast = "";
      }
      if (found.equals(shown)) {
        return false;
      }
      shown = found;
      LOG.info(
          "a new certificate, good until {}, is shown from now on",
          found.leaf().getNotAfter().toInstant());
      return true;
    } catch (IOException e) {
      tell(e.getMessage() + " The old certificate is shown on.");
      return false;
    }
  }

  private boolean warn(X509Certificate leaf) {
    Instant end = leaf.getNotAfter().toInstant();
    boolean soon = end.isBefore(now.get().plus(WARN_BEFORE));
    if (soon) {
      String runs = end.isBefore(now.get()) ? "ran out" : "runs out";
      tell("The certificate " + runs + " at " + end + ". Put a new one in its place.");
    }
    return soon;
  }

  private void tell(String words) {
    if (!words.equals(toldLast)) {
      LOG.error("{}", words);
      toldLast = words;
    }
  }

  /** When the certificate that is shown runs out. */
  public Instant until() {
    return shown.leaf().getNotAfter().toInstant();
  }

  /** The root that screens must install, PEM; null if files were given. */
  public byte[] rootPem() {
    Buffer pem = shown.root();
    return pem == null ? null : pem.getBytes();
  }

  /** SHA-256 of the root as certificate dialogs show it, or null if files were given. */
  public String rootFingerprint() {
    byte[] pem = rootPem();
    try {
      if (pem == null) {
        return null;
      }
      byte[] der = SiteRoot.certificates(pem).get(0).getEncoded();
      byte[] hash = MessageDigest.getInstance("SHA-256").digest(der);
      return HexFormat.ofDelimiter(":").withUpperCase().formatHex(hash);
    } catch (GeneralSecurityException e) {
      throw new IllegalStateException("the site root can't be read: " + e.getMessage(), e);
    }
  }

  @Override
  public void close() {
    if (timer >= 0) {
      vertx.cancelTimer(timer);
    }
  }
}
