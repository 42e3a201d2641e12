package sunup.http;

import java.util.List;
import java.util.Optional;
import java.util.concurrent.CompletableFuture;
import java.util.concurrent.ExecutionException;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.TimeoutException;
import sunup.board.Morning;
import sunup.board.MorningId;
import sunup.journal.Answer;
import sunup.live.Owners;
import sunup.suites.Owner;
import sunup.suites.Reply;
import sunup.suites.Standpoint;
import sunup.suites.Submission;
import sunup.suites.Suites;

/** Asks a morning's owner and waits; for threads that may wait. */
final class OwnerCalls {
  /** How long a morning's owner may take for its state or an answer. */
  private static final int OWNER_SECONDS = 5;

  private static final String NOT_TWICE =
      "The journal does not answer. Try again; nothing is taken twice.";

  private OwnerCalls() {}

  static Owner owner(Owners owners, MorningId morning) throws Answers.Wrong {
    try {
      return owners.owner(morning);
    } catch (RuntimeException none) {
      throw new Answers.Wrong("Not now", 503, "Nobody has the morning now. Ask again.");
    }
  }

  /** The morning as its owner knows it now. */
  static Morning state(Owner owner) throws Answers.Wrong {
    CompletableFuture<Standpoint> first = new CompletableFuture<>();
    Runnable unwatch = owner.watch(first::complete);
    try {
      return wait(first, NOT_TWICE).state();
    } finally {
      unwatch.run();
    }
  }

  static Reply submit(Owner owner, Submission submission) throws Answers.Wrong {
    CompletableFuture<Reply> reply = new CompletableFuture<>();
    owner.submit(submission, reply::complete);
    return wait(reply, NOT_TWICE);
  }

  /** The mornings that the journal has. */
  static List<MorningId> mornings(Suites suites, String away) throws Answers.Wrong {
    CompletableFuture<Answer<List<MorningId>>> asked = new CompletableFuture<>();
    suites.mornings(asked::complete);
    if (!(wait(asked, away) instanceof Answer.Known<List<MorningId>> known)) {
      throw new Answers.Wrong("Not now", 503, away);
    }
    return known.value();
  }

  /** A morning's state as the journal has it, whoever owns it; empty if it can't be read. */
  static Optional<Morning> look(Suites suites, MorningId morning, String away)
      throws Answers.Wrong {
    CompletableFuture<Optional<Standpoint>> asked = new CompletableFuture<>();
    suites.look(morning, asked::complete);
    return wait(asked, away).map(Standpoint::state);
  }

  /**
   * Waits for what an owner or the journal was asked.
   *
   * @param away what whoever asks is told if it does not come in time
   */
  static <T> T wait(CompletableFuture<T> future, String away) throws Answers.Wrong {
    try {
      return future.get(OWNER_SECONDS, TimeUnit.SECONDS);
    } catch (TimeoutException e) {
      throw new Answers.Wrong("Not now", 503, away);
    } catch (InterruptedException e) {
      Thread.currentThread().interrupt();
      throw new Answers.Wrong("Not now", 503, "The board is closing.");
    } catch (ExecutionException e) {
      throw new IllegalStateException(e);
    }
  }
}
