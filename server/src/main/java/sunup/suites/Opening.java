package sunup.suites;

import java.util.HashMap;
import java.util.Map;
import java.util.Set;
import java.util.function.Consumer;
import sunup.board.CommandId;
import sunup.board.Morning;
import sunup.board.MorningId;
import sunup.board.Recorded;
import sunup.journal.Answer;
import sunup.journal.Chain;
import sunup.journal.Head;
import sunup.journal.PrivateValue;
import sunup.journal.Receipt;
import sunup.journal.Stored;
import sunup.journal.TakenOver;
import sunup.journal.UnreadableEvent;

/** Takes a morning over and makes its state of what the journal keeps. */
final class Opening {
  private final MorningId morning;
  private final Means means;

  /** How far it was read before: taking it over reads on from there. */
  private Bound bound = new Bound();

  Opening(MorningId morning, Means means) {
    this.morning = morning;
    this.means = means;
  }

  /** What became of it. */
  sealed interface Result {}

  /**
   * The morning is the caller's.
   *
   * @param receiptKey the key of the receipts' hashes, or null if none is kept
   */
  record Opened(Head head, Morning state, Map<CommandId, Receipt> receipts, PrivateValue receiptKey)
      implements Result {}

  /** Somebody else has it. */
  record Lost() implements Result {}

  /** The journal can't say now. */
  record Away(String words) implements Result {}

  /** This program must not own it: it can't read it, or it is damaged. */
  record Refused(String words) implements Result {}

  /**
   * Reads first, so that a program that can't read the morning does not take it from one that can.
   */
  void first(Consumer<Result> then) {
    load(
        null,
        result -> {
          if (result instanceof Opened read) {
            // Of two who want it at the same moment one gets it.
            again(read.head().epoch(), then);
          } else {
            then.accept(result);
          }
        });
  }

  /** Reads it as it stands, without taking it; {@link #first} then reads only what came after. */
  void look(Consumer<Result> then) {
    load(null, then);
  }

  /**
   * @param seen the epoch that the caller had
   */
  void again(Long seen, Consumer<Result> then) {
    means
        .journal()
        .takeOver(
            morning,
            seen,
            taken ->
                means
                    .executor()
                    .execute(
                        () -> {
                          if (taken instanceof TakenOver.Won won) {
                            load(won.head(), then);
                          } else if (taken instanceof TakenOver.Away away) {
                            then.accept(new Away(away.words()));
                          } else {
                            bound = new Bound();
                            then.accept(new Lost());
                          }
                        }));
  }

  private void load(Head won, Consumer<Result> then) {
    means
        .journal()
        .load(
            morning,
            bound.seq,
            answer ->
                means
                    .executor()
                    .execute(
                        () -> {
                          if (answer instanceof Answer.Known<Stored> known) {
                            if (bound.isBeside(known.value())) {
                              bound = new Bound();
                              load(won, then);
                              return;
                            }
                            then.accept(read(won, known.value()));
                          } else if (answer instanceof Answer.Away<Stored> away) {
                            then.accept(new Away(away.words()));
                          }
                        }));
  }

  private Result read(Head won, Stored stored) {
    Bound before = bound;
    bound = new Bound();
    if (won != null && stored.head().epoch() != won.epoch()) {
      return new Lost();
    }
    for (Stored.Event event : stored.events()) {
      if (!before.follows(event)) {
        return damaged("event " + event.seq() + " does not follow event " + before.seq);
      }
      try {
        Recorded recorded = means.codec().decode(event.bytes(), stored.privates());
        before.state = means.decider().apply(before.state, event.seq(), recorded);
      } catch (UnreadableEvent e) {
        return new Refused("Event " + event.seq() + " of " + morning + ": " + e.getMessage() + ".");
      } catch (RuntimeException e) {
        return new Refused(
            "Event " + event.seq() + " of " + morning + " could not be applied: " + e + ".");
      }
    }
    if (won == null) {
      before.refs = Set.copyOf(stored.privates().keySet());
      bound = before;
    } else if (!before.matches(stored.head())) {
      // While somebody else still writes, head and events may be read a moment apart.
      return damaged("its events do not match its head");
    }
    Map<CommandId, Receipt> receipts = new HashMap<>();
    stored.receipts().forEach(receipt -> receipts.put(receipt.command(), receipt));
    PrivateValue key = stored.privates().get(Decisions.receiptKeyRef(morning));
    return new Opened(stored.head(), before.state, receipts, key);
  }

  private Refused damaged(String how) {
    return new Refused(
        "The journal of "
            + morning
            + " is damaged: "
            + how
            + ". Run the audit on it and bring back a good copy.");
  }

  /** Follows sequence and chain while reading. */
  private static final class Bound {
    long seq;
    Morning state = Morning.NONE;
    Set<String> refs = Set.of();
    private sunup.journal.Bytes chain = Chain.START;

    /** What was read is not what stands: a value in it was erased, or the journal lost its end. */
    boolean isBeside(Stored now) {
      return now.head().seq() < seq || !now.privates().keySet().containsAll(refs);
    }

    boolean follows(Stored.Event event) {
      if (event.seq() != seq + 1) {
        return false;
      }
      seq = event.seq();
      chain = Chain.next(chain, event.bytes());
      return true;
    }

    boolean matches(Head head) {
      return head.seq() == seq && head.chain().equals(chain);
    }
  }
}
