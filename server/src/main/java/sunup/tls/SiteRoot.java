package sunup.tls;

import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.math.BigInteger;
import java.net.InetAddress;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.security.GeneralSecurityException;
import java.security.KeyFactory;
import java.security.KeyPair;
import java.security.KeyPairGenerator;
import java.security.PrivateKey;
import java.security.PublicKey;
import java.security.SecureRandom;
import java.security.cert.CertificateFactory;
import java.security.cert.X509Certificate;
import java.security.spec.ECGenParameterSpec;
import java.security.spec.PKCS8EncodedKeySpec;
import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.Base64;
import java.util.Collection;
import java.util.Date;
import java.util.HexFormat;
import java.util.List;
import java.util.TreeSet;
import org.bouncycastle.asn1.x500.X500Name;
import org.bouncycastle.asn1.x509.BasicConstraints;
import org.bouncycastle.asn1.x509.ExtendedKeyUsage;
import org.bouncycastle.asn1.x509.Extension;
import org.bouncycastle.asn1.x509.GeneralName;
import org.bouncycastle.asn1.x509.GeneralNames;
import org.bouncycastle.asn1.x509.KeyPurposeId;
import org.bouncycastle.asn1.x509.KeyUsage;
import org.bouncycastle.cert.jcajce.JcaX509CertificateConverter;
import org.bouncycastle.cert.jcajce.JcaX509ExtensionUtils;
import org.bouncycastle.cert.jcajce.JcaX509v3CertificateBuilder;
import org.bouncycastle.operator.OperatorCreationException;
import org.bouncycastle.operator.jcajce.JcaContentSignerBuilder;
import sunup.journal.SecretFile;

/**
 * A root of the site's own: made once, installed once at each screen, and the certificate of the
 * server signed with it, made anew before it runs out. Keys are their owner's alone.
 */
final class SiteRoot {
  static final String ROOT = "root.pem";
  static final String ROOT_KEY = "root.key.pem";
  static final String SERVER = "server.pem";
  static final String SERVER_KEY = "server.key.pem";

  /** A root that screens have installed should outlive them. */
  private static final Duration ROOT_LIFE = Duration.ofDays(3_650);

  /** No browser takes longer ones from everybody. */
  private static final Duration SERVER_LIFE = Duration.ofDays(397);

  /** Made anew when less than this is left. */
  static final Duration RENEW_BEFORE = Duration.ofDays(60);

  /** Clocks of screens may be behind. */
  private static final Duration CLOCKS_DIFFER = Duration.ofHours(24);

  private static final int SERIAL_BITS = 120;
  private static final String SIGNING = "SHA256withECDSA";
  private static final SecureRandom RANDOM = new SecureRandom();

  private final Path folder;

  SiteRoot(Path folder) {
    this.folder = folder;
  }

  Path file(String name) {
    return folder.resolve(name);
  }

  /**
   * Makes what is missing, and the server's certificate anew if it runs out or other names are
   * asked for.
   *
   * @return true if the server's certificate is a new one
   * @throws IOException that says what to do
   */
  boolean prepare(Collection<String> names, Instant now) throws IOException {
    try {
      Files.createDirectories(folder);
      if (!Files.exists(file(ROOT))) {
        makeRoot(now);
      }
      if (Files.exists(file(SERVER)) && fits(names, now)) {
        return false;
      }
      makeServer(names, now);
      return true;
    } catch (GeneralSecurityException | OperatorCreationException e) {
      throw new IOException(
          "The certificates in " + folder + " could not be made: " + e.getMessage(), e);
    }
  }

  private boolean fits(Collection<String> names, Instant now)
      throws GeneralSecurityException, IOException {
    X509Certificate server = certificates(Files.readAllBytes(file(SERVER))).get(0);
    TreeSet<String> has = new TreeSet<>();
    for (List<?> name : server.getSubjectAlternativeNames()) {
      has.add(plain(name.get(1).toString()));
    }
    for (String name : names) {
      if (!has.contains(plain(name))) {
        return false;
      }
    }
    return server.getNotAfter().toInstant().isAfter(now.plus(RENEW_BEFORE));
  }

  /** One address can be written in several ways. */
  private static String plain(String name) throws IOException {
    return isAddress(name) ? InetAddress.getByName(name).getHostAddress() : name;
  }

  private void makeRoot(Instant now)
      throws GeneralSecurityException, OperatorCreationException, IOException {
    KeyPair pair = pair();
    X500Name name = new X500Name("CN=Sunup site root " + HexFormat.of().formatHex(random(4)));
    JcaX509v3CertificateBuilder made = builder(name, name, pair.getPublic(), now, ROOT_LIFE);
    made.addExtension(Extension.basicConstraints, true, new BasicConstraints(0));
    made.addExtension(
        Extension.keyUsage, true, new KeyUsage(KeyUsage.keyCertSign | KeyUsage.cRLSign));
    made.addExtension(
        Extension.subjectKeyIdentifier,
        false,
        new JcaX509ExtensionUtils().createSubjectKeyIdentifier(pair.getPublic()));
    write(ROOT_KEY, pem("PRIVATE KEY", pair.getPrivate().getEncoded()), true);
    write(ROOT, pem("CERTIFICATE", sign(made, pair.getPrivate()).getEncoded()), false);
  }

  private void makeServer(Collection<String> names, Instant now)
      throws GeneralSecurityException, OperatorCreationException, IOException {
    X509Certificate root = certificates(Files.readAllBytes(file(ROOT))).get(0);
    PrivateKey rootKey =
        KeyFactory.getInstance("EC")
            .generatePrivate(new PKCS8EncodedKeySpec(der(Files.readString(file(ROOT_KEY)))));
    KeyPair pair = pair();
    X500Name issuer = X500Name.getInstance(root.getSubjectX500Principal().getEncoded());
    JcaX509v3CertificateBuilder made =
        builder(issuer, new X500Name("CN=Sunup board"), pair.getPublic(), now, SERVER_LIFE);
    GeneralName[] all =
        names.stream()
            .map(
                name ->
                    new GeneralName(
                        isAddress(name) ? GeneralName.iPAddress : GeneralName.dNSName, name))
            .toArray(GeneralName[]::new);
    JcaX509ExtensionUtils tools = new JcaX509ExtensionUtils();
    made.addExtension(Extension.basicConstraints, true, new BasicConstraints(false));
    made.addExtension(Extension.keyUsage, true, new KeyUsage(KeyUsage.digitalSignature));
    made.addExtension(
        Extension.extendedKeyUsage, false, new ExtendedKeyUsage(KeyPurposeId.id_kp_serverAuth));
    made.addExtension(Extension.subjectAlternativeName, false, new GeneralNames(all));
    made.addExtension(
        Extension.authorityKeyIdentifier, false, tools.createAuthorityKeyIdentifier(root));
    String chain =
        pem("CERTIFICATE", sign(made, rootKey).getEncoded())
            + pem("CERTIFICATE", root.getEncoded());
    // The key first: who looks in between finds a pair that does not fit, and looks again.
    write(SERVER_KEY, pem("PRIVATE KEY", pair.getPrivate().getEncoded()), true);
    write(SERVER, chain, false);
  }

  private static boolean isAddress(String name) {
    return name.contains(":") || name.matches("[0-9.]+");
  }

  private static KeyPair pair() throws GeneralSecurityException {
    KeyPairGenerator generator = KeyPairGenerator.getInstance("EC");
    generator.initialize(new ECGenParameterSpec("secp256r1"), RANDOM);
    return generator.generateKeyPair();
  }

  private static JcaX509v3CertificateBuilder builder(
      X500Name issuer, X500Name subject, PublicKey key, Instant now, Duration life) {
    return new JcaX509v3CertificateBuilder(
        issuer,
        new BigInteger(SERIAL_BITS, RANDOM).add(BigInteger.ONE),
        Date.from(now.minus(CLOCKS_DIFFER)),
        Date.from(now.plus(life).minus(CLOCKS_DIFFER)),
        subject,
        key);
  }

  private static X509Certificate sign(JcaX509v3CertificateBuilder made, PrivateKey key)
      throws GeneralSecurityException, OperatorCreationException {
    return new JcaX509CertificateConverter()
        .getCertificate(made.build(new JcaContentSignerBuilder(SIGNING).build(key)));
  }

  private static byte[] random(int count) {
    byte[] bytes = new byte[count];
    RANDOM.nextBytes(bytes);
    return bytes;
  }

  /** All certificates of a PEM text, in order. */
  static List<X509Certificate> certificates(byte[] pem) throws GeneralSecurityException {
    List<X509Certificate> all = new ArrayList<>();
    CertificateFactory.getInstance("X.509")
        .generateCertificates(new ByteArrayInputStream(pem))
        .forEach(each -> all.add((X509Certificate) each));
    if (all.isEmpty()) {
      throw new GeneralSecurityException("there is no certificate in it");
    }
    return all;
  }

  private static String pem(String what, byte[] der) {
    return "-----BEGIN "
        + what
        + "-----\n"
        + Base64.getMimeEncoder(64, new byte[] {'\n'}).encodeToString(der)
        + "\n-----END "
        + what
        + "-----\n";
  }

  private static byte[] der(String pem) {
    return Base64.getMimeDecoder().decode(pem.replaceAll("-----[A-Z ]+-----", ""));
  }

  /** Written apart and moved into place; one that is secret was never anybody else's to read. */
  private void write(String name, String text, boolean secret) throws IOException {
    Path part = file(name + ".part");
    Files.deleteIfExists(part);
    if (secret) {
      SecretFile.make(part);
    }
    Files.writeString(part, text);
    Files.move(
        part, file(name), StandardCopyOption.ATOMIC_MOVE, StandardCopyOption.REPLACE_EXISTING);
  }
}
