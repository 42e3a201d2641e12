package sunup.ops.bench;

import io.vertx.core.Vertx;
import java.io.PrintWriter;
import java.util.ArrayList;
import java.util.List;
import java.util.UUID;
import java.util.concurrent.Callable;
import java.util.concurrent.TimeUnit;
import picocli.CommandLine.Command;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.Spec;
import sunup.board.Command.Good;
import sunup.board.CommandId;
import sunup.board.Evidence;
import sunup.board.ItemState;
import sunup.sheets.EvidenceRule;
import sunup.wire.ClientMessage;
import sunup.wire.Part;
import sunup.wire.Part.ItemPart;
import sunup.wire.ServerMessage.Answer;

/**
 * From a touch at a station to its frame and to its new figures on another screen, over real
 * sockets against a running board. Touches follow each other: the next one waits for the last one's
 * figures.
 */
@Command(
    name = "touch",
    mixinStandardHelpOptions = true,
    description = "Touch to answer, to frame and to new figures, against a running board.")
final class TouchBench implements Callable<Integer> {
  private static final int TOUCHES_AT_MOST = 2_000;

  @Spec private CommandSpec spec;

  @Option(
      names = "--port",
      description = "Port of the running board (${DEFAULT-VALUE}); start it with --no-rehearsal.",
      defaultValue = "7450")
  private int port;

  @Option(
      names = "--touches",
      description = "How many touches at most (${DEFAULT-VALUE}).",
      defaultValue = "150")
  private int touches;

  @Option(
      names = "--wait-ms",
      description = "How long to wait for new figures before the next touch (${DEFAULT-VALUE}).",
      defaultValue = "3000")
  private long waitMs;

  @Override
  public Integer call() throws Exception {
    Vertx vertx = Vertx.vertx();
    try {
      measure(vertx);
    } finally {
      vertx.close().toCompletionStage().toCompletableFuture().get(10, TimeUnit.SECONDS);
    }
    return 0;
  }

  private void measure(Vertx vertx) throws Exception {
    PrintWriter out = spec.commandLine().getOut();
    BenchScreen watcher = BenchScreen.open(vertx, port, "desk", "bench-desk");
    Times answers = new Times();
    Times frames = new Times();
    Times figures = new Times();
    int without = 0;
    for (ItemPart item : touchable(watcher)) {
      BenchScreen station = watcher.station(item.room());
      Good good = new Good(item.item(), new Evidence.Touch(), null, null);
      CommandId id = new CommandId(UUID.randomUUID().toString());
      long from = System.nanoTime();
      station.send(new ClientMessage.Send(id, null, null, watcher.morningNow(), 0, null, good));
      Answer answer = station.answer(id, waitMs);
      if (answer == null || answer.upTo() == null) {
        throw new IllegalStateException("A touch was not taken: " + answer);
      }
      answers.add(station.answeredAt() - from);
      frames.add(watcher.frameAt(answer.upTo(), waitMs) - from);
      Long computed = watcher.figuresAt(answer.upTo(), waitMs);
      if (computed == null) {
        without++;
      } else {
        figures.add(computed - from);
      }
    }
    out.println("touch to answer       " + answers.line());
    out.println("touch to frame        " + frames.line());
    out.println("touch to new figures  " + figures.line());
    out.println("touches whose new figures changed nothing shown: " + without);
    out.flush();
  }

  private List<ItemPart> touchable(BenchScreen watcher) {
    List<ItemPart> items = new ArrayList<>();
    for (Part part : watcher.parts()) {
      if (part instanceof ItemPart item
          && item.section().isSetUp()
          && item.state() == ItemState.OPEN
          && item.asks().kind() == EvidenceRule.Kind.TOUCH
          && !item.asks().witness()
          && items.size() < Math.min(touches, TOUCHES_AT_MOST)) {
        items.add(item);
      }
    }
    if (items.isEmpty()) {
      throw new IllegalStateException("Nothing is open to touch: start a fresh board.");
    }
    return items;
  }
}
