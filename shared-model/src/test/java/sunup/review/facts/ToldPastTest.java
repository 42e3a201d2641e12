package sunup.review.facts;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.LocalDate;
import java.util.List;
import java.util.function.Predicate;
import org.junit.jupiter.api.Test;
import sunup.board.Actor;
import sunup.board.CaseId;
import sunup.board.Command;
import sunup.board.PersonId;
import sunup.board.Placed;
import sunup.board.RoomId;
import sunup.board.RoomUse;
import sunup.board.Section;
import sunup.board.Step;
import sunup.sheets.SheetItem;

/** A room that is handed over late is no slow work of those who wait for it. */
class ToldPastTest {
  private static final RoomId ROOM = new RoomId("1");

  /**
   * All in the room is done from 7:14 on, a minute each; the patient waits; the case starts at
   * 8:05.
   */
  private static PlayedMorning worked(String... uses) {
    PlayedMorning p = new PlayedMorning(1, LocalDate.of(2026, 11, 25));
    for (String use : uses) {
      String[] said = use.split(" ", 2);
      RoomUse as = RoomUse.valueOf(said[1]);
      p.desk(said[0], new Command.SayRoom(ROOM, as, as == RoomUse.FREE ? null : p.at("07:10")));
    }
    p.station("06:35", 1, new Command.Arrive(new PersonId("Anna1"), ROOM));
    reports(p, "06:40", item -> !item.isInRoom());
    p.station("07:02", 1, new Command.Reach(new CaseId("C1"), Step.WHEELS_IN));
    reports(p, "07:14", SheetItem::isInRoom);
    Placed check =
        p.morning().itemsOf(ROOM).stream()
            .filter(i -> i.sheet().key().equals("start.check"))
            .findFirst()
            .orElseThrow();
    p.station("08:00", 1, PlayedMorning.good(check, new PersonId("Anna1"), 1));
    p.station("08:05", 1, new Command.Reach(new CaseId("C1"), Step.INDUCTION));
    return p.desk("09:00", new Command.CloseMorning());
  }

  private static void reports(PlayedMorning p, String from, Predicate<SheetItem> which) {
    long at = p.at(from);
    for (Placed placed : p.morning().itemsOf(ROOM)) {
      if (placed.sheet().section() != Section.START && which.test(placed.sheet())) {
        Actor by = PlayedMorning.reporter(placed, 1);
        p.give(at, at, by, PlayedMorning.good(placed, by.person(), 1), null);
        at += 60_000;
      }
    }
  }

  private static AsRunFact asRun(PlayedMorning p) {
    return FactsBuilder.build(p.journal(), List.of()).get(0).asRun();
  }

  @Test
  void shouldSayThatTheRoomWasOccupiedUntilItWasFreed() {
    PlayedMorning late = worked("06:20 OCCUPIED", "07:00 CLEANING", "07:10 FREE");
    assertThat(new ToldPast(Replayed.of(late.journal())).freed(ROOM)).isEqualTo(late.at("07:10"));
    assertThat(asRun(late).pieces())
        .filteredOn(piece -> piece.kind().equals("occupied"))
        .singleElement()
        .satisfies(
            piece -> {
              assertThat(piece.to()).isEqualTo(late.at("07:10"));
              assertThat(piece.from()).as("the patient came").isEqualTo(late.at("07:02"));
            });
    assertThat(asRun(late).lateMs()).isEqualTo(35 * 60_000L);
    assertThat(asRun(late).pieces().stream().mapToLong(AsRunFact.Piece::lateMs).sum())
        .isEqualTo(35 * 60_000L);
  }

  @Test
  void shouldSayNothingOfARoomThatWasFreeOrThatNobodyFreed() {
    for (PlayedMorning p : List.of(worked(), worked("06:20 OCCUPIED"))) {
      assertThat(new ToldPast(Replayed.of(p.journal())).freed(ROOM)).isNull();
      assertThat(asRun(p).pieces()).noneMatch(piece -> piece.kind().equals("occupied"));
    }
  }
}
