package sunup.journal;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;

/** Looks at a stored morning for what must never be. */
public final class JournalCheck {
  /** Problems told; there may be more. */
  public static final int TOLD_LIMIT = 20;

  private JournalCheck() {}

  /**
   * @param events how many were looked at
   * @param problems what is wrong, in words; empty if nothing is
   */
  public record Report(int events, List<String> problems) {
    public Report {
      problems = List.copyOf(problems);
    }

    public boolean good() {
      return problems.isEmpty();
    }
  }

  /**
   * Checks that sequences have no gap, that epochs never go back, that the chain over the bytes as
   * stored is the head's, and that each event belongs to exactly one command.
   */
  public static Report check(Stored stored) {
    List<String> problems = new ArrayList<>();
    Head head = stored.head();
    long seq = 0;
    long epoch = 0;
    Bytes chain = Chain.START;
    for (Stored.Event event : stored.events()) {
      if (event.seq() != seq + 1) {
        tell(problems, "event " + event.seq() + " follows event " + seq);
      }
      if (event.epoch() < epoch) {
        tell(
            problems,
            "event " + event.seq() + " of epoch " + event.epoch() + " follows epoch " + epoch);
      }
      seq = event.seq();
      epoch = event.epoch();
      chain = Chain.next(chain, event.bytes());
    }
    if (head.seq() != seq) {
      tell(problems, "the head stands at event " + head.seq() + ", the events end at " + seq);
    }
    if (head.epoch() < epoch) {
      tell(problems, "the head has epoch " + head.epoch() + ", the last event epoch " + epoch);
    }
    if (!head.chain().equals(chain)) {
      tell(problems, "the chain over the events is " + chain + ", the head's is " + head.chain());
    }
    receipts(stored, problems);
    return new Report(stored.events().size(), problems);
  }

  private static void receipts(Stored stored, List<String> problems) {
    int count = stored.events().size();
    int[] covered = new int[count + 1];
    for (Receipt receipt : stored.receipts()) {
      if (receipt.fromSeq() < 0
          || receipt.toSeq() < receipt.fromSeq()
          || receipt.toSeq() > count
          || (receipt.refusal() != null && receipt.toSeq() != receipt.fromSeq())) {
        tell(problems, "the receipt of " + receipt.command() + " names events that are not its");
        continue;
      }
      for (long seq = receipt.fromSeq() + 1; seq <= receipt.toSeq(); seq++) {
        covered[(int) seq]++;
      }
    }
    for (int seq = 1; seq <= count; seq++) {
      if (covered[seq] != 1) {
        tell(problems, "event " + seq + " belongs to " + covered[seq] + " commands");
      }
    }
  }

  /**
   * Checks also that every event can be read and that the private values that are left are the ones
   * that were sealed.
   */
  public static Report checkReadable(Stored stored, EventCodec codec) {
    Report report = check(stored);
    List<String> problems = new ArrayList<>(report.problems());
    Map<String, PrivateValue> privates = stored.privates();
    for (Stored.Event event : stored.events()) {
      try {
        codec.decode(event.bytes(), privates);
      } catch (UnreadableEvent e) {
        tell(problems, "event " + event.seq() + ": " + e.getMessage());
      }
    }
    return new Report(report.events(), problems);
  }

  private static void tell(List<String> problems, String what) {
    if (problems.size() < TOLD_LIMIT) {
      problems.add(what);
    }
  }
}
