package sunup.access;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.security.GeneralSecurityException;
import java.security.KeyPair;
import java.security.KeyPairGenerator;
import java.security.Signature;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.Set;
import sunup.fuzz.Decoder;
import sunup.fuzz.Must;

/** What is read of whoever knocks: names, origins, keys, passes, codes. */
public final class AccessIn {
  private static final long NOW = 1_795_000_000_000L;
  private static final byte[] WORDS = KeyProof.words(KeyProof.PROVE, "https://board.example", "n");
  private static final Passes PASSES = new Passes(new byte[32]);
  private static final Connections TLS =
      new Connections(List.of("https://desk.example"), Set.of("board.example"), true);
  private static final Set<String> OURS =
      Set.of("board.example", "localhost", "127.0.0.1", "[::1]", "desk.example");
  private static final Path FILE = file();

  private AccessIn() {}

  public static List<Decoder> all() {
    return List.of(
        Decoder.ofText(
            "host-and-origin",
            List.of(
                "board.example:7443\nhttps://board.example:7443\n10.0.0.7",
                "[::1]:7443\nhttps://[::1]:7443\n::1",
                "localhost\nnull\n127.0.0.1",
                "board.example\nhttps://desk.example\n10.0.0.7"),
            AccessIn::connection),
        Decoder.ofText("screen-key", List.of(proof(), "AAAA\nAAAA"), AccessIn::proof),
        Decoder.ofText("pass", List.of(PASSES.made("print", NOW), "a.1.AAAA"), AccessIn::pass),
        Decoder.ofText("codes", List.of("BCDF-2346\n482913", "bcdf 2346\n1234"), AccessIn::codes),
        new Decoder(
            "provider-file",
            List.of(
                bytes(
                    "{\"issuer\":\"https://id.example\",\"client\":\"c\",\"name\":\"n\","
                        + "\"claim\":\"employee\",\"people\":{\"40713\":\"A7\"},"
                        + "\"ownScreens\":true}"),
                bytes("{\"issuer\":\"http://[::1]:80\",\"client\":\"c\",\"secret\":\"s\"}")),
            AccessIn::provider));
  }

  private static byte[] bytes(String text) {
    return text.getBytes(StandardCharsets.UTF_8);
  }

  private static String[] lines(String text, int count) {
    return Arrays.copyOf(text.split("\n", count), count);
  }

  /** Whoever is taken is of a host that is ours. */
  private static boolean connection(String text) {
    String[] given = lines(text, 3);
    String host = given[0];
    String origin = given[1];
    boolean taken =
        TLS.hostIsOurs(host)
            && TLS.originMayTalk(origin, host, given[2] == null ? "10.0.0.7" : "::1");
    if (taken && origin != null) {
      String rest = origin.toLowerCase(Locale.ROOT);
      Must.be(rest.startsWith("https://"), "taken from " + origin);
      String name = rest.substring("https://".length());
      int colon = name.lastIndexOf(':');
      String bare = colon > name.lastIndexOf(']') ? name.substring(0, colon) : name;
      Must.be(OURS.contains(bare), "taken from " + origin);
    }
    return taken;
  }

  private static String proof() {
    try {
      KeyPairGenerator maker = KeyPairGenerator.getInstance("EC");
      maker.initialize(256);
      KeyPair pair = maker.generateKeyPair();
      Signature signature = Signature.getInstance("SHA256withECDSAinP1363Format");
      signature.initSign(pair.getPrivate());
      signature.update(WORDS);
      return Secrets.text(pair.getPublic().getEncoded()) + "\n" + Secrets.text(signature.sign());
    } catch (GeneralSecurityException e) {
      throw new IllegalStateException(e);
    }
  }

  private static boolean proof(String text) {
    String[] given = lines(text, 2);
    Optional<String> print = KeyProof.check(given[0], given[1] == null ? "" : given[1], WORDS);
    print.ifPresent(p -> Must.same(p, Secrets.text(Secrets.sha256(Secrets.bytes(given[0])))));
    return print.isPresent();
  }

  private static boolean pass(String text) {
    String print = PASSES.read(text, NOW);
    Must.be(print == null || print.equals("print"), "a pass that nobody gave: " + text);
    return print != null;
  }

  private static boolean codes(String text) {
    String[] given = lines(text, 2);
    String plain = Secrets.plain(given[0]);
    Must.same(plain, Secrets.plain(plain));
    return Pins.wrong(given[1] == null ? "" : given[1]) == null;
  }

  private static Path file() {
    try {
      Path file = Files.createTempFile("sunup-provider", ".json");
      file.toFile().deleteOnExit();
      return file;
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  private static boolean provider(byte[] bytes) throws IOException {
    Files.write(FILE, bytes);
    try {
      return ProviderOptions.read(FILE).issuer() != null;
    } catch (IOException refused) {
      Must.be(refused.getMessage() != null, "refused without a word");
      return false;
    }
  }
}
