package sunup.archive;

import java.io.IOException;
import java.sql.Connection;
import java.sql.PreparedStatement;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.ArrayBlockingQueue;
import java.util.concurrent.CompletableFuture;
import java.util.concurrent.ExecutionException;
import java.util.concurrent.RejectedExecutionException;
import java.util.concurrent.ThreadPoolExecutor;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.TimeoutException;
import java.util.function.Consumer;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;
import sunup.board.MorningId;
import sunup.codec.Json;
import sunup.journal.SideDatabase;
import sunup.review.facts.ForecastNote;
import sunup.review.facts.NotesDue;

/**
 * What the board said of each room at its moments, beside the journal and as durable: no decision
 * reads it, so that it is no event. A line is written once; whoever comes second, as after a change
 * of the owner, changes nothing. Opened when it is first needed, on a thread of its own: the board
 * never waits for it.
 */
public final class ForecastLog implements AutoCloseable {
  /** Names the tables. */
  public static final String PART = "forecasts";

  /** What waits for the database; beyond it nothing more is kept, and that is said. */
  static final int WAITING_MAX = 1_024;

  private static final int ANSWER_SECONDS = 30;
  private static final Logger LOG = LoggerFactory.getLogger(ForecastLog.class);

  private static final String ADD =
      "INSERT INTO forecasts_note (suite, morning, room, case_id, target, minutes_before, epoch,"
          + " body) VALUES (?, ?, ?, ?, ?, ?, ?, ?) ON CONFLICT DO NOTHING";

  private static final String OF =
      "SELECT body FROM forecasts_note WHERE suite = ? AND morning = ?"
          + " ORDER BY target, minutes_before DESC, room";

  private final Opening opening;
  private final ThreadPoolExecutor thread =
      new ThreadPoolExecutor(
          1,
          1,
          0,
          TimeUnit.SECONDS,
          new ArrayBlockingQueue<>(WAITING_MAX),
          task -> {
            Thread made = new Thread(task, "sunup-forecast-log");
            made.setDaemon(true);
            return made;
          });

  /** The thread's; null until it is needed. */
  private SideDatabase database;

  /** The thread's: said once until it works again. */
  private boolean failing;

  /** Opens the tables. */
  public interface Opening {
    SideDatabase open() throws IOException;
  }

  public ForecastLog(Opening opening) {
    this.opening = opening;
  }

  /**
   * Keeps notes, those that are there already excepted.
   *
   * @param epoch of the owner that said so
   * @param then told once, on any thread: true when they are durable
   */
  public void keep(List<ForecastNote> notes, long epoch, Consumer<Boolean> then) {
    try {
      thread.execute(() -> then.accept(write(notes, epoch)));
    } catch (RejectedExecutionException full) {
      LOG.warn("{} forecasts were not kept: the database is too slow or gone", notes.size());
      then.accept(false);
    }
  }

  private boolean write(List<ForecastNote> notes, long epoch) {
    try {
      Integer unused =
          database().inOne((SideDatabase.Work<Integer, IOException>) c -> add(c, notes, epoch));
      if (failing) {
        LOG.info("forecasts are kept again");
      }
      failing = false;
      return true;
    } catch (SQLException | IOException | RuntimeException e) {
      if (!failing) {
        LOG.error("forecasts are not kept for the trial of the board: {}", e.getMessage());
      }
      failing = true;
      return false;
    }
  }

  private SideDatabase database() throws IOException {
    if (database == null) {
      database = opening.open();
    }
    return database;
  }

  private static int add(Connection c, List<ForecastNote> notes, long epoch)
      throws SQLException, IOException {
    try (PreparedStatement s = c.prepareStatement(ADD)) {
      for (ForecastNote note : notes) {
        NotesDue.Key key = NotesDue.Key.of(note);
        s.setString(1, key.morning().suite().value());
        s.setString(2, key.morning().date().toString());
        s.setString(3, key.room().value());
        s.setString(4, key.caseId().value());
        s.setLong(5, key.target());
        s.setInt(6, key.minutesBefore());
        s.setLong(7, epoch);
        s.setString(8, Json.mapper().writeValueAsString(note));
        s.addBatch();
      }
      return s.executeBatch().length;
    }
  }

  /**
   * What was said on a morning.
   *
   * @throws FactStore.Trouble if that can't be read now
   */
  public List<ForecastNote> of(MorningId morning) throws InterruptedException {
    CompletableFuture<List<ForecastNote>> answer = new CompletableFuture<>();
    try {
      thread.execute(
          () -> {
            try {
              SideDatabase.Work<List<ForecastNote>, IOException> reading = c -> read(c, morning);
              answer.complete(database().inOne(reading));
            } catch (SQLException | IOException | RuntimeException e) {
              answer.completeExceptionally(e);
            }
          });
      return answer.get(ANSWER_SECONDS, TimeUnit.SECONDS);
    } catch (RejectedExecutionException | ExecutionException | TimeoutException e) {
      throw new FactStore.Trouble("The log of forecasts can't be read: " + e.getMessage(), e);
    }
  }

  private static List<ForecastNote> read(Connection c, MorningId morning)
      throws SQLException, IOException {
    List<ForecastNote> notes = new ArrayList<>();
    try (PreparedStatement s = c.prepareStatement(OF)) {
      s.setString(1, morning.suite().value());
      s.setString(2, morning.date().toString());
      try (ResultSet row = s.executeQuery()) {
        while (row.next()) {
          notes.add(Json.mapper().readValue(row.getString(1), ForecastNote.class));
        }
      }
    }
    return notes;
  }

  /** Writes what waits; to be called before the data folder is let go. */
  @Override
  public void close() {
    thread.shutdown();
    try {
      if (!thread.awaitTermination(ANSWER_SECONDS, TimeUnit.SECONDS)) {
        LOG.warn("forecasts that waited to be kept are given up");
      } else if (database != null) {
        database.close();
      }
    } catch (InterruptedException e) {
      Thread.currentThread().interrupt();
    }
  }
}
