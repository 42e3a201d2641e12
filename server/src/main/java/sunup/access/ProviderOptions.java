package sunup.access;

import java.io.IOException;
import java.net.URI;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.InvalidPathException;
import java.nio.file.Path;
import java.util.Map;
import sunup.codec.BadJson;
import sunup.codec.Json;
import sunup.codec.Maybe;
import sunup.journal.SecretFile;

/**
 * The site's identity provider, by which people sign on beside code and PIN.
 *
 * @param issuer as it names itself; https, or on this machine
 * @param client what the board is called there
 * @param secret file with what the board proves itself with there, beside this file unless its path
 *     is absolute; null if the provider knows it without
 * @param name what people call it: {@code hospital account}
 * @param claim of the id token that says who somebody is; null for {@code sub}
 * @param people codes of the board by values of that claim; null if the claim is the code itself.
 *     Whoever is not known by one or the other is refused
 * @param ownScreens true if people may use browsers of their own that were paired at no desk: a
 *     phone, a desk of a manager. Such a browser is known as long as its person is signed on
 */
public record ProviderOptions(
    URI issuer,
    String client,
    @Maybe Path secret,
    String name,
    @Maybe String claim,
    @Maybe Map<String, String> people,
    boolean ownScreens) {
  private static final int SECRET_BYTES_MAX = 4_096;

  /** The file as it is written. */
  record File(
      String issuer,
      String client,
      @Maybe String secret,
      @Maybe String name,
      @Maybe String claim,
      @Maybe Map<String, String> people,
      @Maybe Boolean ownScreens) {}

  public ProviderOptions {
    people = people == null ? null : Map.copyOf(people);
  }

  /**
   * Reads a file of the site.
   *
   * @throws IOException that says what to do
   */
  public static ProviderOptions read(Path file) throws IOException {
    File read;
    try {
      read = Json.read(Files.readAllBytes(file), File.class);
    } catch (BadJson e) {
      throw new IOException(file + " can't be read: " + e.getMessage(), e);
    }
    if (read == null || read.issuer() == null || read.client() == null) {
      throw new IOException(file + " must name \"issuer\" and \"client\".");
    }
    URI issuer;
    try {
      issuer = URI.create(read.issuer());
    } catch (IllegalArgumentException e) {
      throw new IOException(file + ": \"issuer\" is no address.", e);
    }
    if (!"https".equals(issuer.getScheme()) && !Connections.isLoopback(issuer.getHost())) {
      throw new IOException(file + ": \"issuer\" must be reached by https.");
    }
    Path secret = null;
    if (read.secret() != null) {
      secret = beside(file, read.secret());
      SecretFile.check(secret, "the secret of the identity provider's client");
      if (Files.size(secret) > SECRET_BYTES_MAX) {
        throw new IOException(secret + " is too long for a secret.");
      }
    }
    return new ProviderOptions(
        issuer,
        read.client(),
        secret,
        read.name() == null ? "hospital account" : read.name(),
        read.claim(),
        read.people(),
        Boolean.TRUE.equals(read.ownScreens()));
  }

  private static Path beside(Path file, String name) throws IOException {
    try {
      return file.toAbsolutePath().resolveSibling(name);
    } catch (InvalidPathException e) {
      throw new IOException(file + ": \"secret\" is no name of a file.", e);
    }
  }

  /** What the board proves itself with, or null. */
  String secretText() throws IOException {
    return secret == null ? null : Files.readString(secret, StandardCharsets.UTF_8).strip();
  }
}
