package sunup.access;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Path;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import sunup.journal.SideDatabase;
import sunup.journal.SqliteJournal;

/** New screens get their codes, however many strangers ask for some. */
class PairingsTest {
  @TempDir Path folder;

  private static Pairings.Asks asks(String key, String address) {
    return new Pairings.Asks("CODE" + key, key, address, "wall", 0, Access.CODE_MS);
  }

  @Test
  void shouldLetOneSourceFillTheListForNobodyElse() throws Exception {
    SqliteJournal.open(folder).close();
    try (SideDatabase database = SideDatabase.sqlite(folder, "access")) {
      boolean last =
          database.inOne(
              c -> {
                Pairings.ask(c, asks("new-wall", "192.0.2.5"));
                boolean taken = true;
                for (int i = 0; i < 2 * Pairings.WAITING_MAX; i++) {
                  taken = Pairings.ask(c, asks("k" + i, "2001:db8::" + Integer.toHexString(i)));
                }
                return taken;
              });
      assertThat(last).as("of those who fill it one more").isFalse();
      assertThat(shown(database, "new-wall")).isTrue();
      boolean other = database.inOne(c -> Pairings.ask(c, asks("new-desk", "192.0.2.6")));
      assertThat(other).isTrue();
      assertThat(shown(database, "new-desk")).isTrue();
      assertThat(shown(database, "new-wall")).isTrue();
      assertThat(shown(database, "k0")).as("the oldest of the others").isFalse();
    }
  }

  private static boolean shown(SideDatabase database, String key) throws Exception {
    return database.inOne(c -> Pairings.shown(c, "CODE" + key, 1) != null);
  }
}
