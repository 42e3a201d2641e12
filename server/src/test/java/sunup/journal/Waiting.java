package sunup.journal;

import java.util.concurrent.CompletableFuture;
import java.util.concurrent.ExecutionException;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.TimeoutException;
import java.util.function.Consumer;

/** Waits for what comes by a callback. */
public final class Waiting {
  private static final long LIMIT_S = 20;

  private Waiting() {}

  /** The one answer that the call gives. */
  public static <T> T answer(Consumer<Consumer<T>> call) {
    CompletableFuture<T> future = new CompletableFuture<>();
    call.accept(future::complete);
    return get(future);
  }

  public static <T> T get(CompletableFuture<T> future) {
    try {
      return future.get(LIMIT_S, TimeUnit.SECONDS);
    } catch (TimeoutException e) {
      throw new AssertionError("no answer within " + LIMIT_S + " s", e);
    } catch (InterruptedException | ExecutionException e) {
      throw new AssertionError(e);
    }
  }

  /** What is known; fails if the journal is away. */
  public static <T> T known(Answer<T> answer) {
    if (answer instanceof Answer.Known<T> known) {
      return known.value();
    }
    throw new AssertionError("the journal said " + answer);
  }
}
