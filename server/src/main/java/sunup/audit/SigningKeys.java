package sunup.audit;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import java.security.GeneralSecurityException;
import java.security.KeyFactory;
import java.security.KeyPair;
import java.security.KeyPairGenerator;
import java.security.PrivateKey;
import java.security.PublicKey;
import java.security.spec.PKCS8EncodedKeySpec;
import java.security.spec.X509EncodedKeySpec;
import java.util.Base64;
import sunup.journal.SecretFile;

/** Ed25519 keys in PEM files: the private one in FILE, its owner's alone, the public one beside. */
public final class SigningKeys {
  static final String ALGORITHM = "Ed25519";
  private static final String PRIVATE = "PRIVATE KEY";
  private static final String PUBLIC = "PUBLIC KEY";

  private SigningKeys() {}

  /** The public key's file that belongs to a private one's. */
  public static Path publicFile(Path file) {
    return file.resolveSibling(file.getFileName() + ".pub");
  }

  /**
   * Makes a pair.
   *
   * @throws IOException if one of the files is there already, or can't be written
   */
  public static void make(Path file) throws IOException {
    Path open = publicFile(file);
    if (Files.exists(file) || Files.exists(open)) {
      throw new IOException(file + " or " + open + " is there already. Give another name.");
    }
    try {
      KeyPair pair = KeyPairGenerator.getInstance(ALGORITHM).generateKeyPair();
      SecretFile.make(file);
      write(file, PRIVATE, pair.getPrivate().getEncoded());
      write(open, PUBLIC, pair.getPublic().getEncoded());
    } catch (GeneralSecurityException e) {
      throw new IllegalStateException("this Java has no " + ALGORITHM, e);
    }
  }

  private static void write(Path file, String what, byte[] bytes) throws IOException {
    String lines = Base64.getMimeEncoder(64, new byte[] {'\n'}).encodeToString(bytes);
    Files.writeString(
        file,
        "-----BEGIN " + what + "-----\n" + lines + "\n-----END " + what + "-----\n",
        StandardOpenOption.CREATE,
        StandardOpenOption.TRUNCATE_EXISTING,
        StandardOpenOption.WRITE);
  }

  /**
   * @throws IOException if it can't be read, is no such key, or others may read it
   */
  public static PrivateKey readPrivate(Path file) throws IOException {
    SecretFile.check(file, "the key");
    try {
      return KeyFactory.getInstance(ALGORITHM)
          .generatePrivate(new PKCS8EncodedKeySpec(read(file, PRIVATE)));
    } catch (GeneralSecurityException e) {
      throw new IOException(file + " holds no " + ALGORITHM + " key. Make one: audit key.", e);
    }
  }

  /**
   * @throws IOException if it can't be read or is no such key
   */
  public static PublicKey readPublic(Path file) throws IOException {
    try {
      return KeyFactory.getInstance(ALGORITHM)
          .generatePublic(new X509EncodedKeySpec(read(file, PUBLIC)));
    } catch (GeneralSecurityException e) {
      throw new IOException(file + " holds no public " + ALGORITHM + " key.", e);
    }
  }

  private static byte[] read(Path file, String what) throws IOException {
    if (!Files.isReadable(file)) {
      throw new IOException("The key " + file + " can't be read.");
    }
    String text = Files.readString(file);
    String begin = "-----BEGIN " + what + "-----";
    int from = text.indexOf(begin);
    int to = text.indexOf("-----END " + what + "-----", from + begin.length());
    if (from < 0 || to < 0) {
      throw new IOException(file + " holds no " + what + " in PEM.");
    }
    try {
      return Base64.getMimeDecoder().decode(text.substring(from + begin.length(), to));
    } catch (IllegalArgumentException e) {
      throw new IOException(file + " is damaged: " + e.getMessage(), e);
    }
  }
}
