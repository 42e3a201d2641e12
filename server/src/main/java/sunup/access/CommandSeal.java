package sunup.access;

import java.nio.charset.StandardCharsets;
import java.security.MessageDigest;
import sunup.board.MorningId;
import sunup.codec.Json;
import sunup.suites.Seal;
import sunup.suites.Submission;

/**
 * A MAC over the whole command and its morning, by a key that lies in the database of screens and
 * people: who reaches the nodes' bus and not the database can neither give a command in somebody's
 * name nor change one. A command that is sent twice is carried out once by its id.
 */
final class CommandSeal implements Seal {
  /** The name of its key among the secrets. */
  static final String NAME = "seal";

  private final byte[] key;

  CommandSeal(byte[] key) {
    this.key = key.clone();
  }

  @Override
  public String of(MorningId morning, Submission given) {
    String words = new String(Json.bytes(given), StandardCharsets.UTF_8);
    return Secrets.text(Secrets.mac(key, morning + "\n" + words));
  }

  @Override
  public boolean holds(MorningId morning, Submission given, String seal) {
    return seal != null
        && MessageDigest.isEqual(
            seal.getBytes(StandardCharsets.UTF_8),
            of(morning, given).getBytes(StandardCharsets.UTF_8));
  }
}
