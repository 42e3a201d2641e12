package sunup.audit;

import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.channels.FileChannel;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import java.security.GeneralSecurityException;
import java.security.MessageDigest;
import java.security.PrivateKey;
import java.security.PublicKey;
import java.security.Signature;
import java.time.Instant;
import java.util.ArrayList;
import java.util.Base64;
import java.util.HashMap;
import java.util.HexFormat;
import java.util.List;
import java.util.Map;
import sunup.board.MorningId;
import sunup.codec.BadJson;
import sunup.codec.Json;

/**
 * A file of heads as they were at moments in the past, one signed line a moment. A line is JSON, a
 * tab and its signature; it names the line before by its hash, so that none can be taken out of the
 * middle. It is kept where nobody who can write to the journal can write.
 */
public final class SignedHeads {
  private static final String FIRST = "0".repeat(64);

  private final Path file;
  private final PublicKey key;
  private final List<Moment> moments = new ArrayList<>();
  private final List<String> problems = new ArrayList<>();
  private String last = FIRST;

  private SignedHeads(Path file, PublicKey key) {
    this.file = file;
    this.key = key;
  }

  /**
   * Where a morning ended.
   *
   * @param chain in lower-case hex
   * @param receipts commands that were answered, the refused ones too
   */
  public record Signed(String morning, long epoch, long seq, String chain, long receipts) {}

  /**
   * One line.
   *
   * @param at when, as text of ISO 8601
   * @param number 1 for the first line
   * @param previous SHA-256 of the line before in hex
   * @param heads those that changed since the line before
   */
  public record Moment(String at, long number, String previous, List<Signed> heads) {
    public Moment {
      heads = List.copyOf(heads);
    }
  }

  /**
   * Reads what is there; a file that is not there yet is an empty one. What is wrong with lines is
   * in {@link #problems}.
   */
  public static SignedHeads read(Path file, PublicKey key) throws IOException {
    SignedHeads read = new SignedHeads(file, key);
    if (Files.exists(file)) {
      int number = 0;
      for (String line : Files.readAllLines(file)) {
        read.take(++number, line);
      }
    }
    return read;
  }

  private void take(int number, String line) {
    String at = "line " + number + " of the signed heads ";
    int tab = line.lastIndexOf('\t');
    if (tab < 0 || !verifies(line.substring(0, tab), line.substring(tab + 1))) {
      problems.add(at + "is not signed with this key: it was changed, or another key signed it");
      last = hash(line);
      return;
    }
    try {
      Moment moment = Json.read(line.substring(0, tab), Moment.class);
      if (!moment.previous().equals(last) || moment.number() != number) {
        problems.add(at + "does not follow the one before: lines are missing or were moved");
      }
      moments.add(moment);
    } catch (BadJson e) {
      problems.add(at + "can't be read: " + e.getMessage());
    }
    last = hash(line);
  }

  /** What is wrong with the file itself. */
  public List<String> problems() {
    return List.copyOf(problems);
  }

  public List<Moment> moments() {
    return List.copyOf(moments);
  }

  /** Every head that was signed of a morning, oldest first, with when. */
  Map<MorningId, List<At>> byMorning() {
    Map<MorningId, List<At>> all = new HashMap<>();
    for (Moment moment : moments) {
      for (Signed head : moment.heads()) {
        all.computeIfAbsent(MorningId.parse(head.morning()), m -> new ArrayList<>())
            .add(new At(moment.at(), head));
      }
    }
    return all;
  }

  /** A head and when it was signed. */
  record At(String at, Signed head) {}

  /** Adds a line and syncs it. */
  void add(Instant now, List<Signed> heads, PrivateKey signing) throws IOException {
    Moment moment = new Moment(now.toString(), moments.size() + 1, last, heads);
    String text = Json.write(moment);
    String line = text + "\t" + sign(text, signing);
    boolean mine = verifies(text, line.substring(line.lastIndexOf('\t') + 1));
    if (!mine) {
      throw new IOException("The private key does not belong to the public one.");
    }
    try (FileChannel channel =
        FileChannel.open(
            file, StandardOpenOption.CREATE, StandardOpenOption.WRITE, StandardOpenOption.APPEND)) {
      ByteBuffer bytes = ByteBuffer.wrap((line + "\n").getBytes(StandardCharsets.UTF_8));
      while (bytes.hasRemaining()) {
        channel.write(bytes);
      }
      channel.force(true);
    }
    moments.add(moment);
    last = hash(line);
  }

  private static String sign(String text, PrivateKey key) {
    try {
      Signature signature = Signature.getInstance(SigningKeys.ALGORITHM);
      signature.initSign(key);
      signature.update(text.getBytes(StandardCharsets.UTF_8));
      return Base64.getEncoder().encodeToString(signature.sign());
    } catch (GeneralSecurityException e) {
      throw new IllegalStateException("this Java can't sign", e);
    }
  }

  private boolean verifies(String text, String signed) {
    try {
      Signature signature = Signature.getInstance(SigningKeys.ALGORITHM);
      signature.initVerify(key);
      signature.update(text.getBytes(StandardCharsets.UTF_8));
      return signature.verify(Base64.getDecoder().decode(signed));
    } catch (GeneralSecurityException | IllegalArgumentException e) {
      return false;
    }
  }

  static String hash(String text) {
    try {
      return HexFormat.of()
          .formatHex(
              MessageDigest.getInstance("SHA-256").digest(text.getBytes(StandardCharsets.UTF_8)));
    } catch (GeneralSecurityException e) {
      throw new IllegalStateException("this Java has no SHA-256", e);
    }
  }
}
