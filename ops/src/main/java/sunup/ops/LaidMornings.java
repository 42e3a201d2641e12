package sunup.ops;

import java.nio.charset.StandardCharsets;
import java.security.SecureRandom;
import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import java.util.concurrent.CompletableFuture;
import java.util.concurrent.ExecutionException;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.TimeoutException;
import sunup.board.CommandId;
import sunup.board.MorningId;
import sunup.board.Recorded;
import sunup.journal.Answer;
import sunup.journal.Append;
import sunup.journal.Appended;
import sunup.journal.Bytes;
import sunup.journal.EventCodec;
import sunup.journal.Head;
import sunup.journal.Journal;
import sunup.journal.PrivateValue;
import sunup.journal.Receipt;
import sunup.journal.TakenOver;
import sunup.ops.madeup.MadeMornings;

/**
 * Lays made-up mornings that are over into a journal, each whole or not at all: a kill in between
 * leaves no half morning. They take no commands any more, so one receipt stands for all of them.
 */
final class LaidMornings {
  private static final long DAY = 24 * 60 * 60_000L;
  private static final long ANSWER_SECONDS = 60;

  private final Journal journal;
  private final EventCodec codec;

  LaidMornings(Journal journal) {
    this.journal = journal;
    SecureRandom random = new SecureRandom();
    this.codec =
        new EventCodec(
            count -> {
              byte[] bytes = new byte[count];
              random.nextBytes(bytes);
              return bytes;
            });
  }

  /** The mornings that the journal has. */
  Set<MorningId> there() throws InterruptedException, Wrong {
    CompletableFuture<Answer<List<MorningId>>> told = new CompletableFuture<>();
    journal.mornings(told::complete);
    if (known(told) instanceof Answer.Known<List<MorningId>> mornings) {
      return Set.copyOf(mornings.value());
    }
    throw Wrong.failed("The journal does not answer. Look at the disk.");
  }

  /** Lays one down; when this returns it is on the disk. */
  void lay(MorningId morning, List<MadeMornings.Given> given) throws InterruptedException, Wrong {
    CompletableFuture<TakenOver> taken = new CompletableFuture<>();
    journal.takeOver(morning, null, taken::complete);
    if (!(known(taken) instanceof TakenOver.Won won)) {
      throw Wrong.failed("The journal does not take " + morning + ".");
    }
    Head from = won.head();
    Head after = from;
    List<Bytes> events = new ArrayList<>();
    List<PrivateValue> privates = new ArrayList<>();
    for (MadeMornings.Given one : given) {
      for (Recorded recorded : one.events()) {
        EventCodec.Encoded encoded = codec.encode(recorded, recorded.recordedAt() + DAY);
        events.add(encoded.bytes());
        privates.addAll(encoded.privates());
        after = after.after(encoded.bytes());
      }
    }
    CommandId id = given.get(0).id();
    Bytes payload = Bytes.of(id.value().getBytes(StandardCharsets.UTF_8));
    Receipt receipt = new Receipt(id, payload, from.seq(), after.seq(), null);
    CompletableFuture<Appended> done = new CompletableFuture<>();
    journal.append(
        new Append(morning, from.epoch(), from.seq(), after.chain(), events, receipt, privates),
        done::complete);
    if (!(known(done) instanceof Appended.Durable)) {
      throw Wrong.failed("The journal did not keep " + morning + ". Look at the disk.");
    }
  }

  private static <T> T known(CompletableFuture<T> answer) throws InterruptedException, Wrong {
    try {
      return answer.get(ANSWER_SECONDS, TimeUnit.SECONDS);
    } catch (ExecutionException | TimeoutException e) {
      throw Wrong.failed("The journal does not answer. Look at the disk.");
    }
  }
}
