package sunup.suites;

import java.util.function.Consumer;
import sunup.board.MorningId;

/**
 * The one writer of a morning, as the rest of the server sees it. May be called from any thread;
 * calls back on any thread, in order, and never before what it tells is durable.
 */
public interface Owner {
  MorningId morning();

  /** Decides a command. The answer comes exactly once. */
  void submit(Submission submission, Consumer<Reply> answer);

  /** Tells the standpoint now and after every change, until the returned handle is run. */
  Runnable watch(Consumer<Standpoint> watcher);
}
