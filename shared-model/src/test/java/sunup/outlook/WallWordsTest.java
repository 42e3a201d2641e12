package sunup.outlook;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Objects;
import org.junit.jupiter.api.Test;
import sunup.board.Command;
import sunup.board.RoomId;
import sunup.board.RoomUse;
import sunup.forecast.Forecast.Share;
import sunup.sheets.Sheets;
import sunup.sheets.Sheets.Choice;

/** Nothing on the wall is cut off: a word that breaks off says nothing from six metres. */
class WallWordsTest {
  private static final List<String> OF_AN_ITEM =
      List.of("place", "lapse", "booked", "mend", "waits", "not-begun", "work", "arrival");

  @Test
  void shouldSayEveryHoldupOfEverySheetInFortyLetters() {
    List<Suite> suites = new ArrayList<>();
    for (Choice technique : Sheets.standard().techniques()) {
      suites.add(Suite.ofOne(technique.name(), List.of()));
    }
    for (Choice option : Sheets.standard().options()) {
      suites.add(Suite.ofOne("general", List.of(option.name())));
    }
    List<String> said = new ArrayList<>();
    suites.stream().filter(Objects::nonNull).forEach(suite -> say(suite, said));
    assertThat(said).hasSizeGreaterThan(10_000);
    assertThat(said.stream().filter(w -> w.length() > Words.WALL_LETTERS || w.endsWith("\u2026")))
        .isEmpty();
  }

  @Test
  void shouldSayWhatARoomIsUsedForInFortyLetters() {
    for (RoomUse use : List.of(RoomUse.CLEANING, RoomUse.EMERGENCY, RoomUse.OCCUPIED)) {
      for (Long until : Arrays.asList(null, Suite.at("06:29"), Suite.at("07:30"))) {
        Suite suite = Suite.ofOne("general", List.of());
        suite.desk("06:20", new Command.SayRoom(new RoomId("1"), use, until));
        Words words = new Words(Snapshot.of(suite.morning(), Suite.at("06:31")));
        String said = words.wall(share("occupied", "room.clean", null, null));
        assertThat(said).hasSizeLessThanOrEqualTo(Words.WALL_LETTERS).doesNotEndWith("\u2026");
      }
    }
  }

  private static void say(Suite suite, List<String> said) {
    Snapshot snapshot = Snapshot.of(suite.morning(), Suite.at("06:31"));
    Words words = new Words(snapshot);
    for (RoomSheet.Line line : snapshot.sheet("1").lines()) {
      String key = line.asks().key();
      for (String kind : OF_AN_ITEM) {
        String thing = kind.equals("place") ? "pharmacy" : null;
        said.add(words.wall(share(kind, key, thing, null)));
      }
      said.add(words.fault(line, line.asks().wall(), true));
      for (String person : List.of("A1", "N1", "T1", "S1")) {
        said.add(words.wall(share("person", key, person, null)));
        said.add(words.wall(share("person", key, person, "21")));
        said.add(words.wall(share("arrival", key, person, null)));
      }
      for (String kind : List.of("ultrasound", "imaging")) {
        said.add(words.wall(share("equipment", key, kind, null)));
        said.add(words.wall(share("equipment", key, kind, "21")));
      }
    }
  }

  private static Share share(String kind, String item, String thing, String where) {
    return new Share("1", kind, item, thing, where, 0.5, Suite.at("07:41"));
  }
}
