package sunup.http;

import java.util.function.Consumer;
import sunup.board.Morning;
import sunup.board.MorningId;
import sunup.live.Owners;
import sunup.suites.Clock;
import sunup.suites.Owner;
import sunup.suites.Reply;
import sunup.suites.Standpoint;
import sunup.suites.Submission;

/** Stands in until the journal is there: mornings with nothing planned that take nothing. */
final class NoJournal implements Owners {
  private final Clock clock;

  NoJournal(Clock clock) {
    this.clock = clock;
  }

  @Override
  public Owner owner(MorningId morning) {
    return new Owner() {
      @Override
      public MorningId morning() {
        return morning;
      }

      @Override
      public void submit(Submission submission, Consumer<Reply> answer) {
        answer.accept(new Reply.Later("There is no journal yet."));
      }

      @Override
      public Runnable watch(Consumer<Standpoint> watcher) {
        watcher.accept(new Standpoint(morning, 1, Morning.NONE, clock.monotonicMs(), true));
        return () -> {};
      }
    };
  }
}
