package sunup.simulated;

import java.util.ArrayList;
import java.util.Collection;
import java.util.HashMap;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;
import sunup.board.CommandId;
import sunup.board.MorningId;
import sunup.journal.Append;
import sunup.journal.Bytes;
import sunup.journal.Chain;
import sunup.journal.Head;
import sunup.journal.PrivateValue;
import sunup.journal.Receipt;
import sunup.journal.Stored;
import sunup.journal.TakenOver;

/** What is durable: survives every crash. Each call is one transaction. */
public final class Disk {
  private static final class Kept {
    long epoch;
    long seq;
    Bytes chain = Chain.START;
    final List<Stored.Event> events = new ArrayList<>();
    final Map<CommandId, Receipt> receipts = new LinkedHashMap<>();
    final Map<String, PrivateValue> privates = new HashMap<>();
    final Map<Long, Object> takers = new HashMap<>();
  }

  private final Map<MorningId, Kept> mornings = new HashMap<>();
  private final List<String> violations = new ArrayList<>();
  private final Bug bug;
  private Runnable changed = () -> {};

  public Disk(Bug bug) {
    this.bug = bug;
  }

  /** Run after each change. */
  void watch(Runnable watcher) {
    changed = watcher;
  }

  /** What a database would have refused by its keys. */
  List<String> violations() {
    return violations;
  }

  /**
   * Applies a group, but for those of it that are fenced.
   *
   * @param writer whose they are
   */
  boolean[] apply(List<Append> group, Object writer) {
    boolean[] in = new boolean[group.size()];
    for (int at = 0; at < in.length; at++) {
      Append append = group.get(at);
      Kept kept = mornings.get(append.morning());
      boolean epoch = kept != null && (kept.epoch == append.epoch() || bug == Bug.SKIP_EPOCH);
      in[at] = epoch && kept.seq == append.from();
      if (in[at]) {
        Object taker = kept.takers.get(append.epoch());
        if (!writer.equals(taker)) {
          violations.add("two wrote in epoch " + append.epoch());
        }
        write(kept, append);
      }
    }
    changed.run();
    return in;
  }

  private void write(Kept kept, Append append) {
    for (Bytes bytes : append.events()) {
      kept.events.add(new Stored.Event(++kept.seq, append.epoch(), bytes));
    }
    kept.chain = append.chain();
    Receipt before = kept.receipts.putIfAbsent(append.receipt().command(), append.receipt());
    if (before != null && bug != Bug.FORGET_RECEIPTS) {
      violations.add("the disk was given two receipts of " + append.receipt().command());
    }
    append.privates().forEach(value -> kept.privates.put(value.ref(), value));
  }

  TakenOver takeOver(MorningId morning, Long seen, Object taker) {
    Kept kept = mornings.computeIfAbsent(morning, id -> new Kept());
    if (seen != null && kept.epoch != seen) {
      return new TakenOver.Lost(kept.epoch);
    }
    if (bug != Bug.SHARE_EPOCH || kept.epoch == 0) {
      kept.epoch++;
      kept.takers.put(kept.epoch, taker);
    }
    changed.run();
    return new TakenOver.Won(head(kept));
  }

  private static Head head(Kept kept) {
    return new Head(kept.epoch, kept.seq, kept.chain);
  }

  public Stored load(MorningId morning) {
    Kept kept = mornings.get(morning);
    if (kept == null) {
      return new Stored(Head.NONE, List.of(), List.of(), Map.of());
    }
    return new Stored(head(kept), kept.events, List.copyOf(kept.receipts.values()), kept.privates);
  }

  Map<MorningId, Long> epochs(Collection<MorningId> asked) {
    Map<MorningId, Long> epochs = new HashMap<>();
    for (MorningId morning : asked) {
      Kept kept = mornings.get(morning);
      if (kept != null) {
        epochs.put(morning, kept.epoch);
      }
    }
    return epochs;
  }

  List<MorningId> withEvents() {
    Map<String, MorningId> found = new TreeMap<>();
    mornings.forEach(
        (id, kept) -> {
          if (kept.seq > 0) {
            found.put(id.toString(), id);
          }
        });
    return List.copyOf(found.values());
  }

  Map<MorningId, Long> lengths() {
    Map<MorningId, Long> lengths = new HashMap<>();
    mornings.forEach(
        (id, kept) -> {
          if (kept.seq > 0) {
            lengths.put(id, kept.seq);
          }
        });
    return lengths;
  }

  Set<MorningId> erase(long now) {
    Set<MorningId> lost = new HashSet<>();
    mornings.forEach(
        (id, kept) -> {
          if (kept.privates.values().removeIf(value -> value.eraseAfter() <= now)) {
            lost.add(id);
          }
        });
    return lost;
  }
}
