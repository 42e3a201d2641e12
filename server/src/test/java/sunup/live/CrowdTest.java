package sunup.live;

import static org.assertj.core.api.Assertions.assertThat;

import io.vertx.core.buffer.Buffer;
import java.time.LocalDate;
import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;
import sunup.board.MorningId;
import sunup.board.SuiteId;
import sunup.wire.Audience;

/** Many screens on few event loops. */
class CrowdTest {
  private final Crowd crowd =
      new Crowd(new MorningId(new SuiteId("main"), LocalDate.of(2026, 11, 25)));
  private final Later one = new Later();
  private final Later other = new Later();

  /** A loop whose tasks run when the test says so. */
  private static final class Later implements Loop {
    final ArrayDeque<Runnable> tasks = new ArrayDeque<>();
    boolean running;

    @Override
    public void run(Runnable task) {
      tasks.add(task);
    }

    @Override
    public boolean here() {
      return running;
    }

    void catchUp() {
      running = true;
      while (!tasks.isEmpty()) {
        tasks.remove().run();
      }
      running = false;
    }
  }

  /** Writes down what it is told, in its loop's turn. */
  private static final class Written implements Screen {
    final List<String> told = new ArrayList<>();
    private final Loop loop;
    Audience audience = Audience.DESK;
    boolean fails;

    Written(Loop loop) {
      this.loop = loop;
    }

    @Override
    public Audience audience() {
      return audience;
    }

    @Override
    public Loop loop() {
      return loop;
    }

    @Override
    public void view(Buffer message) {
      frame(message);
    }

    @Override
    public void frame(Buffer message) {
      loop.runHere(
          () -> {
            if (fails) {
              throw new IllegalStateException("planted by the test");
            }
            told.add(message.toString());
          });
    }

    @Override
    public void beat(Buffer message, long madeAt) {
      frame(message);
    }
  }

  private List<Written> join(int count, Loop loop) {
    List<Written> all = IntStream.range(0, count).mapToObj(n -> new Written(loop)).toList();
    all.forEach(crowd::add);
    return all;
  }

  private void tell(String words) {
    crowd.tell(Map.of(Audience.DESK, Buffer.buffer(words)), Screen::frame);
  }

  private void catchUp() {
    one.catchUp();
    other.catchUp();
  }

  @Test
  void shouldGiveAnEventLoopOneTaskForAllItsScreens() {
    join(200, one);
    join(200, other);
    tell("1");
    assertThat(one.tasks).hasSize(1);
    assertThat(other.tasks).hasSize(1);
  }

  @Test
  void shouldLetALoopReadWhatCameBetweenManyScreens() {
    List<Written> many = join(3 * Crowd.TOGETHER_MOST + 1, one);
    tell("1");
    assertThat(one.tasks).hasSize(4);
    catchUp();
    assertThat(many).allSatisfy(screen -> assertThat(screen.told).containsExactly("1"));
  }

  @Test
  void shouldKeepTheOrderBetweenWhatAllAreToldAndWhatOneIsTold() {
    List<Written> all = join(Crowd.TOGETHER_MOST + 1, one);
    Written last = all.get(Crowd.TOGETHER_MOST);
    tell("1");
    last.view(Buffer.buffer("view"));
    tell("2");
    catchUp();
    assertThat(last.told).containsExactly("1", "view", "2");
    assertThat(all.get(0).told).containsExactly("1", "2");
  }

  @Test
  void shouldTellWhoIsThereWhenItIsTold() {
    Written stays = join(1, one).get(0);
    Written leaves = join(1, one).get(0);
    tell("1");
    crowd.remove(leaves);
    Written comes = join(1, other).get(0);
    tell("2");
    catchUp();
    assertThat(stays.told).containsExactly("1", "2");
    assertThat(leaves.told).containsExactly("1");
    assertThat(comes.told).containsExactly("2");
  }

  @Test
  void shouldTellTheOthersIfOneScreenFails() {
    List<Written> all = join(3, one);
    all.get(1).fails = true;
    tell("1");
    catchUp();
    assertThat(all.get(0).told).containsExactly("1");
    assertThat(all.get(2).told).containsExactly("1");
  }

  @Test
  void shouldTellNobodyWhatIsForAnAudienceThatItIsNotInAnyMore() {
    Written desk = join(1, one).get(0);
    tell("1");
    desk.audience = Audience.WALL;
    catchUp();
    assertThat(desk.told).isEmpty();
  }
}
