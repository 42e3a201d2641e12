package sunup.journal;

import java.io.IOException;
import java.sql.Connection;
import java.sql.SQLException;
import java.util.ArrayList;
import java.util.Collection;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.concurrent.ArrayBlockingQueue;
import java.util.concurrent.BlockingQueue;
import java.util.function.Consumer;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;
import sunup.board.MorningId;

/**
 * The journal on plain JDBC. One thread writes: it takes what waits, over all mornings, into one
 * transaction, commits it and only then answers. Another thread reads, so that a long load holds up
 * no commit.
 */
public final class JdbcJournal implements Journal {
  /** Appends and other writes that wait; beyond it an append is answered {@code NotWritten}. */
  static final int QUEUE_LIMIT = 4_096;

  /** Appends in one transaction. */
  static final int GROUP_LIMIT = 256;

  private static final Logger LOG = LoggerFactory.getLogger(JdbcJournal.class);
  private static final String FULL = "The journal has more to write than it can. Send it again.";
  private static final String CLOSED = "The board is being shut down. Send it again.";

  private final Dialect dialect;
  private final AutoCloseable held;
  private final Moments moments;
  private final JdbcReader reader;
  private final BlockingQueue<Job> queue = new ArrayBlockingQueue<>(QUEUE_LIMIT);
  private final Thread writer;
  private final Object door = new Object();
  private boolean closed;

  /** Only the writer's; null after it was found broken. */
  private Connection writing;

  /** Only the writer's: something was erased and a copy of it may be left. */
  private boolean scrubOwed;

  private JdbcJournal(
      Dialect dialect, AutoCloseable held, Moments moments, Connection writing, JdbcReader reader) {
    this.dialect = dialect;
    this.held = held;
    this.moments = moments;
    this.writing = writing;
    this.reader = reader;
    this.writer = new Thread(this::work, "journal-writer");
  }

  /**
   * @param held is closed last
   */
  static JdbcJournal open(Dialect dialect, AutoCloseable held, Moments moments) throws IOException {
    Connection writing = null;
    try {
      writing = JournalOpening.patiently(dialect);
      dialect.opened();
      JdbcReader reader = new JdbcReader(dialect);
      JdbcJournal journal = new JdbcJournal(dialect, held, moments, writing, reader);
      journal.writer.start();
      return journal;
    } catch (SQLException e) {
      letGo(writing);
      letGo(held);
      throw new IOException(dialect.explain(e), e);
    } catch (IOException e) {
      letGo(writing);
      letGo(held);
      throw e;
    }
  }

  private sealed interface Job {}

  private record Write(Append append, Consumer<Appended> then) implements Job {}

  /** Something with a transaction of its own. */
  private record Task(Runnable run) implements Job {}

  private record Stop() implements Job {}

  @Override
  public void append(Append append, Consumer<Appended> then) {
    offer(new Write(append, then), words -> then.accept(new Appended.NotWritten(words)));
  }

  @Override
  public void takeOver(MorningId morning, Long seen, Consumer<TakenOver> then) {
    offer(
        new Task(() -> tell(then, takeOverNow(morning, seen))),
        words -> then.accept(new TakenOver.Away(words)));
  }

  @Override
  public void erase(long now, Consumer<Answer<Set<MorningId>>> then) {
    offer(
        new Task(() -> tell(then, eraseNow(now))), words -> then.accept(new Answer.Away<>(words)));
  }

  @Override
  public void load(MorningId morning, long after, Consumer<Answer<Stored>> then) {
    reader.ask(c -> JdbcStore.load(c, morning, after), then);
  }

  @Override
  public void epochs(Collection<MorningId> mornings, Consumer<Answer<Map<MorningId, Long>>> then) {
    List<MorningId> asked = List.copyOf(mornings);
    reader.ask(c -> JdbcStore.epochs(c, asked), then);
  }

  @Override
  public void mornings(Consumer<Answer<List<MorningId>>> then) {
    reader.ask(JdbcStore::mornings, then);
  }

  @Override
  public void lengths(Consumer<Answer<Map<MorningId, Long>>> then) {
    reader.ask(JdbcStore::lengths, then);
  }

  private void offer(Job job, Consumer<String> refused) {
    String why = null;
    synchronized (door) {
      if (closed) {
        why = CLOSED;
      } else if (!queue.offer(job)) {
        why = FULL;
      }
    }
    if (why != null) {
      refused.accept(why);
    }
  }

  /** The writer's thread. */
  private void work() {
    List<Job> taken = new ArrayList<>();
    boolean stop = false;
    while (!stop) {
      taken.clear();
      try {
        taken.add(queue.take());
      } catch (InterruptedException e) {
        LOG.warn("the journal's writer was interrupted and goes on");
        continue;
      }
      queue.drainTo(taken, GROUP_LIMIT - 1);
      stop = carryOut(taken);
    }
    letGo(writing);
  }

  /** Appends that stand side by side share a transaction; order is kept. True at the end. */
  private boolean carryOut(List<Job> jobs) {
    List<Write> group = new ArrayList<>();
    boolean stop = false;
    for (Job job : jobs) {
      if (job instanceof Write write) {
        group.add(write);
      } else {
        commit(group);
        group.clear();
        if (job instanceof Task task) {
          task.run().run();
        } else {
          stop = true;
        }
      }
    }
    commit(group);
    return stop;
  }

  private void commit(List<Write> group) {
    if (group.isEmpty()) {
      return;
    }
    moments.reached(Moments.Moment.BEFORE_APPEND);
    List<Append> appends = group.stream().map(Write::append).toList();
    boolean[] in;
    try {
      in = inTransaction(c -> JdbcStore.write(c, appends, moments));
    } catch (SQLException e) {
      Appended failed = new Appended.NotWritten(dialect.explain(e));
      group.forEach(write -> tell(write.then(), failed));
      return;
    }
    moments.reached(Moments.Moment.BEFORE_COMMIT);
    Appended outcome = new Appended.Durable();
    try {
      writing().commit();
    } catch (SQLException e) {
      // The commit may have reached the disk or not: nobody is told either.
      LOG.error("a commit ended in doubt: {}", e.getMessage());
      drop();
      outcome = new Appended.Unknown(dialect.explain(e));
    }
    moments.reached(Moments.Moment.AFTER_COMMIT);
    for (int at = 0; at < in.length; at++) {
      tell(group.get(at).then(), in[at] ? outcome : new Appended.Fenced());
      if (at == 0) {
        moments.reached(Moments.Moment.FIRST_ANSWERED);
      }
    }
  }

  private TakenOver takeOverNow(MorningId morning, Long seen) {
    TakenOver result;
    try {
      result = inTransaction(c -> JdbcStore.takeOver(c, morning, seen));
    } catch (SQLException e) {
      return new TakenOver.Away(dialect.explain(e));
    }
    try {
      if (result instanceof TakenOver.Won) {
        writing().commit();
      } else {
        writing().rollback();
      }
      return result;
    } catch (SQLException e) {
      drop();
      return new TakenOver.Away(dialect.explain(e));
    }
  }

  private Answer<Set<MorningId>> eraseNow(long now) {
    Set<MorningId> lost;
    try {
      lost = inTransaction(c -> JdbcStore.erase(c, now));
    } catch (SQLException e) {
      return new Answer.Away<>(dialect.explain(e));
    }
    try {
      writing().commit();
      scrubOwed |= !lost.isEmpty();
      if (scrubOwed) {
        scrubOwed = !dialect.scrub(writing());
      }
      return new Answer.Known<>(lost);
    } catch (SQLException e) {
      drop();
      return new Answer.Away<>(dialect.explain(e));
    }
  }

  /** What is done in a transaction before its commit. */
  private interface Work<T> {
    T with(Connection c) throws SQLException;
  }

  /**
   * Does it without the commit; takes it back if it fails. A connection that broke since it was
   * last used says so only now: nothing was written, so it is done again on a new one.
   */
  private <T> T inTransaction(Work<T> work) throws SQLException {
    boolean used = writing != null;
    try {
      return work.with(writing());
    } catch (SQLException e) {
      undo(e);
      if (!used || writing != null) {
        throw e;
      }
    }
    try {
      return work.with(writing());
    } catch (SQLException e) {
      undo(e);
      throw e;
    }
  }

  private Connection writing() throws SQLException {
    if (writing == null) {
      writing = dialect.openWriting();
    }
    return writing;
  }

  private void undo(SQLException why) {
    LOG.error("a write failed and is taken back: {}", why.getMessage());
    try {
      if (writing != null) {
        writing.rollback();
      }
    } catch (SQLException e) {
      drop();
    }
  }

  /** After a failed commit or rollback the connection is not to be trusted: a new one is opened. */
  private void drop() {
    letGo(writing);
    writing = null;
  }

  private static <T> void tell(Consumer<T> then, T what) {
    try {
      then.accept(what);
    } catch (RuntimeException e) {
      LOG.error("an answer of the journal could not be taken", e);
    }
  }

  static void letGo(AutoCloseable thing) {
    try {
      if (thing != null) {
        thing.close();
      }
    } catch (Exception e) {
      LOG.warn("could not be closed: {}", e.getMessage());
    }
  }

  @Override
  public void close() {
    synchronized (door) {
      if (closed) {
        return;
      }
      closed = true;
    }
    boolean interrupted = false;
    boolean ended = false;
    boolean told = false;
    while (!ended) {
      try {
        if (!told) {
          queue.put(new Stop());
          told = true;
        }
        writer.join();
        ended = true;
      } catch (InterruptedException e) {
        interrupted = true;
      }
    }
    reader.close();
    letGo(held);
    if (interrupted) {
      Thread.currentThread().interrupt();
    }
  }
}
