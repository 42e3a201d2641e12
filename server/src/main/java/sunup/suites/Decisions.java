package sunup.suites;

import com.fasterxml.jackson.annotation.JsonInclude;
import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.databind.MapperFeature;
import com.fasterxml.jackson.databind.ObjectWriter;
import com.fasterxml.jackson.databind.SerializationFeature;
import com.fasterxml.jackson.databind.json.JsonMapper;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;
import sunup.board.Actor;
import sunup.board.Command;
import sunup.board.CommandId;
import sunup.board.LearnedTimes;
import sunup.board.Morning;
import sunup.board.MorningId;
import sunup.board.Order;
import sunup.board.Outcome;
import sunup.board.Recorded;
import sunup.board.RefusalCode;
import sunup.codec.Json;
import sunup.journal.Append;
import sunup.journal.Bytes;
import sunup.journal.EventCodec;
import sunup.journal.EventTypes;
import sunup.journal.Head;
import sunup.journal.Mac256;
import sunup.journal.PrivateValue;
import sunup.journal.Receipt;

/**
 * The state that decisions are made on. It runs ahead of what is durable: whoever uses it throws it
 * away as soon as one of its attempts was not durable.
 */
final class Decisions {
  /** Commands of one morning; beyond it every command is answered {@code Later}. */
  static final int COMMAND_LIMIT = 200_000;

  /** Bytes of the events of one command; beyond it the command is refused. */
  static final int COMMAND_BYTES_LIMIT = 16 * 1024 * 1024;

  private static final int KEY_BYTES = 32;
  private static final Logger LOG = LoggerFactory.getLogger(Decisions.class);

  private static final ObjectWriter CANONICAL =
      ((JsonMapper) Json.mapper())
          .rebuild()
          .enable(MapperFeature.SORT_PROPERTIES_ALPHABETICALLY)
          .enable(SerializationFeature.ORDER_MAP_ENTRIES_BY_KEYS)
          .build()
          .writerFor(Payload.class);

  private final MorningId morning;
  private final Means means;
  private final Terms terms;
  private final Map<CommandId, Receipt> receipts;
  private final Bytes receiptKey;

  /** Null once it is known to be stored. */
  private PrivateValue keyToStore;

  private Head head;
  private Morning state;

  Decisions(MorningId morning, Means means, Opening.Opened opened) {
    this.morning = morning;
    this.means = means;
    this.terms = new Terms(morning);
    this.receipts = new HashMap<>(opened.receipts());
    this.head = opened.head();
    this.state = opened.state();
    PrivateValue key = opened.receiptKey();
    if (key == null) {
      key =
          new PrivateValue(
              receiptKeyRef(morning),
              Bytes.of(means.random().apply(KEY_BYTES)),
              Bytes.of(new byte[0]),
              terms.eraseReceiptKeyAfter());
      keyToStore = key;
    }
    this.receiptKey = key.key();
  }

  /**
   * The payload hash of a receipt is keyed, and the key erased with the receipts' term: an erased
   * text can't be guessed from it.
   */
  static String receiptKeyRef(MorningId morning) {
    return "receipts:" + morning;
  }

  /**
   * What a receipt's hash is taken over; of one command alone it is as it always was. A second
   * signature is not in it: sent again after its minute the command is the same.
   */
  record Payload(
      Command command,
      Actor actor,
      @JsonInclude(JsonInclude.Include.NON_EMPTY) List<Command> also) {}

  /** Commands that stand or fall together; beyond it they are refused. */
  static final int TOGETHER_LIMIT = 1_000;

  /**
   * A command decided, not yet written.
   *
   * @param reply what it is answered with once it is durable
   * @param after the state then
   * @param head the journal's head then
   */
  record Attempt(Append append, Reply reply, Morning after, Head head) {}

  /** When the last event was recorded, or the command would be. */
  private long now() {
    return Math.max(means.clock().morningMs(), state.lastRecordedAt());
  }

  /** One of the attempts is durable. */
  void durable() {
    keyToStore = null;
  }

  /** True once the morning takes nothing more; receipts are not asked any more then. */
  boolean over() {
    return now() > terms.takesUntil(state);
  }

  boolean full() {
    return receipts.size() >= COMMAND_LIMIT;
  }

  /** The answer that a command got before, or null if its id is new. */
  Reply answered(Submission s) {
    Receipt receipt = receipts.get(s.id());
    if (receipt == null) {
      return null;
    }
    if (!receipt.payload().equals(payload(s))) {
      return new Reply.Refused(RefusalCode.ID_REUSED, RefusalCode.ID_REUSED.say(null));
    }
    return reply(receipt);
  }

  private static Reply reply(Receipt receipt) {
    return receipt.refusal() == null
        ? new Reply.Done(receipt.toSeq())
        : new Reply.Refused(receipt.refusal().code(), receipt.refusal().words());
  }

  private Bytes payload(Submission s) {
    try {
      Actor alone = s.actor() == null ? null : s.actor().with(null);
      byte[] bytes = CANONICAL.writeValueAsBytes(new Payload(s.command(), alone, s.also()));
      return Mac256.of(receiptKey, Bytes.of(bytes));
    } catch (JsonProcessingException e) {
      throw new IllegalStateException("a command could not be written: " + e.getMessage(), e);
    }
  }

  /**
   * Decides a command whose id is new, and what is asked with it: all or nothing.
   *
   * @return null if a node could not read what it would write: nothing is decided
   */
  Attempt decide(Submission s) {
    long now = now();
    Draft draft = new Draft(now, state, head);
    Outcome.Refused refused = null;
    if (s.also().size() >= TOGETHER_LIMIT) {
      refused = new Outcome.Refused(RefusalCode.BAD_COMMAND, "it is too many at once");
    }
    Long seen = s.seen();
    for (int i = 0; refused == null && i <= s.also().size(); i++) {
      Command command = i == 0 ? s.command() : s.also().get(i - 1);
      Order order =
          new Order(s.id(), command, s.actor(), seen, happenedAt(s, now), now)
              .taught(learned(command));
      Outcome outcome = outcome(draft.state, order);
      if (outcome instanceof Outcome.Refused no) {
        refused = no;
      } else if (!mayWrite(((Outcome.Accepted) outcome).events())) {
        return null;
      } else if (!draft.take(((Outcome.Accepted) outcome).events())) {
        refused = new Outcome.Refused(RefusalCode.BAD_COMMAND, "it is too large");
      } else if (seen != null) {
        seen = Math.max(seen, draft.head.seq());
      }
    }
    Attempt attempt = refused == null ? accept(s, draft) : refuse(s, refused);
    head = attempt.head();
    state = attempt.after();
    receipts.put(s.id(), attempt.append().receipt());
    return attempt;
  }

  /** What an opening freezes, if all nodes read it; else it goes by its sheets. */
  private LearnedTimes learned(Command command) {
    return command instanceof Command.OpenMorning && means.mayWrite(EventTypes.LEARNED)
        ? means.learned().apply(morning.suite())
        : null;
  }

  /** Events that are not written yet, and what the morning is after them. */
  private final class Draft {
    final long now;
    final List<Bytes> bytes = new ArrayList<>();
    final List<PrivateValue> privates = new ArrayList<>();
    Morning state;
    Head head;
    private long size;

    Draft(long now, Morning state, Head head) {
      this.now = now;
      this.state = state;
      this.head = head;
    }

    /** False if it becomes too large. */
    boolean take(List<Recorded> events) {
      for (Recorded event : events) {
        Recorded recorded =
            new Recorded(event.event(), event.actor(), event.command(), event.happenedAt(), now);
        EventCodec.Encoded encoded = means.codec().encode(recorded, terms.eraseAfter());
        size += encoded.bytes().length();
        if (size > COMMAND_BYTES_LIMIT) {
          return false;
        }
        bytes.add(encoded.bytes());
        privates.addAll(encoded.privates());
        head = head.after(encoded.bytes());
        state = means.decider().apply(state, head.seq(), recorded);
      }
      return true;
    }
  }

  private boolean mayWrite(List<Recorded> events) {
    return events.stream().allMatch(each -> means.mayWrite(EventTypes.of(each.event())));
  }

  private Outcome outcome(Morning morningThen, Order order) {
    try {
      return means.decider().decide(morningThen, order);
    } catch (RuntimeException e) {
      LOG.error("a command of {} could not be decided", morning, e);
      return new Outcome.Refused(
          RefusalCode.BAD_COMMAND, "the board failed at it and has written down why");
    }
  }

  /**
   * When it was touched by the owner's clock, within [opening, now]. Before the opening nothing was
   * touched at a screen that was away, so what comes then happened when it came.
   */
  private long happenedAt(Submission s, long now) {
    long opening = state.openedAt() == null ? now : Math.min(state.openedAt(), now);
    long touched = s.touchedAt() + s.offset();
    return Math.max(opening, Math.min(touched, now));
  }

  private Attempt accept(Submission s, Draft draft) {
    Receipt receipt = new Receipt(s.id(), payload(s), head.seq(), draft.head.seq(), null);
    return attempt(draft.bytes, draft.privates, receipt, draft.state, draft.head);
  }

  private Attempt refuse(Submission s, Outcome.Refused refused) {
    String words = refused.code().say(refused.detail());
    Receipt receipt =
        new Receipt(
            s.id(),
            payload(s),
            head.seq(),
            head.seq(),
            new Receipt.Refusal(refused.code(), words, by(s.actor()), now()));
    return attempt(List.of(), new ArrayList<>(), receipt, state, head);
  }

  /** An event has its actor; of a refusal the receipt is all that stays. */
  private static String by(Actor actor) {
    return actor.role().name().toLowerCase(Locale.ROOT)
        + (actor.person() == null ? "" : " " + actor.person())
        + " at "
        + actor.screen();
  }

  private Attempt attempt(
      List<Bytes> events, List<PrivateValue> privates, Receipt receipt, Morning after, Head at) {
    if (keyToStore != null) {
      // With each until one is durable: one without events that is lost leaves no gap in the
      // sequence, so those after it may be written, and their receipts need the key.
      privates.add(keyToStore);
    }
    Append append =
        new Append(morning, head.epoch(), head.seq(), at.chain(), events, receipt, privates);
    return new Attempt(append, reply(receipt), after, at);
  }
}
