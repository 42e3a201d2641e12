package sunup.journal;

import java.io.IOException;
import java.net.InetAddress;
import java.net.UnknownHostException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Locale;
import java.util.Properties;
import org.postgresql.Driver;
import org.postgresql.PGProperty;

/**
 * Where a PostgreSQL is and who asks it. To another machine the connection is encrypted and the
 * server's certificate and name are checked, unless the address itself says otherwise.
 *
 * @param url {@code jdbc:postgresql://host:port/database}, with the driver's options if need be
 * @param user the database's user, or null to leave it to the address
 * @param passwordFile a file with the password in its first line, or null if none is needed
 */
public record PostgresAddress(String url, String user, Path passwordFile) {
  /**
   * What the driver is given.
   *
   * @throws IOException if the address or the file can't be used; the message says what to do
   */
  Properties properties() throws IOException {
    Properties parsed = Driver.parseURL(url, new Properties());
    if (parsed == null) {
      throw new IOException(
          "The database's address "
              + url
              + " can't be read. It looks like jdbc:postgresql://db.example:5432/sunup");
    }
    Properties given = new Properties();
    for (String name : parsed.stringPropertyNames()) {
      if (name.toLowerCase(Locale.ROOT).contains("password")) {
        throw new IOException(
            "The database's address holds a password, where everybody on the machine can read it."
                + " Put it into a file that only the board may read, and name the file.");
      }
      given.setProperty(name, parsed.getProperty(name));
    }
    if (user != null) {
      PGProperty.USER.set(given, user);
    }
    if (passwordFile != null) {
      PGProperty.PASSWORD.set(given, password());
    }
    if (PGProperty.SSL_MODE.getOrDefault(given) == null && !stays(given)) {
      PGProperty.SSL_MODE.set(given, "verify-full");
    }
    return given;
  }

  private String password() throws IOException {
    if (!Files.isReadable(passwordFile)) {
      throw new IOException("The database's password file " + passwordFile + " can't be read.");
    }
    SecretFile.check(passwordFile, "the password file");
    return Files.readString(passwordFile).lines().findFirst().orElse("");
  }

  /** True if no host of the address is another machine. */
  private static boolean stays(Properties given) {
    for (String host : List.of(PGProperty.PG_HOST.getOrDefault(given).split(",", -1))) {
      try {
        boolean literal = host.contains(":") || host.matches("[0-9.]+");
        boolean here =
            host.equals("localhost")
                || (literal && InetAddress.getByName(host).isLoopbackAddress());
        if (!here) {
          return false;
        }
      } catch (UnknownHostException e) {
        return false;
      }
    }
    return true;
  }
}
