package sunup.cluster;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.function.Consumer;
import java.util.function.LongSupplier;
import java.util.function.Predicate;
import java.util.stream.Stream;
import sunup.board.Command;
import sunup.board.Event;
import sunup.board.RefusalCode;
import sunup.journal.EventTypes;
import sunup.live.Mornings;
import sunup.live.Place;
import sunup.suites.Reply;
import sunup.suites.Submission;

/**
 * Commands on their way to the owner of their morning. One whose owner went away waits for the next
 * owner and is given to it under its own id: if it was carried out already, it gets the answer that
 * it missed. Kept in the lane.
 */
final class Commands {
  /** How long a command is kept here; the screen sends it again anyway. */
  static final long KEEP_MS = 6_000;

  private static final String BUSY = "The board has more to do than it can. Send it again.";
  private static final String NOBODY = "No node of the board has this morning now. Send it again.";

  private final Bus bus;
  private final LongSupplier now;
  private final Predicate<String> unknownToSome;
  private final Map<Long, Wanted> askedOf = new HashMap<>();
  private long ids;

  /**
   * @param unknownToSome whether a node may not know a type of event
   */
  Commands(Bus bus, LongSupplier now, Predicate<String> unknownToSome) {
    this.bus = bus;
    this.now = now;
    this.unknownToSome = unknownToSome;
  }

  void submit(Wanted one, Submission submission, Consumer<Reply> answer) {
    if (one.full()) {
      answer.accept(new Reply.Later(BUSY));
      return;
    }
    one.parked.addLast(new Wanted.Pending(submission, answer, now.getAsLong() + KEEP_MS));
    goOn(one);
  }

  /** Gives what waits to the owner, if one is known. */
  void goOn(Wanted one) {
    if (one.parked.isEmpty() || one.place instanceof Place.Nowhere) {
      return;
    }
    List<Wanted.Pending> all = new ArrayList<>(one.parked);
    one.parked.clear();
    for (Wanted.Pending pending : all) {
      if (one.place instanceof Place.Here here) {
        here.owner().submit(judged(one, pending.submission), pending.answer);
      } else if (one.place instanceof Place.There there) {
        send(one, pending, there.line().node());
      }
    }
  }

  private void send(Wanted one, Wanted.Pending pending, String node) {
    if (isNew(pending.submission)) {
      // A node of before 27 November 2026 that can't read it says nothing, or ends the line.
      pending.answer.accept(new Reply.Later(Reply.Later.MIXED));
      return;
    }
    long id = ++ids;
    if (bus.send(node, new BusMessage.Ask(id, one.morning, pending.submission), null)) {
      pending.with = node;
      one.sent.put(id, pending);
      askedOf.put(id, one);
    } else {
      one.parked.addLast(pending);
    }
  }

  private boolean isNew(Submission submission) {
    return Stream.concat(Stream.of(submission.command()), submission.also().stream())
        .map(Commands::yields)
        .anyMatch(type -> type != null && unknownToSome.test(EventTypes.of(type)));
  }

  /**
   * What a command yields that came into the program with it, before nodes answered a command that
   * they can't read; or null. It gets no more lines, and goes when these types are settled.
   */
  private static Class<? extends Event> yields(Command command) {
    if (command instanceof Command.SetUpNext
        || (command instanceof Command.Sweep sweep && sweep.next() != null)) {
      return Event.NextCaseBegun.class;
    } else if (command instanceof Command.ConfirmSwap) {
      return Event.SwapConfirmed.class;
    } else if (command instanceof Command.DrawDrugs) {
      return Event.DrugsDrawn.class;
    } else if (command instanceof Command.DiscardDrug) {
      return Event.DrugDiscarded.class;
    }
    return command instanceof Command.CountDrug ? Event.DrugCounted.class : null;
  }

  /** An answer from another node. */
  void answered(BusMessage.Reply reply) {
    Wanted one = askedOf.remove(reply.id());
    Wanted.Pending pending = one == null ? null : one.sent.remove(reply.id());
    if (pending == null) {
      return;
    }
    switch (reply.kind()) {
      case "done" -> pending.answer.accept(new Reply.Done(reply.upTo()));
      case "refused" -> pending.answer.accept(new Reply.Refused(code(reply), reply.words()));
      case "not-owner" -> one.parked.addLast(pending);
      default -> pending.answer.accept(new Reply.Later(reply.words()));
    }
  }

  private static RefusalCode code(BusMessage.Reply reply) {
    for (RefusalCode known : RefusalCode.values()) {
      if (known.code().equals(reply.code())) {
        return known;
      }
    }
    return RefusalCode.BAD_COMMAND;
  }

  /** What waits too long is answered "not now"; the rest is tried again. */
  void tick(Wanted one) {
    long at = now.getAsLong();
    one.parked.removeIf(pending -> over(pending, at));
    one.sent.values().removeIf(pending -> over(pending, at));
    askedOf.entrySet().removeIf(e -> e.getValue() == one && !one.sent.containsKey(e.getKey()));
    goOn(one);
  }

  private static boolean over(Wanted.Pending pending, long at) {
    boolean late = at > pending.until;
    if (late) {
      pending.answer.accept(new Reply.Later(NOBODY));
    }
    return late;
  }

  /** Another node asks; only an owner answers. */
  void asked(Wanted one, String from, BusMessage.Ask ask) {
    if (one.place instanceof Place.Here here) {
      Submission judged = judged(one, ask.submission());
      here.owner().submit(judged, reply -> bus.send(from, message(ask.id(), reply), null));
    } else {
      String known = one.place instanceof Place.There there ? there.line().node() : null;
      bus.send(from, new BusMessage.Reply(ask.id(), "not-owner", null, null, null, known), null);
    }
  }

  private static Submission judged(Wanted one, Submission given) {
    return one.at == null ? given : Mornings.judged(given, one.at.state());
  }

  private static BusMessage.Reply message(long id, Reply reply) {
    if (reply instanceof Reply.Done done) {
      return new BusMessage.Reply(id, "done", done.upTo(), null, null, null);
    }
    if (reply instanceof Reply.Refused no) {
      return new BusMessage.Reply(id, "refused", null, no.code().code(), no.words(), null);
    }
    String words = ((Reply.Later) reply).words();
    return new BusMessage.Reply(id, "later", null, null, words, null);
  }
}
