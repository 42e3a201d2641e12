package sunup.archive;

import java.io.IOException;
import java.nio.file.Path;
import java.util.Iterator;
import java.util.List;
import java.util.Map;
import sunup.board.MorningId;
import sunup.board.SuiteId;
import sunup.review.facts.FirstCaseFact;
import sunup.review.facts.ForecastNote;

/**
 * Opens the archive when it is first asked. The board never waits for it, and runs on where it
 * can't be opened at all.
 */
public final class LazyFacts implements FactStore {
  private final Path folder;
  private DuckFacts opened;
  private boolean closed;

  /**
   * @param folder that this process holds, or null to keep all in memory
   */
  public LazyFacts(Path folder) {
    this.folder = folder;
  }

  private synchronized DuckFacts facts() {
    if (closed) {
      throw new Trouble("The board is being shut down.", null);
    }
    if (opened == null) {
      try {
        opened = DuckFacts.open(folder);
      } catch (IOException | LinkageError e) {
        throw new Trouble(
            "The review's archive can't be opened ("
                + e.getMessage()
                + "). The board itself does not need it.",
            e);
      }
    }
    return opened;
  }

  @Override
  public void replace(MorningId morning, long seq, List<FirstCaseFact> facts, Taught taught) {
    facts().replace(morning, seq, facts, taught);
  }

  @Override
  public long append(Source source, Iterator<FirstCaseFact> facts) {
    return facts().append(source, facts);
  }

  @Override
  public long history(SuiteId suite, int number, List<FirstCaseFact> facts) {
    return facts().history(suite, number, facts);
  }

  @Override
  public Map<SuiteId, Integer> brought() {
    return facts().brought();
  }

  @Override
  public void forget(Source source) {
    facts().forget(source);
  }

  @Override
  public List<ForecastNote> remade(MorningId morning) {
    return facts().remade(morning);
  }

  @Override
  public void remade(MorningId morning, List<ForecastNote> notes) {
    facts().remade(morning, notes);
  }

  @Override
  public Map<MorningId, Long> made() {
    return facts().made();
  }

  @Override
  public FactFigures figures() {
    return facts().figures();
  }

  @Override
  public synchronized void close() {
    closed = true;
    if (opened != null) {
      opened.close();
    }
  }
}
