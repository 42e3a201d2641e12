package sunup.journal;

import java.sql.Connection;
import java.sql.SQLException;
import java.util.concurrent.ArrayBlockingQueue;
import java.util.concurrent.RejectedExecutionException;
import java.util.concurrent.ThreadPoolExecutor;
import java.util.concurrent.TimeUnit;
import java.util.function.Consumer;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;

/** The thread that reads. */
final class JdbcReader implements AutoCloseable {
  /** Questions that wait; beyond it one is answered {@code Away}. */
  static final int QUEUE_LIMIT = 1_024;

  private static final long CLOSE_LIMIT_MS = 10_000;
  private static final Logger LOG = LoggerFactory.getLogger(JdbcReader.class);

  private final Dialect dialect;
  private final ThreadPoolExecutor thread;

  /** Only the thread's own; null before the first question and after it was found broken. */
  private Connection reading;

  /** Only the thread's own. */
  private boolean failing;

  JdbcReader(Dialect dialect) {
    this.dialect = dialect;
    this.thread =
        new ThreadPoolExecutor(
            1,
            1,
            0,
            TimeUnit.SECONDS,
            new ArrayBlockingQueue<>(QUEUE_LIMIT),
            task -> new Thread(task, "journal-reader"));
  }

  /** A question to the database. */
  interface Question<T> {
    T ask(Connection c) throws SQLException;
  }

  <T> void ask(Question<T> question, Consumer<Answer<T>> then) {
    try {
      thread.execute(() -> answer(question, then));
    } catch (RejectedExecutionException e) {
      then.accept(new Answer.Away<>("The journal is asked more than it can answer. Ask again."));
    }
  }

  private <T> void answer(Question<T> question, Consumer<Answer<T>> then) {
    Answer<T> answer;
    try {
      if (reading == null) {
        reading = dialect.openReading();
      }
      answer = new Answer.Known<>(question.ask(reading));
      if (failing) {
        LOG.info("the journal answers again");
      }
      failing = false;
    } catch (SQLException e) {
      // Asked twice a second, it would fill the log while it is away.
      if (!failing) {
        LOG.error("the journal could not be read: {}", e.getMessage());
      }
      failing = true;
      JdbcJournal.letGo(reading);
      reading = null;
      answer = new Answer.Away<>(dialect.explain(e));
    }
    try {
      then.accept(answer);
    } catch (RuntimeException e) {
      LOG.error("an answer of the journal could not be taken", e);
    }
  }

  @Override
  public void close() {
    thread.execute(() -> JdbcJournal.letGo(reading));
    thread.shutdown();
    try {
      if (!thread.awaitTermination(CLOSE_LIMIT_MS, TimeUnit.MILLISECONDS)) {
        LOG.warn("the journal's reader did not end in time");
      }
    } catch (InterruptedException e) {
      Thread.currentThread().interrupt();
    }
  }
}
