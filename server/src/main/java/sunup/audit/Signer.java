package sunup.audit;

import java.io.IOException;
import java.security.PrivateKey;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.TreeSet;
import sunup.board.MorningId;
import sunup.journal.Head;
import sunup.journal.Snapshot;

/**
 * Signs the heads that changed since it did so last. A morning that no longer fits what was signed
 * of it is told and not signed again, so that the last good line stays the last word on it.
 */
public final class Signer {
  private final SignedHeads file;
  private final PrivateKey key;

  public Signer(SignedHeads file, PrivateKey key) {
    this.file = file;
    this.key = key;
  }

  /**
   * @param signed how many heads
   * @param findings mornings that were not, and why
   */
  public record Done(int signed, List<String> findings) {
    public Done {
      findings = List.copyOf(findings);
    }
  }

  /** Adds a line, also if nothing changed: then it says so. */
  public Done sign(Snapshot journal, Instant now) throws IOException {
    Map<MorningId, List<SignedHeads.At>> before = file.byMorning();
    List<String> findings = new ArrayList<>(file.problems());
    List<SignedHeads.Signed> heads = new ArrayList<>();
    TreeSet<MorningId> all = new TreeSet<>((a, b) -> a.toString().compareTo(b.toString()));
    all.addAll(journal.mornings());
    all.addAll(before.keySet());
    for (MorningId morning : all) {
      List<SignedHeads.At> known = before.getOrDefault(morning, List.of());
      Head head = journal.head(morning);
      SignedHeads.Signed stands =
          new SignedHeads.Signed(
              morning.toString(),
              head.epoch(),
              head.seq(),
              head.chain().toString(),
              journal.receipts(morning));
      if (!known.isEmpty() && known.get(known.size() - 1).head().equals(stands)) {
        continue;
      }
      List<String> wrong = Audit.compare(journal.load(morning), known);
      wrong.forEach(words -> findings.add(morning + ": " + words));
      if (wrong.isEmpty()) {
        heads.add(stands);
      }
    }
    file.add(now, heads, key);
    return new Done(heads.size(), findings);
  }
}
