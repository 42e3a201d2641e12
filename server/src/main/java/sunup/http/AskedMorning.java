package sunup.http;

import java.time.DateTimeException;
import java.time.LocalDate;
import java.util.concurrent.CompletableFuture;
import java.util.concurrent.ExecutionException;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.TimeoutException;
import sunup.board.Morning;
import sunup.board.MorningId;
import sunup.live.Mornings;
import sunup.suites.Owner;
import sunup.suites.Standpoint;

/** The morning that a request is about, and its state. */
final class AskedMorning {
  /** How long a morning's owner may take for its state or an answer. */
  private static final int OWNER_SECONDS = 5;

  private AskedMorning() {}

  /**
   * The morning of a date.
   *
   * @param date as the request gives it; none or an empty one means the one that is on
   */
  static MorningId of(Mornings mornings, String date) throws Answers.Wrong {
    MorningId today = mornings.today();
    LocalDate day;
    try {
      day = date == null || date.isEmpty() ? today.date() : LocalDate.parse(date);
    } catch (DateTimeException e) {
      throw new Answers.Wrong("Not a date", 400, "Give the date as 2026-11-25.");
    }
    MorningId morning = new MorningId(today.suite(), day);
    if (!mornings.takes(morning)) {
      throw new Answers.Wrong(
          "Too far", 422, "Only dates near today, " + today.date() + ", can be worked on.");
    }
    return morning;
  }

  /** Its newest state; waits for it. */
  static Morning state(Owner owner) throws Answers.Wrong {
    CompletableFuture<Standpoint> first = new CompletableFuture<>();
    Runnable unwatch = owner.watch(first::complete);
    try {
      return wait(first).state();
    } finally {
      unwatch.run();
    }
  }

  static <T> T wait(CompletableFuture<T> future) throws Answers.Wrong {
    try {
      return future.get(OWNER_SECONDS, TimeUnit.SECONDS);
    } catch (TimeoutException e) {
      throw new Answers.Wrong(
          "Not now", 503, "The journal does not answer. Try again; nothing is taken twice.");
    } catch (InterruptedException e) {
      Thread.currentThread().interrupt();
      throw new Answers.Wrong("Not now", 503, "The board is closing.");
    } catch (ExecutionException e) {
      throw new IllegalStateException(e);
    }
  }
}
