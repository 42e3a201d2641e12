package sunup.access;

import java.sql.SQLException;
import java.util.concurrent.ArrayBlockingQueue;
import java.util.concurrent.CompletableFuture;
import java.util.concurrent.CopyOnWriteArrayList;
import java.util.concurrent.Executor;
import java.util.concurrent.RejectedExecutionException;
import java.util.concurrent.ThreadPoolExecutor;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.atomic.AtomicBoolean;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;
import sunup.journal.SideDatabase;
import sunup.suites.Clock;

/**
 * What is known of screens and people, in memory, and how it is changed: written first, on a thread
 * of its own, then read anew, then told. Hashing has another thread, so that many who sign on at
 * once keep nobody else waiting.
 */
final class Ledger implements AutoCloseable {
  /** What waits for the database; beyond it "not now". */
  static final int STORE_WAITING_MAX = 256;

  /** PINs that wait to be looked at; beyond it "not now". */
  static final int PINS_WAITING_MAX = 64;

  private static final int CLOSE_SECONDS = 5;
  private static final Logger LOG = LoggerFactory.getLogger(Ledger.class);

  private final SideDatabase database;
  private final Clock clock;
  private final ThreadPoolExecutor store = pool("sunup-access", STORE_WAITING_MAX);
  private final ThreadPoolExecutor hashing = pool("sunup-pins", PINS_WAITING_MAX);
  private final CopyOnWriteArrayList<Runnable> watchers = new CopyOnWriteArrayList<>();
  private final AtomicBoolean polling = new AtomicBoolean();
  private volatile Known known;

  private Ledger(SideDatabase database, Clock clock, Known known) {
    this.database = database;
    this.clock = clock;
    this.known = known;
  }

  /** What takes long. */
  interface Work<T> {
    T call() throws SQLException, Refusal;
  }

  static Ledger open(SideDatabase database, Clock clock) throws SQLException {
    Known known = database.inOne(c -> AccessStore.read(c, clock.realMs()));
    return new Ledger(database, clock, known);
  }

  static ThreadPoolExecutor pool(String name, int waitingMax) {
    return new ThreadPoolExecutor(
        1,
        1,
        0,
        TimeUnit.SECONDS,
        new ArrayBlockingQueue<>(waitingMax),
        task -> {
          Thread made = new Thread(task, name);
          made.setDaemon(true);
          return made;
        });
  }

  Known known() {
    return known;
  }

  /** Real time. */
  long now() {
    return clock.realMs();
  }

  /**
   * Tells of each change, from any thread.
   *
   * @return ends it
   */
  Runnable watch(Runnable changed) {
    watchers.add(changed);
    return () -> watchers.remove(changed);
  }

  /** Looks for changes by other nodes; called about once a second where there are others. */
  void poll() {
    if (polling.compareAndSet(false, true)) {
      CompletableFuture<Boolean> looked =
          inStore(
              c -> {
                boolean other = AccessStore.stamp(c) != known.stamp();
                if (other) {
                  known = AccessStore.read(c, now());
                }
                return other;
              });
      var unused =
          looked.whenComplete(
              (other, e) -> {
                polling.set(false);
                if (e == null && other) {
                  watchers.forEach(Runnable::run);
                }
              });
    }
  }

  /** Reads. */
  <T> CompletableFuture<T> inStore(SideDatabase.Work<T, Refusal> work) {
    return later(store, () -> database.inOne(work));
  }

  /** Changes something: what is known is read anew with it, and all sockets are told. */
  <T> CompletableFuture<T> change(SideDatabase.Work<T, Refusal> work) {
    return later(
        store,
        () -> {
          Known[] after = new Known[1];
          T done =
              database.inOne(
                  c -> {
                    // First, so that of two nodes one waits and checks what the other has done.
                    AccessStore.changed(c);
                    T made = work.on(c);
                    AccessStore.closeOwn(c, now());
                    PushStore.dropEnded(c, now());
                    after[0] = AccessStore.read(c, now());
                    return made;
                  });
          known = after[0];
          watchers.forEach(Runnable::run);
          return done;
        });
  }

  <T> CompletableFuture<T> hash(Work<T> work) {
    return later(hashing, work);
  }

  static <T> CompletableFuture<T> later(Executor pool, Work<T> work) {
    CompletableFuture<T> done = new CompletableFuture<>();
    try {
      pool.execute(
          () -> {
            try {
              done.complete(work.call());
            } catch (Refusal e) {
              done.completeExceptionally(e);
            } catch (SQLException e) {
              LOG.warn("screens and people: {}", e.getMessage());
              done.completeExceptionally(
                  new Refusal("The board's database does not answer. Try again in a moment."));
            } catch (RuntimeException e) {
              LOG.error("screens and people", e);
              done.completeExceptionally(
                  new Refusal("Something went wrong here and was written down. Try again."));
            }
          });
    } catch (RejectedExecutionException full) {
      done.completeExceptionally(new Refusal("Too much is asked at once. Try again in a moment."));
    }
    return done;
  }

  @Override
  public void close() {
    hashing.shutdownNow();
    store.shutdown();
    try {
      if (!store.awaitTermination(CLOSE_SECONDS, TimeUnit.SECONDS)) {
        LOG.warn("what waits for the database of screens and people is given up");
      }
    } catch (InterruptedException e) {
      Thread.currentThread().interrupt();
    }
    database.close();
  }
}
