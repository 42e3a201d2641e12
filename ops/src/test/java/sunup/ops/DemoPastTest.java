package sunup.ops;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Path;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.concurrent.CountDownLatch;
import java.util.concurrent.TimeUnit;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import sunup.board.Board;
import sunup.board.Morning;
import sunup.board.MorningId;
import sunup.board.Recorded;
import sunup.journal.Answer;
import sunup.journal.EventCodec;
import sunup.journal.Journal;
import sunup.journal.SqliteJournal;
import sunup.journal.Stored;
import sunup.review.readings.Readings;
import sunup.review.readings.Readings.Reading;
import sunup.review.readings.Readings.Series;

/** The mornings that a new demo finds behind it. */
class DemoPastTest {
  private static final LocalDate TODAY = LocalDate.of(2026, 11, 25);
  private static final int MORNINGS = 8;

  @TempDir private Path folder;

  private static void lay(Journal journal, Demo demo, int mornings) throws Exception {
    CountDownLatch whole = new CountDownLatch(1);
    DemoFolder.Past wanted = new DemoFolder.Past(TODAY, mornings);
    try (DemoPast past =
        new DemoPast(journal, whole::countDown, demo, wanted, RunCommand.DEFAULT_SEED)) {
      past.begin();
      assertThat(whole.await(30, TimeUnit.SECONDS)).isTrue();
      assertThat(past.left()).isNull();
    }
  }

  private static Map<MorningId, Long> lengths(Journal journal) throws Exception {
    var told = new java.util.concurrent.CompletableFuture<Answer<Map<MorningId, Long>>>();
    journal.lengths(told::complete);
    return ((Answer.Known<Map<MorningId, Long>>) told.get(30, TimeUnit.SECONDS)).value();
  }

  private static Morning state(Journal journal, MorningId id) throws Exception {
    var told = new java.util.concurrent.CompletableFuture<Answer<Stored>>();
    journal.load(id, told::complete);
    Stored stored = ((Answer.Known<Stored>) told.get(30, TimeUnit.SECONDS)).value();
    EventCodec codec = new EventCodec(count -> new byte[count]);
    Morning morning = Morning.NONE;
    for (Stored.Event event : stored.events()) {
      Recorded recorded = codec.decode(event.bytes(), stored.privates());
      morning = Board.apply(morning, event.seq(), recorded);
    }
    return morning;
  }

  @Test
  void shouldBeClosedMorningsInWhichOneMachineLeaksSlowlyAndStayAsTheyAreWhenItGoesOn()
      throws Exception {
    Demo demo = Demo.in(new DemoFolder(folder.resolve("demo")));
    try (Journal journal = SqliteJournal.open(folder.resolve("data"))) {
      lay(journal, demo, 2);
      Map<MorningId, Long> killed = new HashMap<>(lengths(journal));
      lay(journal, demo, MORNINGS);
      Map<MorningId, Long> all = lengths(journal);
      assertThat(all).hasSize(MORNINGS).containsAllEntriesOf(killed);

      List<Reading> earlier = new ArrayList<>();
      Morning last = null;
      for (MorningId id :
          all.keySet().stream().sorted(java.util.Comparator.comparing(MorningId::date)).toList()) {
        if (last != null) {
          earlier.addAll(Readings.of(last));
        }
        last = state(journal, id);
        assertThat(last.phase()).isEqualTo(Morning.Phase.CLOSED);
        assertThat(last.settings().demo()).isTrue();
      }
      List<Series> slow =
          Readings.today(last, earlier).stream().filter(s -> s.slow() != null).toList();
      assertThat(slow)
          .extracting(s -> s.room() + " " + s.item())
          .containsExactly("2 machine.cylinder");
      assertThat(slow.get(0).slow().perMorning()).isBetween(-75.0, -45.0);
    }
  }

  @Test
  void shouldBeTheSameForTheSameSeed() throws Exception {
    Demo demo = Demo.in(new DemoFolder(folder.resolve("demo")));
    try (Journal one = SqliteJournal.open(folder.resolve("one"));
        Journal other = SqliteJournal.open(folder.resolve("other"))) {
      lay(one, demo, 1);
      lay(other, demo, 1);
      MorningId only = lengths(one).keySet().iterator().next();
      assertThat(state(one, only)).isEqualTo(state(other, only));
    }
  }
}
