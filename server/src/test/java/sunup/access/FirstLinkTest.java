package sunup.access;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Path;
import java.util.Map;
import java.util.Set;
import java.util.concurrent.ExecutionException;
import java.util.concurrent.TimeUnit;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import sunup.board.RoomId;
import sunup.board.SuiteId;
import sunup.journal.Kept;
import sunup.journal.SideDatabase;
import sunup.live.fake.TickingClock;
import sunup.push.Pushes;

/** Whoever has the link for the first administrator can try few PINs of people who are known. */
class FirstLinkTest {
  private static final SuiteId SUITE = new SuiteId("main");
  private static final String PIN = "480915";

  /** None that would be taken today. */
  private static final String OLD_PIN = "1234";

  @TempDir Path folder;
  private final TickingClock clock = new TickingClock();
  private Kept.Store store;

  @BeforeEach
  void make() throws Exception {
    store = Kept.IN_A_FOLDER.make(folder.resolve("data"));
    store.open().close();
  }

  private Access open() throws Exception {
    return Access.open(
        SideDatabase.sqlite(store.folder(), "access"),
        folder.resolve("pepper"),
        true,
        false,
        null,
        clock,
        Map.of(SUITE, Set.of(new RoomId("4"))),
        Pushes.NONE);
  }

  /** Somebody of the site who administers nothing. */
  private static void somebody(Access access, String code, String pin) throws Exception {
    Pins.Kept kept = access.pins().keep(pin);
    access
        .ledger()
        .change(
            c -> {
              AccessStore.addPerson(c, code, kept, "test", access.ledger().now());
              return null;
            })
        .get(30, TimeUnit.SECONDS);
  }

  private static String claim(Access access, String code, String pin) throws Exception {
    try {
      String link = access.firstLink().orElseThrow();
      access.claim("key-" + code, link, code, pin, SUITE).get(30, TimeUnit.SECONDS);
      return "";
    } catch (ExecutionException refused) {
      assertThat(refused).hasCauseInstanceOf(Refusal.class);
      return refused.getCause().getMessage();
    }
  }

  @Test
  void shouldCountNoMoreAfterFewWrongPinsOfPeopleWhoAreKnown() throws Exception {
    try (Access access = open()) {
      somebody(access, "K1", PIN);
      somebody(access, "K2", PIN);
      for (int i = 1; i < FirstLink.TRIES_MAX; i++) {
        assertThat(claim(access, "K" + (1 + i % 2), "90817" + i)).contains("Somebody has this");
      }
      assertThat(claim(access, "K1", "908170")).contains("too many wrong PINs");
      assertThat(claim(access, "K1", PIN)).contains("Start the board again");
      assertThat(claim(access, "K3", PIN)).contains("Start the board again");
    }
    try (Access again = open()) {
      assertThat(claim(again, "K1", PIN)).isEmpty();
      assertThat(again.ledger().known().screenOf("key-K1")).isPresent();
    }
  }

  @Test
  void shouldTakeThePresentPinOfSomebodyWhateverItIsAndNoSuchNewOne() throws Exception {
    try (Access access = open()) {
      somebody(access, "K1", OLD_PIN);
      assertThat(claim(access, "K2", OLD_PIN)).contains("tried first by everybody");
      assertThat(claim(access, "K1", OLD_PIN)).isEmpty();
    }
  }
}
