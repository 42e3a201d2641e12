package sunup.http;

import java.nio.file.Files;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.concurrent.CompletableFuture;
import java.util.concurrent.TimeUnit;
import sunup.access.KeyHolder;
import sunup.board.Command;
import sunup.board.CommandId;
import sunup.board.Evidence;
import sunup.board.ItemRef;
import sunup.board.Private;
import sunup.board.Role;
import sunup.board.RoomId;
import sunup.wire.ClientMessage;
import sunup.wire.ServerMessage;

/**
 * {@code ops/bench people}: touches at a station while nothing else is asked, and while forty
 * people sign on at once at their own screens, by the real hash. In turns, so that both meet the
 * same machine. Board and screens share one process, so what the screens cost is in the figures.
 */
public final class SignOnRush extends PairedBoard {
  private static final int PEOPLE = 40;
  private static final int ROUNDS = 5;

  /** Between two touches, so that a socket's rate is kept to. */
  private static final long PACE_MS = 60;

  private static final ItemRef ITEM = ItemRef.of(new RoomId("1"), "machine.bag");

  private final List<Long> calm = new ArrayList<>();
  private final List<Long> rushed = new ArrayList<>();
  private final List<Long> signing = new ArrayList<>();
  private int touched;

  /** The item's revision after the last touch: to open it again is a decision. */
  private Long seen;

  /** Prints the figures. */
  public static void main(String[] args) throws Exception {
    SignOnRush rush = new SignOnRush();
    rush.folder = Files.createTempDirectory("sunup-people");
    rush.start();
    try {
      rush.measure();
    } finally {
      rush.end();
    }
    System.exit(0);
  }

  private void measure() throws Exception {
    planned();
    KeyHolder station = paired("station", "1");
    List<KeyHolder> screens = new ArrayList<>();
    for (int i = 0; i < PEOPLE; i++) {
      person("N" + i, PIN, Role.CIRCULATING);
      screens.add(paired("station", "1"));
    }
    touches(station, 3 * PEOPLE, new ArrayList<>()); // What the first ones cost is not asked.
    for (int round = 0; round < ROUNDS; round++) {
      List<CompletableFuture<Void>> rush = rush(screens);
      CompletableFuture<Void> all =
          CompletableFuture.allOf(rush.toArray(CompletableFuture<?>[]::new));
      int before = rushed.size();
      while (!all.isDone()) {
        touches(station, 1, rushed);
      }
      all.get(60, TimeUnit.SECONDS);
      touches(station, rushed.size() - before, calm);
    }
    System.out.println("touch to answer, nothing else asked   " + line(calm));
    System.out.println("touch to answer, 40 people sign on    " + line(rushed));
    System.out.println("sign-on of one of 40 at once          " + line(signing));
  }

  private void touches(KeyHolder station, int count, List<Long> into) throws Exception {
    for (int i = 0; i < count; i++) {
      await(vertx.timer(PACE_MS));
      CommandId id = new CommandId("touch-" + touched++);
      Command command =
          touched % 2 == 1
              ? new Command.Good(ITEM, new Evidence.Touch(), null, null)
              : new Command.Reopen(ITEM, Private.of("again"));
      station.socket().forgetMessages();
      long from = System.nanoTime();
      long now = System.currentTimeMillis();
      station.socket().send(new ClientMessage.Send(id, null, seen, now, 0, null, command));
      ServerMessage.Answer answer =
          station.socket().await(ServerMessage.Answer.class, a -> a.id().equals(id));
      into.add(System.nanoTime() - from);
      if (answer.code() != null) {
        throw new IllegalStateException("a touch was not taken: " + answer);
      }
      seen = answer.upTo();
    }
  }

  /** All sign on at once, each at its own screen. */
  private List<CompletableFuture<Void>> rush(List<KeyHolder> screens) {
    List<CompletableFuture<Void>> all = new ArrayList<>();
    for (int i = 0; i < screens.size(); i++) {
      KeyHolder screen = screens.get(i);
      String code = "N" + i;
      long from = System.nanoTime();
      all.add(
          CompletableFuture.runAsync(
              () -> {
                try {
                  ServerMessage.Told told = screen.signOn(code, PIN);
                  if (!told.done()) {
                    throw new IllegalStateException(told.words());
                  }
                  synchronized (signing) {
                    signing.add(System.nanoTime() - from);
                  }
                } catch (Exception e) {
                  throw new IllegalStateException(e);
                }
              },
              task -> new Thread(task).start()));
    }
    return all;
  }

  private static String line(List<Long> nanos) {
    long[] sorted = nanos.stream().mapToLong(Long::longValue).sorted().toArray();
    return String.format(
        Locale.ROOT,
        "n %d  p50 %.2f ms  p99 %.2f ms  max %.2f ms",
        sorted.length,
        at(sorted, 0.5),
        at(sorted, 0.99),
        Arrays.stream(sorted).max().orElse(0) / 1e6);
  }

  private static double at(long[] sorted, double q) {
    int rank = (int) Math.ceil(q * sorted.length);
    return sorted.length == 0 ? 0 : sorted[Math.max(0, rank - 1)] / 1e6;
  }
}
