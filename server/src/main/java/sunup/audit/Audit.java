package sunup.audit;

import java.io.IOException;
import java.time.Instant;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.TreeSet;
import sunup.board.Board;
import sunup.board.Morning;
import sunup.board.MorningId;
import sunup.codec.Json;
import sunup.journal.Bytes;
import sunup.journal.Chain;
import sunup.journal.EventCodec;
import sunup.journal.Head;
import sunup.journal.JournalCheck;
import sunup.journal.PrivateValue;
import sunup.journal.Receipt;
import sunup.journal.Snapshot;
import sunup.journal.Stored;
import sunup.journal.UnreadableEvent;

/**
 * Walks every chain of a journal, replays every morning and compares with the heads that were
 * signed. Without signed heads it shows what happened by accident; whoever can write to the journal
 * can write a chain that fits.
 */
public final class Audit {
  private static final int HEX_SHOWN = 16;

  private final EventCodec codec = new EventCodec(byte[]::new);
  private final List<String> findings = new ArrayList<>();
  private final List<String> refusals = new ArrayList<>();
  private final StringBuilder heads = new StringBuilder();
  private final StringBuilder states = new StringBuilder();
  private int mornings;
  private long events;

  /** Private values due by then count as erased, whether somebody has erased them or not. */
  private final long due;

  private Audit(long due) {
    this.due = due;
  }

  /**
   * What was found.
   *
   * @param refused commands that were refused: when, by whom and why, in words
   * @param heads one figure of all heads: the same in two journals only if they hold the same
   *     events
   * @param states one figure of what all mornings are when replayed
   * @param findings in words; empty if all is well
   */
  public record Report(
      int mornings,
      long events,
      List<String> refused,
      String heads,
      String states,
      List<String> findings) {
    public Report {
      refused = List.copyOf(refused);
      findings = List.copyOf(findings);
    }

    public boolean good() {
      return findings.isEmpty();
    }
  }

  /**
   * @param signed heads signed before, or null
   * @param due private values that are due for erasing by then count as erased already, epoch
   *     milliseconds: so a journal and its backup are the same
   */
  public static Report of(Snapshot journal, SignedHeads signed, long due) throws IOException {
    Audit audit = new Audit(due);
    if (signed != null) {
      signed.problems().forEach(audit.findings::add);
    }
    Map<MorningId, List<SignedHeads.At>> before =
        signed == null ? Map.of() : new HashMap<>(signed.byMorning());
    TreeSet<MorningId> all = new TreeSet<>((a, b) -> a.toString().compareTo(b.toString()));
    all.addAll(journal.mornings());
    all.addAll(before.keySet());
    for (MorningId morning : all) {
      audit.look(morning, journal.load(morning), before.getOrDefault(morning, List.of()));
    }
    return new Report(
        audit.mornings,
        audit.events,
        audit.refusals,
        SignedHeads.hash(audit.heads.toString()).substring(0, HEX_SHOWN),
        SignedHeads.hash(audit.states.toString()).substring(0, HEX_SHOWN),
        audit.findings);
  }

  private void look(MorningId morning, Stored stored, List<SignedHeads.At> before) {
    mornings++;
    events += stored.events().size();
    stored.receipts().stream()
        .filter(each -> each.refusal() != null)
        .sorted(Comparator.comparingLong(each -> each.refusal().at()))
        .forEach(each -> refusals.add(morning + " " + said(each.refusal())));
    Head head = stored.head();
    heads.append(morning).append(' ').append(head).append('\n');
    for (String problem : JournalCheck.checkReadable(stored, codec).problems()) {
      findings.add(morning + ": " + problem);
    }
    String state = replay(stored);
    states.append(morning).append(' ').append(state).append('\n');
    compare(stored, before).forEach(words -> findings.add(morning + ": " + words));
  }

  private static String said(Receipt.Refusal refusal) {
    String who = refusal.by() == null ? "by somebody" : refusal.by();
    String when = refusal.at() == 0 ? "" : Instant.ofEpochMilli(refusal.at()) + " ";
    return when + who + ": " + refusal.code().code() + ". " + refusal.words();
  }

  /** The state as JSON, or why there is none; that is told by the check already. */
  private String replay(Stored stored) {
    Morning state = Morning.NONE;
    Map<String, PrivateValue> privates = new HashMap<>(stored.privates());
    privates.values().removeIf(value -> value.eraseAfter() <= due);
    try {
      for (Stored.Event event : stored.events()) {
        state = Board.apply(state, event.seq(), codec.decode(event.bytes(), privates));
      }
      return Json.write(state);
    } catch (UnreadableEvent | RuntimeException e) {
      return "none";
    }
  }

  /** What differs from the heads that were signed; at most the oldest of each kind. */
  static List<String> compare(Stored stored, List<SignedHeads.At> before) {
    Map<Long, String> chains = new HashMap<>();
    Bytes chain = Chain.START;
    chains.put(0L, chain.toString());
    for (Stored.Event event : stored.events()) {
      chain = Chain.next(chain, event.bytes());
      chains.put(event.seq(), chain.toString());
    }
    long end =
        stored.events().isEmpty() ? 0 : stored.events().get(stored.events().size() - 1).seq();
    List<String> told = new ArrayList<>();
    String good = "the beginning";
    boolean changed = false;
    for (SignedHeads.At then : before) {
      SignedHeads.Signed head = then.head();
      String place = "event " + head.seq() + ", signed at " + then.at();
      if (head.seq() > end) {
        told.add("its end was cut off: it stood at " + place + ", and now ends at event " + end);
        break;
      }
      if (!head.chain().equals(chains.get(head.seq())) && !changed) {
        told.add(
            "it was altered between "
                + good
                + " and "
                + place
                + ": the chain there is not the one that was signed");
        changed = true;
      }
      if (!changed) {
        good = "event " + head.seq();
      }
    }
    long epoch = before.stream().mapToLong(then -> then.head().epoch()).max().orElse(0);
    if (stored.head().epoch() < epoch) {
      told.add("its epoch went back from " + epoch + " to " + stored.head().epoch());
    }
    long receipts = before.stream().mapToLong(then -> then.head().receipts()).max().orElse(0);
    if (stored.receipts().size() < receipts) {
      told.add(
          "answers were removed: "
              + receipts
              + " commands had one, and now "
              + stored.receipts().size());
    }
    return told;
  }
}
