package sunup.review.replay;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import org.junit.jupiter.api.Test;
import sunup.codec.Json;
import sunup.review.facts.ForecastNote;
import sunup.review.facts.ForecastReplay;
import sunup.review.facts.PlayedMorning;
import sunup.review.replay.PastWall.Frame;
import sunup.wire.Part.NeedPart;
import sunup.wire.Part.RoomPart;
import sunup.wire.Standing;

class PastWallTest {
  private static final LocalDate DAY = LocalDate.of(2026, 11, 25);
  private static final PlayedMorning PLAYED = PlayedMorning.random(2, DAY, 5);
  private static final List<ForecastNote> MADE =
      ForecastReplay.notes(PLAYED.journal(), 32, Set.of());

  /** The board says the same of each room at each moment: late, as room 1 does not get on. */
  private List<ForecastNote> notes() {
    List<ForecastNote> notes = new ArrayList<>();
    for (ForecastNote n : MADE) {
      notes.add(
          new ForecastNote(
              n.version(),
              n.morning(),
              n.room(),
              n.caseId(),
              n.at(),
              n.target(),
              n.seq(),
              n.model(),
              n.inputs(),
              n.seed(),
              n.trials(),
              .1,
              n.target() + 600_000,
              n.target() + 1_200_000,
              n.target() + 1_800_000,
              Standing.LATE,
              n.named(),
              ForecastNote.Origin.LOGGED));
    }
    return notes;
  }

  private Map<String, RoomPart> roomsAt(PastWall past, String clock) {
    Map<String, RoomPart> rooms = new HashMap<>();
    for (Frame frame : past.frames()) {
      if (frame.at() <= PLAYED.at(clock)) {
        frame.rooms().forEach(r -> rooms.put(r.room(), r));
      }
    }
    return rooms;
  }

  @Test
  void shouldShowWhatTheBoardSaidThenAndNothingOfWhatCameLater() {
    PastWall past = PastWall.of(PLAYED.journal(), notes());
    assertThat(past.kept()).isEqualTo(8);
    assertThat(past.recomputed()).isZero();
    assertThat(past.from()).isEqualTo(PLAYED.at("06:02"));
    assertThat(roomsAt(past, "06:20").values())
        .as("before the first moment nothing was kept")
        .allMatch(r -> r.could50() == null);
    assertThat(roomsAt(past, "07:12").values())
        .allMatch(r -> r.startedAt() == null)
        .allMatch(r -> r.could50() == null || r.could50() == PLAYED.at("07:50"));
    assertThat(roomsAt(past, "07:12").values()).anyMatch(r -> r.standing() == Standing.LATE);
    assertThat(roomsAt(past, "12:00").values()).allMatch(r -> r.standing() == Standing.STARTED);
  }

  @Test
  void shouldNameNobodyAndNoTimeThatWasNotKept() {
    PastWall past = PastWall.of(PLAYED.journal(), notes());
    String json = Json.write(past);
    assertThat(json).doesNotContain("Anna", "Nora", "Rita", "Surgeon", "Hugo", "hernia");
    List<NeedPart> late =
        past.frames().stream()
            .filter(f -> f.needs() != null)
            .flatMap(f -> f.needs().stream())
            .filter(n -> n.kind().equals("late"))
            .toList();
    assertThat(late).isNotEmpty().allMatch(n -> !n.words().matches(".*[0-9]{2}:[0-9]{2}.*"));
  }

  @Test
  void shouldTellWhatTodaysModelSaysOfMomentsThatNobodyKept() {
    PastWall past = PastWall.of(PLAYED.journal(), MADE);
    assertThat(past.kept()).isZero();
    assertThat(past.recomputed()).isEqualTo(8);
    assertThat(PastWall.of(PLAYED.journal(), List.of()).frames()).isNotEmpty();
  }
}
