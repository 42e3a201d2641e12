package sunup.simulated;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.function.Consumer;
import sunup.board.MorningId;
import sunup.journal.Stored;
import sunup.live.PageScreen;
import sunup.wire.Audience;
import sunup.wire.Part;
import sunup.wire.ServerMessage;

/**
 * Knows when each epoch ended and when each event was durable, and says so of each screen that is
 * told that an older board lives.
 */
final class LiveJudge implements PageScreen.Judge {
  /**
   * The journal confirmed the epoch within 2 s before the heartbeat was made, a node passes it on
   * within 2 s of that, and what goes between threads takes its time.
   */
  static final long OLD_MS = 2_000 + 2_000 + 100;

  /** And it is on its way to the screen for as long as the screen lets it. */
  static final long OLD_SHOWN_MS = OLD_MS + PageScreen.ECHO_MS;

  private final World world;
  private final MorningId morning;
  private final Oracle oracle;
  private final Consumer<String> tell;
  private final Map<Long, Long> epochEnded = new HashMap<>();
  private final List<Long> durableAt = new ArrayList<>();
  private long epoch;

  LiveJudge(World world, MorningId morning, Oracle oracle, Consumer<String> tell) {
    this.world = world;
    this.morning = morning;
    this.oracle = oracle;
    this.tell = tell;
    world.disk.watch(this::changed);
  }

  private void changed() {
    Stored now = world.disk.load(morning);
    if (now.head().epoch() > epoch) {
      tell.accept("the journal has epoch " + now.head().epoch());
      epochEnded.put(epoch, world.time.now());
      epoch = now.head().epoch();
    }
    while (durableAt.size() < now.events().size()) {
      durableAt.add(world.time.now());
      tell.accept(
          "event "
              + durableAt.size()
              + " is durable, by the owner of epoch "
              + now.events().get(durableAt.size() - 1).epoch());
    }
  }

  @Override
  public void alive(PageScreen screen, ServerMessage.Beat beat, long sentAt) {
    if (beat.readOnly()) {
      world.coverage.saw("screen told read-only");
      return;
    }
    world.coverage.saw("screen told live");
    long now = world.time.now();
    // What it was when it was sent, and what it is by now.
    long oldest = Math.max(sentAt - OLD_MS, now - OLD_SHOWN_MS);
    Long ended = epochEnded.get(beat.epoch());
    if (ended != null && ended < oldest) {
      oracle.problem(
          screen
              + " was told that epoch "
              + beat.epoch()
              + " lives, "
              + (now - ended)
              + " ms after it ended");
    }
    int next = (int) beat.upTo();
    if (next < durableAt.size() && durableAt.get(next) < oldest) {
      oracle.problem(
          screen
              + " was told that the board at event "
              + next
              + " is live, "
              + (now - durableAt.get(next))
              + " ms after event "
              + (next + 1));
    }
    if (screen.audience() == Audience.DESK) {
      List<Part> right = NoteSight.parts(oracle.at(next, world.disk.load(morning)));
      if (!List.copyOf(screen.parts().values()).containsAll(right)
          || screen.parts().size() != right.size()) {
        oracle.problem(screen + " shows what is not the board at event " + next);
      }
    }
  }
}
