package sunup.editions;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.sql.SQLException;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import sunup.board.Actor;
import sunup.board.Morning;
import sunup.board.SuiteId;
import sunup.journal.PostgresAddress;
import sunup.journal.SideDatabase;
import sunup.sheets.ComposedSheet;
import sunup.sheets.Edition;
import sunup.sheets.EditionChanges;
import sunup.sheets.SheetDraft;

/**
 * The editions of all suites: tables beside the journal, as durable as it is. What is published is
 * asked of the database each time, so that an edition published at one node is the next morning's
 * at all of them; an edition's own content never changes and is kept. For threads that may wait.
 */
public final class Editions implements AutoCloseable {
  /** The part's name: its tables, its file and its scripts. */
  public static final String PART = "editions";

  /** Letters of what may be said of an edition. */
  public static final int MAX_NOTE = 200;

  /** Editions that a list tells. */
  static final int LISTED_MAX = 50;

  /** Editions kept read. */
  private static final int KEPT_MAX = 64;

  private final Path folder;
  private final PostgresAddress address;
  private SideDatabase database;
  private boolean closed;
  private final Map<String, Edition> kept =
      new LinkedHashMap<>(16, 0.75f, true) {
        private static final long serialVersionUID = 1L;

        @Override
        protected boolean removeEldestEntry(Map.Entry<String, Edition> eldest) {
          return size() > KEPT_MAX;
        }
      };

  private Editions(Path folder, PostgresAddress address) {
    this.folder = folder;
    this.address = address;
  }

  /**
   * Beside a journal, in its PostgreSQL if there is one. Nothing is opened before it is asked for:
   * a suite without editions costs a folder nothing.
   *
   * @param address null for a file in the folder
   */
  public static Editions beside(Path folder, PostgresAddress address) {
    return new Editions(folder, address);
  }

  /** Null if nothing was ever published here. */
  private SideDatabase reading() throws IOException {
    boolean none = address == null && !Files.exists(folder.resolve(PART + ".db"));
    return database == null && none ? null : writing();
  }

  private SideDatabase writing() throws IOException {
    if (closed) {
      throw new IOException("The board is closing.");
    }
    if (database == null) {
      database = SideDatabase.beside(folder, address, PART);
    }
    return database;
  }

  /** What the tables say, or {@code none} if nothing was ever published here. */
  private <T> T asked(T none, SideDatabase.Work<T, RuntimeException> work) throws IOException {
    SideDatabase from = reading();
    try {
      return from == null ? none : from.inOne(work);
    } catch (SQLException e) {
      throw away(e);
    }
  }

  /** The edition that a suite uses: the newest. */
  public synchronized Edition current(SuiteId suite) throws IOException {
    return of(suite, newest(suite));
  }

  private int newest(SuiteId suite) throws IOException {
    return asked(0, c -> EditionStore.newest(c, suite.value()));
  }

  /**
   * The edition of which a morning's lists are composed: an open morning keeps the one that it was
   * planned with, any other gets the newest.
   */
  public synchronized Edition forMorning(SuiteId suite, Morning now) throws IOException {
    if (now.phase() != Morning.Phase.OPEN || now.sheets().isEmpty()) {
      return current(suite);
    }
    int its = now.sheets().values().stream().mapToInt(ComposedSheet::edition).max().orElse(0);
    Edition kept = of(suite, its);
    if (kept == null) {
      throw new IOException("Edition " + its + " of the sheets is not in the board's database.");
    }
    return kept;
  }

  /** An edition, or null if there is none of this number. */
  public synchronized Edition of(SuiteId suite, int number) throws IOException {
    if (number == 0) {
      return Edition.standard();
    }
    String name = suite.value() + "/" + number;
    Edition known = kept.get(name);
    if (known != null || number < 0) {
      return known;
    }
    Map<String, String> files = asked(null, c -> EditionStore.files(c, suite.value(), number));
    if (files == null) {
      return null;
    }
    Edition read = Edition.of(number, files);
    kept.put(name, read);
    return read;
  }

  /** The newest editions of a suite, newest first. */
  public synchronized List<Published> list(SuiteId suite) throws IOException {
    return asked(List.of(), c -> EditionStore.list(c, suite.value(), LISTED_MAX));
  }

  /** The edition that a draft became already, or 0. */
  public synchronized int publishedAs(SuiteId suite, String draft) throws IOException {
    return asked(0, c -> EditionStore.of(c, suite.value(), draft));
  }

  /**
   * Publishes a draft; when this returns it is on the disk.
   *
   * @param id of the draft, so that one sent twice becomes one edition
   * @param at epoch milliseconds of real time
   * @return the edition's number
   * @throws Overtaken if another edition than the draft's stands by now
   */
  public synchronized int publish(
      SuiteId suite, String id, SheetDraft draft, String note, Actor by, long at)
      throws Overtaken, IOException {
    SideDatabase to = writing();
    try {
      return to.inOne(
          c -> {
            int already = EditionStore.of(c, suite.value(), id);
            if (already > 0) {
              return already;
            }
            int newest = EditionStore.newest(c, suite.value());
            if (newest != draft.on().number()) {
              throw new Overtaken(newest);
            }
            Published edition =
                new Published(
                    newest + 1,
                    at,
                    by.role().word(),
                    by.person() == null ? null : by.person().value(),
                    by.screen(),
                    note,
                    draft.changes().stream().map(EditionChanges.Changed::words).toList());
            EditionStore.add(c, suite.value(), id, draft.files(), edition);
            return edition.edition();
          });
    } catch (SQLException e) {
      // Two nodes at the same moment: the key of the table lets one of them in.
      int already = publishedAs(suite, id);
      if (already > 0) {
        return already;
      }
      int newest = newest(suite);
      if (newest != draft.on().number()) {
        throw new Overtaken(newest);
      }
      throw away(e);
    }
  }

  private static IOException away(SQLException e) {
    return new IOException("The board's database does not answer. Try again in a moment.", e);
  }

  @Override
  public synchronized void close() {
    closed = true;
    if (database != null) {
      database.close();
      database = null;
    }
  }
}
