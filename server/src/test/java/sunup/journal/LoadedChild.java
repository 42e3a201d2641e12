package sunup.journal;

import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.channels.FileChannel;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import java.security.SecureRandom;
import java.util.Collection;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.concurrent.CountDownLatch;
import java.util.concurrent.ScheduledExecutorService;
import java.util.concurrent.ScheduledFuture;
import java.util.concurrent.ScheduledThreadPoolExecutor;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.atomic.AtomicInteger;
import java.util.function.Consumer;
import java.util.function.IntFunction;
import sunup.board.Actor;
import sunup.board.Command;
import sunup.board.CommandId;
import sunup.board.MorningId;
import sunup.board.Private;
import sunup.board.Role;
import sunup.simulated.NoteTaking;
import sunup.suites.Clock;
import sunup.suites.Owner;
import sunup.suites.Reply;
import sunup.suites.Submission;
import sunup.suites.Suites;
import sunup.suites.Timers;

/**
 * A process of its own: owners on a real journal under load, with a word written down for each
 * step. Its parent kills it, or reads what it wrote down against its system calls.
 *
 * <p>Arguments: data folder, file for the words, commands to send, {@code careful} or {@code
 * careless}, the moment to stand still at or {@code none}, at its how manieth time.
 */
public final class LoadedChild {
  static final int MORNINGS = 3;
  private static final int WINDOW = 8;
  private static final long AGAIN_MS = 20;
  private static final Actor DESK = new Actor(Role.DESK, null, "desk-1");

  private final FileChannel words;
  private final int total;
  private final String moment;
  private final int nth;
  private final AtomicInteger reached = new AtomicInteger();
  private final AtomicInteger sent = new AtomicInteger();
  private final CountDownLatch answered;
  private final ScheduledExecutorService thread = new ScheduledThreadPoolExecutor(1);

  private LoadedChild(String[] args) throws IOException {
    this.words =
        FileChannel.open(Path.of(args[1]), StandardOpenOption.CREATE, StandardOpenOption.APPEND);
    this.total = Integer.parseInt(args[2]);
    this.moment = args[4];
    this.nth = Integer.parseInt(args[5]);
    this.answered = new CountDownLatch(total);
  }

  /** The morning with this number. */
  static MorningId morning(int number) {
    return MorningId.parse("east/2026-11-" + (10 + number));
  }

  public static void main(String[] args) throws Exception {
    LoadedChild child = new LoadedChild(args);
    Path folder = Files.createDirectories(Path.of(args[0]));
    Journal journal;
    if (args[3].equals("careless")) {
      Dialect dialect =
          new CarelessDialect(
              new SqliteDialect(folder.resolve(SqliteJournal.FILE), SqliteDialect.MAX_PAGES));
      journal = JdbcJournal.open(dialect, DataFolder.hold(folder), child::at);
    } else {
      journal = SqliteJournal.open(folder, SqliteDialect.MAX_PAGES, child::at);
    }
    child.run(child.new Telling(journal));
  }

  private void run(Journal journal) throws InterruptedException {
    Timers timers =
        (ms, task) -> {
          ScheduledFuture<?> future = thread.schedule(task, ms, TimeUnit.MILLISECONDS);
          return () -> future.cancel(false);
        };
    SecureRandom secure = new SecureRandom();
    IntFunction<byte[]> random =
        count -> {
          byte[] bytes = new byte[count];
          secure.nextBytes(bytes);
          return bytes;
        };
    Suites suites =
        new Suites(journal, new NoteTaking(), new FixedMorning(), thread, timers, random);
    for (int number = 0; number < MORNINGS; number++) {
      Owner owner = suites.owner(morning(number));
      for (int n = 0; n < WINDOW; n++) {
        next(owner);
      }
    }
    answered.await();
    suites.close();
    tell("end");
    thread.shutdownNow();
  }

  private void next(Owner owner) {
    int number = sent.incrementAndGet();
    if (number <= total) {
      send(owner, "c" + number);
    }
  }

  private void send(Owner owner, String id) {
    Command note = new Command.AddNote(null, Private.of("note " + id));
    Submission submission = new Submission(new CommandId(id), note, DESK, null, 0, 0);
    owner.submit(submission, reply -> answered(owner, id, reply));
  }

  private void answered(Owner owner, String id, Reply reply) {
    if (reply instanceof Reply.Done done) {
      tell("ack " + owner.morning() + " " + id + " " + done.upTo());
      answered.countDown();
      next(owner);
    } else {
      tell("later " + id);
      ScheduledFuture<?> unused =
          thread.schedule(() -> send(owner, id), AGAIN_MS, TimeUnit.MILLISECONDS);
    }
  }

  private void at(Moments.Moment now) {
    if (now == Moments.Moment.BEFORE_COMMIT) {
      tell("commit");
    }
    if (now.name().equals(moment) && reached.incrementAndGet() == nth) {
      tell("standing " + now);
      CountDownLatch forEver = new CountDownLatch(1);
      try {
        forEver.await();
      } catch (InterruptedException e) {
        throw new IllegalStateException(e);
      }
    }
  }

  /** One line, one system call. */
  private void tell(String line) {
    try {
      words.write(ByteBuffer.wrap((line + "\n").getBytes(StandardCharsets.UTF_8)));
    } catch (IOException e) {
      throw new IllegalStateException(e);
    }
  }

  /** Writes down what the journal answers, on the journal's own thread. */
  private final class Telling implements Journal {
    private final Journal under;

    Telling(Journal under) {
      this.under = under;
    }

    @Override
    public void append(Append append, Consumer<Appended> then) {
      under.append(
          append,
          outcome -> {
            String what = outcome instanceof Appended.Durable ? "durable " : "not-durable ";
            tell(what + append.receipt().command());
            then.accept(outcome);
          });
    }

    @Override
    public void takeOver(MorningId morning, Long seen, Consumer<TakenOver> then) {
      under.takeOver(morning, seen, then);
    }

    @Override
    public void load(MorningId morning, long after, Consumer<Answer<Stored>> then) {
      under.load(morning, after, then);
    }

    @Override
    public void epochs(
        Collection<MorningId> mornings, Consumer<Answer<Map<MorningId, Long>>> then) {
      under.epochs(mornings, then);
    }

    @Override
    public void mornings(Consumer<Answer<List<MorningId>>> then) {
      under.mornings(then);
    }

    @Override
    public void lengths(Consumer<Answer<Map<MorningId, Long>>> then) {
      under.lengths(then);
    }

    @Override
    public void erase(long now, Consumer<Answer<Set<MorningId>>> then) {
      under.erase(now, then);
    }

    @Override
    public void close() {
      under.close();
    }
  }

  /** Real time by the monotonic clock, the morning's time always that of the morning. */
  private static final class FixedMorning implements Clock {
    @Override
    public long realMs() {
      return System.currentTimeMillis();
    }

    @Override
    public long monotonicMs() {
      return System.nanoTime() / 1_000_000;
    }

    @Override
    public long morningMs() {
      return morning(0).date().toEpochDay() * 86_400_000L;
    }

    @Override
    public double rate() {
      return 0;
    }
  }
}
